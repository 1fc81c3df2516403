package sheet_test

import (
	"fmt"
	"math"
	"math/rand"
	"os"
	"sort"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/form"
	"pintwelve/core/sheet"
	"pintwelve/core/step/truing"
	"pintwelve/core/tryout"
)

// People who see nothing but what the answers give: they write their readings into a
// job, do the moves that come back, answer what is asked and stop where told. The
// cranks are made-up ones, by whole rotations apart from the solver.

const (
	thou    = 0.0254
	allowed = 1 * thou
)

// person follows the answers, but for what his hands and eyes make of them.
type person struct {
	name string
	how  string // "turn 8", "turn 4", "halfway", "hour"
	// hands are what he does of what is advised, n counting the passes in which there
	// was something to make the mistake with.
	hands func(n int, advised []tryout.Blow) []tryout.Blow
	// eyes spoil his readings of round n.
	eyes     func(n int) (mirrored, exchanged bool)
	unlogged bool // writes down nothing of what he did, and says so when asked
	mute     bool // that, and answers nothing
	always   bool // is mistaken in every pass
	sort     build
}

// build is a sort of crank: how it yields and what is wrong with it.
type build struct {
	gain, dead, hinge float64 // gain 0 is the usual one
	hole, bent        float64 // mm of run-out at a centre, or at the dial by the bend
	pressed           float64 // mm of run-out that the tailstock brings until it is backed off
	match             bool    // the throws match in all of them
	anySize           bool    // else all are of one size
}

func otherWheel(b tryout.Blow) tryout.Blow { b.Wheel = b.Wheel.Other(); return b }
func mirror(b tryout.Blow) tryout.Blow     { b.Hour = clock.Mirror(b.Hour); return b }
func bendOther(b tryout.Blow) tryout.Blow {
	if b.Kind != tryout.Strike {
		b.Kind = tryout.Squeeze + tryout.Spread - b.Kind
	}
	return b
}

// each changes blow for blow, in the first pass alone where told to.
func each(firstOnly bool, change func(tryout.Blow) tryout.Blow) func(int, []tryout.Blow) []tryout.Blow {
	return func(n int, a []tryout.Blow) []tryout.Blow {
		out := append([]tryout.Blow(nil), a...)
		for i := range out {
			if n == 0 || !firstOnly {
				out[i] = change(out[i])
			}
		}
		return out
	}
}

func scaled(by func(n int) float64) func(int, []tryout.Blow) []tryout.Blow {
	return func(n int, a []tryout.Blow) []tryout.Blow {
		out := append([]tryout.Blow(nil), a...)
		for i := range out {
			out[i].Dose *= by(n)
		}
		return out
	}
}

func people() []person {
	with := func(name string, change func(p *person)) person {
		p := person{name: name, how: "turn 8"}
		change(&p)
		return p
	}
	crank := func(name string, s build) person { return with(name, func(p *person) { p.sort = s }) }
	always := func(name string, change func(p *person)) person {
		p := with(name, change)
		p.always = true
		return p
	}
	return []person{
		with("follows, 8 points", func(*person) {}),
		with("follows, 4 points", func(p *person) { p.how = "turn 4" }),
		with("follows, half-way hours", func(p *person) { p.how = "halfway" }),
		with("follows, run-out and hour", func(p *person) { p.how = "hour" }),
		crank("follows, cranks of any size", build{anySize: true}),
		with("strikes at half", func(p *person) { p.hands = scaled(func(int) float64 { return 0.5 }) }),
		with("tires", func(p *person) { p.hands = scaled(func(n int) float64 { return math.Pow(0.8, float64(n)) }) }),
		with("logs nothing, says it when asked", func(p *person) { p.unlogged = true }),
		with("logs nothing, says nothing", func(p *person) { p.mute = true }),
		with("wrong wheel once", func(p *person) {
			p.hands = each(true, func(b tryout.Blow) tryout.Blow {
				if b.Kind == tryout.Strike {
					return otherWheel(b)
				}
				return b
			})
		}),
		with("squeezes for spread once", func(p *person) { p.hands = each(true, bendOther) }),
		with("hours mirrored once", func(p *person) { p.eyes = func(n int) (bool, bool) { return n == 0, false } }),
		with("dials exchanged once", func(p *person) { p.eyes = func(n int) (bool, bool) { return false, n == 0 } }),
		always("blows mirrored always", func(p *person) { p.hands = each(false, mirror) }),
		always("wrong wheel always", func(p *person) { p.hands = each(false, otherWheel) }),
		always("squeezes for spread always", func(p *person) { p.hands = each(false, bendOther) }),
		always("first move only", func(p *person) {
			p.hands = func(_ int, a []tryout.Blow) []tryout.Blow { return a[:min(1, len(a))] }
		}),
		always("hours mirrored always", func(p *person) { p.eyes = func(int) (bool, bool) { return true, false } }),
		always("dials exchanged always", func(p *person) { p.eyes = func(int) (bool, bool) { return false, true } }),
		always("does nothing, logs it", func(p *person) {
			p.hands = func(int, []tryout.Blow) []tryout.Blow { return nil }
		}),
		crank("crank yields a third", build{gain: 1. / 3}),
		crank("crank yields three times", build{gain: 3}),
		crank("crank yields five times", build{gain: 5}),
		crank("dead zone 0.5", build{dead: 0.5}),
		crank("dead zone 1", build{dead: 1}),
		crank("hinge 15 mm off", build{hinge: 15}),
		crank("hinge 30 mm off", build{hinge: 30}),
		crank("bad centre, 2 thou", build{hole: 2 * thou}),
		crank("bad centre, 4 thou", build{hole: 4 * thou}),
		crank("bent, 2 thou", build{bent: 2 * thou}),
		crank("bent, 4 thou", build{bent: 4 * thou}),
		crank("tailstock presses, 3 thou", build{pressed: 3 * thou}),
		crank("tailstock presses, 3 thou, else true", build{pressed: 3 * thou, match: true}),
	}
}

