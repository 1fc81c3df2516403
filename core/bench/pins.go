package bench

import (
	"math"

	"pintwelve/core/clock"
	"pintwelve/core/form"
)

// Pin is a crankpin as the job has it.
type Pin struct {
	Key     string  // of its row; the first pin has none
	AtMM    float64 // from the left end to its middle
	Hour    float64 // with the first pin at 12, seen from the left end
	ThrowMM float64
}

// ReadPins reads where the pins stand, from left to right; one not given stands three
// tenths of a wheel from the one before it.
func ReadPins(r *form.Reader, seen clock.End, firstMM, wheelMM float64) []Pin {
	all := []Pin{{AtMM: firstMM, ThrowMM: r.Default(form.Throw)}}
	for _, key := range r.Rows("pin") {
		p := Pin{Key: key, Hour: clock.SeenFrom(seen, r.Default(form.PinAngle, key)/degreesPerHour), ThrowMM: r.Or(all[0].ThrowMM, form.PinThrow, key)}
		p.AtMM = r.Or(math.Round(all[len(all)-1].AtMM+0.3*wheelMM), form.PinAt, key)
		all = append(all, p)
		for i := len(all) - 1; i > 1 && all[i].AtMM < all[i-1].AtMM; i-- {
			all[i], all[i-1] = all[i-1], all[i]
		}
	}
	return all
}

const degreesPerHour = 30
