package balance

import (
	"math"

	"pintwelve/core/balance"
	"pintwelve/core/bench"
	"pintwelve/core/form"
)

// crank is a crank on the knife-edges, as the form has it.
type crank struct {
	*bench.Answers
	bench.Ends
	r        *form.Reader
	job      balance.Job
	keys     []string        // of the rows of further cylinders
	rows     []string        // what the place of each cylinder's weights begins with
	readings []string        // the place of each weighing's fields
	rim      float64         // mm, radius of the wheels
	lightG   float64         // by which a rod's ends are lighter than the whole
	turned   [2]bench.Turned // by end: the wheels as they stand, or will once cut
	pinMM    float64         // the crankpin's diameter
	ask      string          // for the first field that is wanted yet
	known    bool            // the parts and the knife-edges are read: there is a factor
	offBy    float64         // part of the factor that it may be off
	rpm      []float64       // speeds that the forces are told at
	pins     []bench.Pin     // of all throws
	nth      int             // which of them it is
	pin      string          // key of the pin whose row has the reading, "" for the first
	joined   bool            // all throws are weighed at once, and share alike
	stands   balance.Standing
	remove   []balance.Correction
	solved   bool           // stands and remove are told
	all      *bench.Answers // of the whole crank
	told     []string       // what the sheet tells
}

// readCrank reads the nth throw of a crank by itself, or the only one.
func readCrank(a *bench.Answers, r *form.Reader, pins []bench.Pin, nth int) *crank {
	r.Pin = pins[nth].Key
	s := &crank{all: a, pin: r.Pin, Answers: &bench.Answers{}, Ends: bench.ReadEnds(r), r: r, rows: []string{""}, offBy: r.Default(form.PlanWithin) / 100, pins: pins, nth: nth}
	s.keys = r.Form.Rows("cylinder")
	for _, key := range s.keys {
		s.rows = append(s.rows, "cylinder."+key+".")
	}
	s.job = balance.Job{StepG: r.Default(form.BalanceScale), ThrowMM: pins[nth].ThrowMM, Keep: r.Word(form.Target) == "keep"}
	s.rim = r.Or(bench.WheelMM(r), form.Rim) / 2
	for end, side := range s.SideOf {
		s.turned[end] = bench.ReadTurned(r, side)
		s.rim = math.Min(s.rim, s.turned[end].DiameterMM/2)
	}
	s.pinMM = bench.CrankpinMM(r)
	s.job.HasStated = r.Word(form.KnifeWhat) == "stated"
	s.ofSeveral()
	s.parts()
	s.weighings()
	s.known = s.ask == ""
	if !s.job.Keep {
		s.job.Target = s.factor(whichTarget, form.TargetFactor)
	} else if came, drilled := r.Number(form.KnifeCame); drilled && s.several() {
		s.job.Keep, s.job.Target = false, came/100
	}
	s.rpm = s.speeds()
	return s
}

// solve finds where the crank stands and what must come off.
func (s *crank) solve() {
	if s.ask != "" {
		return
	}
	var err error
	if s.stands, err = s.job.Standing(); err == nil {
		s.remove, err = s.job.Correct()
	}
	if s.solved = err == nil; !s.solved {
		s.complain(err)
		s.ask = bench.MendIt
	}
}

// factor reads a balance factor that there is no answer without, as a part of one;
// a bare one that may be meant as a part of one is asked about.
func (s *crank) factor(ask string, id form.ID) float64 {
	v, ok := s.r.Number(id)
	if !ok {
		s.want(ask, id)
	}
	if m := s.r.InDoubt(id); m != nil {
		s.want(whichFactor(m[0].Label, m[1].Label), id)
	}
	return v / 100
}

// want keeps the first field that is wanted.
func (s *crank) want(ask string, id form.ID, keys ...string) {
	if s.ask == "" {
		s.ask = ask
		if s.r.Wrong(id, keys...) {
			s.ask = bench.MendIt
		}
	}
}

// weights are one cylinder's, by cylinderParts.
type weights [len(cylinderParts)]float64

var cylinderParts = [...]form.ID{
	form.PartPiston, form.PartRings, form.PartGudgeon, form.PartClips, form.PartSmall, form.PartBig, form.PartRod,
}

