package link

// prefixCode is a canonical prefix code for the bytes of texts: short for what
// is frequent, self-ending.
type prefixCode struct {
	groups []string // the bytes that take 1 bit, 2 bits, …
	code   [256]uint16
	width  [256]uint8 // 0: not in the code
}

const (
	end   = 0x00 // ends a text; no text holds it
	other = 0xff // a byte that the code lacks follows in 8 bits; UTF-8 has no 0xff
)

// newPrefixCode builds a code from the bytes that take shortest bits, one more,
// and so on.
func newPrefixCode(shortest int, groups ...string) *prefixCode {
	c := &prefixCode{groups: append(make([]string, shortest-1), groups...)}
	next := uint16(0)
	for i, group := range c.groups {
		next <<= 1
		for j := range len(group) {
			c.code[group[j]], c.width[group[j]] = next, uint8(i+1)
			next++
		}
	}
	return c
}

// The codes are part of version 1 and don't change. Both are complete: any bits
// mean something.
var (
	// figures is for what is typed in a shop's figures, readings in halves and
	// tenths of a thou above all.
	figures = newPrefixCode(3, " .0\x00", "125-", "346789", ":,/+")
	// words is for notes, after the letters of English; others go by 8 bits.
	words = newPrefixCode(3, " ", "etaoinsr", "hdl\x00", "cumfpwgb", "yvk.,\xff",
		"0125-3'\n", "xjqz/()+46789:;", "",
		"ABCDEFGHIJKLMNOPQRSTUVWXYZ\"!?&%=#*@_")
)

// size returns the bits that a text takes with its end, and false where the
// code has no way to write it.
func (c *prefixCode) size(text string) (n int, ok bool) {
	n = int(c.width[end])
	for i := range len(text) {
		w := c.width[text[i]]
		if w == 0 {
			if w = c.width[other] + 8; w == 8 {
				return 0, false
			}
		}
		n += int(w)
	}
	return n, true
}

// write writes a text that size lets pass.
func (c *prefixCode) write(w *bitWriter, text string) {
	for i := range len(text) {
		if b := text[i]; c.width[b] == 0 {
			c.put(w, other)
			w.put(uint64(b), 8)
		} else {
			c.put(w, b)
		}
	}
	c.put(w, end)
}

func (c *prefixCode) put(w *bitWriter, b byte) { w.put(uint64(c.code[b]), int(c.width[b])) }

// read reads up to the end of a text; the reader is short where there is none,
// or where a byte that the code has stands in 8 bits.
func (c *prefixCode) read(r *bitReader) string {
	var text []byte
	for {
		b := c.symbol(r)
		if b == end {
			return string(text)
		}
		if b == other {
			b = byte(r.get(8))
			r.short = r.short || c.width[b] != 0
		}
		if r.short {
			return ""
		}
		text = append(text, b)
	}
}

func (c *prefixCode) symbol(r *bitReader) byte {
	code, first := 0, 0
	for _, group := range c.groups {
		code, first = code<<1|int(r.bit()), first<<1
		if i := code - first; i < len(group) {
			return group[i]
		}
		first += len(group)
	}
	return end
}
