package balance

import "pintwelve/core/bound"

// Permissible returns the residual unbalance that ISO 21940-11 permits a rotor
// of massKG at rpm for a balance quality grade G, mm/s, in g·mm, for the whole
// of it: e_per = G/ω, U_per = m e_per, MODEL §8. Two wheels alike share it in
// halves. A *Fault for figures that can't be.
func Permissible(grade, rpm, massKG float64) (float64, error) {
	if err := bound.First(checkSpeed(rpm), above(Grade, grade, 0, 4000), above(Mass, massKG, 0, MostG/1000)); err != nil {
		return 0, err
	}
	return grade / omega(rpm) * massKG * 1000, nil
}

// GradeOf returns the grade, mm/s, that a residual unbalance in g·mm comes to,
// or a *Fault: the inverse of Permissible.
func GradeOf(unbalanceGMM, rpm, massKG float64) (float64, error) {
	if err := bound.First(
		checkSpeed(rpm), within(Unbalance, unbalanceGMM, 0, MostG*MostMM), above(Mass, massKG, 0, MostG/1000),
	); err != nil {
		return 0, err
	}
	return unbalanceGMM * omega(rpm) / (massKG * 1000), nil
}

// Residual is what may be left beside what the knife-edges can show.
type Residual struct {
	PermitsGMM float64 // ISO 21940-11
	ShowsGMM   float64 // least unbalance that rolls it
	Grade      float64 // mm/s, that what they show comes to
	Enough     bool    // the knife-edges show less than is permitted
}

// CompareResidual sets the permissible unbalance beside showsGMM, the least that
// the knife-edges show, as RollsGMM tells. A *Fault for figures that can't be.
func CompareResidual(grade, rpm, massKG, showsGMM float64) (Residual, error) {
	permits, err := Permissible(grade, rpm, massKG)
	if err != nil {
		return Residual{}, err
	}
	g, err := GradeOf(showsGMM, rpm, massKG)
	if err != nil {
		return Residual{}, err
	}
	return Residual{permits, showsGMM, g, showsGMM <= permits}, nil
}

// RollsGMM returns the least unbalance that the knife-edges show, tried out: with
// the crank indifferent, the least weight laid at a radius, level with the shaft,
// that starts it rolling. A *Fault for figures that can't be.
func RollsGMM(weightG, radiusMM float64) (float64, error) {
	err := bound.First(within(HeavyWeight, weightG, 0, MostG), above(HeavyRadius, radiusMM, 0, MostMM))
	if err != nil {
		return 0, err
	}
	return weightG * radiusMM, nil
}
