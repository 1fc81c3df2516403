package fitting_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/bench"
	"pintwelve/core/form"
	"pintwelve/core/sheet"
	"pintwelve/core/step/fitting"
	"pintwelve/testdata/jobs"
)

// A press that yields nothing and holds nobody knows what is not right: what it must
// hold is asked for, and by what the engine gives where that tells.
func TestAJointWhoseLoadIsUnknownIsNotCalledRight(t *testing.T) {
	const ask = "not past yield. What must it hold? Give the engine’s power and speed, or the torque."
	job := form.Form{"joint.a.pin": "25.010", "joint.a.eye": "25.000"}
	measure := func(more form.Form) (bite, headline, verdict string) {
		a := sheet.Answer(job.With(more), fitting.Measure.Name)
		require.Empty(t, a.Faults())
		return jobs.Said(a, "joint.a.bite"), jobs.Said(a, "measure.headline"), jobs.Told(t, a, "fit.joint.a.bite_verdict")
	}
	bite, headline, verdict := measure(nil)
	assert.Contains(t, bite, ask)
	assert.Contains(t, headline, ask)
	assert.Equal(t, "not known", verdict)

	bite, _, _ = measure(form.Form{"joint.a.wheel": "iron"})
	assert.Contains(t, bite, "short of cracking. What must it hold?")
	bite, _, _ = measure(form.Form{"joint.a.what": "timingshaft", "duty.power": "20", "duty.speed": "5000"})
	assert.Contains(t, bite, "not past yield. What must it hold? Give the torque.", "which the engine's power doesn't tell of this shaft")
	bite, _, verdict = measure(form.Form{"joint.a.pin": "25.500"})
	assert.Contains(t, bite, "past yield.", "that needs no load")
	assert.Equal(t, "wrong", verdict)

	for name, more := range map[string]form.Form{"by its torque": {"joint.a.need": "20"}, "by the engine's": {"duty.power": "2", "duty.speed": "6000"}} {
		bite, headline, verdict = measure(more)
		assert.Contains(t, bite, ": right.", name)
		assert.Equal(t, "right", verdict, name)
		assert.Equal(t, "Right, as far as it is measured.", headline, name)
	}
	_, headline, verdict = measure(form.Form{"joint.a.need": "2000"})
	assert.Equal(t, "wrong", verdict)
	assert.Contains(t, headline, "slips")
}

// 1.1 mm of room and limits of 0.1 to 0.3 mm cold want 0.8 to 1 mm of shims, 0.9 in the
// middle, each end short of it by the ± of 0.2 thou; two of 0.1 a side are 0.4.
func TestShimsThatDoNotReachSayWhichWould(t *testing.T) {
	job := form.Form{"float.faces": "100", "float.crank": "98.9", "float.judge": "cold", "float.least": "0.1 mm", "float.most": "0.3 mm"}
	said := func(more form.Form) (end, wanted string) {
		a := sheet.Answer(job.With(more), fitting.Cases.Name)
		require.Empty(t, a.Faults())
		return jobs.Said(a, "float.end"), jobs.Said(a, "float.wanted")
	}
	const would = "Shims of 0.9 mm in all would do: from 0.805 mm to 0.995 mm."
	end, wanted := said(form.Form{"float.shims": "0.1"})
	assert.Contains(t, end, "too much")
	assert.Equal(t, would, wanted)
	_, wanted = said(nil)
	assert.Equal(t, would, wanted, "with no shims yet")
	for _, reaches := range []string{"0.9", "0.806", "0.994", "0.45"} {
		end, wanted = said(form.Form{"float.shims": reaches})
		assert.NotContains(t, end, "too ", reaches)
		assert.Empty(t, wanted, reaches)
	}
	_, wanted = said(form.Form{"float.crank": "99.95"})
	assert.Equal(t, "No shim helps: the crank with its washers is too wide by at least 0.05 mm.", wanted)
	_, wanted = said(form.Form{"float.judge": "hot", "float.crank": "99.9", "float.least": "0", "float.most": "0.02 mm", "heat.running": "120"})
	assert.Equal(t, "No shim helps: what is right hot binds cold.", wanted)
}

