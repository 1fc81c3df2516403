package crank_test

import (
	"fmt"
	"math"
	"os"
	"sort"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/tryout"
)

// person follows the advice, but for what his hands and eyes make of it.
type person struct {
	name   string
	points int // of a full turn, 0 for half-way hours, 1 for the hour of the high spot
	// hands are what he does of what is advised, n counting the passes in which
	// there was something for the mistake to be made with.
	hands func(n int, advised []crank.Done) []crank.Done
	// eyes spoil what he writes down of round n.
	eyes   func(n int, st []crank.Station)
	silent bool // logs nothing, answers nothing
	always crank.Cause
	errs   mistaken
	sort   build
}

type mistaken uint8

const (
	never mistaken = iota
	once
	always
)

// build is a sort of crank: how it yields and what is wrong with it.
type build struct {
	gain, dead, hinge float64 // gain 0 is the usual one
	hole, bent        float64 // mm of run-out at a centre, or at the dial by the bend
}

func firstPassOnly(n int, a []crank.Done, applies func(crank.Done) bool, change func(crank.Done) crank.Done) []crank.Done {
	var out []crank.Done
	for _, d := range a {
		if n == 0 && applies(d) {
			d = change(d)
		}
		out = append(out, d)
	}
	return out
}

func each(a []crank.Done, change func(*crank.Done)) []crank.Done {
	out := append([]crank.Done(nil), a...)
	for i := range out {
		change(&out[i])
	}
	return out
}

func struckAt(d crank.Done) bool { return d.Kind == crank.Strike }
func bentAt(d crank.Done) bool   { return d.Kind != crank.Strike }

func otherWheel(d crank.Done) crank.Done { d.Wheel = d.Wheel.Other(); return d }

func mirrorHours(st []crank.Station) {
	for i := range st {
		st[i].E, st[i].Cov.TN = st[i].E.From(clock.Right), -st[i].Cov.TN
	}
}

// exchange gives each shaft's reading to the other, place for place from outside.
func exchange(st []crank.Station) {
	for i := range st {
		for k := i + 1; k < len(st); k++ {
			if st[i].Half == clock.Left && st[k].Half == clock.Right && (st[i].At < 40) == (st[k].At > 200) {
				st[i].Half, st[k].Half = st[k].Half, st[i].Half
				st[i].At, st[k].At = st[k].At, st[i].At
				st[i], st[k] = st[k], st[i]
			}
		}
	}
}

