package sheet

import (
	"maps"
	"math/rand/v2"
	"testing"

	"pintwelve/core/bench"
	"pintwelve/core/form"
	"pintwelve/testdata/jobs"

	"github.com/stretchr/testify/assert"
)

// The parts of a form say on one desk what each says by itself, in whatever order
// they are asked for, and of the next form nothing of the one before.
func TestADeskSaysWhatEachPartSaysByItself(t *testing.T) {
	desk := &Desk{}
	for i, job := range append(append(givenJobs(t), sayingJobs()...), anyTruing(100)...) {
		for n := range steps {
			part := steps[(i+n)%len(steps)].Name
			assert.Equal(t, Answer(job, part).Entries, desk.answer(job, part).Entries, "%s of job %d", part, i)
		}
		if t.Failed() {
			return
		}
	}
}

// A form that is changed in place is another form.
func TestADeskKnowsAChangedForm(t *testing.T) {
	desk, f := &Desk{}, jobs.Typed("3", "3", "3", "9")
	desk.answer(f, "true")
	f["pass.1.drive.tir"] = "8"
	assert.Equal(t, Answer(f, "true").Entries, desk.answer(f, "true").Entries)
}

// answer changes what lies on the desk to a form and answers that.
func (d *Desk) answer(f form.Form, part string) *bench.Answers {
	var gone []string
	for name := range d.form {
		if _, there := f[name]; !there {
			gone = append(gone, name)
		}
	}
	d.Change(f, gone)
	return d.Answer(part)
}

// Edit after edit a desk says what the form says by itself, though it reads only the
// passes that an edit touched: one changes a text, takes another's, or clears it, in
// a pass or what all passes are read by.
func TestADeskFollowsEdits(t *testing.T) {
	seed := rand.New(rand.NewPCG(7, 20))
	for i, job := range append(append(givenJobs(t), sayingJobs()...), append(anyTruing(60), longJob(5))...) {
		desk, f := &Desk{}, maps.Clone(job)
		for n := range 12 {
			if names := f.Names(); len(names) > 0 {
				name, from := names[seed.IntN(len(names))], names[seed.IntN(len(names))]
				switch seed.IntN(4) {
				case 0:
					delete(f, name)
				case 1:
					f[name] = f[from]
				case 2:
					f[name] += "1"
				default:
					f["units"] = []string{"inch", "metric"}[n%2]
				}
			}
			for _, part := range [...]string{"true", "true.more", "true.values"} {
				assert.Equal(t, Answer(f, part).Entries, desk.answer(f, part).Entries, "%s of job %d, edit %d", part, i, n)
			}
			if t.Failed() {
				return
			}
		}
	}
}