// Places in cylinderParts.
const (
	rings    = 1
	gudgeon  = 2
	clips    = 3
	smallEnd = 4
	bigEnd   = 5
	wholeRod = 6
)

// parts reads what the pin carries, as weighed and as it will run.
func (s *crank) parts() {
	var first, fitted weights // the first cylinder's, before and after
	for i, row := range s.rows {
		bank := 0.0
		if i > 0 {
			bank = s.r.Default(form.CylinderBank, s.keys[i-1]) * math.Pi / 180
		}
		before := s.weigh(row+"weight", first)
		s.wantWeights(row, before)
		s.wantOld(row, before)
		like := before
		for part, id := range cylinderParts {
			if i > 0 && s.r.Blank(id, row+"weight") {
				like[part] = fitted[part]
			}
		}
		after := s.weigh(row+"new", like)
		if i == 0 {
			first, fitted = before, after
		}
		s.job.Before.Cylinders = append(s.job.Before.Cylinders, before.cylinder(bank))
		s.job.After.Cylinders = append(s.job.After.Cylinders, after.cylinder(bank))
	}
	s.job.Before.BearingG, s.job.After.BearingG = s.pair(form.PartBearing)
	s.job.Before.CrankpinG, s.job.After.CrankpinG = s.pair(form.PartCrankpin)
}

// weigh reads a cylinder's weights; what is blank is as like. A rod whose ends
// are given anew is not as heavy as the one before, nor is its end that the
// whole and the other end leave.
func (s *crank) weigh(place string, like weights) (w weights) {
	typed := func(part int) bool { return !s.r.Blank(cylinderParts[part], place) }
	if typed(smallEnd) || typed(bigEnd) || typed(wholeRod) {
		c := like.cylinder(0)
		like[smallEnd], like[bigEnd] = c.Rod.Ends()
		like[wholeRod] = 0
		if typed(wholeRod) && typed(smallEnd) {
			like[bigEnd] = 0
		}
		if typed(wholeRod) && typed(bigEnd) {
			like[smallEnd] = 0
		}
	}
	for i, id := range cylinderParts {
		w[i] = s.part(id, place, like[i])
	}
	return w
}

// part reads a weight; where it is blank, like stands in, if there is any. Nothing does for one that is wrong.
func (s *crank) part(id form.ID, place string, like float64) float64 {
	v, ok := s.r.Number(id, place)
	switch {
	case s.r.Wrong(id, place):
		s.want("", id, place)
	case !ok && like > 0:
		return s.r.Or(like, id, place)
	}
	return v
}

func (w weights) cylinder(bank float64) balance.Cylinder {
	return balance.Cylinder{
		BankRad: bank, PistonG: w[0], RingsG: w[1], GudgeonPinG: w[2], ClipsG: w[3],
		Rod: balance.Rod{SmallG: w[smallEnd], BigG: w[bigEnd], WholeG: w[wholeRod]},
	}
}

func (s *crank) wantWeights(row string, w weights) {
	if w[0] == 0 {
		s.want(weighThePiston, form.PartPiston, row+"weight")
	}
	if small, _ := w.cylinder(0).Rod.Ends(); small == 0 {
		s.want(weighTheSmallEnd, form.PartSmall, row+"weight")
	}
	if w[gudgeon] == 0 && s.r.Blank(form.PartGudgeon, row+"weight") {
		s.want(weighTheGudgeon, form.PartGudgeon, row+"weight")
	}
}

// wantOld asks for what a new part takes the place of: what counts is how they
// differ.
func (s *crank) wantOld(row string, before weights) {
	small, big := before.cylinder(0).Rod.Ends()
	known := before
	known[smallEnd], known[bigEnd], known[wholeRod] = small, big, big
	for part, id := range cylinderParts {
		if known[part] == 0 && s.r.Blank(id, row+"weight") && !s.r.Blank(id, row+"new") {
			s.wantTheOld(id, row+"weight")
		}
	}
}

func (s *crank) wantTheOld(id form.ID, place string) {
	s.r.Complain(oldNotWeighed, id, place)
	s.want("", id, place)
}

