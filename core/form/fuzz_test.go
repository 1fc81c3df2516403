package form

import (
	"maps"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"pintwelve/testdata/links"
)

// FuzzForm holds, for any two names and texts: a name that the table knows is its
// pattern filled with its keys, and no other; what is wrong with a field is said
// of that field alone, in words that are bounded; a step of a field that is right
// leaves it right; and other units change only what the form holds.
func FuzzForm(f *testing.F) {
	for _, g := range links.All(f) {
		given := Form(g.Job)
		names := given.Names()
		for i := range names {
			other := names[(i+1)%len(names)]
			f.Add(names[i], given[names[i]], other, given[other])
		}
	}
	f.Fuzz(func(t *testing.T, name, text, otherName, otherText string) {
		job := Form{name: text, otherName: otherText}
		if field, keys, ok := Job.Lookup(name); ok {
			require.Equal(t, name, Fill(field.Pattern, keys))
			require.Len(t, keys, strings.Count(field.Pattern, "*"))
		}
		wrong := wrongOf(t, job)
		stepped := maps.Clone(job)
		stepped[name] = Step(job, name, 1)
		if !wrong[name] && !wrong[otherName] {
			require.NotContains(t, wrongOf(t, stepped), name, "%q steps to %q", text, stepped[name])
		}
		for _, units := range []string{"metric", "inch"} {
			changes := InUnits(job, units, 0.1)
			for changed := range changes {
				require.Contains(t, job, changed)
			}
		}
	})
}

// wrongOf returns the fields of which something is said to be wrong.
func wrongOf(t *testing.T, job Form) map[string]bool {
	wrong := map[string]bool{}
	for _, p := range Check(job) {
		require.Contains(t, job, p.Name)
		require.NotEmpty(t, p.Text)
		require.Less(t, len(p.Text), 600)
		wrong[p.Name] = true
	}
	return wrong
}
