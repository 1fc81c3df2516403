package balance

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// single is a 500 cm³ sort of single whose sums come out round: m_rec 550 g,
// m_rot 760 g.
func single() Parts {
	return Parts{
		Cylinders: []Cylinder{{
			PistonG: 310, RingsG: 24, GudgeonPinG: 86, ClipsG: 2,
			Rod: Rod{SmallG: 128, BigG: 300, WholeG: 428},
		}},
		BearingG: 40, CrankpinG: 420,
	}
}

func TestSumsOfParts(t *testing.T) {
	p := single()
	require.NoError(t, p.Check(1))
	assert.Equal(t, 550.0, p.RecG())
	assert.Equal(t, 760.0, p.RotG())
	assert.Equal(t, 760+0.6*550, p.CounterG(0.6))

	twin := p
	twin.Cylinders = append(twin.Cylinders, twin.Cylinders[0])
	twin.Cylinders[1].BankRad = math.Pi / 3
	require.NoError(t, twin.Check(1))
	assert.Equal(t, 1100.0, twin.RecG())
	assert.Equal(t, 1060.0, twin.RotG(), "the pin and the bearing count once")
	assert.Equal(t, []Bore{{0, 550}, {math.Pi / 3, 550}}, twin.Bores())
}

// A lever on two scales: the level reactions of a rod add up to its weight.
func TestRodEnds(t *testing.T) {
	for _, row := range []struct {
		rod        Rod
		step       float64
		want       RodSum
		small, big float64
	}{
		{Rod{128, 300, 428}, 1, Agrees, 128, 300},
		{Rod{128, 300, 429.5}, 1, Agrees, 128, 300},
		{Rod{128, 300, 429.6}, 1, EndsLight, 128, 300},
		{Rod{128, 300, 426.5}, 1, Agrees, 128, 300},
		{Rod{128, 300, 426.4}, 1, EndsHeavy, 128, 300},
		{Rod{128.1, 300.2, 428.3}, 0, Agrees, 128.1, 300.2},
		{Rod{128, 0, 428}, 1, NotCompared, 128, 300},
		{Rod{0, 300, 428}, 1, NotCompared, 128, 300},
		{Rod{128, 300, 0}, 1, NotCompared, 128, 300},
	} {
		assert.Equal(t, row.want, row.rod.Compare(row.step).Sum, "%+v", row)
		small, big := row.rod.Ends()
		assert.InDelta(t, row.small, small, 1e-12)
		assert.InDelta(t, row.big, big, 1e-12)
		p := single()
		p.Cylinders[0].Rod = row.rod
		assert.Equal(t, row.want == EndsHeavy, p.Check(row.step) != nil, "%+v", row)
	}
}

func TestRodEndsHeavierThanTheRod(t *testing.T) {
	for _, rod := range []Rod{{200, 300, 428}, {429, 0, 428}, {0, 429, 428}} {
		p := single()
		p.Cylinders[0].Rod = rod
		var fault *Fault
		require.ErrorAs(t, p.Check(1), &fault)
		assert.Equal(t, RodEnds, fault.Field)
		assert.Equal(t, rod.SmallG+rod.BigG, fault.Got)
		assert.InDelta(t, 428, fault.Most, 1.5+1e-6)
	}
}

func TestWeightsThatCannotBe(t *testing.T) {
	for _, row := range []struct {
		field Field
		spoil func(p *Parts, bad float64)
	}{
		{Bearing, func(p *Parts, b float64) { p.BearingG = b }},
		{Crankpin, func(p *Parts, b float64) { p.CrankpinG = b }},
		{Piston, func(p *Parts, b float64) { p.Cylinders[0].PistonG = b }},
		{Rings, func(p *Parts, b float64) { p.Cylinders[0].RingsG = b }},
		{GudgeonPin, func(p *Parts, b float64) { p.Cylinders[0].GudgeonPinG = b }},
		{Clips, func(p *Parts, b float64) { p.Cylinders[0].ClipsG = b }},
		{SmallEnd, func(p *Parts, b float64) { p.Cylinders[0].Rod.SmallG = b }},
		{BigEnd, func(p *Parts, b float64) { p.Cylinders[0].Rod.BigG = b }},
		{WholeRod, func(p *Parts, b float64) { p.Cylinders[0].Rod.WholeG = b }},
		{Bank, func(p *Parts, b float64) { p.Cylinders[0].BankRad = 1e9 * b }},
	} {
		for _, bad := range []float64{-1, math.NaN(), math.Inf(1), 1e9} {
			p := single()
			row.spoil(&p, bad)
			var fault *Fault
			require.ErrorAs(t, p.Check(1), &fault, "%v %g", row.field, bad)
			assert.Equal(t, row.field, fault.Field)
			assert.NotEmpty(t, fault.Error())
		}
	}
	var fault *Fault
	require.ErrorAs(t, Parts{}.Check(1), &fault)
	assert.Equal(t, Cylinders, fault.Field)
	require.ErrorAs(t, Parts{Cylinders: []Cylinder{{}}}.Check(1), &fault)
	assert.Equal(t, Reciprocating, fault.Field)
	require.ErrorAs(t, single().Check(math.NaN()), &fault)
	assert.Equal(t, Step, fault.Field)
}

// An end that wasn't weighed is what the other leaves of the whole, however light the
// rod is.
func TestTheEndNotWeighedIsTheRest(t *testing.T) {
	for _, r := range []Rod{{SmallG: 0.25, WholeG: 0.75}, {BigG: 0.5, WholeG: 0.75}, {SmallG: 0.25, BigG: 0.5, WholeG: 9}, {SmallG: 0.25, BigG: 0.5}} {
		small, big := r.Ends()
		assert.Equal(t, [2]float64{0.25, 0.5}, [2]float64{small, big}, "%+v", r)
	}
}
