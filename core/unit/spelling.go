package unit

import "strings"

// Named finds a unit of a kind by any spelling that Parse would take after a
// number.
func Named(kind Kind, name string) (Unit, bool) {
	s, fault := clean(name)
	if fault != nil {
		return Plain, false
	}
	return lookup(kind, s)
}

// lookup finds a unit of a kind by its spelling in cleaned text.
func lookup(kind Kind, name string) (Unit, bool) {
	key := " " + unitKey(name) + " "
	for u := range units {
		if units[u].kind == kind && strings.Contains(units[u].spellings, key) {
			return Unit(u), true
		}
	}
	return Plain, false
}

// kindOf finds what a spelling measures when it isn't what the field wants.
func kindOf(name string) (Kind, bool) {
	key := " " + unitKey(name) + " "
	for u := range units {
		if strings.Contains(units[u].spellings, key) {
			return units[u].kind, true
		}
	}
	return Number, false
}

// unitKey drops what people write or leave out at will: "lbf.ft", "lbf-ft",
// "µm/(m K)", "in.".
func unitKey(name string) string {
	key := make([]byte, 0, len(name))
	for i := range len(name) {
		if strings.IndexByte(" .*^()-", name[i]) < 0 {
			key = append(key, name[i])
		}
	}
	return string(key)
}
