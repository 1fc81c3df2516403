package fit

import (
	"math"

	"pintwelve/core/bound"
)

// Press is a pin pressed into an eye: two cylinders of one length, the hub free
// at its ends and outside (Lamé, plane stress).
type Press struct {
	DiameterMM     float64 // d
	InterferenceMM float64 // δ
	LengthMM       float64 // l, of contact
	HubMM          float64 // D, outside of the hub
	HollowMM       float64 // d_i, hole through the pin; 0 is solid
	Friction       float64 // μ that holds the joint
	Pressing       float64 // μ while it is pressed in; 0 is as Friction
	Hub, Pin       Material
}

// PressedDry is a stand-in for the friction of steel pressed in dry: DIN 7190,
// value from memory. Oiled it is nearer 0.08.
const PressedDry = 0.11

// Joint is what a pressed joint does. The stresses are those of the interference alone.
type Joint struct {
	PressureMPa         float64
	HubHoopMPa          float64 // at the hub's bore, tension
	HubMisesMPa         float64 // at the hub's bore
	PinMisesMPa         float64 // where it is greatest: a hollow pin's bore, anywhere in a solid one
	HoldNm              float64 // torque about the pin at which it slips
	PushOutN            float64
	PressInN            float64 // at full depth
	YieldInterferenceMM float64 // interference at which the first of the two begins to yield, or a brittle hub cracks; 0 where no yield is known
	Findings            []Finding
}

func (p Press) check() error {
	if err := bound.First(
		length(Diameter, p.DiameterMM), length(JointLength, p.LengthMM),
		within(HubOutside, p.HubMM, LeastMM, 10*MostMM), within(Hollow, p.HollowMM, 0, MostMM),
		within(Friction, p.Friction, 1e-4, 10), within(Friction, p.Pressing, 0, 10),
		p.Hub.check(), p.Pin.check(),
	); err != nil {
		return err
	}
	switch {
	case p.HubMM < p.DiameterMM+LeastMM:
		return &Fault{Detail: Detail{NoWall}, Field: HubOutside, Got: p.HubMM, Least: p.DiameterMM, Most: 10 * MostMM}
	case p.HollowMM > p.DiameterMM-LeastMM:
		return &Fault{Detail: Detail{NoWall}, Field: Hollow, Got: p.HollowMM, Most: p.DiameterMM}
	}
	return nil
}

func (p Press) checkInterference() error {
	if p.InterferenceMM <= 0 {
		return &Fault{Detail: Detail{NoInterference}, Field: Interference, Got: p.InterferenceMM, Most: p.DiameterMM / 20}
	}
	err := within(Interference, p.InterferenceMM, 1e-7, p.DiameterMM/20) // beyond that no elastic joint is left to speak of
	if fault, ok := err.(*Fault); ok {
		fault.Detail.Kind = TooBigForEye
	}
	return err
}

// hubRatio is (D² + d²)/(D² − d²), the hoop stress at the bore over the pressure.
func (p Press) hubRatio() float64 { return ratio(p.HubMM, p.DiameterMM) }

func ratio(big, small float64) float64 {
	q := small / big
	return (1 + q*q) / ((1 - q) * (1 + q))
}

// perInterference is p/δ, MPa per mm (core/MODEL.md §10).
func (p Press) perInterference() float64 {
	hub := (p.hubRatio() + p.Hub.Poisson) / p.Hub.EMPa
	pin := (ratio(p.DiameterMM, p.HollowMM) - p.Pin.Poisson) / p.Pin.EMPa
	return 1 / (p.DiameterMM * (hub + pin))
}

// eyeOver returns what the eye's yield or strength is held against, over the
// pressure: the von Mises stress, or of a brittle hub its hoop tension, the greatest
// there is.
func (p Press) eyeOver() float64 {
	if p.Hub.Brittle {
		return p.hubRatio()
	}
	hub, _ := p.misesOver()
	return hub
}

// misesOver returns the von Mises stresses over the pressure: σ_θ = k p and
// σ_r = −p at the hub's bore; at a hollow pin's bore −2 p d²/(d² − d_i²) stands
// alone; in a solid pin σ_θ = σ_r = −p.
func (p Press) misesOver() (hub, pin float64) {
	k := p.hubRatio()
	hub, pin = math.Sqrt(k*k+k+1), 1
	if p.HollowMM > 0 {
		q := p.HollowMM / p.DiameterMM
		pin = 2 / ((1 - q) * (1 + q))
	}
	return hub, pin
}

