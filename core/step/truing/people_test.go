package truing_test

import (
	"fmt"
	"math"
	"math/rand"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/form"
	"pintwelve/core/sheet"
	"pintwelve/core/step/truing"
	"pintwelve/core/tryout"
	"pintwelve/testdata/jobs"
	"pintwelve/testdata/people"
)

// TestPeopleThroughTheAnswers prints the second table of DEVELOPERS.md: people who see
// nothing but what the answers give write their readings into a job, do the moves that
// come back, answer what is asked and stop where told. The cranks are made-up ones, by
// whole rotations apart from the solver.
//
//	PINTWELVE_CRANKS=1000 go test ./core/step/truing -run TestPeople -v
func TestPeopleThroughTheAnswers(t *testing.T) {
	const few = 60
	people.Table(t, few, people.Everyone(), func(p *people.Person, seed uint64) people.Fate { return work(t, p, seed) })
}

// mostRounds is how often a person reads before the job counts as endless.
const mostRounds = 40

// job is a person at work on a crank.
type job struct {
	*people.Person
	t          *testing.T
	made       *tryout.Made
	form       form.Form
	left, seen string
	flaw       tryout.Flaw
	keys       []string // of the passes
	places     []place  // where dials stand
	size       size
	worked     int // passes in which something was done
	rounds     int // of readings
	tried      int // passes in which a mistake was made
	how        string
	fate       people.Fate
}

// place is a station of the job and where it really is.
type place struct {
	name, side string
	own        float64 // mm from that shaft's end
}

// size is a crank's, mm; lengths along it from each shaft's own end, drive and timing.
type size struct {
	throw, rim float64
	pin, at    map[string]float64
}

// sizeOf is a middling single's, or one drawn by the seed.
func sizeOf(b *people.Build, seed uint64) size {
	z := size{40, 80, map[string]float64{"drive": 120, "timing": 120}, map[string]float64{"drive": 75, "timing": 75}}
	if !b.AnySize {
		return z
	}
	rng := rand.New(rand.NewSource(int64(seed)))
	between := func(lo, hi float64) float64 { return math.Round(lo + (hi-lo)*rng.Float64()) }
	z.throw = between(25, 55)
	z.rim = math.Round(z.throw * (1.7 + 0.7*rng.Float64()))
	for _, side := range []string{"drive", "timing"} {
		z.pin[side] = between(90, 140)
		z.at[side] = between(0.4*z.pin[side], 0.7*z.pin[side])
	}
	return z
}

// fromLeftEnd is a place of a shaft as it stands along the whole crank.
func (j *job) fromLeftEnd(side string, own float64) float64 {
	if side == j.left {
		return own
	}
	return j.size.pin["drive"] + j.size.pin["timing"] - own
}

func start(t *testing.T, p *people.Person, seed uint64) *job {
	j := &job{Person: p, t: t, left: [2]string{"drive", "timing"}[seed/2%2], seen: [2]string{"drive", "timing"}[seed%2], how: p.How}
	j.size = sizeOf(&p.Sort, seed)
	right := map[string]string{"drive": "timing", "timing": "drive"}[j.left]
	length := j.size.pin[j.left] + j.size.pin[right]
	c := tryout.Crank{
		Throw: j.size.throw, Rim: j.size.rim, Pin: j.size.pin[j.left], Support: [2]float64{0, length},
		Dial: [2]float64{j.size.at[j.left], j.fromLeftEnd(right, j.size.at[right])},
	}
	temper := tryout.Rough
	temper.Dead, temper.Hinge = p.Sort.Dead, p.Sort.Hinge
	if p.Sort.Gain > 0 {
		temper.Strike *= p.Sort.Gain
		temper.Bend *= p.Sort.Gain
	}
	begin := c.ByChance(seed, 3*jobs.Thou, 15*jobs.Thou)[0]
	if p.Sort.Match {
		begin = tryout.Start{}
	} else if seed%10 == 0 {
		// The throws of one in ten don't match, by up to three thou.
		begin.D.T = c.Mismatch(0, 3*jobs.Thou*math.Mod(float64(seed)*0.0618, 1)) * math.Copysign(1, math.Sin(float64(seed)))
	}
	made, err := tryout.New(c, temper, seed, begin)
	require.NoError(t, err)
	j.made = made
	j.flaw = p.Sort.Flaw(seed, length, c.Pin, c.Dial[clock.Left])
	made.Spoil(j.flaw)
	j.form = form.Form{
		"left": j.left, "seen": j.seen, "tolerance": "1", "throw": jobs.Figure(j.size.throw), "rim": jobs.Figure(2 * j.size.rim),
		"drive.division": "0.5", "timing.division": "0.5",
	}
	for _, side := range []string{"drive", "timing"} {
		j.form[side+".pin"], j.form[side+".at"] = jobs.Figure(j.size.pin[side]), jobs.Figure(j.size.at[side])
		j.places = append(j.places, place{side, side, j.size.at[side]})
	}
	j.fate = people.Fate{Told: -1, Mendable: p.Sort.Bent == 0, Began: math.Max(made.Aligned(), made.Worst())}
	return j
}

