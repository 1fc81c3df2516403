package crank_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
	"pintwelve/core/tryout"
	"pintwelve/testdata/people"
)

// TestPeople prints the first table of DEVELOPERS.md: people do what the plan says.
//
//	go test ./core/crank -run TestPeople -v
func TestPeople(t *testing.T) {
	var all []people.Person
	for _, p := range people.Everyone() {
		// Who answers what he is asked, and cranks that differ in what the plan doesn't see, are core/sheet's.
		if !p.Unlogged && !p.Sort.AnySize && p.Sort.Pressed == 0 {
			all = append(all, p)
		}
	}
	people.Table(t, people.Full, all, func(p *people.Person, seed uint64) people.Fate { return atWork(t, p, int64(seed)) })
}

func mirrorHours(st []crank.Station) {
	for i := range st {
		st[i].E, st[i].Cov.TN = st[i].E.From(clock.Right), -st[i].Cov.TN
	}
}

// exchange gives each shaft's reading to the other, place for place from outside.
func exchange(st []crank.Station) {
	for i := range st {
		for k := i + 1; k < len(st); k++ {
			if st[i].Half() == clock.Left && st[k].Half() == clock.Right && (st[i].At < 40) == (st[k].At > 200) {
				st[i].Piece, st[k].Piece = st[k].Piece, st[i].Piece
				st[i].At, st[k].At = st[k].At, st[i].At
				st[i], st[k] = st[k], st[i]
			}
		}
	}
}

// pointsOf are the points of a full turn by how a person reads; 0 for half-way hours, 1
// for the hour of the high spot.
var pointsOf = map[string]int{"turn 8": 8, "turn 4": 4, "halfway": 0, "hour": 1}

// lathed is a person at work on a crank.
type lathed struct {
	*people.Person
	*lathe
	passes         []crank.Pass
	near           bool // reads near each centre too
	rounds, worked int
	fate           people.Fate
}

// atWork lets a person work on a crank.
func atWork(t *testing.T, p *people.Person, seed int64) people.Fate {
	r := row{points: pointsOf[p.How], temper: even, yields: 1}
	r.temper.Dead, r.temper.Hinge = p.Sort.Dead, p.Sort.Hinge
	if p.Sort.Gain > 0 {
		r.yields = p.Sort.Gain
	}
	w := &lathed{Person: p, lathe: setUp(t, &r, seed, 3*thou, 15*thou)}
	w.made.Spoil(p.Sort.Flaw(uint64(seed), 240, w.set.Pin, w.at[clock.Left]))
	w.fate = people.Fate{Told: -1, Mendable: p.Sort.Bent == 0, Began: math.Max(w.made.Aligned(), w.made.Worst())}
	since, tried := crank.Unsaid, 0
	for {
		next := w.read(t, since)
		do := asAdvised(&next)
		again := asks(&next, crank.AskReadAgain)
		look := !w.near && asks(&next, crank.AskCentres) && !p.Mute
		since = crank.Nothing
		if p.Mute {
			since = crank.Unsaid
		}
		switch {
		case next.Why != crank.Work && w.rounds < 40 && (again || look):
			w.near = w.near || look
			continue
		case next.Why == crank.Work || next.Why == crank.Unclear && len(do) > 0:
			w.worked++
		default:
			return w.over(endings(&next))
		}
		if w.worked > people.MostPasses {
			if w.fate.Told < 0 {
				return w.over(people.Endless)
			}
			return w.over(people.GivenUp)
		}
		w.near = w.near && !soundNow(&next)
		if !p.Mute {
			w.passes[len(w.passes)-1].Done = do
		}
		since = crank.Unsaid
		var really []tryout.Blow
		really, tried = p.Does(tried, blows(do))
		for _, b := range really {
			if w.made.Do(b) != nil {
				return w.over(people.Endless)
			}
		}
	}
}

// blows are what is done, as the made-up crank takes it.
func blows(do []crank.Done) (all []tryout.Blow) {
	for _, d := range do {
		all = append(all, tryout.Blow{Kind: tryout.Kind(d.Kind), Wheel: d.Wheel, Hour: d.Hour, Dose: d.Dose})
	}
	return all
}

// read reads a round, and returns what is planned by it and those before.
func (w *lathed) read(t *testing.T, since crank.Since) crank.Next {
	p := w.round(t, w.near)
	if mirrored, exchanged := w.Spoils(w.rounds); mirrored || exchanged {
		if mirrored {
			mirrorHours(p.Stations)
		}
		if exchanged {
			exchange(p.Stations)
		}
		var err error
		p.Pose, err = w.set.Solve(p.Stations)
		require.NoError(t, err)
	}
	p.Since = since
	w.passes = append(w.passes, p)
	w.rounds++
	if !w.fate.Reached && w.made.Aligned() <= allowed {
		w.fate.Reached, w.fate.Passes = true, w.worked
	}
	next := crank.Plan(w.passes, crank.Tolerance{RunOut: allowed})
	for _, s := range next.Steps {
		require.True(t, s.Trial || s.Pass >= 0, "no trial, and likened to no pass")
	}
	told := next.Why == crank.Stop || next.Why == crank.Unmendable
	for _, t := range next.Tries {
		told = told || t.Outcome == crank.Opposite || t.Outcome == crank.NoEffect || t.Outcome == crank.Unshown && len(t.Likely) > 0
	}
	if told && w.fate.Told < 0 {
		w.fate.Told = w.worked
	}
	w.fate.Story += fmt.Sprintf("%d worked %d worst %.2f±%.2f why %d verdict %d asks %v causes %v gains %.3v tries %+v advised %+v\n", w.rounds, w.worked,
		next.Worst.Value/thou, next.Worst.HalfWidth95/thou, next.Why, next.Verdict, next.Asks, next.Causes, next.Gain, next.Tries, asAdvised(&next))
	return next
}

func (w *lathed) over(how people.Ending) people.Fate {
	w.fate.Ended, w.fate.Ends = how, w.made.Aligned()
	return w.fate
}

// endings are what a plan that goes no further comes to.
func endings(n *crank.Next) people.Ending {
	switch n.Why {
	case crank.Stop:
		return people.Stop
	case crank.Unmendable:
		return people.Unmendable
	case crank.Leave:
		switch n.Verdict {
		case crank.Fit:
			return people.True
		case crank.FitAsHung:
			return people.AsItHangs
		}
		return people.ReadsInside
	}
	return people.NothingToDo
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
				Piece: int(h), At: x, E: got.E, Cov: got.Cov, Nu: got.Nu, Dial: int(h),
				RunOut: got.RunOut, Sigma: got.Sigma, Unsure: got.Unsure,
			})
		}
	}
	var err error
	p.Pose, err = b.set.Solve(p.Stations)
	require.NoError(t, err)
	return p
}
