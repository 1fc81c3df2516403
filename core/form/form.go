// Package form is the job as typed: a flat set of names and the text that
// stands under each, the table that says what each name means, and the reading
// of that text into quantities.
//
// A name is a pattern of the table with its stars filled in: "pass.*.drive.tir"
// is the run-out at the drive-side dial in a pass whose key stands for the
// star. A key is made once and never used again; the order of rows is a field
// of its own, so that undo, merging and two tabs never renumber anything.
package form

import (
	"sort"
	"strings"
)

// Form is a job: names and the text as typed. A name that is absent is blank.
type Form map[string]string

// Bounds on a form from anywhere: a link, a file, the page.
const (
	MaxNames = 20000 // names in one form
	MaxKey   = 12    // bytes in a row's key
)

// Names returns the form's names in order.
func (f Form) Names() []string {
	names := make([]string, 0, len(f))
	for name := range f {
		names = append(names, name)
	}
	sort.SliceStable(names, func(i, j int) bool { return names[i] < names[j] })
	return names
}

// Rows returns the keys of a repeated group ("pass", or "pass.1.cut"), in the
// order that their order fields give; rows without one come first, by key.
func (f Form) Rows(group string) []string {
	prefix := group + "."
	seen := map[string]bool{}
	var keys []string
	for name := range f {
		rest, ok := strings.CutPrefix(name, prefix)
		if !ok {
			continue
		}
		key, _, ok := strings.Cut(rest, ".")
		if ok && !seen[key] && ValidKey(key) {
			seen[key] = true
			keys = append(keys, key)
		}
	}
	f.inOrder(prefix, keys)
	return keys
}

// inOrder sorts the keys of the rows whose names begin with a prefix.
func (f Form) inOrder(prefix string, keys []string) {
	// Sorted as texts, the order padded.
	const pad = "000000000"
	for i, key := range keys {
		order := f[prefix+key+".order"]
		if !isOrder(order) {
			order = ""
		}
		keys[i] = pad[len(order):] + order + key
	}
	sort.SliceStable(keys, func(i, j int) bool { return keys[i] < keys[j] })
	for i, key := range keys {
		keys[i] = key[len(pad):]
	}
}

// Groups are the keys of each group's rows, in their order.
type Groups map[string][]string

// Groups returns what Rows does, for every group that has any.
func (f Form) Groups() Groups {
	all := Groups{}
	seen := map[string]bool{}
	for name := range f {
		from := 0 // where the key may begin
		for at := range len(name) {
			if name[at] != '.' {
				continue
			}
			if from > 0 && !seen[name[:at]] {
				seen[name[:at]] = true
				if key := name[from:at]; ValidKey(key) {
					all[name[:from-1]] = append(all[name[:from-1]], key)
				}
			}
			from = at + 1
		}
	}
	for group, keys := range all {
		f.inOrder(group+".", keys)
	}
	return all
}

// isOrder says whether a text is a whole number of up to nine figures. What is
// none counts as 0, since an order is made by the page and never worth losing a
// row for.
func isOrder(text string) bool {
	for i := range len(text) {
		if text[i] < '0' || text[i] > '9' {
			return false
		}
	}
	return len(text) <= 9
}

// Whole reads an order or a count; what is none counts as 0.
func Whole(text string) (n int) {
	if !isOrder(text) {
		return 0
	}
	for i := range len(text) {
		n = 10*n + int(text[i]-'0')
	}
	return n
}

// ValidKey says whether a row's key is one that the page makes: 1 to MaxKey
// small letters and digits.
func ValidKey(key string) bool {
	if key == "" || len(key) > MaxKey {
		return false
	}
	for i := range len(key) {
		if c := key[i]; (c < 'a' || c > 'z') && (c < '0' || c > '9') {
			return false
		}
	}
	return true
}