// mostPasses is how many times a person works on a crank before the job counts as
// endless, mostRounds how often he reads.
const (
	mostPasses = 8
	mostRounds = 40
)

// fate is how a person's job went.
type fate struct {
	passes, worked, rounds int // until truly inside; in which something was done; of readings
	reached                bool
	ended                  string
	told                   int // pass after which he was first told what is wrong, or −1
	began, ends            float64
	mendable               bool
	log                    []string
}

// job is a person at work on a crank.
type job struct {
	*person
	t          *testing.T
	made       *tryout.Made
	form       form.Form
	left, seen string
	flaw       tryout.Flaw
	keys       []string // of the passes
	places     []place  // where dials stand
	size       size
	n, tried   int // rounds read; passes in which a mistake was made
	how        string
	fate
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
func (b *build) sizeOf(seed uint64) size {
	z := size{40, 80, map[string]float64{"drive": 120, "timing": 120}, map[string]float64{"drive": 75, "timing": 75}}
	if !b.anySize {
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

func (p *person) start(t *testing.T, seed uint64) *job {
	j := &job{person: p, t: t, left: [2]string{"drive", "timing"}[seed/2%2], seen: [2]string{"drive", "timing"}[seed%2], how: p.how}
	j.size = p.sort.sizeOf(seed)
	right := map[string]string{"drive": "timing", "timing": "drive"}[j.left]
	length := j.size.pin[j.left] + j.size.pin[right]
	c := tryout.Crank{
		Throw: j.size.throw, Rim: j.size.rim, Pin: j.size.pin[j.left], Support: [2]float64{0, length},
		Dial: [2]float64{j.size.at[j.left], j.fromLeftEnd(right, j.size.at[right])},
	}
	temper := tryout.Rough
	temper.Dead, temper.Hinge = p.sort.dead, p.sort.hinge
	if p.sort.gain > 0 {
		temper.Strike *= p.sort.gain
		temper.Bend *= p.sort.gain
	}
	start := c.ByChance(seed, 3*thou, 15*thou)
	if p.sort.match {
		start = tryout.Start{}
	} else if seed%10 == 0 {
		// The throws of one in ten don't match, by up to three thou.
		start.D.T = c.Mismatch(3*thou*math.Mod(float64(seed)*0.0618, 1)) * math.Copysign(1, math.Sin(float64(seed)))
	}
	made, err := tryout.New(c, temper, seed, start)
	require.NoError(t, err)
	j.made = made
	hour := math.Mod(float64(seed)*5.1, 12)
	const bentAt = 30
	share := 1 - c.Dial[clock.Left]/length
	j.flaw.Hole[clock.Left] = clock.Polar(p.sort.hole/2, hour)
	j.flaw.BentAt = [2]float64{bentAt, length}
	j.flaw.Bent[clock.Left] = clock.Polar(p.sort.bent/2/(bentAt*share), hour)
	if p.sort.pressed > 0 {
		// A slope of one shows so many mm of eccentricity at the left dial.
		shows := c.Dial[clock.Left] * (length - c.Pin) / length
		j.flaw.Pressed = clock.Polar(p.sort.pressed/2/shows, hour)
	}
	made.Spoil(j.flaw)
	j.form = form.Form{
		"left": j.left, "seen": j.seen, "tolerance": "1", "throw": mm(j.size.throw), "rim": mm(2 * j.size.rim),
		"drive.division": "0.5", "timing.division": "0.5",
	}
	for _, side := range []string{"drive", "timing"} {
		j.form[side+".pin"], j.form[side+".at"] = mm(j.size.pin[side]), mm(j.size.at[side])
		j.places = append(j.places, place{side, side, j.size.at[side]})
	}
	j.told, j.mendable = -1, p.sort.bent == 0
	j.began = math.Max(made.Aligned(), made.Worst())
	return j
}

func mm(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

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
	j.n++
	j.rounds++
	if !j.reached && j.made.Aligned() <= allowed {
		j.reached, j.passes = true, j.worked
	}
}

func (j *job) readAt(key string, p place) {
	mirrored, exchanged := false, false
	if j.eyes != nil {
		mirrored, exchanged = j.eyes(j.n)
	}
	side, own := p.side, p.own
	if exchanged {
		side = map[string]string{"drive": "timing", "timing": "drive"}[side]
		own = j.size.at[side]
		if p.name != p.side {
			own = j.size.at[side] / 5
		}
	}
	x := j.fromLeftEnd(side, own)
	half := j.end(side)
	read := func(hour float64) float64 {
		if mirrored {
			hour = clock.Mirror(hour)
		}
		return j.fromLeft(hour)
	}
	put := func(field, text string) { j.form["pass."+key+"."+p.name+"."+field] = text }
	in := func(mm float64) string { return strconv.FormatFloat(mm/thou, 'f', 2, 64) }
	d := tryout.HalfThou
	if way, points, _ := strings.Cut(j.how, " "); way == "turn" {
		n, _ := strconv.Atoi(points)
		var hours []float64
		for i := range n {
			hours = append(hours, read(12*float64(i)/float64(n)))
		}
		var texts []string
		for _, mm := range j.made.TurnAt(half, x, d, hours...) {
			texts = append(texts, in(mm))
		}
		put("how", way)
		put("points", points)
		put("turn", strings.Join(texts, " "))
		return
	}
	runOut, rising, falling := j.made.WatchAt(half, x, d)
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
func (p *person) work(t *testing.T, seed uint64) fate {
	j := p.start(t, seed)
	worked := false // since the latest readings
	j.read()
	for {
		a := j.answer()
		j.log = append(j.log, fmt.Sprintf("%d worked %d verdict %q bare %q aligned %.2f worst %.2f moves %v asks %v stop %v", j.rounds, j.worked, a.verdict, a.bare, j.made.Aligned()/thou, j.made.Worst()/thou, a.moves, a.asks, a.stop))
		if a.told && j.told < 0 {
			j.told = j.worked
		}
		if a.stop {
			return j.over("stop")
		}
		if j.rounds >= mostRounds {
			return j.over("endless")
		}
		if field, asked := a.asks["since"]; asked && !j.mute {
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
		if _, asked := a.asks["centres"]; asked && !p.mute && len(a.places) > 0 {
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
				return j.over(a.advice)
			case strings.HasPrefix(a.verdict, "true"):
				return j.over(a.verdict)
			case strings.HasPrefix(a.bare, "true"):
				return j.over("reads inside")
			}
			return j.over("nothing to do")
		}
		if j.worked++; j.worked > mostPasses {
			return j.over("endless")
		}
		if !p.unlogged && !p.mute {
			j.write(a.moves)
		}
		really := a.moves
		if p.hands != nil {
			really = p.hands(j.tried, a.moves)
			if p.always || fmt.Sprint(really) != fmt.Sprint(a.moves) {
				j.tried++
			}
		}
		worked = true
		for _, b := range really {
			if j.made.Do(b) != nil {
				return j.over("endless")
			}
		}
		j.read()
	}
}

func (j *job) over(how string) fate {
	j.ended, j.ends = how, j.made.Aligned()
	return j.fate
}

const few = 60

// TestPeopleThroughTheAnswers prints a table as that of DEVELOPERS.md:
//
//	PINTWELVE_CRANKS=200 go test ./core/sheet -run TestPeople -v
//
// PINTWELVE_PEOPLE has rows by part of their name, PINTWELVE_SHOW the story of a
// seed, or of each that went badly where it is "bad".
func TestPeopleThroughTheAnswers(t *testing.T) {
	n := few
	if s := os.Getenv("PINTWELVE_CRANKS"); s != "" {
		n, _ = strconv.Atoi(s)
	}
	lines := []string{"", heading}
	for _, p := range people() {
		if strings.Contains(p.name, os.Getenv("PINTWELVE_PEOPLE")) {
			lines = append(lines, p.row(t, n))
		}
	}
	t.Log(strings.Join(lines, "\n"))
}

const heading = "| person or crank | passes to true: median, 95th, mean | truly inside of those left, % | wrecked | worse than twice | no end | true and not " +
	"| left true, as it hangs, reading inside | stopped | unmendable | told or true by the 3rd pass, % |\n" +
	"| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |"

// counts are a row's, by how a job ended and by what else became of it.
type counts struct {
	by           map[string]int
	passes       []int
	left, inside int
}

func (c *counts) add(f *fate) {
	count := func(name string, so bool) {
		if so {
			c.by[name]++
		}
	}
	inside := f.ends <= allowed && f.mendable
	c.by[f.ended]++
	if f.reached {
		c.passes = append(c.passes, f.passes)
	}
	count("wrecked", f.wrecked())
	count("twice", f.ends > 2*f.began)
	count("untrue", f.ended == "true" && !inside)
	count("told", f.told >= 0 && f.told <= 3 || f.reached && f.passes <= 3)
	if strings.HasPrefix(f.ended, "true") || f.ended == "reads inside" {
		c.left++
		if inside {
			c.inside++
		}
	}
}

func (f *fate) wrecked() bool { return f.ends > 4*f.began && f.ends > 5*allowed }

// bad tells whether a job went as none should.
func (f *fate) bad() bool {
	return f.wrecked() || f.ended == "endless" || f.ended == "nothing to do" || f.ended == "true" && !(f.ends <= allowed && f.mendable)
}

func (c *counts) passesAt(percent int) int {
	if len(c.passes) == 0 {
		return -1
	}
	return c.passes[(percent*len(c.passes)+99)/100-1]
}

func (c *counts) mean() float64 {
	sum := 0.
	for _, k := range c.passes {
		sum += float64(k)
	}
	return sum / math.Max(1, float64(len(c.passes)))
}

func (p *person) row(t *testing.T, n int) string {
	c := counts{by: map[string]int{}}
	for seed := range n {
		f := p.work(t, uint64(seed+1))
		if show := os.Getenv("PINTWELVE_SHOW"); show == strconv.Itoa(seed+1) || show == "bad" && f.bad() {
			t.Logf("%s seed %d: began %.2f ends %.2f %s\n%s", p.name, seed+1, f.began/thou, f.ends/thou, f.ended, strings.Join(f.log, "\n"))
		}
		c.add(&f)
	}
	sort.Ints(c.passes)
	inside := 100 * float64(c.inside) / math.Max(1, float64(c.left))
	p.holds(t, n, &c, inside)
	return fmt.Sprintf("| %s | %d, %d, %.2f | %.1f | %d | %d | %d | %d | %d, %d, %d | %d | %d | %.0f |",
		p.name, c.passesAt(50), c.passesAt(95), c.mean(), inside, c.by["wrecked"], c.by["twice"], c.by["endless"]+c.by["nothing to do"], c.by["untrue"],
		c.by["true"], c.by["true as it hangs"], c.by["reads inside"], c.by["stop"], c.by["look elsewhere"], 100*float64(c.by["told"])/float64(n))
}

// holds checks a row against what is asked of it, three standard errors slack where
// it is of fewer than 200 cranks.
func (p *person) holds(t *testing.T, n int, c *counts, inside float64) {
	at := float64(n)
	slack := func(percent float64) float64 {
		if n >= 200 {
			return 0
		}
		return 3 * math.Sqrt(percent*(100-percent)/at)
	}
	if p.sort.gain < 5 { // cranks that yield five times are outside what is asked
		assert.Zero(t, c.by["wrecked"], "%s: wrecked", p.name)
	}
	assert.Zero(t, c.by["endless"]+c.by["nothing to do"], "%s: no end", p.name)
	assert.LessOrEqual(t, 100*float64(c.by["untrue"])/at, 3+slack(3), "%s: true and not", p.name)
	if !p.always && p.sort.gain < 5 {
		assert.Zero(t, c.by["twice"], "%s: worse than twice as found", p.name)
	}
	if p.always {
		assert.GreaterOrEqual(t, 100*float64(c.by["told"])/at, 95-slack(95), "%s: told by the third pass", p.name)
	}
	if most, ok := map[string]struct {
		p95          int
		mean, inside float64
	}{
		"follows, 8 points": {4, 2.65, 97}, "follows, 4 points": {4, 2.85, 95}, "follows, half-way hours": {4, 2.85, 95}, "follows, run-out and hour": {4, 2.95, 95},
		"crank yields a third": {6, 3.8, 95}, "crank yields three times": {6, 3.8, 94}, "dead zone 1": {8, 5, 95},
	}[p.name]; ok {
		assert.LessOrEqual(t, c.mean(), most.mean+3*1.2/math.Sqrt(at)*math.Min(1, slack(50)), "%s: mean", p.name)
		assert.GreaterOrEqual(t, inside, most.inside-slack(most.inside), "%s: truly inside", p.name)
		if n >= 200 {
			assert.LessOrEqual(t, c.passesAt(95), most.p95, "%s: 95th", p.name)
		}
	}
}
