package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// The parts of a form say on one desk what each says by itself, in whatever order
// they are asked for, and of the next form nothing of the one before.
func TestADeskSaysWhatEachPartSaysByItself(t *testing.T) {
	desk := &Desk{}
	for i, job := range append(append(givenJobs(t), sayingJobs()...), anyTruing(100)...) {
		for n := range steps {
			part := steps[(i+n)%len(steps)].Name
			assert.Equal(t, Answer(job, part).Entries, desk.Answer(job, part).Entries, "%s of job %d", part, i)
		}
		if t.Failed() {
			return
		}
	}
}

// A form that is changed in place is another form.
func TestADeskKnowsAChangedForm(t *testing.T) {
	desk, f := &Desk{}, typed("3", "3", "3", "9")
	desk.Answer(f, "true")
	f["pass.1.drive.tir"] = "8"
	assert.Equal(t, Answer(f, "true").Entries, desk.Answer(f, "true").Entries)
}
