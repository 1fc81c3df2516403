package fit

import "pintwelve/core/bound"

// Shrink is a part gripped by another, as heat and cold see it. The interference
// is at RoomC, and negative for a clearance.
type Shrink struct {
	DiameterMM           float64
	InterferenceMM       float64
	OuterPerK, InnerPerK float64 // expansion of the part outside and the part inside
	RoomC                float64
}

func (s Shrink) check() error {
	return bound.First(
		length(Diameter, s.DiameterMM), within(Interference, s.InterferenceMM, -s.DiameterMM/20, s.DiameterMM/20),
		expansion(s.OuterPerK), expansion(s.InnerPerK), celsius(s.RoomC),
	)
}

func celsius(c float64) error { return within(Temperature, c, ColdestC, HottestC) }

// InterferenceAt returns the interference, negative for a clearance, with the two
// parts at temperatures of their own.
func (s Shrink) InterferenceAt(outerC, innerC float64) (float64, error) {
	if err := bound.First(s.check(), celsius(outerC), celsius(innerC)); err != nil {
		return 0, err
	}
	return s.InterferenceMM - s.DiameterMM*(s.OuterPerK*(outerC-s.RoomC)-s.InnerPerK*(innerC-s.RoomC)), nil
}

// HeatOuter returns the temperature of the outer part at which the inner one, at
// innerC, drops in or out with a working clearance: ΔT = (δ + working
// clearance)/(α d) where the inner one is as warm as the room.
func (s Shrink) HeatOuter(workingMM, innerC float64) (float64, error) {
	interference, err := s.InterferenceAt(s.RoomC, innerC)
	if err := bound.First(err, checkWorking(workingMM)); err != nil {
		return 0, err
	}
	return reachable(s.RoomC + (interference+workingMM)/(s.OuterPerK*s.DiameterMM))
}

// reachable passes a temperature on, or the Fault that no heat will do.
func reachable(c float64) (float64, error) {
	if err := celsius(c); err != nil {
		return 0, err
	}
	return c, nil
}

func checkWorking(mm float64) error { return within(Clearance, mm, 0, MostMM) }

// LooseAt returns the temperature, both parts alike, at which the interference is
// gone: ΔT = δ/((α_housing − α_race) d). A housing that doesn't expand more than
// its race is a Fault of kind NeverLoose; no interference in the first place, of
// kind NoInterference.
func (s Shrink) LooseAt() (float64, error) {
	if err := s.check(); err != nil {
		return 0, err
	}
	switch {
	case s.InterferenceMM <= 0:
		return 0, &Fault{Detail: Detail{NoInterference}, Field: Interference, Got: s.InterferenceMM, Most: s.DiameterMM / 20}
	case s.OuterPerK <= s.InnerPerK:
		return 0, &Fault{Detail: Detail{NeverLoose}, Field: Expansion, Got: s.OuterPerK, Least: s.InnerPerK, Most: 1e-3}
	}
	c := s.RoomC + s.InterferenceMM/((s.OuterPerK-s.InnerPerK)*s.DiameterMM)
	if c > HottestC {
		return 0, &Fault{Detail: Detail{NeverLoose}, Field: Temperature, Got: c, Least: s.RoomC, Most: HottestC}
	}
	return c, nil
}