// A load that wants more interference than can be pressed at all is none that the joint holds. By Lamé
// 30.02 mm in 30.00 mm holds 161 Nm, and a twentieth of the diameter, the most that is taken for a press, 12 kNm.
func TestALoadPastAnyPressSlips(t *testing.T) {
	job := form.Form{"joint.a.pin": "30.02", "joint.a.eye": "30.00", "joint.a.length": "20", "joint.a.hub": "60"}
	for _, need := range []string{"400", "11000", "13000", "20000"} {
		a := sheet.Answer(job.With(form.Form{"joint.a.need": need}), fitting.Measure.Name)
		require.Empty(t, a.Faults())
		assert.Contains(t, jobs.Said(a, "measure.headline"), "slips", need)
		assert.Equal(t, "wrong", jobs.Told(t, a, "fit.joint.a.bite_verdict"), need)
		assert.Contains(t, jobs.Said(a, "joint.a.margin"), "it holds only", need)
		assert.NotEmpty(t, jobs.Told(t, a, "picture.joint.a.bite"), need)
	}
}

// A taper that would yield, or crack the wheel, before it holds what it must is not to be drawn
// there, neither by what is measured nor at the press. A draw of 13.5 thou is where this eye yields.
func TestNoDrawPastYieldIsAdvised(t *testing.T) {
	job := form.Form{"joint.a.what": "driveshaft", "joint.a.form": "taper", "joint.a.pin": "25"}
	said := func(more form.Form) (a *bench.Answers, drawTo, cannot, atPress string) {
		a = sheet.Answer(job.With(more), "")
		require.Empty(t, a.Faults())
		return a, jobs.Said(a, "joint.a.drawto"), jobs.Said(a, "joint.a.cannot"), jobs.Said(a, "press.joint.a")
	}
	_, drawTo, cannot, atPress := said(form.Form{"joint.a.need": "290"})
	assert.Contains(t, drawTo, "draw it at least 13 thou")
	assert.Contains(t, atPress, "draw it at least 13 thou")
	assert.Empty(t, cannot)
	for _, draw := range []string{"", "5", "12", "20"} {
		for _, need := range []string{"310", "400", "20000"} {
			a, drawTo, cannot, atPress := said(form.Form{"joint.a.need": need, "joint.a.draw": draw})
			assert.Empty(t, drawTo)
			assert.Contains(t, cannot, "No interference holds that without yielding")
			assert.Equal(t, "Drive shaft in wheel: no draw holds "+need+" Nm without yielding.", atPress)
			_, any := a.Get("fit.joints/0/draw_wanted_mm")
			assert.False(t, any)
			if draw != "" {
				verdict := map[string]string{"5": "slips", "12": "slips", "20": "past yield"}[draw]
				assert.Contains(t, jobs.Said(a, "joint.a.bite"), verdict)
			}
		}
	}
	pressed := form.Form{"joint.a.what": "drivepin", "joint.a.form": "press", "joint.a.hub": "60", "joint.a.need": "1000"}
	for pin, verdict := range map[string]string{"25.02": "slips", "25.07": "past yield", "25.5": "past yield"} { // 47 µm yields, 130 µm holds
		a, _, cannot, _ := said(pressed.With(form.Form{"joint.a.pin": pin, "joint.a.eye": "25.00"}))
		assert.Contains(t, jobs.Said(a, "joint.a.bite"), verdict, pin)
		assert.Contains(t, cannot, "No interference holds that")
	}
	_, _, cannot, atPress = said(form.Form{"joint.a.need": "300", "joint.a.wheel": "iron"})
	assert.Contains(t, cannot, "in this cast iron without cracking it")
	assert.Contains(t, atPress, "no draw holds 300 Nm without cracking the wheel")
}