func (j *job) end(side string) clock.End {
	if side == j.left {
		return clock.Left
	}
	return clock.Right
}

// fromLeft is an hour of the job as seen from the left end, and back.
func (j *job) fromLeft(hour float64) float64 {
	if j.seen == j.left {
		return hour
	}
	return clock.Mirror(hour)
}

// read reads a round into a new pass.
func (j *job) read() {
	key := strconv.Itoa(len(j.keys) + 1)
	j.keys = append(j.keys, key)
	j.form["pass."+key+".order"] = key
	for _, p := range j.places {
		j.readAt(key, p)
	}
	j.made.Taken()
	j.rounds++
	if !j.fate.Reached && j.made.Aligned() <= people.Allowed {
		j.fate.Reached, j.fate.Passes = true, j.worked
	}
}

func (j *job) readAt(key string, p place) {
	mirrored, exchanged := j.Spoils(j.rounds)
	side, own := p.side, p.own
	if exchanged {
		side = map[string]string{"drive": "timing", "timing": "drive"}[side]
		own = j.size.at[side]
		if p.name != p.side {
			own = j.size.at[side] / 5
		}
	}
	x := j.fromLeftEnd(side, own)
	read := func(hour float64) float64 {
		if mirrored {
			hour = clock.Mirror(hour)
		}
		return j.fromLeft(hour)
	}
	put := func(field, text string) { j.form["pass."+key+"."+p.name+"."+field] = text }
	in := func(mm float64) string { return strconv.FormatFloat(mm/jobs.Thou, 'f', 2, 64) }
	d := tryout.HalfThou
	if way, points, _ := strings.Cut(j.how, " "); way == "turn" {
		n, _ := strconv.Atoi(points)
		var hours []float64
		for i := range n {
			hours = append(hours, read(12*float64(i)/float64(n)))
		}
		var texts []string
		for _, mm := range j.made.TurnAt(x, d, hours...) {
			texts = append(texts, in(mm))
		}
		put("how", way)
		put("points", points)
		put("turn", strings.Join(texts, " "))
		return
	}
	runOut, rising, falling := j.made.WatchAt(x, d)
	if read(1) != 1 {
		rising, falling = read(falling), read(rising)
	}
	hour := func(h float64) string {
		return strconv.FormatFloat(math.Round(clock.Wrap(h)/d.Mark)*d.Mark, 'f', 1, 64)
	}
	put("tir", in(runOut))
	if j.how == "hour" || runOut < d.Division/2 {
		put("how", "hour")
		put("high", hour(clock.Midway(rising, falling)))
		return
	}
	put("how", "halfway")
	put("rise", hour(rising))
	put("fall", hour(falling))
}

// answer is what a job's answers give.
type answer struct {
	verdict, bare, advice string
	moves                 []tryout.Blow
	asks                  map[string]string  // field by what is asked
	places                map[string]float64 // asked for, mm from each shaft's end
	stop, told            bool
}

func (j *job) answer() answer {
	a := sheet.Answer(j.form, truing.Values.Name)
	require.Empty(j.t, a.Faults(), "%v", j.form)
	text := func(name string) string { e, _ := a.Get(name); return e.Text }
	num := func(name string) float64 {
		e, ok := a.Get(name)
		require.True(j.t, ok && e.Kind == bench.Number, "%s of %v", name, j.form)
		require.False(j.t, math.IsNaN(e.Number) || math.IsInf(e.Number, 0), name)
		return e.Number
	}
	out := answer{verdict: text("verdict"), bare: text("verdict_as_read"), advice: text("advice"), asks: map[string]string{}, places: map[string]float64{}}
	for i := 0; text(fmt.Sprintf("moves/%d/kind", i)) != ""; i++ {
		at := fmt.Sprintf("moves/%d/", i)
		b := tryout.Blow{Hour: j.fromLeft(num(at + "hour")), Dose: num(at + "strength")}
		b.Kind = map[string]tryout.Kind{"strike": tryout.Strike, "squeeze": tryout.Squeeze, "spread": tryout.Spread}[text(at+"kind")]
		if wheel := text(at + "wheel"); wheel != "both" {
			b.Wheel = j.end(wheel)
		}
		out.moves = append(out.moves, b)
	}
	for i := 0; text(fmt.Sprintf("asks/%d/what", i)) != ""; i++ {
		at := fmt.Sprintf("asks/%d/", i)
		out.asks[text(at+"what")] = text(at + "field")
		for k := 0; text(fmt.Sprintf("%splaces/%d/half", at, k)) != ""; k++ {
			place := fmt.Sprintf("%splaces/%d/", at, k)
			out.places[text(place+"half")] = num(place + "at_mm")
		}
	}
	out.stop = text("stop/test") != ""
	out.told = out.stop || out.advice == "look elsewhere"
	for i := 0; text(fmt.Sprintf("amiss/%d/kind", i)) != ""; i++ {
		out.told = out.told || text(fmt.Sprintf("amiss/%d/came", i)) != "astray"
	}
	return out
}

