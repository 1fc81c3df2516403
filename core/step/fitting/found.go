package fitting

import (
	"math"
	"strconv"

	"pintwelve/core/bench"
	"pintwelve/core/fit"
	"pintwelve/core/form"
	"pintwelve/core/lsq"
)

// lookedAt are what the eye goes over before the crank is split.
var lookedAt = [...]form.ID{
	form.FoundCracks, form.FoundOilways, form.FoundSludge, form.FoundPinSeats, form.FoundTapers, form.FoundThreads, form.FoundKeyways, form.FoundWitness,
}

// asFound answers the step "As found".
func asFound(a *bench.Answers, r *form.Reader) {
	f := readFitting(a, r)
	seen, bad := 0, 0
	for _, what := range lookedAt {
		switch r.Word(what) {
		case "bad":
			bad++
			fallthrough
		case "good":
			seen++
		}
	}
	f.Say("found.count", lookedAtWords(strconv.Itoa(seen), strconv.Itoa(len(lookedAt))))
	if r.Word(form.FoundCracks) == "bad" {
		f.found(amiss+1, cracked)
	}
	if bad > 0 {
		f.found(amiss, notGood(strconv.Itoa(bad)))
	}
	f.rodRock()
	f.sidePlay()
	f.rodBar("found.bend", rodBent, form.FoundBendBig, form.FoundBendSmall)
	f.rodBar("found.twist", rodTwisted, form.FoundTwistBig, form.FoundTwistSmall)
	f.received()
	f.runOuts("found.", form.FoundRunOut)
	if seen < len(lookedAt) {
		f.top("found", lookItOver)
	} else {
		f.top("found", splitItNext)
	}
}

// received says how the crank ran as it came, which is the first pass's to know. Older
// jobs have figures of their own for it, which stay to be seen.
func (f *fitting) received() {
	words := hangItFirst
	if drive, timing, ok := f.cameAt(); ok {
		words = itCameAt(f.Amount(drive), f.Amount(timing))
	}
	f.Say("found.received", words)
	for _, side := range bench.Sides {
		if !f.r.Blank(form.FoundRunOut, side) {
			f.Say("found.typed", "yes")
			return
		}
	}
}

// cameAt returns the run-out of both shafts in the first pass, mm.
func (f *fitting) cameAt() (drive, timing float64, ok bool) {
	pass, q := "1", form.Read(f.r.Form) // what is wrong with a reading is the truing's to say
	if keys := q.Rows("pass"); len(keys) > 0 {
		pass = keys[0]
	}
	drive, has := q.Number(form.ReadingTIR, pass, bench.Sides[0])
	timing, ok = q.Number(form.ReadingTIR, pass, bench.Sides[1])
	return drive, timing, has && ok
}

// rodRock turns the rock of the rod into clearance.
func (f *fitting) rodRock() {
	movement, ok := f.r.Number(form.FoundRock)
	pin, measured := f.r.Number(form.FoundPin)
	width, at := f.r.Default(form.FoundWidth), f.r.Default(form.FoundRockAt)
	side, _ := f.r.Number(form.FoundSide)
	cheek, _ := f.r.Number(form.FoundCheek)
	if !measured {
		if size, ok := f.sized(form.BigEndPin, form.BigEndPin90); ok {
			pin = size.MeanMM
		} else {
			pin = f.r.Default(form.FoundPin)
		}
	}
	if !ok || movement == 0 || f.wrong(form.FoundPin, form.FoundWidth, form.FoundRockAt, form.FoundSide, form.FoundCheek) {
		return
	}
	rock, err := fit.Rock{MovementMM: movement, AtMM: at, PinMM: pin, WidthMM: width, SideMM: side, CheekMM: cheek}.BigEnd()
	if f.faulty(err, form.FoundRock) {
		return
	}
	inner, outer := f.bigEndLimits(pin)
	most := inner.MostMM
	if f.r.Word(form.BigEndKind) == "bush" {
		most += outer.MostMM
	}
	wanted := ""
	if f.r.Blank(form.FoundWidth) || f.r.Blank(form.FoundRockAt) { // the clearance goes with the one over the other
		wanted = rockAssumed
	}
	f.judgedUnless(gap{
		name: "found.clearance", title: byItsRock, Limits: fit.Limits{MostMM: most},
		Gap: exact(rock.ClearanceMM, rock.ClearanceMM*f.r.Division("drive")/movement), above: worn,
	}, wanted)
	if len(rock.Findings) > 0 {
		f.Say("found.stops", cheeksStopIt)
	}
}

