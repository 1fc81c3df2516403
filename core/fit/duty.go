package fit

import (
	"math"

	"pintwelve/core/bound"
)

// Duty is what the joints of a crank must hold.
type Duty struct {
	MeanNm  float64 // mean torque, power over speed
	ShaftNm float64 // the driving shaft in its wheel, at the peak
	PinNm   float64 // either end of the pin, about the pin
}

// MustHold returns the torques that the joints carry. peak is the greatest torque
// that the driving shaft delivers over the mean (common practice, no source: a
// stand-in is the user's to judge).
//
// The pin's ends each carry half the torque delivered: of two like wheels with the
// rod midway, each main bearing and each end of the pin takes half the rod's
// force F, tangential part f. About the shafts the whole crank has
// f R − T = J α, the wheel that drives nothing f R/2 + M = J α/2; so M = −T/2,
// whatever the flywheels do.
func MustHold(powerKW, revsPerMin, peak float64) (Duty, error) {
	if err := bound.First(
		within(Power, powerKW, 1e-3, 1e5),
		within(Speed, revsPerMin, 1, 1e6),
		within(Factor, peak, 1, 1e3),
	); err != nil {
		return Duty{}, err
	}
	mean := powerKW * 1000 / (2 * math.Pi * revsPerMin / 60)
	return Duty{MeanNm: mean, ShaftNm: peak * mean, PinNm: peak * mean / 2}, nil
}

// Margin returns how many times over a joint holds what it must.
func Margin(holdNm, needNm float64) (float64, error) {
	if err := bound.First(within(Torque, holdNm, 0, 1e12), within(Torque, needNm, 1e-6, 1e12)); err != nil {
		return 0, err
	}
	return holdNm / needNm, nil
}