func people() []person {
	follows := person{points: 8}
	with := func(name string, change func(p *person)) person {
		p := follows
		p.name = name
		change(&p)
		return p
	}
	return []person{
		with("follows, 8 points", func(p *person) {}),
		with("follows, 4 points", func(p *person) { p.points = 4 }),
		with("follows, half-way hours", func(p *person) { p.points = 0 }),
		with("follows, run-out and hour", func(p *person) { p.points = 1 }),
		with("strikes at half", func(p *person) {
			p.hands = func(_ int, a []crank.Done) []crank.Done {
				return each(a, func(d *crank.Done) { d.Dose /= 2 })
			}
		}),
		with("tires", func(p *person) {
			p.hands = func(n int, a []crank.Done) []crank.Done {
				return each(a, func(d *crank.Done) { d.Dose *= math.Pow(0.8, float64(n)) })
			}
		}),
		with("logs nothing", func(p *person) { p.silent = true }),
		with("wrong wheel once", func(p *person) {
			p.errs = once
			p.hands = func(n int, a []crank.Done) []crank.Done { return firstPassOnly(n, a, struckAt, otherWheel) }
		}),
		with("squeezes for spread once", func(p *person) {
			p.errs = once
			p.hands = func(n int, a []crank.Done) []crank.Done {
				return firstPassOnly(n, a, bentAt, func(d crank.Done) crank.Done {
					d.Kind = crank.Squeeze + crank.Spread - d.Kind
					return d
				})
			}
		}),
		with("hours mirrored once", func(p *person) {
			p.errs = once
			p.eyes = func(n int, st []crank.Station) {
				if n == 0 {
					mirrorHours(st)
				}
			}
		}),
		with("dials exchanged once", func(p *person) {
			p.errs = once
			p.eyes = func(n int, st []crank.Station) {
				if n == 0 {
					exchange(st)
				}
			}
		}),
		with("blows mirrored always", func(p *person) {
			p.errs, p.always = always, crank.HourMirrored
			p.hands = func(_ int, a []crank.Done) []crank.Done {
				return each(a, func(d *crank.Done) { d.Hour = clock.Mirror(d.Hour) })
			}
		}),
		with("wrong wheel always", func(p *person) {
			p.errs, p.always = always, crank.WrongWheel
			p.hands = func(_ int, a []crank.Done) []crank.Done {
				return each(a, func(d *crank.Done) { *d = otherWheel(*d) })
			}
		}),
		with("first move only", func(p *person) {
			p.errs, p.always = always, crank.FirstOnly
			p.hands = func(_ int, a []crank.Done) []crank.Done { return a[:min(1, len(a))] }
		}),
		with("hours mirrored always", func(p *person) {
			p.errs, p.always = always, crank.HoursFromWrongEnd
			p.eyes = func(_ int, st []crank.Station) { mirrorHours(st) }
		}),
		with("dials exchanged always", func(p *person) {
			p.errs, p.always = always, crank.DialsExchanged
			p.eyes = func(_ int, st []crank.Station) { exchange(st) }
		}),
		with("does nothing, logs it", func(p *person) {
			p.errs, p.always = always, crank.NotDone
			p.hands = func(int, []crank.Done) []crank.Done { return nil }
		}),
		with("crank yields a third", func(p *person) { p.sort.gain = 1. / 3 }),
		with("crank yields three times", func(p *person) { p.sort.gain = 3 }),
		with("crank yields five times", func(p *person) { p.sort.gain = 5 }),
		with("dead zone 0.5", func(p *person) { p.sort.dead = 0.5 }),
		with("dead zone 1", func(p *person) { p.sort.dead = 1 }),
		with("hinge 15 mm off", func(p *person) { p.sort.hinge = 15; p.always = crank.Hinged }),
		with("hinge 30 mm off", func(p *person) { p.sort.hinge = 30; p.always = crank.Hinged }),
		with("bad centre, 2 thou", func(p *person) { p.sort.hole = 2 * thou; p.always = crank.CentreOrShaft }),
		with("bad centre, 4 thou", func(p *person) { p.sort.hole = 4 * thou; p.always = crank.CentreOrShaft }),
		with("bent, 2 thou", func(p *person) { p.sort.bent = 2 * thou; p.always = crank.CentreOrShaft }),
		with("bent, 4 thou", func(p *person) { p.sort.bent = 4 * thou; p.always = crank.CentreOrShaft }),
	}
}

// mostPasses is how many times a person works on a crank before the job counts as
// endless.
const mostPasses = 8

// fate is how a person's job went.
type fate struct {
	passes   int // in which something was done, until it was truly inside
	worked   int // in which something was done
	reached  bool
	said     crank.Why
	verdict  crank.Verdict
	told     int // pass after which he was first told what is wrong, or −1
	stopped  int // pass after which it stopped, or −1
	named    bool
	endless  bool
	nothing  bool    // neither true nor told nor anything to do
	began    float64 // mm
	ends     float64
	inside   bool
	mendable bool
	rounds   int
	passLog  []crank.Pass
}

