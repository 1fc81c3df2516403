package sheet

import (
	"strings"

	"pintwelve/core/bench"
	"pintwelve/core/form"
	"pintwelve/core/step/truing"
)

// InUnits returns the fields whose text changes so that the form means the same
// in other units ("inch" or "metric"): readings to a tenth of their dial's
// division, which is as near as a needle is read between two marks, so that 3
// thou is 0.076 mm and not 0.0762. Where that would turn a verdict, they come to
// the very same value.
func InUnits(f form.Form, to string) form.Form {
	const tenth = 0.1
	changes := form.InUnits(f, to, tenth)
	after := f.With(changes)
	after[form.Units.Name()] = to
	if sameTexts(verdicts(f), verdicts(after)) {
		return changes
	}
	return form.InUnits(f, to, 0)
}

// verdicts are all that a form's answers judge, and what is wrong with its
// fields; of the passes the first and the last, which the sheet tells, and that
// on the bench.
func verdicts(f form.Form) form.Form {
	all := form.Form{}
	keep := func(at string, a *bench.Answers) {
		for _, e := range a.Entries {
			if strings.Contains(e.Name, "verdict") {
				all[at+e.Name] = e.Text
			} else if strings.HasPrefix(e.Name, "error.") {
				all[e.Name] = "" // its words tell the units
			}
		}
	}
	keep("", Answer(f, ""))
	keys, _ := truing.PassKeys(f)
	for _, key := range [...]string{keys[0], keys[len(keys)-1]} {
		keep(key+".", Answer(f.With(form.Form{form.Bench.Name(): key}), truing.Values.Name))
	}
	return all
}

func sameTexts(a, b form.Form) bool {
	for name, text := range a {
		if other, ok := b[name]; !ok || other != text {
			return false
		}
	}
	return len(a) == len(b)
}
