package form

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// What a figure may mean: the other unit's figure is one that the dial could
// show, by the international yard and pound agreement (1 in = 25.4 mm).
func TestABareFigureThatNoDialCouldMeanIsInDoubt(t *testing.T) {
	const drive, turn = "pass.1.drive.tir", "pass.1.drive.turn"
	metric := func(name, text string) Form {
		return Form{name: text, "units": "metric", "drive.division": "0.01"}
	}
	for _, row := range []struct {
		form Form
		name string
		want []string
	}{
		{Form{drive: "0.08"}, drive, []string{"0.08 thou", "0.08 mm"}},
		{Form{drive: "0.14"}, drive, []string{"0.14 thou", "0.14 mm"}},
		{Form{drive: "0.1"}, drive, []string{"0.1 thou", "0.1 mm"}},
		{Form{drive: "0,08"}, drive, []string{"0,08 thou", "0,08 mm"}},
		{Form{drive: "8/100"}, drive, []string{"8/100 thou", "8/100 mm"}},
		{Form{drive: "0.003"}, drive, []string{"0.003 thou", "0.003 in"}},
		{Form{drive: "0.02"}, drive, []string{"0.02 thou", "0.02 mm", "0.02 in"}},
		{Form{drive: "0.33"}, drive, []string{"0.33 thou", "0.33 mm"}},
		{Form{"pass.2.timing.tir": "0.08"}, "pass.2.timing.tir", []string{"0.08 thou", "0.08 mm"}},
		{Form{"found.drive": "0.08"}, "found.drive", []string{"0.08 thou", "0.08 mm"}},
		{metric(drive, "4"), drive, []string{"4 mm", "4 thou"}},
		{metric(drive, "1.5"), drive, []string{"1.5 mm", "1.5 thou"}},
		{metric(drive, "12"), drive, []string{"12 thou"}}, // 12 mm is out of the field's range
		{metric("tolerance", "2"), "tolerance", []string{"2 thou"}},
		{Form{"tolerance": "0.05"}, "tolerance", []string{"0.05 thou", "0.05 mm"}},
		{Form{"drive.division": "0.01"}, "drive.division", []string{"0.01 thou", "0.01 mm"}},
		{Form{"drive.division": "0.5", "units": "metric"}, "drive.division", []string{"0.5 thou"}},
		{Form{"drive.sweep": "1"}, "drive.sweep", []string{"1 thou", "1 mm"}},
		{Form{turn: "0 .04 .08 .04"}, turn, []string{"0 .04 .08 .04 thou", "0 .04 .08 .04 mm"}},

		{Form{drive: "0"}, drive, nil},
		{Form{drive: "0.5"}, drive, nil},
		{Form{drive: "0.25"}, drive, nil},
		{Form{drive: "0.3"}, drive, nil}, // a division cut in five by eye
		{Form{drive: "4"}, drive, nil},
		{Form{drive: "60"}, drive, nil}, // in no other unit could it be a crank's
		{Form{drive: "0.08 mm"}, drive, nil},
		{Form{drive: "0.14 thou"}, drive, nil},
		{Form{drive: "2.37"}, drive, nil},
		{Form{drive: "0.0762", "units": "metric"}, drive, nil}, // 3 thou, as the change of units writes it
		{Form{drive: "0.08", "drive.division": "0.1"}, drive, nil},
		{metric(drive, "0.05"), drive, nil},
		{Form{drive: "0.5", "units": "metric"}, drive, nil}, // on a dial of hundredths, as most are
		{Form{"tolerance": "2"}, "tolerance", nil},
		{Form{turn: "98 99 0 99"}, turn, nil},
		{Form{turn: "0 0 0 0"}, turn, nil},
		{Form{"throw": "6"}, "throw", nil},
	} {
		r := Read(row.form)
		if field, _, ok := Job.Lookup(row.name); ok && field.Kind == List {
			r.numbers(field, row.name, 9)
		} else {
			r.number(field, row.name)
		}
		r.Number(ReadingTIR, "1", "drive") // read once more it is asked about once
		var got []string
		for _, d := range r.Doubts {
			if d.Name != row.name {
				continue
			}
			assert.True(t, d.Unit)
			for _, m := range d.Meanings {
				got = append(got, m.Text)
			}
		}
		assert.Equal(t, row.want, got, "%v", row.form)
		assert.LessOrEqual(t, len(r.Doubts), 1)
		assert.Empty(t, r.StandIns, "what stands in is told of what is read, not of what is asked")
	}
}

func TestAnHourThatMayBeMinutesIsAsked(t *testing.T) {
	r := Read(Form{"pass.1.drive.high": "5.50", "pass.1.timing.high": "5.30"})
	r.Number(ReadingHigh, "1", "drive")
	v, _ := r.Number(ReadingHigh, "1", "timing")
	assert.Equal(t, 5.5, v)
	assert.Equal(t, []Doubt{{Name: "pass.1.drive.high", Meanings: []Meaning{{"5:30", "5:30"}, {"5:50", "5:50"}}}}, r.Doubts)
}
