package sheet

import (
	"maps"
	"math/rand/v2"
	"strconv"
	"strings"
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

// So it does over long jobs, of one throw and of two, with what was done logged, said or
// neither, and pins alone: texts change, rows come and go, units turn, another pass is looked
// at, and changes are taken back.
func TestADeskFollowsLongJobs(t *testing.T) {
	seed := rand.New(rand.NewPCG(20, 27))
	for i, job := range []form.Form{
		longJob(25), untold(longJob(25), "", "said", "", "first", "", "else"), untold(longJob(6), "else"),
		ofTwoThrows(longJob(12)), untold(ofTwoThrows(longJob(6)), "", "said", "else"), untold(ofTwoThrows(longJob(6)), "else"), alone(ofTwoThrows(longJob(12))),
	} {
		desk, f := &Desk{}, maps.Clone(job)
		for n := range 40 + 500/len(job.Rows("pass")) {
			if seed.IntN(4) == 0 {
				f = maps.Clone(job)
			} else {
				edit(f, seed)
			}
			for _, part := range [...]string{"true", "true.more", "true.values", "sheet"} {
				assert.Equal(t, Answer(f, part).Entries, desk.answer(f, part).Entries, "%s of job %d, edit %d", part, i, n)
			}
			if t.Failed() {
				return
			}
		}
	}
}

// edit makes one of the edits that people make, in a pass or in what all passes are read by.
func edit(f form.Form, seed *rand.Rand) {
	passes, names := f.Rows("pass"), f.Names()
	pass, name := passes[seed.IntN(len(passes))], names[seed.IntN(len(names))]
	switch seed.IntN(10) {
	case 0:
		delete(f, name)
	case 1:
		f[name] += "1"
	case 2:
		f[form.Units.Name()] = [...]string{"inch", "metric"}[seed.IntN(2)]
	case 3:
		f[form.Bench.Name()] = pass
	case 4:
		f[form.PassSince.Name(pass)] = [...]string{"", "said", "first", "nuts", "else", "nothing"}[seed.IntN(6)]
	case 5:
		if len(passes) > 3 {
			maps.DeleteFunc(f, func(name, _ string) bool { return strings.HasPrefix(name, "pass."+pass+".") })
		}
	case 6:
		f[form.PassDoneHour.Name(pass, "a")] = strconv.Itoa(1 + seed.IntN(12))
	case 7:
		f[form.Tolerance.Name()] = strconv.Itoa(1 + seed.IntN(40))
	case 8:
		f[form.PassOrder.Name(pass)] = strconv.Itoa(seed.IntN(30))
	default:
		f[form.ReadingTurn.Name(pass, "drive")] = turnAt3(seed.IntN(30))
	}
}

// untold is a job with nothing logged as done, and of its passes said in turn what was.
func untold(f form.Form, since ...string) form.Form {
	maps.DeleteFunc(f, func(name, _ string) bool { return strings.Contains(name, ".done.") })
	for i, key := range f.Rows("pass") {
		f[form.PassSince.Name(key)] = since[i%len(since)]
	}
	return f
}

// ofTwoThrows is a job's crank with a second throw, read at both journals between.
func ofTwoThrows(f form.Form) form.Form {
	for name, text := range map[string]string{"drive.pin": "100", "timing.pin": "100", "pin.b.at": "160", "pin.b.angle": "180", "pin.b.order": "1"} {
		f[name] = text
	}
	for n, dial := range [...]string{"dial.a", "dial.b"} {
		f[dial+".order"], f[dial+".at"] = strconv.Itoa(n+1), strconv.Itoa(120+20*n)
		for i, key := range f.Rows("pass") {
			f["pass."+key+"."+dial+".tir"], f["pass."+key+"."+dial+".high"] = strconv.Itoa(1+(i*7)%5), "3"
			f[form.PassDonePin.Name(key, "a")] = strconv.Itoa(1 + i%2)
		}
	}
	return f
}

// alone is a job whose first passes are of pins alone.
func alone(f form.Form) form.Form {
	for i, key := range f.Rows("pass")[:8] {
		f[form.PassOf.Name(key)] = strconv.Itoa(1 + i/4)
	}
	for _, name := range [...]string{"alone.1.timing.pin", "alone.1.timing.at", "alone.2.drive.pin", "alone.2.drive.at"} {
		f[name] = map[bool]string{true: "40", false: "20"}[strings.HasSuffix(name, "pin")]
	}
	return f
}