// work lets a person work on a crank.
func (w *person) work(t *testing.T, seed int64) fate {
	r := row{points: w.points, temper: even, yields: 1}
	r.temper.Dead, r.temper.Hinge = w.sort.dead, w.sort.hinge
	if w.sort.gain > 0 {
		r.yields = w.sort.gain
	}
	b := setUp(t, &r, seed, 3*thou, 15*thou)
	b.made.Spoil(w.flaw(seed))
	f := fate{told: -1, stopped: -1, mendable: w.sort.bent == 0}
	f.began = math.Max(b.made.Aligned(), b.made.Worst())
	var passes []crank.Pass
	near, since, n, tried := false, crank.Unsaid, 0, 0
	for {
		p := b.round(t, near)
		if w.eyes != nil {
			w.eyes(n, p.Stations)
			var err error
			p.Pose, err = b.set.Solve(p.Stations)
			require.NoError(t, err)
		}
		p.Since = since
		passes = append(passes, p)
		f.rounds++
		if !f.reached && b.made.Aligned() <= allowed {
			f.reached, f.passes = true, f.worked
		}
		next := crank.Plan(passes, crank.Tolerance{RunOut: allowed})
		f.note(w, &next)
		do := asAdvised(&next)
		again := asks(&next, crank.AskReadAgain)
		look := !near && asks(&next, crank.AskCentres) && !w.silent
		since = crank.Nothing
		if w.silent {
			since = crank.Unsaid
		}
		switch {
		case next.Why != crank.Work && f.rounds < 40 && (again || look):
			near = near || look
			n++
			continue
		case next.Why == crank.Work || next.Why == crank.Unclear && len(do) > 0:
			f.worked++
		default:
			f.nothing = next.Why == crank.Unclear
			return f.end(b, &next, passes)
		}
		if f.worked > mostPasses {
			f.endless = f.told < 0
			return f.end(b, &next, passes)
		}
		near = near && !soundNow(&next)
		if !w.silent {
			passes[len(passes)-1].Done = do
		}
		since = crank.Unsaid
		really := do
		if w.hands != nil {
			really = w.hands(tried, do)
			if w.errs != once || fmt.Sprint(really) != fmt.Sprint(do) {
				tried++
			}
		}
		n++
		for _, d := range really {
			if b.made.Do(tryout.Blow{Kind: tryout.Kind(d.Kind), Wheel: d.Wheel, Hour: d.Hour, Dose: d.Dose}) != nil {
				f.endless = true
				return f.end(b, &next, passes)
			}
		}
	}
}

func soundNow(n *crank.Next) bool {
	return n.Shaft[0].State == crank.Sound && n.Shaft[1].State == crank.Sound
}

func asks(n *crank.Next, w crank.What) bool {
	for _, a := range n.Asks {
		if a.What == w {
			return true
		}
	}
	return false
}

func (f *fate) note(w *person, n *crank.Next) {
	told := n.Why == crank.Stop || n.Why == crank.Unmendable
	for _, t := range n.Tries {
		told = told || t.Outcome == crank.Opposite || t.Outcome == crank.NoEffect || t.Outcome == crank.Unshown && len(t.Likely) > 0
	}
	if told && f.told < 0 {
		f.told = f.worked
	}
	if n.Why == crank.Stop && f.stopped < 0 {
		f.stopped = f.worked
	}
	f.named = false
	for _, c := range n.Causes {
		f.named = f.named || c == w.always
	}
	for _, t := range n.Tries {
		for _, c := range t.Likely {
			f.named = f.named || c == w.always
		}
	}
}

func (f *fate) end(b *lathe, n *crank.Next, passes []crank.Pass) fate {
	f.said, f.verdict = n.Why, n.Verdict
	f.ends = math.Max(b.made.Aligned(), 0)
	f.inside = f.ends <= allowed && f.mendable
	f.passLog = passes
	return *f
}

// flaw is a bad left centre, or a left shaft bent outside its dial near its end.
func (w *person) flaw(seed int64) (f tryout.Flaw) {
	hour := math.Mod(float64(seed)*5.1, 12)
	f.Hole[clock.Left] = clock.Polar(w.sort.hole/2, hour)
	const at, share = 30, 165. / 240
	f.BentAt = [2]float64{at, 240}
	f.Bent[clock.Left] = clock.Polar(w.sort.bent/2/(at*share), hour)
	return f
}

