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
	"slices"
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

// Groups are the keys of each of the table's groups as Rows gives them, by group.
type Groups map[string][]string

// Groups returns what Rows does, for every group that has any.
func (f Form) Groups() Groups {
	all := Groups{}
	seen := map[string]bool{}
	for name := range f {
		for row, rest := nextRow(name, 0); row != ""; row, rest = nextRow(name, rest) {
			if !seen[row] {
				seen[row] = true
				group, key := cutRow(row)
				all[group] = append(all[group], key)
			}
		}
	}
	for group, keys := range all {
		f.inOrder(group+".", keys)
	}
	return all
}

// Hold tells whether the groups of a form stay as they were before the text under a name
// was changed.
func (g Groups) Hold(f Form, name string) bool {
	_, there := f[name]
	for row, rest := nextRow(name, 0); row != ""; row, rest = nextRow(name, rest) {
		group, key := cutRow(row)
		_, ordered := f[row+".order"]
		if !slices.Contains(g[group], key) || !there && !ordered {
			return false
		}
	}
	return !strings.HasSuffix(name, ".order")
}

// nextRow returns the next row that a name belongs to, as the name begins, and where to look for the
// one within it: of "pass.1.done.a.kind" first "pass.1", then "pass.1.done.a"; "" where
// there is no more.
func nextRow(name string, from int) (row string, rest int) {
	for {
		dot := strings.IndexByte(name[from:], '.')
		if dot < 0 {
			return "", from
		}
		word := name[from : from+dot]
		from += dot + 1
		if end := strings.IndexByte(name[from:], '.'); end >= 0 && Job.groups[word] && ValidKey(name[from:from+end]) {
			return name[:from+end], from + end + 1
		}
	}
}

// cutRow takes a row's name apart.
func cutRow(row string) (group, key string) {
	at := strings.LastIndexByte(row, '.')
	return row[:at], row[at+1:]
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
