package flywheel

import (
	"math"

	"pintwelve/core/bound"
	"pintwelve/core/lsq"
)

// StandardGravity is g, m/s², of ISO 80000-3. On the ground g is 9.780 at the
// equator and 9.832 at the poles (values from memory).
const StandardGravity = 9.80665

// gravitySD is that spread as a standard deviation, m/s².
var gravitySD = 0.026 / math.Sqrt(3)

// Swing is a wheel, or a crank, swung on a knife-edge.
type Swing struct {
	MassG, MassPM float64 // ± at 95 %
	ArmMM, ArmPM  float64 // from the edge to the centre of gravity; ± at 95 %
	ReachMM       float64 // from the centre of gravity to the rim
	PeriodS, SDS  float64 // as Timing gives them, or by stopwatch
	Freedom       float64 // of SDS; 0 where it is known, as a stopwatch's
	StartDeg      float64 // half-swing at the first pass
	EndDeg        float64 // at the last; 0 for the same as at the first
	GravityMS2    float64 // 0 for the standard value, its spread over the earth in the ±
}

// Swung is the inertia that a swing gives.
type Swung struct {
	InertiaGMM2 float64 // about the centre of gravity
	PM          float64 // 95 %
	SmallS      float64 // period of small swings
	// What each reading alone puts into the ±, g·mm² at 95 %.
	ByPeriod, ByArm, ByMass, ByGravity float64
}

// MostHalfSwing is the widest half-swing taken, degrees.
const MostHalfSwing = 60

// Inertia works the swing out. A period that no wheel of that reach can have is
// a *Fault with the periods that would do.
func (s Swing) Inertia() (Swung, error) {
	if err := s.check(); err != nil {
		return Swung{}, err
	}
	g, gSD := s.GravityMS2, 0.0
	if g == 0 {
		g, gSD = StandardGravity, gravitySD
	}
	g, gSD = 1000*g, 1000*gSD // mm/s²
	small := s.PeriodS / s.widened()
	if err := s.possible(small, g); err != nil {
		return Swung{}, err
	}
	m, a := s.MassG, s.ArmMM
	k := small * small / (4 * math.Pi * math.Pi)
	out := Swung{InertiaGMM2: m*g*a*k - m*a*a, SmallS: small} // MODEL §9
	byPeriod := 2 * m * g * a * k / s.PeriodS * s.SDS
	byArm := math.Abs(m*g*k-2*m*a) * s.ArmPM / lsq.Normal95
	byMass := math.Abs(g*a*k-a*a) * s.MassPM / lsq.Normal95
	byGravity := m * a * k * gSD
	sd := math.Sqrt(byPeriod*byPeriod + byArm*byArm + byMass*byMass + byGravity*byGravity)
	out.PM = s.factor(byPeriod, sd) * sd
	out.ByPeriod, out.ByArm = s.factor(byPeriod, byPeriod)*byPeriod, lsq.Normal95*byArm
	out.ByMass, out.ByGravity = lsq.Normal95*byMass, lsq.Normal95*byGravity
	return out, nil
}

// factor is Student's t at the freedom that Welch and Satterthwaite give the
// whole when only the period's is limited (GUM, JCGM 100, G.4.1).
func (s Swing) factor(byPeriod, sd float64) float64 {
	if s.Freedom == 0 || byPeriod == 0 {
		return lsq.Normal95
	}
	return student95(s.Freedom * math.Pow(sd/byPeriod, 4))
}

func (s Swing) check() error {
	end := s.EndDeg
	if end == 0 {
		end = s.StartDeg
	}
	g := s.GravityMS2
	if g == 0 {
		g = StandardGravity
	}
	return bound.First(
		within(Mass, s.MassG, 1, 1e7), within(MassPM, s.MassPM, 0, s.MassG),
		within(Reach, s.ReachMM, 1, 5000), within(Arm, s.ArmMM, 1, s.ReachMM), within(ArmPM, s.ArmPM, 0, s.ArmMM),
		within(PeriodGiven, s.PeriodS, 0.01, 100), within(PeriodSD, s.SDS, 0, s.PeriodS), within(PeriodSD, s.Freedom, 0, math.MaxFloat64),
		within(HalfSwing, s.StartDeg, 0, MostHalfSwing), within(HalfSwing, end, 0, s.StartDeg),
		within(Gravity, g, 9.7, 9.9),
	)
}

// widened is by how much the swing's amplitude lengthens the period,
// 1 + θ²/16 + 11 θ⁴/3072 (MODEL §9), on the mean over a swing that dies away
// evenly: the mean of θⁿ from b down to a is (bⁿ − aⁿ)/(n ln(b/a)).
func (s Swing) widened() float64 {
	b := s.StartDeg * math.Pi / 180
	square, fourth := b*b, b*b*b*b
	if a := s.EndDeg * math.Pi / 180; a > 0 && b/a > 1+1e-6 {
		log := math.Log(b / a)
		square, fourth = (b*b-a*a)/(2*log), (b*b*b*b-a*a*a*a)/(4*log)
	}
	return 1 + square/16 + 11*fourth/3072
}

// possible checks the period of small swings: it must be longer than with all
// the weight in the centre of gravity, and shorter than with it all at the rim.
func (s Swing) possible(small, g float64) error {
	a, r := s.ArmMM, s.ReachMM
	least, most := 2*math.Pi*math.Sqrt(a/g), 2*math.Pi*math.Sqrt((r*r+a*a)/(g*a))
	if small > least && small <= most {
		return nil
	}
	f := &Fault{Field: PeriodTooLong, Got: small, Least: least, Most: most}
	if small <= least {
		f.Field = PeriodTooShort
	}
	for _, times := range []float64{0.5, 2} {
		if t := small / times; t > least && t <= most {
			f.Detail.Factor = times
		}
	}
	return f
}