// round reads the dials, and near each centre too.
func (b *lathe) round(t *testing.T, near bool) crank.Pass {
	p := crank.Pass{}
	for h := clock.Left; h <= clock.Right; h++ {
		places := []float64{b.at[h]}
		if near {
			places = append(places, b.set.Support[h]+[2]float64{15, -15}[h])
		}
		for _, x := range places {
			got, err := b.readingAt(h, x)
			require.NoError(t, err)
			p.Stations = append(p.Stations, crank.Station{
				Half: h, At: x, E: got.E, Cov: got.Cov, Nu: got.Nu, Dial: int(h),
				RunOut: got.RunOut, Sigma: got.Sigma, Unsure: got.Unsure,
			})
		}
	}
	var err error
	p.Pose, err = b.set.Solve(p.Stations)
	require.NoError(t, err)
	return p
}

const peopleFew = 200

// TestPeople prints the table of DEVELOPERS.md:
//
//	go test ./core/crank -run TestPeople -v
//
// PINTWELVE_CRANKS sets another number of cranks a row, PINTWELVE_PEOPLE rows by
// part of their name.
func TestPeople(t *testing.T) {
	n := peopleFew
	if s := os.Getenv("PINTWELVE_CRANKS"); s != "" {
		n, _ = strconv.Atoi(s)
	}
	lines := []string{"", peopleHeading}
	for _, w := range people() {
		if !strings.Contains(w.name, os.Getenv("PINTWELVE_PEOPLE")) {
			continue
		}
		lines = append(lines, w.row(t, n))
	}
	t.Log(strings.Join(lines, "\n"))
}

func (w *person) row(t *testing.T, n int) string {
	var passes []int
	c := map[string]int{}
	inside, left := 0, 0
	for seed := range int64(n) {
		f := w.work(t, seed+1)
		if os.Getenv("PINTWELVE_SHOW") != "" {
			f.show(t, w, seed+1)
		}
		if f.reached {
			passes = append(passes, f.passes)
		}
		c["wrecked"] += count(f.ends > 4*f.began && f.ends > 5*allowed)
		c["twice"] += count(f.ends > 2*f.began)
		c["endless"] += count(f.endless)
		c["nothing"] += count(f.nothing)
		c["untrue"] += count(f.said == crank.Leave && f.verdict == crank.Fit && !f.inside)
		c["true"] += count(f.said == crank.Leave && f.verdict == crank.Fit)
		c["hung"] += count(f.said == crank.Leave && f.verdict == crank.FitAsHung)
		c["close"] += count(f.said == crank.Leave && f.verdict != crank.Fit && f.verdict != crank.FitAsHung)
		c["stop"] += count(f.said == crank.Stop)
		c["unmendable"] += count(f.said == crank.Unmendable)
		c["named"] += count((f.said == crank.Stop || f.said == crank.Unmendable) && f.named)
		c["told"] += count(f.told >= 0 && f.told <= 3 || f.reached && f.passes <= 3)
		c["toldstop"] += count(f.stopped >= 0 && f.stopped <= 3)
		if f.said == crank.Leave {
			left++
			inside += count(f.inside)
		}
	}
	sort.Ints(passes)
	y := tally{passes: passes, cranks: n}
	w.holds(t, n, &y, c, percent(inside, left))
	return fmt.Sprintf("| %s | %d, %d, %.2f | %.1f | %d | %d | %d | %d | %d, %d, %d | %d | %d | %.0f |",
		w.name, y.at(50), y.at(95), y.mean(), percent(inside, left), c["wrecked"], c["twice"], c["endless"]+c["nothing"], c["untrue"],
		c["true"], c["hung"], c["close"], c["stop"], c["unmendable"], percent(c["told"], n))
}

const peopleHeading = "| person or crank | passes to true: median, 95th, mean | truly inside of those left, % | wrecked | worse than twice | no end | true and not " +
	"| left true, as it hangs, reading inside | stopped | unmendable | told or true by the 3rd pass, % |\n" +
	"| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |"