// pair reads a part on the pin, found and new. A new part alone says nothing:
// what counts is how it differs.
func (s *crank) pair(part form.ID) (before, after float64) {
	before = s.part(part, "weight", 0)
	if before == 0 && !s.r.Blank(part, "new") && s.r.Blank(part, "weight") {
		s.wantTheOld(part, "weight")
	}
	return before, s.part(part, "new", before)
}

// weighings reads what was on the knife-edges.
func (s *crank) weighings() {
	switch what := s.r.Word(form.KnifeWhat); what {
	case "stated":
		s.job.Stated = s.factor(whichStated, form.KnifeStated)
	case "wheels":
		for end := range s.SideOf {
			s.wheel(s.SideOf[end], balance.What(end)+balance.LeftWheel)
		}
	case "drive", "timing":
		s.wheel(what, balance.What(s.End(what))+balance.LeftWheel)
	default:
		on := s.r.Word(form.KnifeWholeOn)
		s.weighing("whole", balance.Weighing{Rods: on == "rods", Bearing: on == "bearing"})
	}
}

func (s *crank) wheel(side string, what balance.What) {
	on := s.r.Word(form.KnifeOn, side)
	s.weighing(side, balance.Weighing{What: what, Pin: on != "bare", Bearing: on == "bearing", Rods: on == "rods"})
}

// weighing reads one reading. With the rods off, what they and the bearing
// weigh is wanted; with the pin off, what that does.
func (s *crank) weighing(place string, w balance.Weighing) {
	hour, settles := s.r.Number(form.KnifeHour, place)
	w.Heavy.Hour = s.Hour(hour)
	w.Heavy.WeightG, _ = s.r.Number(form.KnifeWeight, place)
	w.Heavy.RadiusMM, _ = s.r.Number(form.KnifeRadius, place)
	ok := false
	if w.HungG, ok = s.r.Number(form.KnifeHung, place); !ok && (w.Heavy.WeightG == 0 || s.r.Wrong(form.KnifeHung, place)) {
		s.want(whatHangs(w), form.KnifeHung, place)
	}
	switch {
	case settles && (s.r.Blank(form.KnifeWeight, place) || s.r.Wrong(form.KnifeWeight, place)):
		s.want(whichOpposite, form.KnifeWeight, place)
	case w.Heavy.WeightG > 0 && !settles:
		s.want(settlesWhere, form.KnifeHour, place)
	case w.Heavy.WeightG > 0 && w.Heavy.RadiusMM == 0:
		s.want(laidHowFar, form.KnifeRadius, place)
	}
	w.HungG /= s.weighedAtOnce()
	w.Heavy.WeightG /= s.weighedAtOnce()
	s.readings = append(s.readings, place)
	s.job.Weighed = append(s.job.Weighed, w)
	if _, big := s.job.Before.EndsG(); big == 0 && (!w.Rods || w.What != balance.Whole || s.several()) {
		s.want(weighTheBigEnd, form.PartBig, "weight")
	}
	if (w.What != balance.Whole || s.several()) && s.job.Before.CrankpinG == 0 {
		s.want(weighTheCrankpin, form.PartCrankpin, "weight")
	}
}

// speeds are those that the forces are told at, rpm.
func (s *crank) speeds() []float64 {
	const standIn = 3000
	if speeds := s.r.Numbers(mostSpeeds, form.FrameSpeeds); len(speeds) > 0 {
		return speeds
	}
	s.r.StandIns = append(s.r.StandIns, form.StandIn{Name: form.FrameSpeeds.Name(), Value: standIn, Text: "3000"})
	return []float64{standIn}
}

const mostSpeeds = 4

// whichWheel names a wheel, or the crank whole.
func (s *crank) whichWheel(w balance.What) string {
	switch {
	case w != balance.Whole:
		return s.SideOf[w-balance.LeftWheel]
	case s.several() && !s.joined:
		return theThrow
	}
	return theCrank
}

// changed says whether any part is new.
func (s *crank) changed() bool {
	for name, text := range s.r.Form {
		if _, isNew := form.Renewed(name); isNew && text != "" {
			return true
		}
	}
	return false
}
