package lighten

import (
	"pintwelve/core/bench"
	"pintwelve/core/clock"
	"pintwelve/core/flywheel"
	"pintwelve/core/form"
	"pintwelve/core/wheel"
)

// lightening is the wheels and what is taken off them.
type lightening struct {
	bench.Ends
	*bench.Answers
	r          *form.Reader
	throw      float64
	pinMM      float64 // the crankpin's diameter
	material   flywheel.Material
	least      flywheel.Least
	wantedG    float64 // off each wheel; 0 for not asked
	scaleG     float64 // step of the scale
	made       []*cutRow
	cuts       []*cutRow
	wheels     [2]lightened // drive, timing
	alike      bool         // what is said of one wheel holds for the other
	crankGMM2  float64      // inertia of the crank by its swing; 0 for none
	crankAfter bool         // swung after its wheels were cut
	mated      string       // that one wheel is taken as the other swung
	missed     bool         // the scale has more or less off a wheel than its cuts as drawn take
}

// lightened is one wheel with its cuts.
type lightened struct {
	side    string
	dims    wheelDims
	wheel   wheel.Wheel
	account flywheel.Account
	ok      bool
	rows    []*cutRow // whose cuts the account's lines are
	found   *cutRow   // the cut whose size was to be found
	size    flywheel.Cut
	planned bool           // size is found
	others  *wheel.Section // with every cut but the one that was found
	cannot  *flywheel.Cannot
	swung   bool // its inertia is by a swing
}

// wheelDims are a wheel's figures as measured, mm.
type wheelDims struct{ diameter, width, bore, boss, pinHole float64 }

// lighten answers the step "Lighten".
func lighten(a *bench.Answers, r *form.Reader) {
	before := len(r.Problems)
	l := cutWheels(a, r)
	l.folds()
	l.swings()
	l.account()
	l.draw()
	if len(r.Problems) > before {
		a.Say("lighten.headline", mendWrongFigure)
		return
	}
	l.headline()
}

// Found returns the figures of cuts that are left blank in a job and found for a weight, as
// they would be typed; none where the wheels want one each.
func Found(f form.Form) form.Form {
	r := form.Read(f)
	if r.Blank(form.LightenOff) {
		return nil
	}
	l, found := cutWheels(&bench.Answers{}, r), form.Form{}
	for _, row := range l.cuts {
		sizes := map[string]bool{}
		for i := range l.wheels {
			w := &l.wheels[i]
			switch {
			case row.on[i] && w.ok && w.planned && w.found == row:
				sizes[bareSize(row, w.size)] = true
			case row.on[i]:
				sizes[""] = true
			}
		}
		for size := range sizes {
			if len(sizes) == 1 && size != "" {
				found[row.field(row.find)] = size
			}
		}
	}
	return found
}

// cutWheels reads the wheels and makes the cuts on them.
func cutWheels(a *bench.Answers, r *form.Reader) *lightening {
	l := &lightening{Answers: a, Ends: bench.ReadEnds(r), r: r, throw: r.Default(form.Throw), scaleG: r.Default(form.LightenScale)}
	l.pinMM = bench.CrankpinMM(r)
	l.readMaterial()
	l.least = flywheel.Least{
		WebMM: r.Default(form.LightenWeb), RimDepthMM: r.Default(form.LightenRimDepth),
		RimWidthMM: r.Default(form.LightenRimWidth), HoleMM: r.Default(form.LightenHoleWall),
	}
	l.wantedG, _ = r.Number(form.LightenOff)
	l.made, l.cuts = l.readRows("made", asMadeName), l.readRows("cut", cutName)
	l.readWheels()
	for i := range l.wheels {
		l.work(i)
	}
	return l
}

// readMaterial reads what the wheels are made of; a figure typed counts against
// the stock's.
func (l *lightening) readMaterial() {
	stock := flywheel.Steel
	switch l.r.Word(form.LightenMaterial) {
	case "iron":
		stock = flywheel.CastIron
	case "ductile":
		stock = flywheel.DuctileIron
	}
	l.material, _ = stock.Material()
	l.material.DensityKGM3 = l.r.Or(l.material.DensityKGM3, form.LightenDensity)
	l.material.StrengthMPa = l.r.Or(l.material.StrengthMPa, form.LightenStrength)
}

