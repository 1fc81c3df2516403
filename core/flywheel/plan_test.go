package flywheel

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/wheel"
)

// 0.75 kg off each wheel of a 500 cc single, with no web under 10 mm and no rim
// under 15 mm deep and 20 mm wide: common practice, no source.
func TestThreeQuartersOfAKiloOffASingle(t *testing.T) {
	least := Least{WebMM: 10, RimDepthMM: 15, RimWidthMM: 20, HoleMM: 5}
	for _, row := range []struct {
		name string
		done []Cut
		cut  Cut
		vary Vary
	}{
		{"recess one side", nil, Cut{Kind: Recess, Side: wheel.Outer, FromMM: 24, ToMM: 84}, VaryDepth},
		{"face one side", nil, Cut{Kind: FaceSide, Side: wheel.Inner}, VaryDepth},
		{"rim", nil, Cut{Kind: TurnRim}, VaryDiameter},
		{"holes after a recess", []Cut{{Kind: Recess, Side: wheel.Outer, FromMM: 24, ToMM: 80, DepthMM: 8}},
			Cut{Kind: HoleRing, Number: 8, PitchMM: 67, FirstHour: 0.75, Through: true}, VaryDiameter},
	} {
		done := cutting(t, single(), row.done...)
		wanted := 750 - done.Off().MassG
		found, err := Plan(done.Cut, steel, row.cut, row.vary, wanted, least)
		if row.name == "rim" { // 20 mm of rim can't give 5 mm all round and 750 g
			var cannot *Cannot
			require.ErrorAs(t, err, &cannot)
			require.NotNil(t, cannot.Wall)
			assert.Equal(t, wheel.RimDepth, cannot.Wall.Kind)
			assert.InDelta(t, math.Pi*(100*100-95*95)*28*steel*1e-6, cannot.MostG, 1e-3)
			assert.InDelta(t, 190, cannot.Most.ToDiameterMM, 1e-3)
			continue
		}
		require.NoError(t, err, row.name)
		assert.InDelta(t, wanted, found.Off.MassG, 1e-6, row.name)
		all := cutting(t, single(), append(row.done, found.Cut)...)
		assert.InDelta(t, 750, all.Off().MassG, 1e-6, row.name)
		assert.Equal(t, all.AfterSection.Walls(), found.Walls, row.name)
		for _, w := range found.Walls {
			assert.GreaterOrEqual(t, w.MM, least.of(w.Kind)-1e-9, "%s: wall %d", row.name, w.Kind)
		}
	}
}

func TestPlanIsTheInverseOfTheCut(t *testing.T) {
	for _, row := range []struct {
		cut  Cut
		vary Vary
		size func(c Cut) float64
	}{
		{Cut{Kind: FaceSide, DepthMM: 1.25}, VaryDepth, func(c Cut) float64 { return c.DepthMM }},
		{Cut{Kind: Recess, Side: wheel.Inner, FromMM: 30, ToMM: 78, DepthMM: 7.5}, VaryDepth, func(c Cut) float64 { return c.DepthMM }},
		{Cut{Kind: Bevel, FromMM: 85, ToMM: 100, DepthMM: 6}, VaryDepth, func(c Cut) float64 { return c.DepthMM }},
		{Cut{Kind: TurnRim, ToDiameterMM: 193}, VaryDiameter, func(c Cut) float64 { return c.ToDiameterMM }},
		{Cut{Kind: HoleRing, Number: 6, PitchMM: 70, FirstHour: 1, DiameterMM: 9, DepthMM: 8, PointDeg: 118}, VaryDepth, func(c Cut) float64 { return c.DepthMM }},
		{Cut{Kind: HoleRing, Number: 6, PitchMM: 70, FirstHour: 1, DiameterMM: 9, Through: true}, VaryDiameter, func(c Cut) float64 { return c.DiameterMM }},
		{Cut{Kind: HoleRing, Number: 6, PitchMM: 70, FirstHour: 1, DiameterMM: 9, Through: true}, VaryNumber, func(c Cut) float64 { return float64(c.Number) }},
	} {
		made := cutting(t, single(), row.cut)
		found, err := Plan(single(), steel, row.cut, row.vary, made.Off().MassG, Least{})
		require.NoError(t, err, "%+v", row.cut)
		assert.InDelta(t, row.size(row.cut), row.size(found.Cut), 1e-6, "%+v", row.cut)
	}
}

// Turned down past its recess a wheel has no rim left to be too thin; a plan
// doesn't jump over the rim that it would have left on the way.
func TestAPlanStopsAtTheFirstWallInItsWay(t *testing.T) {
	w := wheel.Wheel{DiameterMM: 200, WidthMM: 28, BoreMM: 24, Rings: []wheel.Ring{{FromMM: 30, ToMM: 80, DepthFromMM: 5, DepthToMM: 5}}}
	_, err := Plan(w, steel, Cut{Kind: TurnRim}, VaryDiameter, 750, Least{RimDepthMM: 15})
	var cannot *Cannot
	require.ErrorAs(t, err, &cannot)
	assert.InDelta(t, 190, cannot.Most.ToDiameterMM, 1e-6)
	require.NotNil(t, cannot.Wall)
	assert.Equal(t, wheel.RimDepth, cannot.Wall.Kind)
}

