package draw

import (
	"math"
	"math/rand"
	"testing"
)

var measures = map[string]MeasureView{
	"measure-given": {
		Prefix: "m", LeftEnd: Drive,
		Left:  HalfDims{Dim{MM: 54.5, Words: "54.5 mm", Assumed: false}, Dim{MM: 30, Words: "30 mm", Assumed: false}, Dim{MM: 115.8, Words: "115.8 mm", Assumed: false}},
		Right: HalfDims{Dim{MM: 68.9, Words: "68.9 mm", Assumed: false}, Dim{MM: 41, Words: "41 mm", Assumed: false}, Dim{MM: 130.5, Words: "130.5 mm", Assumed: false}},
		Throw: Dim{MM: 38.6, Words: "38.6 mm", Assumed: false}, Rim: Dim{MM: 160, Words: "160 mm", Assumed: false},
	},
	"measure-assumed": {
		Prefix: "m", LeftEnd: Timing,
		Left:  HalfDims{Dim{MM: 60, Words: "60 mm", Assumed: true}, Dim{MM: 30, Words: "30 mm", Assumed: true}, Dim{MM: 120, Words: "120 mm", Assumed: true}},
		Right: HalfDims{Dim{MM: 20, Words: "20 mm", Assumed: false}, Dim{MM: 50, Words: "50 mm", Assumed: true}, Dim{MM: 120, Words: "120 mm", Assumed: true}},
		Throw: Dim{MM: 40, Words: "40 mm", Assumed: true}, Rim: Dim{MM: 160, Words: "160 mm", Assumed: true},
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
		return Dim{MM: x, Words: []string{"4.875 in", "123.45 mm", "7 mm"}[rng.Intn(3)], Assumed: rng.Intn(2) == 0}
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
