package truing_test

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"pintwelve/core/clock"
	"pintwelve/core/form"
	"pintwelve/core/sheet"
	"pintwelve/core/step/truing"
	"pintwelve/testdata/cases"
	"pintwelve/testdata/jobs"
)

// throwsCase is an exact crank of several throws.
type throwsCase struct{ cases.Throws }

func throwsCases(t *testing.T) (all []throwsCase) {
	for _, c := range cases.OfSeveral(t) {
		all = append(all, throwsCase{c})
	}
	return all
}

// job types a case as a person would, the drive side at the left, hours as seen
// from seen: the end dials by the two sides', all others as further places.
func (c *throwsCase) job(seen string) (f form.Form, dialOf []string) {
	mm := func(v float64) string { return strconv.FormatFloat(v, 'f', 6, 64) + " mm" }
	hour := func(h float64) string {
		if seen == "timing" {
			h = clock.Mirror(h)
		}
		return strconv.FormatFloat(h, 'f', 6, 64)
	}
	last := c.Pins[len(c.Pins)-1]
	f = form.Form{
		"left": "drive", "seen": seen, "throw": mm(c.Pins[0].Throw), "rim": mm(2 * c.Rim), "tolerance": "0.02 mm",
		"drive.pin": mm(c.Pins[0].At), "timing.pin": mm(c.Length - last.At), "drive.division": "0.001 mm", "timing.division": "0.001 mm",
	}
	if c.Mount != "centres" {
		f["mount"], f["drive.held"], f["timing.held"] = "vblocks", mm(c.Supports[0].At), mm(c.Length-c.Supports[1].At)
	}
	for i, pin := range c.Pins[1:] {
		key := "pin.p" + strconv.Itoa(i) + "."
		angle := 30 * pin.Phase
		if seen == "timing" {
			angle = 360 - angle
		}
		f[key+"order"], f[key+"at"], f[key+"throw"], f[key+"angle"] = strconv.Itoa(i), mm(pin.At), mm(pin.Throw), strconv.FormatFloat(angle, 'f', 4, 64)
	}
	taken := map[string]bool{}
	for i, d := range c.Dials {
		name := "drive"
		if d.Piece == len(c.Pins)+1 {
			name = "timing"
		}
		if end := d.Piece == 1 || name == "timing"; !end || taken[name] {
			key := "dial.d" + strconv.Itoa(i)
			f[key+".order"], f[key+".half"] = strconv.Itoa(i), "drive"
			if name == "timing" {
				f[key+".half"] = "timing"
			}
			name = key
		}
		taken[name] = true
		if at := d.At; f[name+".half"] == "timing" || name == "timing" {
			f[name+".at"] = mm(c.Length - at)
		} else {
			f[name+".at"] = mm(at)
		}
		f["pass.1."+name+".tir"], f["pass.1."+name+".high"] = mm(d.RunOut), hour(d.High)
		dialOf = append(dialOf, name)
	}
	for _, g := range c.Gaps {
		at := "pass.1."
		if g.Joint > 1 {
			at += "pin.p" + strconv.Itoa(g.Joint-2) + "."
		}
		f[at+"gap12"], f[at+"gap6"], f[at+"gap3"], f[at+"gap9"] = mm(g.G12), mm(g.G6), mm(g.G3), mm(g.G9)
		if seen == "timing" {
			f[at+"gap3"], f[at+"gap9"] = mm(g.G9), mm(g.G3)
		}
	}
	return f, dialOf
}

