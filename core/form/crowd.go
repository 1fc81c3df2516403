package form

import (
	"sort"
	"strings"
)

// mostRows is how many rows a group may have, and what they are called: far
// more than one crank ever saw, and no more than a phone answers at once.
var mostRows = map[string]struct {
	rows int
	what string
}{
	"pass": {200, "passes"}, "dial": {20, "further places on the shafts"}, "pin": {5, "further crankpins"}, "alone": {6, "pins alone"}, "done": {20, "moves in one pass"},
	"made": {50, "cuts that the wheels came with"}, "cut": {50, "cuts"}, "swing": {50, "swing tests"},
	"cylinder": {20, "further cylinders"}, "keep": {100, "places to keep off"}, "hole": {100, "holes"},
	"joint": {20, "joints"}, "main": {20, "main bearings"},
}

// Crowd is a group that has more rows than a job may.
type Crowd struct {
	Group      string // "pass", "pass.k3y.done"
	Rows, Most int
	What       string // "passes"
}

// String tells of the crowd: "4250 passes; a job holds 200 at most".
func (c Crowd) String() string {
	return crowdWords(c.Rows, c.What, c.Most)
}

// Crowds returns the groups that have more rows than they may, by name.
func Crowds(f Form) (all []Crowd) {
	rows := map[string]map[string]bool{}
	for name := range f {
		countRows(rows, name)
	}
	for group, keys := range rows {
		if bound := mostRows[group[strings.LastIndexByte(group, '.')+1:]]; len(keys) > bound.rows {
			all = append(all, Crowd{group, len(keys), bound.rows, bound.what})
		}
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].Group < all[j].Group })
	return all
}

// countRows counts a name to the rows that it belongs to: the one after each
// word that a key follows.
func countRows(rows map[string]map[string]bool, name string) {
	before := ""
	for at := 0; ; {
		dot := strings.IndexByte(name[at:], '.')
		if dot < 0 {
			return
		}
		segment := name[at : at+dot]
		if Job.groups[before] {
			group := name[:at-1]
			if rows[group] == nil {
				rows[group] = map[string]bool{}
			}
			rows[group][segment] = true
			segment = "" // a key is no group, though it may be spelt as one
		}
		before = segment
		at += dot + 1
	}
}
