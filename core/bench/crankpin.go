package bench

import (
	"math"

	"pintwelve/core/form"
)

// CrankpinMM is the crankpin's diameter where it is thickest, as far as the job
// knows it: as measured for the big end, where it sits in a wheel, by the hole for it
// there, or roughly.
func CrankpinMM(r *form.Reader) float64 {
	most := 0.0
	for _, v := range r.Numbers(MostReadings, form.BigEndPin) {
		most = math.Max(most, v)
	}
	for _, side := range Sides {
		hole, _ := r.Number(form.WheelPinHole, side)
		most = math.Max(most, math.Max(hole, seatMM(r, side+"pin", form.JointPin)))
	}
	if most == 0 {
		return r.Default(form.FoundPin)
	}
	return most
}

// seatMM is the greatest reading of one part of a joint, 0 where there is none; a taper
// has no eye that is read.
func seatMM(r *form.Reader, joint string, part form.ID) float64 {
	most := 0.0
	for _, key := range r.Rows("joint") {
		if r.Word(form.JointWhat, key) != joint || part == form.JointEye && r.Word(form.JointForm, key) == "taper" {
			continue
		}
		for _, v := range r.Numbers(MostReadings, part, key) {
			most = math.Max(most, v)
		}
	}
	return most
}
