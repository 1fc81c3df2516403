package flywheel

import "math"

const normal95 = 1.959963984540054 // two-sided 95 % of the normal distribution

// student95 returns Student's t, two-sided 95 %, for the whole degrees of
// freedom in nu, as the GUM (JCGM 100, G.4.1) rounds them: closed forms for 1
// and 2, above that the Cornish–Fisher expansion, good to 0.15 %.
func student95(nu float64) float64 {
	nu = math.Floor(nu)
	switch {
	case !(nu > 1):
		return math.Tan(0.95 * math.Pi / 2)
	case nu == 2:
		return 0.95 * math.Sqrt(2/(1-0.95*0.95))
	case nu > 1e9:
		return normal95
	}
	const z, z2 = normal95, normal95 * normal95
	terms := [...]float64{
		(z2 + 1) / 4,
		((5*z2+16)*z2 + 3) / 96,
		(((3*z2+19)*z2+17)*z2 - 15) / 384,
		((((79*z2+776)*z2+1482)*z2-1920)*z2 - 945) / 92160,
	}
	t, over := 1.0, 1.0
	for _, c := range terms {
		over /= nu
		t += c * over
	}
	return z * t
}
