package sheet

import (
	"math"
	"strings"

	"pintwelve/core/balance"
	"pintwelve/core/form"
)

// stand is a crank on the knife-edges, as the form has it.
type stand struct {
	ends
	r        *form.Reader
	job      balance.Job
	rows     []string  // what the names of each cylinder's fields begin with
	readings []string  // what the names of each weighing's fields begin with
	rim      float64   // mm, radius of the wheels
	lack     string    // the first field that is wanted yet
	ask      string    // and the words that ask for it
	grant    float64   // part of the factor that it may be off
	rpm      []float64 // speeds that the forces are told at
}

func readStand(r *form.Reader) *stand {
	s := &stand{ends: readEnds(r), r: r, rows: []string{""}, grant: r.Default("plan.within") / 100}
	for _, key := range r.Form.Rows("cylinder") {
		s.rows = append(s.rows, "cylinder."+key+".")
	}
	s.job = balance.Job{StepG: r.Default("balance.scale"), ThrowMM: r.Default("throw"), Keep: r.Word("target") == "keep"}
	s.rim = r.Or("rim", math.Max(190, 4.5*s.job.ThrowMM)) / 2
	s.parts()
	s.weighings()
	if !s.job.Keep {
		s.job.Target = s.must("target.factor", "To which factor? The maker’s figure counts.") / 100
	}
	s.rpm = s.speeds()
	return s
}

// must reads a figure that there is no answer without.
func (s *stand) must(name, ask string) float64 {
	v, ok := s.r.Number(name)
	if !ok {
		s.want(name, ask)
	}
	return v
}

// want keeps the first field that is wanted.
func (s *stand) want(name, ask string) {
	if s.lack == "" {
		s.lack, s.ask = name, ask
		if s.r.Wrong(name) {
			s.ask = mendIt
		}
	}
}

const mendIt = "Mend the figure marked Wrong below."

// weights are one cylinder's, by partNames.
type weights [len(partNames)]float64

var partNames = [...]string{"piston", "rings", "gudgeon", "clips", "small", "big", "rod"}

// The rod's places in partNames.
const (
	smallEnd = 4
	bigEnd   = 5
	wholeRod = 6
)

// parts reads what the pin carries, as weighed and as it will run.
func (s *stand) parts() {
	var first, fitted weights // the first cylinder's, before and after
	for i, row := range s.rows {
		bank := 0.0
		if i > 0 {
			bank = s.r.Default(row+"bank") * math.Pi / 180
		}
		before := s.weigh(row+"weight.", first)
		s.wantWeights(row, before)
		like := before
		for part, name := range partNames {
			if i > 0 && s.r.Blank(row+"weight."+name) {
				like[part] = fitted[part]
			}
		}
		after := s.weigh(row+"new.", like)
		if i == 0 {
			first, fitted = before, after
		}
		s.job.Before.Cylinders = append(s.job.Before.Cylinders, before.cylinder(bank))
		s.job.After.Cylinders = append(s.job.After.Cylinders, after.cylinder(bank))
	}
	s.job.Before.BearingG, s.job.After.BearingG = s.pair("bearing")
	s.job.Before.CrankpinG, s.job.After.CrankpinG = s.pair("crankpin")
}

// weigh reads a cylinder's weights; what is blank is as like. A rod whose ends
// are given anew is not as heavy as the one before, nor is its end that the
// whole and the other end leave.
func (s *stand) weigh(set string, like weights) (w weights) {
	typed := func(part int) bool { return !s.r.Blank(set + partNames[part]) }
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
	for i, name := range partNames {
		w[i] = s.part(set+name, like[i])
	}
	return w
}

// part reads a weight; where it is blank, like stands in, if there is any.
func (s *stand) part(name string, like float64) float64 {
	if like > 0 {
		return s.r.Or(name, like)
	}
	v, _ := s.r.Number(name)
	return v
}

func (w weights) cylinder(bank float64) balance.Cylinder {
	return balance.Cylinder{
		BankRad: bank, PistonG: w[0], RingsG: w[1], GudgeonPinG: w[2], ClipsG: w[3],
		Rod: balance.Rod{SmallG: w[smallEnd], BigG: w[bigEnd], WholeG: w[wholeRod]},
	}
}