// Joint works the joint out. No interference at all is a Fault of kind
// NoInterference; stress past yield is a Finding, and the figures are then those
// of parts that stay elastic, so more than the joint has.
func (p Press) Joint() (Joint, error) {
	if err := bound.First(p.check(), p.checkInterference()); err != nil {
		return Joint{}, err
	}
	pressure := p.perInterference() * p.InterferenceMM
	hub, pin := p.misesOver()
	area := math.Pi * p.DiameterMM * p.LengthMM
	pressing := p.Pressing
	if pressing == 0 {
		pressing = p.Friction
	}
	j := Joint{
		PressureMPa:         pressure,
		HubHoopMPa:          pressure * p.hubRatio(),
		HubMisesMPa:         pressure * hub,
		PinMisesMPa:         pressure * pin,
		HoldNm:              p.Friction * pressure * area * p.DiameterMM / 2 / 1000,
		PushOutN:            p.Friction * pressure * area,
		PressInN:            pressing * pressure * area,
		YieldInterferenceMM: p.yieldInterference(),
	}
	j.findYield(p)
	return j, nil
}

// yieldInterference returns that at which the first of the two parts whose yield
// is known begins to yield, 0 where neither is.
func (p Press) yieldInterference() float64 {
	_, pin := p.misesOver()
	atHub, atPin := p.Hub.YieldMPa/(p.eyeOver()*p.perInterference()), p.Pin.YieldMPa/(pin*p.perInterference())
	if atHub == 0 || atPin > 0 && atPin < atHub {
		return atPin
	}
	return atHub
}

func (j *Joint) findYield(p Press) {
	switch y := p.Hub.YieldMPa; {
	case y > 0 && p.Hub.Brittle && j.HubHoopMPa > y:
		j.Findings = append(j.Findings, Finding{HubCracks, j.HubHoopMPa, y})
	case y > 0 && !p.Hub.Brittle && j.HubMisesMPa > y:
		j.Findings = append(j.Findings, Finding{HubYields, j.HubMisesMPa, y})
	}
	if y := p.Pin.YieldMPa; y > 0 && j.PinMisesMPa > y {
		j.Findings = append(j.Findings, Finding{PinYields, j.PinMisesMPa, y})
	}
}

// For returns the interference that holds a torque, in N m, and the joint it
// makes; InterferenceMM is not looked at.
func (p Press) For(torqueNm float64) (interferenceMM float64, j Joint, err error) {
	if err := bound.First(p.check(), within(Torque, torqueNm, 1e-6, 1e9)); err != nil {
		return 0, Joint{}, err
	}
	d := p.DiameterMM
	pressure := 2000 * torqueNm / (p.Friction * math.Pi * d * d * p.LengthMM)
	p.InterferenceMM = pressure / p.perInterference()
	j, err = p.Joint()
	if err != nil {
		return 0, Joint{}, err
	}
	return p.InterferenceMM, j, nil
}

// EyeOutside returns a stand-in for the outside of the hub round an eye in a
// wheel: a cylinder as thick as the thinnest wall, to the rim or to the other
// hole, which is weaker than the wheel. throwMM is from one hole to the other,
// rimMM the radius of the rim from the shaft, eyeMM and otherMM the diameters of
// the eye and of the other hole (0: none). Common practice, no source.
func EyeOutside(throwMM, rimMM, eyeMM, otherMM float64) (float64, error) {
	if err := bound.First(
		length(Throw, throwMM), length(RimRadius, rimMM),
		length(Eye, eyeMM), within(Eye, otherMM, 0, MostMM),
	); err != nil {
		return 0, err
	}
	reach := math.Min(rimMM-throwMM, throwMM-otherMM/2)
	if otherMM == 0 {
		reach = rimMM - throwMM
	}
	if 2*reach < eyeMM+LeastMM {
		return 0, &Fault{Detail: Detail{NoWall}, Field: HubOutside, Got: 2 * reach, Least: eyeMM, Most: MostMM}
	}
	return 2 * reach, nil
}