// The answers to exact cranks of several throws, typed into the form: offset and
// forecasts within a micron, the gap across the rim within 1.5. Source:
// testdata/cases/throws.json, an exact rigid-body crank by full rotations.
func TestThrowsAreAnswered(t *testing.T) {
	worst := [3]float64{}
	for _, c := range throwsCases(t) {
		for _, seen := range []string{"drive", "timing"} {
			job, dialOf := c.job(seen)
			a := sheet.Answer(job, "true.values")
			require.Empty(t, a.Faults(), "%s", c.Name)
			number := func(name string) float64 {
				e, ok := a.Get(name)
				require.True(t, ok, "%s: %s", c.Name, name)
				return e.Number
			}
			place := map[string]int{} // of each dial in the answers' lists
			for i := range dialOf {
				e, _ := a.Get(fmt.Sprintf("dials/%d/name", i))
				place[e.Text] = i
			}
			fore := func(list string, want []float64) {
				for i, v := range want {
					off := math.Abs(number(fmt.Sprintf("%s/%d", list, place[dialOf[i]])) - v)
					assert.Less(t, off, 1e-3, "%s: %s, dial %d", c.Name, list, i)
					worst[2] = math.Max(worst[2], off)
				}
			}
			for j, want := range c.Truth.Joints {
				at := fmt.Sprintf("joints/%d/", j)
				end := clock.Left
				if seen == "timing" {
					end = clock.Right
				}
				d := clock.Vec{T: number(at + "offset/towards12_mm"), N: number(at + "offset/towards3_mm")}.From(end)
				off := d.Sub(clock.Vec{T: want.T, N: want.N}).Len()
				assert.Less(t, off, 1e-3, "%s: offset at %d", c.Name, j)
				across := math.Abs(number(at+"gap/across_rim_mm") - want.Across)
				assert.Less(t, across, 1.5e-3, "%s: gap at %d", c.Name, j)
				worst = [3]float64{math.Max(worst[0], off), math.Max(worst[1], across), worst[2]}
				fore(at+"after_strike_tir_mm", want.Untwist)
				fore(at+"after_gap_tir_mm", want.CloseGap)
			}
			fore("after_all_tir_mm", c.Truth.All)
		}
	}
	t.Logf("worst offset %.2f µm, gap across the rim %.2f µm, forecast %.2f µm", 1e3*worst[0], 1e3*worst[1], 1e3*worst[2])
}

// What is advised is logged with the pin that each move is made at, and what came of it
// is told at that pin: here nothing, the readings being the same again.
func TestWhatIsDoneIsLoggedAtItsPin(t *testing.T) {
	for _, c := range throwsCases(t) {
		if len(c.Pins) != 2 {
			continue
		}
		job, names := c.job("drive")
		a := sheet.Answer(job, "true.values")
		pins := []float64{}
		for i := 0; ; i++ {
			e, ok := a.Get(fmt.Sprintf("moves/%d/pin", i))
			if !ok {
				break
			}
			pins = append(pins, e.Number)
		}
		if len(pins) == 0 {
			continue
		}
		rows := []string{"r1", "r2", "r3", "r4", "r5", "r6"}
		logged := truing.Done(job, rows, "2")
		for i, pin := range pins {
			require.Equal(t, strconv.Itoa(int(pin)), logged["pass.1.done."+rows[i]+".pin"], c.Name)
		}
		require.NotContains(t, logged, "pass.1.done."+rows[len(pins)]+".pin")
		again := job.With(logged)
		again["pass.1.done.r1.strength"], again["pass.1.done.r1.turns"] = "9", "9" // so hard that it should have shown
		for _, name := range names {
			for _, what := range []string{".tir", ".high"} {
				again["pass.2."+name+what] = job["pass.1."+name+what]
			}
		}
		a = sheet.Answer(again, "true.values")
		e, _ := a.Get("amiss/0/pin")
		assert.Contains(t, pins, e.Number, c.Name)
		came, _ := a.Get("amiss/0/came")
		assert.Equal(t, "nothing", came.Text, c.Name)
		did := sheet.Answer(again, "true")
		headline, _ := did.Get("say.truing.headline")
		assert.Contains(t, headline.Text, " pin ", c.Name)
		return
	}
	t.Fatal("no case with a move")
}

// With more moves than one, none is told to be followed by reading but the last; and a
// crank that reads inside with some doubt is asked to be read once more.
func TestThrowsAreReadAfterTheLastMove(t *testing.T) {
	several := 0
	for _, c := range throwsCases(t) {
		job, names := c.job("drive")
		a := sheet.Answer(job, "true")
		if jobs.Said(a, "truing.both") != "" {
			several++
			assert.Contains(t, jobs.Said(a, "truing.hard"), "The first: ")
			assert.NotContains(t, jobs.Said(a, "truing.hard"), "read")
			assert.Contains(t, jobs.Said(a, "truing.then"), "Then read again.")
		}
		for _, name := range names {
			job["pass.1."+name+".tir"] = "0.018 mm"
			job[name+".division"] = "0.01 mm"
		}
		job["tilt"] = "60" // what the dials show is asked for here
		assert.NotEmpty(t, jobs.Said(sheet.Answer(job, "true.more"), "ask.again"), c.Name)
	}
	assert.Positive(t, several)
}