// holds checks a row against what is asked of it: at the usual number to the letter,
// since its seeds are given, else with chance's own slack.
func (w *person) holds(t *testing.T, n int, y *tally, c map[string]int, inside float64) {
	slack, out := 0., 0.
	if n != peopleFew {
		slack, out = 3*1.2/math.Sqrt(float64(n)), 1
	}
	if w.sort.gain < 5 {
		assert.Zero(t, c["wrecked"], "%s: wrecked", w.name)
	}
	assert.LessOrEqual(t, percent(c["endless"]+c["nothing"], n), out, "%s: no end", w.name)
	assert.LessOrEqual(t, percent(c["untrue"], n), 3., "%s: true and not", w.name)
	if w.errs != always && w.sort.gain < 5 {
		assert.LessOrEqual(t, percent(c["twice"], n), out, "%s: worse than twice as found", w.name)
	}
	if w.errs == always {
		assert.GreaterOrEqual(t, percent(c["told"], n), 95., "%s: told by the third pass", w.name)
	}
	if most, ok := map[string]struct {
		p95          int
		mean, inside float64
	}{
		"follows, 8 points": {4, 2.65, 97}, "follows, 4 points": {4, 2.85, 95}, "follows, half-way hours": {4, 2.85, 95}, "follows, run-out and hour": {4, 2.95, 95},
		"crank yields a third": {6, 3.8, 95}, "crank yields three times": {6, 3.8, 95}, "dead zone 1": {8, 5, 95},
	}[w.name]; ok {
		assert.LessOrEqual(t, y.mean(), most.mean+slack, "%s: mean", w.name)
		assert.LessOrEqual(t, y.at(95), most.p95, "%s: 95th", w.name)
		assert.GreaterOrEqual(t, inside, most.inside-out, "%s: truly inside", w.name)
	}
}

func (f *fate) show(t *testing.T, w *person, seed int64) {
	if want, _ := strconv.ParseInt(os.Getenv("PINTWELVE_SHOW"), 10, 64); want != seed && os.Getenv("PINTWELVE_SHOW") != "bad" {
		return
	}
	bad := f.endless || f.ends > 2*f.began && w.errs != always || f.said == crank.Leave && f.verdict == crank.Fit && !f.inside || f.worked > 7
	if os.Getenv("PINTWELVE_SHOW") == "bad" && !bad {
		return
	}
	s := fmt.Sprintf("%s seed %d: began %.2f ends %.2f said %d verdict %d worked %d\n", w.name, seed, f.began/thou, f.ends/thou, f.said, f.verdict, f.worked)
	for i := range f.passLog {
		p := &f.passLog[i]
		n := crank.Plan(f.passLog[:i+1], crank.Tolerance{RunOut: allowed})
		s += fmt.Sprintf("  %d worst %.2f±%.2f d %.3f %.3f g %.5f %.5f why %d v %d plain %d rounds %d asks %v causes %v gains %.3v hinge %.1f\n", i, n.Worst.Value/thou, n.Worst.HalfWidth95/thou, p.Pose.D.T, p.Pose.D.N, p.Pose.G.T, p.Pose.G.N, n.Why, n.Verdict, n.Plain, n.Rounds, n.Asks, n.Causes, n.Gain, n.Hinge.At)
		for _, d := range p.Done {
			s += fmt.Sprintf("      done kind %d wheel %d hour %.2f dose %.2f\n", d.Kind, d.Wheel, d.Hour, d.Dose)
		}
	}
	n := crank.Plan(f.passLog, crank.Tolerance{RunOut: allowed})
	for _, tr := range n.Tries {
		s += fmt.Sprintf("   try after %d kind %d dose %.2f meant %.4f got %.4f sigma %.4f w %.2f outcome %d astray %.4f\n", tr.Pass, tr.Kind, tr.Dose, tr.Meant, tr.Got, tr.Sigma, tr.Weight, tr.Outcome, tr.Astray)
	}
	t.Log(s)
}
