package lighten

import (
	"math"
	"strconv"

	"pintwelve/core/bench"
	"pintwelve/core/flywheel"
	"pintwelve/core/form"
	"pintwelve/core/unit"
	"pintwelve/core/wheel"
)

// finest is how finely a length is told, mm.
const finest = 0.01

func mm(v float64) string { return unit.Format(v, unit.MM, finest) }

// times writes a ratio to three figures or so.
func times(x float64) string { return unit.Figures(x, unit.Plain, 0.01) }

// squared writes an inertia in kg·cm², which gives a wheel three or four figures.
func squared(gmm2 float64) string { return unit.Figures(gmm2/1e5, unit.Plain, 0) }

// folds say on the folds of the page what holds in them.
func (l *lightening) folds() {
	if n := len(l.made); n > 0 {
		l.Say("lighten.fold.made", strconv.Itoa(n))
	}
	density := unit.Format(l.material.DensityKGM3, unit.KgPerCubicMetre, 1)
	if boss := l.wheels[0].dims.boss; boss > 0 {
		density = bossFold(mm(boss), density)
	}
	l.Say("lighten.fold.boss", density)
	if l.opens() {
		l.Say("lighten.opens", "yes")
		l.Say("lighten.fold.walls", wallsFold(mm(l.least.WebMM), mm(l.least.RimDepthMM), mm(l.least.RimWidthMM), mm(l.least.HoleMM)))
	}
}

// opens tells whether a cut is thought of: what refines one has no place before.
func (l *lightening) opens() bool {
	for _, id := range [...]form.ID{form.LightenOff, form.LightenWeb, form.LightenRimDepth, form.LightenRimWidth, form.LightenHoleWall} {
		if !l.r.Blank(id) {
			return true
		}
	}
	return len(l.cuts) > 0
}

// headline says the weight off and the inertia off.
func (l *lightening) headline() {
	d, t := &l.wheels[0], &l.wheels[1]
	offD, offT := d.account.Off(), t.account.Off()
	beforeD, afterD := l.scaled(d)
	beforeT, afterT := l.scaled(t)
	weighed := l.weighed(d) || l.weighed(t)
	switch {
	case !l.isCut() && weighed:
		l.Say("lighten.headline", byTheScale(bench.Grams(beforeD, 1), bench.Grams(beforeT, 1)))
	case !l.isCut() && l.alike:
		l.Say("lighten.headline", eachWeighs(bench.Grams(d.account.Before.MassG, 1)))
	case !l.isCut():
		l.Say("lighten.headline", asDrawn(bench.Grams(d.account.Before.MassG, 1), bench.Grams(t.account.Before.MassG, 1)))
	case l.alike && !weighed:
		l.Say("lighten.headline", offEach(bench.Grams(offD.MassG, 1)))
	default:
		l.Say("lighten.headline", offBoth(bench.Grams(beforeD-afterD, 1), bench.Grams(beforeT-afterT, 1)))
	}
	if l.isCut() {
		off := bench.Percent((offD.InertiaGMM2 + offT.InertiaGMM2) / (d.account.Before.InertiaGMM2 + t.account.Before.InertiaGMM2))
		inertia, total := inertiaOff, inAll
		if l.missed {
			inertia, total = inertiaOffDrawn, inAllDrawn
		}
		l.Say("lighten.inertia", inertia(off))
		l.Say("lighten.total", total(bench.Grams(beforeD-afterD+beforeT-afterT, 1), off))
		l.Say("lighten.fold.after", fromTo(bench.Grams(beforeD+beforeT, 1), bench.Grams(afterD+afterT, 1)))
		l.Say("lighten.caution", canBurst)
	}
	switch w := l.cannot(); {
	case w != nil:
		l.Text("say.lighten.then", l.cannotWords(w))
	case d.planned || t.planned:
		l.Text("say.lighten.then", l.foundWords())
	case !l.isCut():
		l.Say("lighten.then", putACutIn)
	case l.wantedG > 0:
		if all := l.missedWishes(); all != nil {
			l.Text("say.lighten.then", leaveOneBlank(all))
		}
	}
	for _, id := range [...]form.ID{form.WheelDiameter, form.WheelWidth, form.WheelBore} {
		if l.r.Blank(id, "drive") && l.r.Blank(id, "timing") {
			l.Say("lighten.assumed", assumedHere)
			return
		}
	}
}

// missedWishes say how far the cuts as given are from the weight wished, where no
// figure is left blank to be found.
func (l *lightening) missedWishes() (all []string) {
	for i := range l.wheels {
		w := &l.wheels[i]
		over := l.offG(w) - l.wantedG
		if i == 1 && l.alike || !w.ok || math.Abs(over) < 1 {
			continue
		}
		words := moreWished
		if over > 0 {
			words = lessWished
		}
		all = append(all, words(bench.Grams(math.Abs(over), 1), l.which(w)))
	}
	return all
}

func (l *lightening) cannot() *lightened {
	for i := range l.wheels {
		if l.wheels[i].cannot != nil {
			return &l.wheels[i]
		}
	}
	return nil
}