// A joint that yields says so at the press too, beside its figures, and which part does where
// the eye's stress doesn't show it: at a hollow pin's bore 2 p d²/(d² − d_i²) stands alone.
func TestWhatYieldsIsSaidWhereItIsPressed(t *testing.T) {
	job := form.Form{"joint.a.pin": "30.02", "joint.a.eye": "30.00", "joint.a.hub": "60"}
	said := func(more form.Form) (yields, atPress string) {
		a := sheet.Answer(job.With(more), "")
		require.Empty(t, a.Faults())
		return jobs.Said(a, "joint.a.yields"), jobs.Said(a, "press.joint.a")
	}
	yields, atPress := said(nil)
	assert.Empty(t, yields)
	assert.Equal(t, "Pin in drive wheel: press it in with 1.1 tonne.", atPress)
	yields, atPress = said(form.Form{"joint.a.pin": "30.20"})
	assert.Contains(t, yields, "It yields")
	assert.Contains(t, atPress, "tonne. It yields")
	_, atPress = said(form.Form{"joint.a.pin": "30.20", "joint.a.wheel": "iron"})
	assert.Contains(t, atPress, "tonne. It cracks the wheel")
	yields, atPress = said(form.Form{"joint.a.pin": "30.06", "joint.a.hollow": "29.5"}) // 7.53 MPa over (1 − (29.5/30.06)²)/2
	assert.Contains(t, yields, "The pin yields, with 408 MPa by von Mises against 310 MPa")
	assert.Contains(t, atPress, "The pin yields")

	taper := form.Form{"joint.a.form": "taper", "joint.a.what": "driveshaft", "joint.a.pin": "25", "joint.a.draw": "20"}
	a := sheet.Answer(job.With(taper), "")
	assert.Contains(t, jobs.Said(a, "press.joint.a.drawn"), "Nm. It yields")
}

// The cylinder's line lies between the case faces and the mouth within the crank: a middle
// that doesn't is a slip, and no rod that stands a foot off the line.
func TestAMiddleOutsideIsASlip(t *testing.T) {
	job := form.Form{"float.faces": "100", "float.crank": "99", "float.shims": "0.1 0.2 0.3 0.5", "float.caseleft": "50", "float.crankleft": "49.3"}
	a := sheet.Answer(job, fitting.Cases.Name)
	require.Empty(t, a.Faults())
	assert.Equal(t, "right", jobs.Told(t, a, "fit.float.centre_verdict"))
	for field, slip := range map[string]string{"float.caseleft": "500", "float.crankleft": "493"} {
		a = sheet.Answer(job.With(form.Form{field: slip}), fitting.Cases.Name)
		assert.Contains(t, jobs.Told(t, a, "error."+field), slip+" mm is out of reach here")
		_, judged := a.Get("fit.float.centre_verdict")
		assert.False(t, judged)
	}
}

// A bearing's bore and outside that were exchanged are said so, not its seat and housing to be wrong.
func TestABearingsBoreIsSmallerThanItsOutside(t *testing.T) {
	a := sheet.Answer(jobs.Main(form.Form{"main.a.bore": "52", "main.a.outside": "25"}), fitting.Cases.Name)
	require.Len(t, a.Faults(), 1)
	assert.Contains(t, jobs.Told(t, a, "error.main.a.outside"), "25 mm is out of reach here: no more than 250 mm, no less than 52.01 mm")
}

// By the rod's rock its clearance is its width's part of the way to the dial: where one of them stands in, it
// is not called right.
func TestARockByAnAssumedWidthIsNotCalledRight(t *testing.T) {
	verdict := func(width, at string) (words, verdict string) {
		a := sheet.Answer(form.Form{"found.rock": "40", "found.pin": "30", "found.width": width, "found.rockat": at}, fitting.Found.Name)
		require.Empty(t, a.Faults())
		return jobs.Said(a, "found.clearance"), jobs.Told(t, a, "fit.found.clearance_verdict")
	}
	words, how := verdict("18", "150")
	assert.Contains(t, words, ": right.")
	assert.Equal(t, "right", how)
	for _, blank := range [][2]string{{"", "150"}, {"18", ""}, {"", ""}} {
		words, how = verdict(blank[0], blank[1])
		assert.Contains(t, words, "as assumed. Give both.")
		assert.Equal(t, "not known", how)
	}
	_, how = verdict("30", "150")
	assert.Equal(t, "wrong", how)
}

// A freezer that is no colder than the shop is none.
func TestAWarmFreezerIsNoHelp(t *testing.T) {
	a := sheet.Answer(jobs.Main(form.Form{"heat.room": "10", "heat.freezer": "20"}), fitting.Cases.Name)
	require.Empty(t, a.Faults())
	assert.Equal(t, "Heat the case to 36 °C to drop the bearing in.", jobs.Told(t, a, "say.main.a.dropin"))
}

