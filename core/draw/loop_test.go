package draw

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// single returns the force of one upright cylinder by the primary and second
// order series, with a share of the reciprocating weight balanced.
func single(force, balanced, lambda float64, points int) (loop []Push) {
	for i := range points {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(points))
		second := lambda * math.Cos(4*math.Pi*float64(i)/float64(points))
		loop = append(loop, Push{Up: force * (c + second - balanced*c), Right: -force * balanced * s})
	}
	return loop
}

var loops = map[string]LoopView{
	"loop-single": {Prefix: "l", Unit: "N", Found: single(6000, 0.3, 0.27, 72), Target: single(6000, 0.6, 0.27, 72),
		FoundPeak: "5.8 kN", TargetPeak: "4 kN", Cylinders: []float64{0}, UpWord: "up", RightWord: "front"},
	"loop-same": {Prefix: "l", Unit: "N", Found: single(900, 0.5, 0.25, 72), Target: single(900, 0.5, 0.25, 72),
		FoundPeak: "0.7 kN", TargetPeak: "0.7 kN", Cylinders: []float64{-25, 25}, UpWord: "up", RightWord: "front"},
	"loop-none": {Prefix: "l"},
}

func TestLoopGolden(t *testing.T) {
	for name, v := range loops {
		t.Run(name, func(t *testing.T) {
			golden(t, name, Loop(v))
			apart(t, Loop(v), LoopHeight)
		})
	}
}

func TestLoopNamesItsPeaksWhereverTheyAre(t *testing.T) {
	for deg := 0.0; deg < 360; deg += 10 {
		for other := 0.0; other < 360; other += 10 {
			v := LoopView{Prefix: "l", Unit: "N", FoundPeak: "12.5 kN", TargetPeak: "10 kN", UpWord: "up", RightWord: "front",
				Found: []Push{{0, 0}, polarPush(100, deg)}, Target: []Push{{0, 0}, polarPush(100-other/5, other)}}
			svg := Loop(v)
			apart(t, svg, LoopHeight)
			require.Contains(t, svg, ">found 12.5 kN<")
			require.Contains(t, svg, ">target 10 kN<")
		}
	}
	bad := []Push{{math.NaN(), 1}, {math.Inf(1), 0}, {1, 1}}
	checkPicture(t, Loop(LoopView{Prefix: hostile, Found: bad, Target: bad, FoundPeak: hostile, Cylinders: []float64{math.NaN()}}))
}

func polarPush(size, deg float64) Push {
	s, c := math.Sincos(deg * math.Pi / 180)
	return Push{size * c, size * s}
}
