package crank_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/clock"
	"pintwelve/core/crank"
)

// People who true twins and err at all of it, or log none of it.
var throwsPeople = []struct {
	name string
	does func([]crank.JointDone) []crank.JointDone // what is done of what is advised
	logs bool
}{
	{"strikes the wrong wheel", func(all []crank.JointDone) []crank.JointDone {
		return eachDone(all, func(d *crank.JointDone) { d.Wheel = d.Wheel.Other() })
	}, true},
	{"hours mirrored", func(all []crank.JointDone) []crank.JointDone {
		return eachDone(all, func(d *crank.JointDone) { d.Hour = clock.Mirror(d.Hour) })
	}, true},
	{otherPin, func(all []crank.JointDone) []crank.JointDone {
		return eachDone(all, func(d *crank.JointDone) { d.Joint = 1 - d.Joint })
	}, true},
	{"first move only", func(all []crank.JointDone) []crank.JointDone { return all[:min(1, len(all))] }, true},
	{"nothing, but logs it", func([]crank.JointDone) []crank.JointDone { return nil }, true},
	{"as advised, logs nothing", func(all []crank.JointDone) []crank.JointDone { return all }, false},
}

func eachDone(all []crank.JointDone, change func(*crank.JointDone)) []crank.JointDone {
	out := append([]crank.JointDone(nil), all...)
	for i := range out {
		change(&out[i])
	}
	return out
}

const otherPin = "at the other pin"

// Who errs at all of it may make two twins of a hundred four times worse than found; who errs always is told so, asked, or gets there.
func TestPeopleWhoErrAtThrows(t *testing.T) {
	const n, patience = 100, 16
	for _, who := range throwsPeople {
		wrecked, told, reached, trueAndNot, named := 0, 0, 0, 0, 0
		for seed := range int64(n) {
			r := newRig(seed+1, even, 0, 6)
			began := r.worst()
			var passes []crank.ThrowsPass
			for range patience {
				passes = append(passes, crank.ThrowsPass{Stand: r.reads(t)})
				next := crank.PlanThrows(passes, crank.Tolerance{RunOut: allowed})
				if next.Why == crank.Leave {
					if r.worst() <= 1.5*allowed {
						reached++
					} else {
						trueAndNot++
					}
					break
				}
				if next.Why == crank.Stop || next.Why == crank.Unmendable || len(next.Asks) > 0 && next.Asks[0].What == crank.AskSince {
					told++
					for _, c := range next.Causes {
						if c.Cause == crank.OtherPin {
							named++
							break
						}
					}
					break
				}
				advised := []crank.JointDone{}
				if next.Why == crank.Work {
					for i := range next.Steps {
						s := &next.Steps[i]
						advised = append(advised, crank.JointDone{Joint: s.Joint, Done: crank.Done{Kind: s.Kind, Wheel: s.Wheel, Hour: s.Hour, Dose: s.Dose}})
					}
				}
				if who.logs {
					passes[len(passes)-1].Done = advised
				}
				for _, d := range who.does(advised) {
					r.does(&d)
				}
			}
			if r.worst() > 4*began && r.worst() > 5*allowed {
				wrecked++
			}
		}
		t.Logf("%-28s wrecked %d, told or asked %d, got there %d, true and not %d, another pin named %d", who.name, wrecked, told, reached, trueAndNot, named)
		assert.LessOrEqual(t, wrecked, 2, who.name)
		assert.GreaterOrEqual(t, told+reached, 95, who.name)
		assert.LessOrEqual(t, trueAndNot, 1, who.name)
		if who.name == otherPin {
			assert.GreaterOrEqual(t, named, 90, who.name)
		}
	}
}
