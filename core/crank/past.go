package crank

import "slices"

// Past is what was learned when passes were last planned after. Of the next plan only what
// follows the first pass that is another is gathered anew, and what follows the first outcome
// that is another is learned anew, since the gains are fitted to all the tries after each. It
// changes no plan. The zero value has nothing yet.
type Past struct {
	one    onePast
	throws throwsPast
	joints [MostThrows]taught
}

// Plan says what to do after the latest of the passes (MODEL §7).
func (p *Past) Plan(passes []Pass, tol Tolerance) Next { return Manner{}.plan(p, passes, tol) }

// at is what was learned at a joint.
func (p *Past) at(joint int) *taught {
	p.joints[joint].now = 0
	return &p.joints[joint]
}

// taught are the gains after each change at a joint in turn, with what they were fitted to;
// now is which of them is learned next.
type taught struct {
	after []gains
	now   int
}

type gains struct {
	by   []evidence // that came last
	gain [3]Gain
}

// evidence is what of a try the gains are fitted to.
type evidence struct {
	kind                     Kind
	outcome                  Outcome
	beside                   bool
	dose, got, noise, weight float64
}

func evidenceOf(tries []Try) (all []evidence) {
	for i := range tries {
		t := &tries[i]
		all = append(all, evidence{t.Kind, t.Outcome, t.Beside, t.Dose, t.Got, t.noise2(), t.Weight})
	}
	return all
}

// fit has a lesson whose latest tries these are take its gains as they were, or fit them and keep
// them.
func (p *taught) fit(l *Lesson, tries []Try) {
	by := evidenceOf(tries)
	if p.now < len(p.after) && slices.Equal(p.after[p.now].by, by) {
		l.Gain = p.after[p.now].gain
	} else {
		l.fitAfter(tries)
		p.after = append(p.after[:p.now], gains{by, l.Gain})
	}
	p.now++
}
