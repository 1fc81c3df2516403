package draw

import (
	"math"
	"math/rand"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

var plans = map[string]HolesView{
	"holes-plan": {Prefix: "h", SeenFrom: Timing, Wheel: Timing, Rim: 100, Throw: 45, Boss: 22, Shaft: 14, Zone: Zone{60, 94, 6, 2.2},
		Holes: []Hole{{80, 5, 16, false, false}, {80, 6, 12, false, false}, {80, 7, 16, false, false}, {70, 0.9, 25, true, false}, {78, 11, 14, false, true}}},
	"holes-full": {Prefix: "h", Rim: 80, Throw: 38, Boss: 18, Shaft: 12, FullSize: true,
		Holes: []Hole{{60, 5.5, 13, false, false}, {60, 6.5, 13, false, false}, {62, 3.6, 9, false, false}}},
	"holes-none": {Prefix: "h"},
}

func TestHolesGolden(t *testing.T) {
	for name, v := range plans {
		t.Run(name, func(t *testing.T) {
			svg := Holes(v)
			golden(t, name, svg)
			apart(t, svg, 460)
		})
	}
}

func TestHolesNumbersKeepApart(t *testing.T) {
	rng := rand.New(rand.NewSource(6))
	for range 200 {
		v := HolesView{Prefix: "h", Rim: 100, Throw: 45, Boss: 20, FullSize: rng.Intn(2) == 0}
		for range rng.Intn(12) {
			v.Holes = append(v.Holes, Hole{Radius: 50 + 40*rng.Float64(), Hour: 12 * rng.Float64(), Diameter: 5 + 20*rng.Float64()})
		}
		svg := Holes(v)
		checkPicture(t, svg)
		apart(t, svg, 460)
	}
}

// At full size a unit of the picture is the same on paper as in the plan: the
// wheel of 160 mm is drawn 2 × 177 units wide on a picture of 360.
func TestHolesFullSizeIsTrue(t *testing.T) {
	svg := Holes(plans["holes-full"])
	assert.Contains(t, svg, `class="dw fs" width="162.7118644mm" height="207.9096045mm" viewBox="0 0 360 460"`)
	assert.InDelta(t, 160, 162.7118644*2*177/360, 1e-6)
	assert.Contains(t, svg, `>100 mm by a rule?<`)
	// 100 mm of rule are 100 · 177/80 units: from 69.38 to 290.63.
	assert.Contains(t, svg, `d="M69.38 396L290.63 396`)
}

func TestHolesStandWhereTheyAreSaid(t *testing.T) {
	v := plans["holes-plan"]
	at := polar(point{180, 176}, 80*1.44, 150)
	var p pen
	p.circle("op", at, 8*1.44)
	assert.Contains(t, Holes(v), string(p.b))
}

func TestHolesWithoutNumbers(t *testing.T) {
	nan := math.NaN()
	svg := Holes(HolesView{Prefix: hostile, Rim: 100, Throw: nan, Boss: nan, Shaft: math.Inf(1), Zone: Zone{nan, 1, 1, 1}, Holes: []Hole{{nan, 1, 1, false, false}, {1, 1, math.Inf(1), true, false}}})
	checkPicture(t, svg)
	assert.Zero(t, strings.Count(svg, `class="tx tb" text-anchor="middle" x="1"`))
	checkPicture(t, Holes(HolesView{Prefix: "h", Rim: nan, FullSize: true, Holes: []Hole{{10, 1, 5, false, false}}}))
}