// write logs what was advised as done, every other time by the page's own button.
func (j *job) write(blows []tryout.Blow) {
	key := j.keys[len(j.keys)-1]
	if j.rounds%2 == 0 {
		for name, text := range truing.Done(j.form, []string{"1", "2"}, "") {
			j.form[name] = text
		}
		return
	}
	for i, b := range blows {
		at := "pass." + key + ".done." + strconv.Itoa(i+1) + "."
		j.form[at+"kind"] = [...]string{"strike", "squeeze", "spread"}[b.Kind]
		j.form[at+"wheel"] = [...]string{j.left, map[string]string{"drive": "timing", "timing": "drive"}[j.left]}[b.Wheel]
		j.form[at+"hour"] = strconv.FormatFloat(clock.Wrap(j.fromLeft(b.Hour)), 'f', 3, 64)
		j.form[at+"strength"] = strconv.FormatFloat(b.Dose, 'f', 3, 64)
		j.form[at+"order"] = strconv.Itoa(i + 1)
	}
}

// work lets a person work on a crank.
func work(t *testing.T, p *people.Person, seed uint64) people.Fate {
	j := start(t, p, seed)
	worked := false // since the latest readings
	j.read()
	for {
		a := j.answer()
		j.fate.Story += fmt.Sprintf("%d worked %d verdict %q bare %q aligned %.2f worst %.2f moves %v asks %v stop %v\n", j.rounds, j.worked, a.verdict, a.bare, j.made.Aligned()/jobs.Thou, j.made.Worst()/jobs.Thou, a.moves, a.asks, a.stop)
		if a.told && j.fate.Told < 0 {
			j.fate.Told = j.worked
		}
		if a.stop {
			return j.over(people.Stop)
		}
		if j.rounds >= mostRounds {
			return j.over(people.Endless)
		}
		if field, asked := a.asks["since"]; asked && !j.Mute {
			j.form[field] = "nothing"
			if worked {
				j.form[field] = "said"
			}
			continue
		}
		if field, asked := a.asks["pressure"]; asked {
			j.form[field] = "steady"
			if j.flaw.Pressed != (clock.Vec{}) {
				j.form[field] = "moved"
				j.flaw.Pressed = clock.Vec{}
				j.made.Spoil(j.flaw)
			}
			continue
		}
		if _, asked := a.asks["centres"]; asked && !p.Mute && len(a.places) > 0 {
			key := j.keys[len(j.keys)-1]
			for side, own := range a.places {
				row := "near" + side
				j.form["dial."+row+".half"], j.form["dial."+row+".at"], j.form["dial."+row+".order"] = side, strconv.FormatFloat(own, 'f', 3, 64), side
				j.form["dial."+row+".order"] = strconv.Itoa(len(j.places))
				q := place{"dial." + row, side, own}
				j.places = append(j.places, q)
				if seed%3 != 0 {
					j.readAt(key, q)
				}
			}
			if seed%3 == 0 {
				j.read()
			}
			continue
		}
		if way, sharper := a.asks["sharper"]; sharper && way != "" && j.how != "turn 8" {
			j.how = "turn 8"
			j.read()
			continue
		}
		if _, again := a.asks["read again"]; again {
			worked = false
			j.read()
			if seed%2 == 0 {
				j.form["pass."+j.keys[len(j.keys)-1]+".since"] = "nothing"
			}
			continue
		}
		if len(a.moves) == 0 {
			switch {
			case a.advice == "look elsewhere":
				return j.over(people.Unmendable)
			case strings.HasPrefix(a.verdict, "true"):
				return j.over(people.Ending(a.verdict))
			case strings.HasPrefix(a.bare, "true"):
				return j.over(people.ReadsInside)
			}
			return j.over(people.NothingToDo)
		}
		if j.worked++; j.worked > people.MostPasses {
			return j.over(people.Endless)
		}
		if !p.Unlogged && !p.Mute {
			j.write(a.moves)
		}
		var really []tryout.Blow
		really, j.tried = p.Does(j.tried, a.moves)
		worked = true
		for _, b := range really {
			if j.made.Do(b) != nil {
				return j.over(people.Endless)
			}
		}
		j.read()
	}
}

func (j *job) over(how people.Ending) people.Fate {
	j.fate.Ended, j.fate.Ends = how, j.made.Aligned()
	return j.fate
}