// A run-out is judged as surely as at the lathe, ± 0.4 thou by a dial of half a thou, and not at all while
// its unit, or what it is judged by, is in doubt: 0.05 may be mm, which is 2 thou.
func TestARunOutIsNoSurerThanItsDial(t *testing.T) {
	for _, step := range []struct{ at, name string }{{"cases.", fitting.Cases.Name}, {"found.", fitting.Found.Name}} {
		told := func(more form.Form) (words, headline, verdict string) {
			a := sheet.Answer(form.Form{step.at + "drive": "1", step.at + "timing": "1"}.With(more), step.name)
			require.Empty(t, a.Faults())
			return jobs.Said(a, step.at+"drive.tir"), jobs.Said(a, step.name+".headline"), jobs.Told(t, a, "fit."+step.at+"drive.tir_verdict")
		}
		_, _, verdict := told(nil)
		assert.Equal(t, "right", verdict)
		for runOut, want := range map[string]string{"1.5": "right", "1.7": "too close to call", "2.3": "too close to call", "2.5": "wrong"} {
			_, _, verdict = told(form.Form{step.at + "drive": runOut})
			assert.Equal(t, want, verdict, runOut)
		}
		words, headline, verdict := told(form.Form{step.at + "drive": "0.05"})
		assert.Equal(t, "Run-out, drive side: 0.05 thou, or 0.05 mm, or 0.05 in? Say which.", words)
		assert.Equal(t, words, headline)
		assert.Equal(t, "not known", verdict)
		for _, sure := range []string{"0.05 mm", "0.05 thou"} {
			_, _, verdict = told(form.Form{step.at + "drive": sure})
			assert.NotEqual(t, "not known", verdict)
		}
		words, _, _ = told(form.Form{"tolerance": "0.05"})
		assert.Equal(t, "Run-out allowed: 0.05 thou, or 0.05 mm? Say which.", words)
		words, _, _ = told(form.Form{"drive.division": "0.01"})
		assert.Equal(t, "Dial’s division, drive side: 0.01 thou, or 0.01 mm? Say which.", words)
	}
}

// A crank 90 mm narrower than its cases is a slip, no end float to be shimmed.
func TestACrankFarNarrowerThanItsCasesIsASlip(t *testing.T) {
	job := form.Form{"float.faces": "100", "float.crank": "9.9", "float.washers": "0.1"}
	a := sheet.Answer(job, fitting.Cases.Name)
	assert.Contains(t, jobs.Told(t, a, "error.float.crank"), "9.9 mm is out of reach here: no more than 99.9 mm, no less than 79.9 mm")
	assert.Empty(t, jobs.Said(a, "float.wanted"))
	require.Empty(t, sheet.Answer(job.With(form.Form{"float.crank": "80"}), fitting.Cases.Name).Faults())
}

// More heat than cases are commonly given for a bearing is not advised without a word.
func TestAHotCaseIsRemarkedOn(t *testing.T) {
	said := func(housing string) string {
		return jobs.Said(sheet.Answer(jobs.Main(form.Form{"main.a.housing": housing}), fitting.Cases.Name), "main.a.dropin")
	}
	assert.NotContains(t, said("51.97"), "commonly")
	assert.Contains(t, said("51.80"), "That is more than cases are commonly heated to: check the sizes first.")
}

// The mouth measured from the other side: the rod stood 1,980 thou off the line, the
// float was right, and the shims had all gone to one side by it.
func TestAMiddleFarFromTheOtherIsASlip(t *testing.T) {
	job := form.Form{"float.faces": "100", "float.crank": "99", "float.shims": "0.1 0.2 0.3 0.5", "float.caseleft": "75", "float.crankleft": "24.3"}
	a := sheet.Answer(job, fitting.Cases.Name)
	assert.Equal(t, "24.3 mm is out of reach here: no more than 95 mm, no less than 55 mm, will do", jobs.Told(t, a, "error.float.crankleft"))
	_, judged := a.Get("fit.float.centre_verdict")
	assert.False(t, judged)
	a = sheet.Answer(job.With(form.Form{"float.crankleft": "72"}), fitting.Cases.Name)
	assert.Empty(t, a.Faults())
	assert.Equal(t, "wrong", jobs.Told(t, a, "fit.float.centre_verdict"), "3 mm off is a crank, and told")
}
