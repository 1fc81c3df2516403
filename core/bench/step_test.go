package bench

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/form"
)

// A step works a form out once on one desk, and says each time what it said, in the
// answers and beside the fields.
func TestAStepAnswersAFormOnce(t *testing.T) {
	worked := 0
	s := Step{Name: "any", Answer: func(a *Answers, r *form.Reader) {
		worked++
		r.Default(form.Throw)
		a.Say("any.headline", "so")
	}}
	f := form.Form{form.Throw.Name(): "wide"}
	kept := &Kept{}
	for range 3 {
		a, r := &Answers{Kept: kept}, form.Read(f)
		s.Fill(a, r)
		assert.Equal(t, []Entry{{Name: "say.any.headline", Text: "so"}}, a.Entries)
		if assert.Len(t, r.Problems, 1) {
			assert.Equal(t, form.Throw.Name(), r.Problems[0].Name)
		}
	}
	assert.Equal(t, 1, worked)
	kept.Changed(form.Throw.Name())
	s.Fill(&Answers{Kept: kept}, form.Read(f))
	s.Fill(&Answers{}, form.Read(f))
	assert.Equal(t, 3, worked, "an edit, and where nothing is kept")
}