// foundWords say what the plan found: "Cut 2: 6.42 mm deep on each wheel."
func (l *lightening) foundWords() string {
	var all []string
	for i := range l.wheels {
		if w := &l.wheels[i]; w.planned && (i == 0 || !l.alike) {
			all = append(all, found(w.found.nth, sizeWords(w.found, w.size), l.moreWords(w), l.which(w)))
		}
	}
	return sentences(all)
}

// which says of which wheel something is said.
func (l *lightening) which(w *lightened) string {
	if l.alike {
		return eachWheel
	}
	return theWheel(w.side)
}

// size is the figure of a cut that was found.
func (c *cutRow) size(cut flywheel.Cut) float64 {
	switch c.find {
	case form.CutDepth:
		return cut.DepthMM
	case form.CutHoles:
		return float64(cut.Number)
	case form.CutRim:
		return cut.ToDiameterMM
	}
	return cut.DiameterMM
}

// bareSize writes the figure that was found: "8.6 mm", "6".
func bareSize(row *cutRow, c flywheel.Cut) string {
	if row.find == form.CutHoles {
		return strconv.Itoa(c.Number)
	}
	return mm(row.size(c))
}

// sizeWords say what the figure is that was found.
func sizeWords(row *cutRow, c flywheel.Cut) string {
	words := drilled
	switch row.find {
	case form.CutHoles:
		return holesOf(c.Number)
	case form.CutDepth:
		words = deep
	case form.CutRim:
		words = downTo
	}
	return words(bareSize(row, c))
}

// moreWords say of a depth that was found what is still to be cut where something is
// cut already: ", 4.84 mm more than stands cut,".
func (l *lightening) moreWords(w *lightened) string {
	cut := l.cutAlready(w)
	if w.found.find != form.CutDepth || cut <= 0 || w.size.Kind == flywheel.HoleRing {
		return ""
	}
	return moreThanCut(mm(math.Max(0, w.size.DepthMM-cut)), mm(cut))
}

// cutAlready is how deep the face stands cut, at the least, all over the cut that was
// found, mm.
func (l *lightening) cutAlready(w *lightened) float64 {
	least := math.Inf(1)
	for _, span := range w.others.Faces[w.size.Side] {
		if w.size.Kind == flywheel.FaceSide || span.FromMM < w.size.ToMM && span.ToMM > w.size.FromMM {
			least = math.Min(least, math.Min(span.DepthFromMM, span.DepthToMM))
		}
	}
	return least
}

// cannotWords say why no size of the cut will do, and what the most is.
func (l *lightening) cannotWords(w *lightened) string {
	c := w.cannot
	stop := noMetalLeft
	if c.Wall != nil {
		_, least := l.asked(c.Wall.Kind)
		stop = wallUnder(c.Wall.Kind, mm(least))
	}
	if c.WantedG < c.LeastG {
		return cantSoLittle(w.found.nth, bench.Grams(c.WantedG, 1), l.which(w), bench.Grams(c.LeastG, 1))
	}
	if c.MostG < 0.5 {
		return cantAnything(w.found.nth, l.which(w), stop)
	}
	return cantSoMuch(w.found.nth, bench.Grams(c.WantedG, 1), l.which(w),
		bench.Grams(c.MostG, 1), sizeWords(w.found, c.Most), stop)
}

// A least wall is asked of the web, the rim's depth, its width, and round holes.
var leastNames = [...]string{"web", "rimdepth", "rimwidth", "holewall"}

// asked returns which least wall a wall is held to, and how thick that is.
func (l *lightening) asked(k wheel.WallKind) (which int, mm float64) {
	if k == wheel.HoleToBoss {
		return len(leastNames) - 1, 0
	}
	which = min(int(k), len(leastNames)-1)
	return which, [...]float64{l.least.WebMM, l.least.RimDepthMM, l.least.RimWidthMM, l.least.HoleMM}[which]
}

// sayRows says under each cut what it takes off, or what it lacks: of cuts that
// lack their size, only the first can be found for a weight.
func (l *lightening) sayRows() {
	for _, rows := range [...][]*cutRow{l.made, l.cuts} {
		for _, row := range rows {
			if len(row.lacks) > 0 {
				l.Say(row.at+"line", stillToGive(row.lacks))
			} else if words := l.takes(row); words != "" {
				l.Text("say."+row.at+"line", words)
			}
		}
	}
}

// takes says what a cut takes off each wheel that it is made on.
func (l *lightening) takes(row *cutRow) string {
	var all []string
	for i := range l.wheels {
		w := &l.wheels[i]
		if i == 1 && l.alike || !w.ok {
			continue
		}
		if w.cannot != nil && w.found == row {
			all = append(all, l.cannotWords(w))
		}
		for j, line := range w.account.Lines {
			if w.rows[j] != row {
				continue
			}
			words := cutTakes(bench.Grams(line.Off.MassG, 1),
				bench.Percent(line.Off.InertiaGMM2/w.account.Before.InertiaGMM2), l.which(w))
			if row == w.found {
				words = foundTakes(sizeWords(row, w.size), words)
			}
			if over := line.OverlapG(); over >= 0.5 {
				words = withOverlap(words, bench.Grams(over, 1))
			}
			all = append(all, full(words))
		}
	}
	return sentences(all)
}