func TestNumberOfHolesComesNearest(t *testing.T) {
	cut := Cut{Kind: HoleRing, PitchMM: 70, FirstHour: 1, DiameterMM: 9, Through: true}
	each := math.Pi * 81 / 4 * 18 * steel * 1e-6
	for holes, wanted := range map[int]float64{5: 4.6 * each, 4: 4.4 * each, 1: 0.6 * each} {
		found, err := Plan(single(), steel, cut, VaryNumber, wanted, Least{})
		require.NoError(t, err)
		assert.Equal(t, holes, found.Cut.Number)
	}
	_, err := Plan(single(), steel, cut, VaryNumber, 1, Least{})
	var cannot *Cannot
	require.ErrorAs(t, err, &cannot)
	assert.InDelta(t, each, cannot.LeastG, 1e-9)
}

func TestPlanThatCannot(t *testing.T) {
	pinched := Least{WebMM: 19} // more than stands there
	for _, row := range []struct {
		name  string
		cut   Cut
		vary  Vary
		off   float64
		least Least
		wall  wheel.WallKind
		most  float64
	}{
		{"web", Cut{Kind: Recess, FromMM: 50, ToMM: 80}, VaryDepth, 800, Least{WebMM: 10}, wheel.Web, 0},
		{"already too thin", Cut{Kind: Recess, FromMM: 50, ToMM: 80}, VaryDepth, 50, pinched, wheel.Web, -1},
		{"floor under holes", Cut{Kind: HoleRing, Number: 6, PitchMM: 70, FirstHour: 1, DiameterMM: 9, PointDeg: 118}, VaryDepth, 200, Least{HoleMM: 4}, wheel.HoleFloor, 0},
		{"between holes", Cut{Kind: HoleRing, Number: 12, PitchMM: 70, DiameterMM: 9, Through: true}, VaryDiameter, 900, Least{HoleMM: 4}, wheel.HoleToHole, 0},
	} {
		_, err := Plan(single(), steel, row.cut, row.vary, row.off, row.least)
		var cannot *Cannot
		require.ErrorAs(t, err, &cannot, row.name)
		require.NotNil(t, cannot.Wall, row.name)
		assert.Equal(t, row.wall, cannot.Wall.Kind, row.name)
		assert.Equal(t, row.off, cannot.WantedG)
		assert.Less(t, cannot.MostG, row.off, row.name)
		if row.most < 0 {
			assert.Zero(t, cannot.MostG, row.name)
			continue
		}
		most := cutting(t, single(), cannot.Most)
		assert.InDelta(t, cannot.MostG, most.Off().MassG, 1e-9, row.name)
		w, ok := thinnest(most, row.wall)
		require.True(t, ok)
		assert.InDelta(t, row.least.of(row.wall), w.MM, 1e-6, row.name)
		assert.NotEmpty(t, cannot.Error())
	}
	// With no wall asked for, the metal itself runs out.
	_, err := Plan(single(), steel, Cut{Kind: Recess, FromMM: 50, ToMM: 80}, VaryDepth, 3000, Least{})
	var cannot *Cannot
	require.ErrorAs(t, err, &cannot)
	var gone *wheel.Fault
	require.ErrorAs(t, cannot.Err, &gone)
	assert.Equal(t, wheel.WebLeft, gone.Field)
}

func TestPlanThatMakesNoSense(t *testing.T) {
	for _, row := range []struct {
		field Field
		cut   Cut
		vary  Vary
		off   float64
		least Least
	}{
		{Varied, Cut{Kind: TurnRim}, VaryDepth, 100, Least{}},
		{Varied, Cut{Kind: FaceSide}, VaryDiameter, 100, Least{}},
		{Varied, Cut{Kind: HoleRing, Through: true}, VaryDepth, 100, Least{}},
		{Varied, Cut{Kind: Recess}, VaryNumber, 100, Least{}},
		{WantedOff, Cut{Kind: FaceSide}, VaryDepth, math.NaN(), Least{}},
		{WantedOff, Cut{Kind: FaceSide}, VaryDepth, -1, Least{}},
		{WantedOff, Cut{Kind: FaceSide}, VaryDepth, 1e9, Least{}},
		{LeastWall, Cut{Kind: FaceSide}, VaryDepth, 100, Least{WebMM: -3}},
		{LeastWall, Cut{Kind: FaceSide}, VaryDepth, 100, Least{HoleMM: math.NaN()}},
	} {
		_, err := Plan(single(), steel, row.cut, row.vary, row.off, row.least)
		var fault *Fault
		require.ErrorAs(t, err, &fault, "%+v", row)
		assert.Equal(t, row.field, fault.Field)
	}
	// A recess that could not be made at any depth says why.
	_, err := Plan(single(), steel, Cut{Kind: Recess, FromMM: 5, ToMM: 80}, VaryDepth, 100, Least{})
	var cannot *Cannot
	require.ErrorAs(t, err, &cannot)
	var fault *wheel.Fault
	require.ErrorAs(t, cannot.Err, &fault)
	assert.Equal(t, wheel.RingFrom, fault.Field)
}

func BenchmarkPlan(b *testing.B) {
	for b.Loop() {
		_, err := Plan(single(), steel, Cut{Kind: Recess, FromMM: 24, ToMM: 84}, VaryDepth, 700, Least{WebMM: 10})
		require.NoError(b, err)
	}
}
