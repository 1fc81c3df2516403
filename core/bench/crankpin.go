package bench

import (
	"math"

	"pintwelve/core/form"
)

// CrankpinMM is the crankpin's diameter where it is thickest, as far as the job
// knows it: as measured for the big end, where it sits in a wheel, or roughly.
func CrankpinMM(r *form.Reader) float64 {
	all := r.Numbers(MostReadings, form.BigEndPin)
	for _, key := range r.Form.Rows("joint") {
		if what := r.Word(form.JointWhat, key); what == "drivepin" || what == "timingpin" {
			all = append(all, r.Numbers(MostReadings, form.JointPin, key)...)
		}
	}
	if len(all) == 0 {
		return r.Default(form.FoundPin)
	}
	most := 0.0
	for _, v := range all {
		most = math.Max(most, v)
	}
	return most
}