func (f *fitting) sidePlay() {
	if side, ok := f.r.Number(form.FoundSide); ok {
		f.judged(gap{name: "found.sideplay", title: sidePlay, Gap: exact(side, f.r.Default(form.Feeler)/2), Limits: f.sideLimits(), below: tooLittle, above: tooMuch})
	}
}

func (f *fitting) sideLimits() fit.Limits {
	return f.limits(form.BigEndSideLeast, form.BigEndSideMost, fit.Limits{LeastMM: nan, MostMM: nan})
}

// rodBar compares the bars through the rod's two eyes.
func (f *fitting) rodBar(name, title string, ends ...form.ID) {
	span := f.r.Default(form.FoundSpan)
	allowed := f.r.Default(form.FoundRodAllowed)
	var bars [2]fit.Bar
	for i, end := range ends {
		list := f.r.Numbers(bench.MostReadings, end)
		if len(list) == 0 {
			return
		}
		if len(list) != 2 {
			f.r.Complain(twoWanted, end)
			return
		}
		bars[i] = fit.Bar{AMM: list[0], BMM: list[1], SpanMM: span}
	}
	if f.wrong(form.FoundSpan, form.FoundRodAllowed) {
		return
	}
	lean, err := fit.OutOfParallel(bars[0], bars[1], f.r.Division("drive"))
	if f.faulty(err, ends[0]) {
		return
	}
	f.judged(gap{name: name, title: title, Gap: exact(100*math.Abs(lean.PerMM), 100*lean.PlusMinus), Limits: fit.Limits{MostMM: allowed}, above: tooMuch})
}

// runOuts compares the run-out at both shafts with what is allowed: no surer than a dial's
// reading is at the lathe, and nothing while the unit of a figure is in doubt.
func (f *fitting) runOuts(at string, runOut form.ID) {
	for _, side := range bench.Sides {
		mm, ok := f.r.Number(runOut, side)
		if !ok {
			continue
		}
		plus, allowed := lsq.Normal95*f.r.Division(side)/math.Sqrt(6), f.r.Default(form.Tolerance) // MODEL §6, run-out + hour
		name := at + side + ".tir"
		if words := f.whichUnit(side, runOut); words != "" {
			f.found(asked, words)
			f.Say(name, words)
			f.Text("fit."+name+"_verdict", gradeNames[asked])
			continue
		}
		f.judged(gap{name: name, title: runOutOf(side), Gap: exact(mm, plus), Limits: fit.Limits{MostMM: allowed}, above: outOfTrue})
	}
}

// whichUnit asks for the unit of a figure that a run-out is judged by, where that is in doubt.
func (f *fitting) whichUnit(side string, runOut form.ID) string {
	for _, each := range [...]struct {
		meanings []form.Meaning
		what     string
	}{
		{f.r.InDoubt(runOut, side), runOutOn(side)}, {f.r.InDoubt(form.ShaftDivision, side), divisionOn(side)}, {f.r.InDoubt(form.Tolerance), runOutAllowed},
	} {
		var labels []string
		for _, m := range each.meanings {
			labels = append(labels, m.Label)
		}
		if labels != nil {
			return sayWhich(each.what, labels)
		}
	}
	return ""
}
