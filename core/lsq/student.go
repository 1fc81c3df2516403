package lsq

import "math"

// Normal95 is the two-sided 95 % quantile of the normal distribution, for one
// component whose scatter is known.
const Normal95 = 1.959963984540054

// radiusKnown is Radius95 of a known scatter: √(2 ln 20), the 95 % quantile of
// the Rayleigh distribution.
const radiusKnown = 2.4477468306808166

// Radius95 returns the radius, in standard deviations, of the 95 % confidence
// region of a vector of two components whose covariance is known but for one
// variance found with ν degrees of freedom: √(2 F), F the 95 % quantile of
// F(2, ν), which is √(ν (20^(2/ν) − 1)) (core/MODEL.md §6). ν of 0 means that the
// variance is known.
func Radius95(nu float64) float64 {
	if !(nu > 0) || nu > 1e6 {
		return radiusKnown
	}
	return math.Sqrt(nu * math.Expm1(2/nu*math.Log(20)))
}

// Student95 returns the two-sided 95 % quantile of Student's t with ν degrees of
// freedom, for any ν from 1 up; ν of 0 means that the scatter is known, and gives
// Normal95.
func Student95(nu float64) float64 {
	if !(nu > 0) || nu > 1e6 {
		return Normal95
	}
	nu = math.Max(nu, 1)
	// P(|T| ≤ t) is concave in t, so that Newton climbs to its root from below.
	t := Normal95
	for range 40 {
		step := (0.95 - within(t, nu)) / (2 * density(t, nu))
		t += step
		if step < 1e-12*t {
			break
		}
	}
	return t
}

// density is that of Student's t at t.
func density(t, nu float64) float64 {
	a, _ := math.Lgamma((nu + 1) / 2)
	b, _ := math.Lgamma(nu / 2)
	return math.Exp(a-b-(nu+1)/2*math.Log1p(t*t/nu)) / math.Sqrt(nu*math.Pi)
}

// within is P(|T| ≤ t) = 1 − I_x(ν/2, 1/2), x = ν/(ν + t²); I by its continued
// fraction (Abramowitz and Stegun 26.5.8; from memory).
func within(t, nu float64) float64 {
	x, a, b := nu/(nu+t*t), nu/2, 0.5
	if x < (a+1)/(a+b+2) {
		return 1 - beta(x, a, b)
	}
	return beta(1-x, b, a)
}

// beta is the regularised incomplete beta I_x(a, b) for x < (a+1)/(a+b+2),
// where its continued fraction converges fast; Lentz's way of summing it.
func beta(x, a, b float64) float64 {
	la, _ := math.Lgamma(a)
	lb, _ := math.Lgamma(b)
	lab, _ := math.Lgamma(a + b)
	front := math.Exp(lab-la-lb+a*math.Log(x)+b*math.Log1p(-x)) / a
	c, d, sum := 1.0, 1/(1-(a+b)*x/(a+1)), 1/(1-(a+b)*x/(a+1))
	for m := 1.0; m < 300; m++ {
		for _, k := range [2]float64{
			m * (b - m) * x / ((a + 2*m - 1) * (a + 2*m)),
			-(a + m) * (a + b + m) * x / ((a + 2*m) * (a + 2*m + 1)),
		} {
			c, d = 1+k/c, 1/(1+k*d)
			sum *= c * d
		}
		if math.Abs(c*d-1) < 1e-15 {
			break
		}
	}
	return front * sum
}

// Beyond95 tells whether χ², with an even number of degrees of freedom, is beyond
// its 95 % quantile: P(χ² > x) = e^(−x/2) Σ (x/2)^j/j! < 0.05. With no freedom it
// never is; freedom stays well below a thousand.
func Beyond95(chi2 float64, freedom int) bool {
	term, sum := 1.0, 0.0
	for j := range freedom / 2 {
		sum += term
		term *= chi2 / 2 / float64(j+1)
	}
	return freedom >= 2 && (chi2 > 1000 || math.Exp(-chi2/2)*sum < 0.05)
}
