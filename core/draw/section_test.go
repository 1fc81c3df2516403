package draw

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func rect(r0, r1, x0, x1 float64) []Across {
	return []Across{{r0, x0}, {r1, x0}, {r1, x1}, {r0, x1}}
}

var sections = map[string]SectionView{
	"section-cuts": {
		Prefix:  "w",
		Outline: []Across{{12, 0}, {40, 0}, {40, 6}, {75, 6}, {75, 3}, {98, 3}, {98, 25}, {75, 25}, {75, 22}, {40, 22}, {40, 28}, {12, 28}},
		Cuts: []Cut{
			{Outline: []Across{{98, 3}, {100, 3}, {100, 25}, {98, 25}}, Words: "1"},
			{Outline: rect(75, 98, 0, 3), Words: "2", Field: "cut.2.depth"},
			{Outline: rect(52, 62, 6, 22), Words: "3", Hole: true},
		},
		Diameters: []Dim{{200, "200 mm", false, "rim"}, {24, "24 mm", false, ""}, {80, "80 mm", true, "cut.2.from"}, {150, "150 mm", false, "cut.2.to"}},
		Width:     Dim{28, "28 mm", false, "width"},
		Lines:     4,
	},
	"section-made": {
		Prefix:  "w",
		Outline: []Across{{12, 0}, {30, 0}, {30, 6}, {75, 6}, {75, 0}, {98, 0}, {98, 28}, {12, 28}},
		Bosses:  [][]Across{rect(36, 66, 0, 6)},
		Holes:   [][]Across{rect(44, 58, 0, 28), {{82, 28}, {90, 28}, {90, 12}, {86, 9}, {82, 12}}},
		Width:   Dim{28, "28 mm", false, ""},
	},
	"section-thick": {Prefix: "w", Outline: rect(20, 50, 0, 90), Diameters: []Dim{{100, "100 mm", false, ""}, {40, "40 mm", true, ""}}, Width: Dim{90, "90 mm", true, "width"}, Lines: 2},
	"section-none":  {Prefix: "w"},
}

func TestSectionGolden(t *testing.T) {
	for name, v := range sections {
		t.Run(name, func(t *testing.T) {
			golden(t, name, FlywheelSection(v))
			apart(t, FlywheelSection(v), SectionHeight(v.Lines))
		})
	}
}

func TestSectionLeavesOutWhatIsNoSection(t *testing.T) {
	nan := math.NaN()
	svg := FlywheelSection(SectionView{Prefix: hostile, Outline: []Across{{nan, 0}, {1, 1}, {2, 2}}, Cuts: []Cut{{Outline: rect(0, 1, 0, math.Inf(1)), Words: hostile}},
		Bosses: [][]Across{{{nan, 1}, {1, 1}, {2, 2}}}, Holes: [][]Across{{{1, 1}}},
		Diameters: []Dim{{nan, "1", false, hostile}, {2, hostile, false, hostile}}, Width: Dim{nan, hostile, true, hostile}, Lines: 2})
	checkPicture(t, svg)
	assert.NotContains(t, svg, `class="hx"`)
}

func TestHatchStaysInside(t *testing.T) {
	l := []point{{0, 0}, {100, 0}, {100, 40}, {40, 40}, {40, 100}, {0, 100}}
	for _, step := range []float64{6, -9} {
		var p pen
		p.hatch(l, step)
		assert.Greater(t, strings.Count(string(p.b), "M"), 8)
		for _, seg := range strings.Split(string(p.b[strings.IndexByte(string(p.b), 'M')+1:]), "M") {
			for _, xy := range strings.Split(strings.TrimSuffix(seg, `"/>`), "L") {
				at := readPoint(t, xy)
				inside := at.x >= -0.01 && at.y >= -0.01 && at.x <= 100.01 && at.y <= 100.01 && (at.x <= 40.01 || at.y <= 40.01)
				assert.True(t, inside, "%v", at)
			}
		}
	}
}
