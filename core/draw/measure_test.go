package draw

import (
	"math"
	"math/rand"
	"testing"
)

var measures = map[string]MeasureView{
	"measure-given": {
		Prefix: "m", LeftEnd: Drive,
		Left:  HalfDims{Dim{54.5, "54.5 mm", false}, Dim{30, "30 mm", false}, Dim{115.8, "115.8 mm", false}},
		Right: HalfDims{Dim{68.9, "68.9 mm", false}, Dim{41, "41 mm", false}, Dim{130.5, "130.5 mm", false}},
		Throw: Dim{38.6, "38.6 mm", false}, Rim: Dim{160, "160 mm", false},
	},
	"measure-assumed": {
		Prefix: "m", LeftEnd: Timing,
		Left:  HalfDims{Dim{60, "60 mm", true}, Dim{30, "30 mm", true}, Dim{120, "120 mm", true}},
		Right: HalfDims{Dim{20, "20 mm", false}, Dim{50, "50 mm", true}, Dim{120, "120 mm", true}},
		Throw: Dim{40, "40 mm", true}, Rim: Dim{160, "160 mm", true},
	},
	"measure-bare": {Prefix: "m"},
}

func TestMeasureGolden(t *testing.T) {
	for name, v := range measures {
		t.Run(name, func(t *testing.T) {
			golden(t, name, Measure(v))
			apart(t, Measure(v), MeasureHeight)
		})
	}
}

func TestMeasureKeepsItsWordsApartWhateverTheFigures(t *testing.T) {
	rng := rand.New(rand.NewSource(3))
	dim := func(top float64) Dim {
		x := top * math.Pow(rng.Float64(), 3)
		return Dim{x, []string{"4.875 in", "123.45 mm", "7 mm"}[rng.Intn(3)], rng.Intn(2) == 0}
	}
	half := func() HalfDims { return HalfDims{dim(400), dim(400), dim(400)} }
	for range 300 {
		v := MeasureView{Prefix: "m", Left: half(), Right: half(), Throw: dim(200), Rim: dim(600)}
		apart(t, Measure(v), MeasureHeight)
	}
}

func TestMeasureWithoutNumbers(t *testing.T) {
	nan := Dim{MM: math.NaN(), Words: hostile}
	checkPicture(t, Measure(MeasureView{Prefix: hostile, Left: HalfDims{nan, nan, nan}, Right: HalfDims{nan, Dim{MM: math.Inf(1)}, nan}, Throw: nan, Rim: nan}))
}