func (s *stand) wantWeights(row string, w weights) {
	if w[0] == 0 {
		s.want(row+"weight.piston", "Weigh the piston, and what goes up and down with it.")
	}
	if small, _ := w.cylinder(0).Rod.Ends(); small == 0 {
		s.want(row+"weight.small", "Weigh the rod’s small end, the rod held level.")
	}
}

// pair reads a part on the pin, found and new. A new part alone says nothing:
// what counts is how it differs.
func (s *stand) pair(part string) (before, after float64) {
	before = s.part("weight."+part, 0)
	if before == 0 && !s.r.Blank("new."+part) && s.r.Blank("weight."+part) {
		s.r.Complain("weight."+part, "the new one is weighed and the old one isn’t: what counts is how they differ")
	}
	return before, s.part("new."+part, before)
}

// weighings reads what was on the knife-edges.
func (s *stand) weighings() {
	switch what := s.r.Word("knife.what"); what {
	case "stated":
		s.job.Stated = s.must("knife.stated", "What is the maker’s factor, or the one it is known to have?") / 100
		s.job.HasStated = true
	case "wheels":
		for end := range s.sideOf {
			s.wheel(s.sideOf[end], balance.What(end)+balance.LeftWheel)
		}
	case "drive", "timing":
		s.wheel(what, balance.What(s.end(what))+balance.LeftWheel)
	default:
		on := s.r.Word("knife.whole.on")
		s.weighing("knife.whole.", balance.Weighing{Rods: on == "rods", Bearing: on == "bearing"})
	}
}

func (s *stand) wheel(side string, what balance.What) {
	on := s.r.Word("knife." + side + ".on")
	s.weighing("knife."+side+".", balance.Weighing{What: what, Pin: on != "bare", Bearing: on == "bearing", Rods: on == "rods"})
}

// weighing reads one reading. With the rods off, what they and the bearing
// weigh is wanted; with the pin off, what that does.
func (s *stand) weighing(at string, w balance.Weighing) {
	hour, settles := s.r.Number(at + "hour")
	w.Heavy.Hour = s.hour(hour)
	w.Heavy.WeightG, _ = s.r.Number(at + "weight")
	w.Heavy.RadiusMM, _ = s.r.Number(at + "radius")
	ok := false
	if w.HungG, ok = s.r.Number(at + "hung"); !ok && (w.Heavy.WeightG == 0 || s.r.Wrong(at+"hung")) {
		s.want(at+"hung", fill("Now the knife-edges: what hangs % when the crank stays wherever it is put?", hangs(w)))
	}
	switch {
	case w.Heavy.WeightG > 0 && !settles:
		s.want(at+"hour", "At which hour does it settle lowest?")
	case w.Heavy.WeightG > 0 && w.Heavy.RadiusMM == 0:
		s.want(at+"radius", "How far from the shaft was that weight laid?")
	}
	s.readings = append(s.readings, at)
	s.job.Weighed = append(s.job.Weighed, w)
	if _, big := s.job.Before.EndsG(); big == 0 && (!w.Rods || w.What != balance.Whole) {
		s.want("weight.big", "Weigh the rod’s big end, the rod held level.")
	}
	if w.What != balance.Whole && s.job.Before.CrankpinG == 0 {
		s.want("weight.crankpin", "Weigh the crankpin: a wheel alone carries half of it.")
	}
}

func hangs(w balance.Weighing) string {
	if w.Rods {
		return "at the small end"
	}
	return "at the pin"
}

// speeds are those that the forces are told at, rpm.
func (s *stand) speeds() []float64 {
	const name, standIn = "frame.speeds", 3000
	if speeds := s.r.Numbers(name, mostSpeeds); len(speeds) > 0 {
		return speeds
	}
	s.r.StandIns = append(s.r.StandIns, form.StandIn{Name: name, Value: standIn, Text: "3000"})
	return []float64{standIn}
}

const mostSpeeds = 4

// whichWheel names a wheel, or the crank whole.
func (s *stand) whichWheel(w balance.What) string {
	if w == balance.Whole {
		return "crank"
	}
	return s.sideOf[w-balance.LeftWheel]
}

// changed says whether any part is new.
func (s *stand) changed() bool {
	for name, text := range s.r.Form {
		if text != "" && (strings.HasPrefix(name, "new.") || strings.Contains(name, ".new.")) {
			return true
		}
	}
	return false
}