// The exact cranks in their main bearings, half-way along each inner journal: as the
// line through them by gonum's regression has it, each piece laid through the two places
// that the case gives of it. A journal said to run in none is left out.
func TestThrowsInTheirMainBearings(t *testing.T) {
	looked := 0
	for _, c := range throwsCases(t) {
		axis, ok := c.axes()
		if !ok { // a piece with one place
			continue
		}
		looked++
		for _, bare := range []bool{false, true} {
			job, _ := c.job("drive")
			if bare {
				job["pin.p0.runs"] = "none"
			}
			a := sheet.Answer(job, "true.values")
			number := func(main int, name string) float64 {
				e, ok := a.Get(fmt.Sprintf("mains/%d/%s", main, name))
				require.True(t, ok, "%s: %d %s", c.Name, main, name)
				return e.Number
			}
			var mains, n int
			var at, towards12, towards3 []float64
			for mains = 0; ; mains++ {
				if _, ok := a.Get(fmt.Sprintf("mains/%d/piece", mains)); !ok {
					break
				}
				x := number(mains, "at_mm")
				v := axis[int(number(mains, "piece"))-1].at(x)
				at, towards12, towards3 = append(at, x), append(towards12, v.T), append(towards3, v.N)
			}
			if n = len(c.Pins) + 1; bare {
				n--
			}
			require.Equal(t, n, mains, c.Name)
			var from, slope clock.Vec
			from.T, slope.T = stat.LinearRegression(at, towards12, nil, false)
			from.N, slope.N = stat.LinearRegression(at, towards3, nil, false)
			for i, x := range at {
				l := axis[int(number(i, "piece"))-1]
				off := l.at(x).Sub(from.Add(slope.Scale(x)))
				assert.InDelta(t, 2*off.Len(), number(i, "tir_mm"), 1e-3, c.Name)
				assert.InDelta(t, l.slope.Sub(slope).Len()*180*60/math.Pi, number(i, "lean_arcmin"), 0.25, c.Name)
			}
		}
	}
	assert.GreaterOrEqual(t, looked, 10)
}

// laid is a piece's axis by two places on it.
type laid struct {
	from  clock.Vec
	slope clock.Vec
}

func (l laid) at(x float64) clock.Vec { return l.from.Add(l.slope.Scale(x)) }

// axes lays each piece through its support and its dial, or its two dials; false where
// a piece has fewer places.
func (c *throwsCase) axes() (all []laid, ok bool) {
	type place struct {
		x float64
		e clock.Vec
	}
	on := make([][]place, len(c.Pins)+1)
	for _, d := range c.Dials {
		on[d.Piece-1] = append(on[d.Piece-1], place{d.At, clock.Vec{T: d.T, N: d.N}})
	}
	for _, s := range c.Supports {
		if len(on[s.Piece-1]) < 2 {
			on[s.Piece-1] = append(on[s.Piece-1], place{s.At, clock.Vec{}})
		}
	}
	for _, p := range on {
		if len(p) < 2 {
			return nil, false
		}
		slope := p[1].e.Sub(p[0].e).Scale(1 / (p[1].x - p[0].x))
		all = append(all, laid{p[0].e.Sub(slope.Scale(p[0].x)), slope})
	}
	return all, true
}

// Every dial stands in the table of needles, named by its place, with what it should show
// after each move and those before it; and in what is hoped for once they are done.
func TestEveryNeedleIsForetold(t *testing.T) {
	for _, c := range throwsCases(t) {
		job, names := c.job("drive")
		more, values := sheet.Answer(job, "true.more"), sheet.Answer(job, "true.values")
		moves := 0
		for ; jobs.Said(more, "needles."+strconv.Itoa(moves+1)) != ""; moves++ {
		}
		if moves == 0 {
			continue
		}
		logged := job.With(truing.Done(job, []string{"a", "b", "c", "d", "e", "f", "g", "h"}, "2"))
		hoped := jobs.Said(sheet.Answer(logged, "true"), "truing.before")
		for i := range names {
			e, _ := values.Get(fmt.Sprintf("dials/%d/name", i))
			letter, _, _ := strings.Cut(jobs.Said(more, "now."+e.Text+".at"), ",")
			require.NotEmpty(t, letter, c.Name)
			head, _ := strconv.Atoi(jobs.Said(more, "needles."+strconv.Itoa(moves)))
			last := fmt.Sprintf("moves/%d/then_tir_mm/%d", head-1, i)
			then, ok := values.Get(last)
			require.True(t, ok, last)
			shown, err := strconv.ParseFloat(jobs.Said(more, "needles."+strconv.Itoa(moves)+"."+e.Text), 64)
			require.NoError(t, err)
			assert.InDelta(t, then.Number/0.0254, shown, 0.051, "%s: %s in thou", c.Name, e.Text)
			assert.Contains(t, hoped, letter+" "+jobs.Said(more, "needles."+strconv.Itoa(moves)+"."+e.Text)+" thou", c.Name)
		}
	}
}

