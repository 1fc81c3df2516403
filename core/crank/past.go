package crank

// Past is what was learned when passes were last planned after. Of the next plan only what
// follows the first pass that is another is gathered anew, and what follows the first outcome
// that is another is learned anew, since the gains are fitted to all the tries after each. It
// changes no plan. The zero value has nothing yet.
type Past struct {
	one    onePast
	throws throwsPast
	joints [MostThrows]taught
	manner Manner
}

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
	by   []Try // that came last
	gain [3]Gain
}

// fit has a lesson whose latest tries these are take its gains as they were, or fit them and keep
// them.
func (p *taught) fit(l *Lesson, tries []Try) {
	if p.now < len(p.after) && alike(p.after[p.now].by, tries) {
		l.Gain = p.after[p.now].gain
	} else {
		l.fitAfter(tries)
		p.after = append(p.after[:p.now], gains{append([]Try(nil), tries...), l.Gain})
	}
	p.now++
}

// alike tells whether tries are others in all that gains are fitted to.
func alike(these, others []Try) bool {
	if len(these) != len(others) {
		return false
	}
	for i := range these {
		t, u := &these[i], &others[i]
		if t.Kind != u.Kind || t.Outcome != u.Outcome || t.Beside != u.Beside || t.Dose != u.Dose || t.Weight != u.Weight ||
			t.Got != u.Got || t.Sigma != u.Sigma || t.stray != u.stray {
			return false
		}
	}
	return true
}