// readWheels reads both wheels. A boss or a hole for the pin that nobody has measured
// isn't drawn.
func (l *lightening) readWheels() {
	for i := range l.wheels {
		w := &l.wheels[i]
		w.side = bench.Sides[i]
		dim := func(id form.ID) float64 {
			v, ok := bench.OfWheel(l.r, id, w.side)
			switch {
			case ok:
				return l.r.Or(v, id, w.side)
			case id == form.WheelBoss || id == form.WheelPinHole:
				return 0
			}
			return l.r.Default(id, w.side)
		}
		w.dims = wheelDims{dim(form.WheelDiameter), dim(form.WheelWidth), dim(form.WheelBore), dim(form.WheelBoss), dim(form.WheelPinHole)}
	}
	l.alike = l.wheels[0].dims == l.wheels[1].dims
	for _, rows := range [...][]*cutRow{l.made, l.cuts} {
		for _, row := range rows {
			l.alike = l.alike && row.on[0] && row.on[1]
		}
	}
}

// work makes the cuts on one wheel, and finds the one that is to be found.
func (l *lightening) work(i int) {
	w := &l.wheels[i]
	if i == 1 && l.alike {
		*w = l.wheels[0]
		w.side = bench.Sides[1]
		return
	}
	if w.ok = l.build(w, i); !w.ok {
		return
	}
	cuts := l.rowsOn(w, i)
	w.ok = l.make(w, cuts)
	if w.ok && w.found != nil {
		l.plan(w, cuts)
	}
	w.ok = w.ok && l.isClear(i)
}

// build makes the wheel as it came: the rows of "made" first, so that a recess
// stands round the crankpin's boss, and a hole for the pin last.
func (l *lightening) build(w *lightened, i int) bool {
	d := w.dims
	w.wheel = wheel.Wheel{DiameterMM: d.diameter, WidthMM: d.width, BoreMM: d.bore}
	var cuts []flywheel.Cut
	for _, row := range l.made {
		if row.on[i] && row.ready() {
			w.rows = append(w.rows, row)
			cuts = append(cuts, row.cut)
		}
	}
	account, err := flywheel.Make(w.wheel, l.material.DensityKGM3, cuts...)
	if err != nil {
		l.complain(w, err)
		return false
	}
	w.rows, w.wheel = nil, account.Cut
	w.wheel.Rings, w.wheel.Turned = w.wheel.Turned, nil
	pin := clock.Vec{T: l.throw}
	if d.boss > 0 {
		w.wheel.Bosses = []wheel.Boss{{Side: l.side(form.LightenBossSide), At: pin, DiameterMM: d.boss}}
	}
	if d.pinHole > 0 {
		if w.wheel, err = w.wheel.Drill(wheel.Outer, wheel.Hole{At: pin, DiameterMM: d.pinHole, Through: true}); err != nil {
			l.complain(w, err)
			return false
		}
	}
	return true
}

// rowsOn gathers the cuts on a wheel that are complete; the one to be found is
// kept apart.
func (l *lightening) rowsOn(w *lightened, i int) []flywheel.Cut {
	var cuts []flywheel.Cut
	for _, row := range l.cuts {
		switch {
		case !row.on[i] || !row.ready():
		case !row.finding:
			w.rows = append(w.rows, row)
			cuts = append(cuts, row.cut)
		case w.found == nil:
			w.found = row
		default:
			row.lacks = append(row.lacks, row.findWords)
		}
	}
	return cuts
}

func (l *lightening) make(w *lightened, cuts []flywheel.Cut) bool {
	account, err := flywheel.Make(w.wheel, l.material.DensityKGM3, cuts...)
	if err != nil {
		l.complain(w, err)
		return false
	}
	w.account = account
	return true
}

// plan finds the size of the cut that takes off what the others leave of the
// weight wanted.
func (l *lightening) plan(w *lightened, cuts []flywheel.Cut) {
	off := l.wantedG - w.account.Off().MassG
	if off <= 0 {
		l.r.Complain(alreadyOff(bench.AsTyped(l.r, 1, form.LightenOff)(l.wantedG-off)), form.LightenOff)
		return
	}
	found, err := flywheel.Plan(w.account.Cut, l.material.DensityKGM3, w.found.cut, w.found.vary(), off, l.least)
	switch e := err.(type) {
	case nil:
		if w.found.find == form.CutHoles {
			l.setFirst(w.found, &found.Cut)
		}
		w.size, w.planned, w.others = found.Cut, true, w.account.AfterSection
		w.rows = append(w.rows, w.found)
		w.ok = l.make(w, append(cuts, found.Cut))
		if first := &l.wheels[0]; w == first || first.found != w.found {
			l.Text("found."+w.found.find.Name(w.found.keys(w.found.find)...), bareSize(w.found, w.size))
		}
	case *flywheel.Cannot:
		w.cannot = e
	case *flywheel.Fault:
		l.r.Complain(weighsNoMore(bench.AsTyped(l.r, 1, form.LightenOff)(w.account.After.MassG)), form.LightenOff)
	}
}

// isCut says whether anything is taken off either wheel.
func (l *lightening) isCut() bool {
	return len(l.wheels[0].account.Lines)+len(l.wheels[1].account.Lines) > 0
}