// The customer's sheet has every dial before and after, and the crank from both sides in
// place of the clock faces.
func TestTheSheetShowsEveryDial(t *testing.T) {
	for _, c := range throwsCases(t) {
		job, names := c.job("drive")
		job["pass.1.order"], job["pass.2.order"] = "1", "2"
		for _, name := range names {
			job["pass.2."+name+".tir"], job["pass.2."+name+".high"] = "0.01 mm", "4"
		}
		a := sheet.Answer(job, "sheet")
		for _, name := range names {
			assert.NotEmpty(t, jobs.Said(a, "sheet.found."+name), "%s: %s", c.Name, name)
			assert.Contains(t, jobs.Said(a, "sheet.left."+name), "0.39 ", "%s: %s in thou", c.Name, name)
			if strings.HasPrefix(name, "dial.") {
				assert.Contains(t, jobs.Said(a, "sheet."+name), "Run-out, ", c.Name)
			}
		}
		for _, which := range []string{"found", "left"} {
			assert.Contains(t, jobs.Text(a, "picture.sheet."+which), "From above", c.Name)
		}
		assert.Contains(t, jobs.Said(a, "sheet.from"), "pin 1", c.Name)
	}
}

// Made-up cranks of several throws, trued as the page says until it says to leave them or
// that no bumping mends them: each in the passes that issue 19 allows its number of throws.
func TestMadeUpThrowsComeTrue(t *testing.T) {
	for _, row := range []struct{ throws, apart, most int }{{2, 180, 8}, {2, 360, 8}, {3, 120, 11}} {
		for n := range 6 {
			f := truing.TryOut("seed"+strconv.Itoa(n), "chance", row.throws, row.apart)
			passes, advice := 0, "work"
			for ; passes <= row.most; passes++ {
				a := sheet.Answer(f, "true.values")
				require.Empty(t, a.Faults())
				if advice = jobs.Text(a, "advice"); advice != "work" && advice != "read again" {
					break
				}
				key := strconv.Itoa(passes + 2)
				if advice == "work" {
					f = f.With(truing.Done(f, []string{"a" + key, "b" + key, "c" + key, "d" + key, "e" + key, "f" + key}, key))
				} else {
					f = f.With(truing.Again(f, key))
				}
				require.NotEmpty(t, f["pass."+key+".dial.6.turn"], "every dial is read anew")
			}
			assert.LessOrEqual(t, passes, row.most, "%d throws, seed %d", row.throws, n)
			assert.Equal(t, "leave", advice, "%d throws, seed %d", row.throws, n)
		}
	}
}

// A twin else true hung on a bad drive centre wobbles in proportion from all of it there to
// nothing at the other end (by hand): its drive shaft is named, the other's is not.
func TestABadCentreOfSeveralThrowsIsNamed(t *testing.T) {
	const length, hole = 260.0, 0.1 // mm
	f := form.Form{
		"left": "drive", "throw": "27 mm", "rim": "110 mm", "drive.pin": "100 mm", "timing.pin": "100 mm", "pin.b.at": "160 mm", "pin.b.angle": "180",
		"pin.b.order": "1", "drive.at": "70 mm", "timing.at": "70 mm", "drive.division": "0.001 mm", "timing.division": "0.001 mm",
	}
	read := func(name string, x float64) {
		f["pass.1."+name+".tir"], f["pass.1."+name+".high"] = strconv.FormatFloat(2*hole*(1-x/length), 'f', 6, 64)+" mm", "10"
	}
	read("drive", 70)
	read("timing", length-70)
	for i, place := range []struct {
		side string
		own  float64
	}{{"drive", 20}, {"drive", 120}, {"drive", 140}, {"timing", 20}} {
		key := "dial." + strconv.Itoa(i)
		f[key+".order"], f[key+".half"], f[key+".at"] = strconv.Itoa(i), place.side, jobs.Figure(place.own)
		x := place.own
		if place.side == "timing" {
			x = length - x
		}
		read(key, x)
	}
	more := sheet.Answer(f, "true.more")
	require.Empty(t, more.Faults())
	assert.Contains(t, jobs.Said(more, "shaft.drive"), "a bad centre")
	assert.Contains(t, jobs.Said(more, "shaft.drive"), "towards 4")
	assert.NotContains(t, jobs.Said(more, "shaft.timing"), "bad")
	assert.Contains(t, jobs.Text(more, "picture.pieces"), "From above")
}
