package flywheel

import (
	"math"

	"pintwelve/core/lsq"
)

// student95 returns Student's t, two-sided 95 %, for the whole degrees of
// freedom in nu, as the GUM (JCGM 100, G.4.1) rounds them, and for 1 at least.
func student95(nu float64) float64 {
	nu = math.Floor(nu)
	if !(nu > 1) {
		nu = 1
	}
	return lsq.Student95(nu)
}
