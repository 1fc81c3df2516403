package sheet

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/form"
)

// A step's fields, by which the sheet takes it in, begin as fields of the table do, and
// no two steps have them alike.
func TestStepsNameFieldsOfTheTable(t *testing.T) {
	firsts, of := map[string]bool{}, map[string]string{}
	for _, f := range form.Job.Fields() {
		first, _, _ := strings.Cut(f.Pattern, ".")
		firsts[first] = true
	}
	for i := range steps {
		s := &steps[i]
		for _, word := range strings.Fields(s.Fields) {
			first, dotted := strings.CutSuffix(word, ".")
			assert.True(t, dotted && firsts[first], "%s: %s", s.Name, word)
			assert.Empty(t, of[first], "%s has %s too", s.Name, word)
			of[first] = s.Name
		}
	}
	assert.NotEmpty(t, of)
}
