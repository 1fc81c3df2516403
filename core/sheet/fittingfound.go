package sheet

import (
	"strconv"

	"pintwelve/core/fit"
	"pintwelve/core/form"
)

// lookedAt are what the eye goes over before the crank is split.
var lookedAt = [...]string{"cracks", "oilways", "sludge", "pinseats", "tapers", "threads", "keyways", "witness"}

// asFound answers the step "As found".
func asFound(a *Answers, r *form.Reader) {
	f := readFitting(a, r)
	seen, bad := 0, 0
	for _, what := range lookedAt {
		switch r.Word("found." + what) {
		case "bad":
			bad++
			fallthrough
		case "good":
			seen++
		}
	}
	f.say("found.count", "% of % looked at.", strconv.Itoa(seen), strconv.Itoa(len(lookedAt)))
	if r.Word("found.cracks") == "bad" {
		f.found(amiss+1, "Cracked: that part goes no further.")
	}
	if bad > 0 {
		f.found(amiss, fill("Not good: % of what was looked at.", strconv.Itoa(bad)))
	}
	f.rodRock()
	f.sidePlay()
	f.rodBar("found.bend", "Rod bent, over 100 mm")
	f.rodBar("found.twist", "Rod twisted, over 100 mm")
	f.runOuts("found.")
	f.grade = min(f.grade, amiss)
	f.top("found", "Look it over before you split it.")
}

// rodRock turns the rock of the rod into clearance.
func (f *fitting) rodRock() {
	movement, ok := f.r.Number("found.rock")
	pin, measured := f.r.Number("found.pin")
	width, at := f.r.Default("found.width"), f.r.Default("found.rockat")
	if !measured {
		if size, ok := f.sized("bigend.pin", "bigend.pin90"); ok {
			pin = size.MeanMM
		} else {
			pin = f.r.Default("found.pin")
		}
	}
	if !ok || movement == 0 {
		return
	}
	side, _ := f.r.Number("found.side")
	cheek, _ := f.r.Number("found.cheek")
	rock, err := fit.Rock{MovementMM: movement, AtMM: at, PinMM: pin, WidthMM: width, SideMM: side, CheekMM: cheek}.BigEnd()
	if f.faulty("found.rock", err) {
		return
	}
	inner, outer := f.bigEndLimits(pin)
	most := inner.MostMM
	if f.r.Word("bigend.kind") == "bush" {
		most += outer.MostMM
	}
	f.judged(gap{
		name: "found.clearance", title: "Big end by its rock", Limits: fit.Limits{MostMM: most},
		Gap: exact(rock.ClearanceMM, rock.ClearanceMM*f.r.Division("drive")/movement), above: "worn",
	})
	if len(rock.Findings) > 0 {
		f.say("found.stops", "The rod’s cheeks stop it first: the clearance is at least this.")
	}
}

func (f *fitting) sidePlay() {
	if side, ok := f.r.Number("found.side"); ok {
		f.judged(gap{name: "found.sideplay", title: "Side play", Gap: exact(side, f.r.Default("feeler")/2), Limits: f.sideLimits(), below: "too little", above: "too much"})
	}
}

func (f *fitting) sideLimits() fit.Limits {
	return f.limits("bigend.sideleast", "bigend.sidemost", fit.Limits{LeastMM: nan, MostMM: nan})
}

// rodBar compares the bars through the rod's two eyes.
func (f *fitting) rodBar(name, title string) {
	span := f.r.Default("found.span")
	allowed := f.r.Default("found.rodallowed")
	var bars [2]fit.Bar
	for i, end := range [...]string{"big", "small"} {
		list := f.r.Numbers(name+end, mostReadings)
		if len(list) == 0 {
			return
		}
		if len(list) != 2 {
			f.r.Complain(name+end, "two readings are wanted, one at each end of the bar")
			return
		}
		bars[i] = fit.Bar{AMM: list[0], BMM: list[1], SpanMM: span}
	}
	lean, err := fit.OutOfParallel(bars[0], bars[1], f.r.Division("drive"))
	if f.faulty(name+"big", err) {
		return
	}
	f.judged(gap{name: name, title: title, Gap: exact(100*abs(lean.PerMM), 100*lean.PlusMinus), Limits: fit.Limits{MostMM: allowed}, above: "too much"})
}

// runOuts compares the run-out at both shafts with what is allowed.
func (f *fitting) runOuts(at string) {
	for _, side := range sideNames {
		if mm, ok := f.r.Number(at + side); ok {
			f.judged(gap{
				name: at + side + ".tir", title: fill("Run-out, % side,", side), Gap: exact(mm, f.r.Division(side)/2),
				Limits: fit.Limits{MostMM: f.r.Default("tolerance")}, above: "out of true",
			})
		}
	}
}
