// Package bench is what the steps of the work share: the answers that they fill,
// how figures are written, what a step is, and which side is at which end of the
// crank, which the trade rooms know as left and right alone. A step is where
// figures become sentences. No step knows another; package sheet puts them in
// their order.
package bench

import (
	"errors"
	"strconv"
	"strings"
)

// Answers is the flat object that a form is answered with, in the order in
// which it was filled. Names say what a value is for:
//
//	say.…       words for the page
//	picture.…   an SVG picture
//	error.NAME  what is wrong with the field NAME
//	assumed.NAME  what stands in for the field NAME
//	found.NAME  what was worked out for the field NAME, left blank for it
//	unit.…      a unit as it stands in fields
//	tap         the hour field that is asked for, which a tap on the clock face fills
//	doubt.NAME  what the text of the field NAME may mean: by turns in few words and as it would be typed, a line each
//
// and any other name is a value as `tools/answer` prints it. There a slash
// parts a list or an object from what is in it: "moves/0/kind".
type Answers struct {
	Entries []Entry
	Kept    *Kept // what was worked out of the form; nil keeps nothing
}

// Entry is one name with its value: a text, a number, or nothing.
type Entry struct {
	Name   string
	Kind   EntryKind
	Text   string
	Number float64
}

// EntryKind says which of an entry's values counts.
type EntryKind uint8

// The kinds of entry.
const (
	Text EntryKind = iota
	Number
	Null
	EmptyList
)

// Text puts a text under a name.
func (a *Answers) Text(name, text string) {
	a.Entries = append(a.Entries, Entry{Name: name, Text: text})
}

// Say words something for the page: each % of the template is filled by the
// next figure.
func (a *Answers) Say(name, template string, figures ...string) {
	a.Text("say."+name, Fill(template, figures...))
}

// Fill puts the figures in the place of the template's % signs; figures that it
// has no sign for are left out. One template is far smaller in WebAssembly than a
// chain of additions.
func Fill(template string, figures ...string) string {
	var out strings.Builder
	long := len(template)
	for _, figure := range figures {
		long += len(figure)
	}
	out.Grow(long)
	for _, figure := range figures {
		before, after, more := strings.Cut(template, "%")
		if !more {
			break
		}
		out.WriteString(before)
		out.WriteString(figure)
		template = after
	}
	out.WriteString(template)
	return out.String()
}

// Counted writes how many there are of a thing.
func Counted(n int, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + more
}

// Number puts a number under a name.
func (a *Answers) Number(name string, v float64) {
	if v == 0 {
		v = 0 // never a "-0"
	}
	a.Entries = append(a.Entries, Entry{Name: name, Kind: Number, Number: v})
}

// Null says that there is no value under a name.
func (a *Answers) Null(name string) {
	a.Entries = append(a.Entries, Entry{Name: name, Kind: Null})
}

// HourOrNull puts an hour under a name where it could be told.
func (a *Answers) HourOrNull(name string, told bool, hour float64) {
	if told {
		a.Number(name, hour)
	} else {
		a.Null(name)
	}
}

// EmptyList puts a list with nothing in it under a name.
func (a *Answers) EmptyList(name string) {
	a.Entries = append(a.Entries, Entry{Name: name, Kind: EmptyList})
}

// Get returns an entry by name.
func (a *Answers) Get(name string) (Entry, bool) {
	for _, e := range a.Entries {
		if e.Name == name {
			return e, true
		}
	}
	return Entry{}, false
}

// OutInCases tells whether they say of either shaft that it was read out of true in its cases.
func (a *Answers) OutInCases() bool {
	for _, side := range Sides {
		if e, _ := a.Get("fit.cases." + side + ".tir_verdict"); e.Text == "wrong" {
			return true
		}
	}
	return false
}

// Faults returns what the answers say is wrong with fields.
func (a *Answers) Faults() []error {
	var all []error
	for _, e := range a.Entries {
		if name, ok := strings.CutPrefix(e.Name, "error."); ok {
			all = append(all, errors.New(name+": "+e.Text))
		}
	}
	return all
}
