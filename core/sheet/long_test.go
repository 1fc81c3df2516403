package sheet

import (
	"math"
	"strconv"
	"testing"

	"pintwelve/core/form"
)

// longJob is a job of passes whose dials were read by full turns of eight points, each
// followed by a strike that took out a little.
func longJob(passes int) form.Form {
	f := form.Form{}
	for i := range passes {
		key := "p" + strconv.Itoa(i)
		f[form.PassOrder.Name(key)] = strconv.Itoa(i + 1)
		for _, side := range [...]string{"drive", "timing"} {
			f[form.ReadingHow.Name(key, side)], f[form.ReadingPoints.Name(key, side)] = "turn", "8"
			f[form.ReadingTurn.Name(key, side)] = turnAt3(passes - i)
		}
		f[form.PassDoneKind.Name(key, "a")], f[form.PassDoneOrder.Name(key, "a")] = "strike", "1"
		f[form.PassDoneWheel.Name(key, "a")], f[form.PassDoneHour.Name(key, "a")] = "drive", "9"
	}
	return f
}

// turnAt3 is a turn of eight points of a needle that stands highest at 3, thou.
func turnAt3(runOut int) string {
	var text string
	for n := range 8 {
		text += strconv.FormatFloat(float64(runOut)/2*(1+math.Sin(float64(n)*math.Pi/4)), 'f', 1, 64) + " "
	}
	return text
}

// BenchmarkEditOfPasses is what both parts of the dials' step take after one reading
// of the last pass was changed, by how many passes the job has.
func BenchmarkEditOfPasses(b *testing.B) {
	for _, passes := range []int{1, 10, 100} {
		b.Run(strconv.Itoa(passes), func(b *testing.B) {
			desk := Desk{}
			desk.Change(longJob(passes), nil)
			name := form.ReadingTurn.Name("p"+strconv.Itoa(passes-1), "drive")
			for n := 0; b.Loop(); n++ {
				desk.Change(form.Form{name: turnAt3(1 + n%7)}, nil)
				desk.Answer("true")
				desk.Answer("true.more")
			}
		})
	}
}
