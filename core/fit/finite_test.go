package fit

import (
	"errors"
	"math"
	"math/rand"
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
)

// nasty are the figures no crank has, among some that it could.
var nasty = []float64{0, -1, 1, 20, 0.05, 60, 1e-3, 1e4, 1e-7, 1e300, -1e300, 1e-300, 5e-324, math.MaxFloat64,
	math.NaN(), math.Inf(1), math.Inf(-1), math.Copysign(0, -1)}

// fill sets every figure of a value: most as in the good one it came with, some nasty.
func fill(v reflect.Value, rng *rand.Rand) {
	switch v.Kind() {
	case reflect.Float64:
		if rng.Intn(10) == 0 {
			v.SetFloat(nasty[rng.Intn(len(nasty))])
		}
	case reflect.Int:
		if rng.Intn(10) == 0 {
			v.SetInt([]int64{0, -1, 2, 1 << 62, -1 << 63}[rng.Intn(5)])
		}
	case reflect.Uint8:
		if rng.Intn(10) == 0 {
			v.SetUint(uint64(rng.Intn(256)))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			fill(v.Field(i), rng)
		}
	case reflect.Slice:
		for i := range v.Len() {
			fill(v.Index(i), rng)
		}
	}
}

func assertFinite(t *testing.T, v reflect.Value, what any) {
	t.Helper()
	switch v.Kind() {
	case reflect.Float64:
		assert.False(t, math.IsNaN(v.Float()) || math.IsInf(v.Float(), 0), "%+v", what)
	case reflect.Struct:
		for i := range v.NumField() {
			assertFinite(t, v.Field(i), what)
		}
	case reflect.Slice:
		for i := range v.Len() {
			assertFinite(t, v.Index(i), what)
		}
	}
}

// Whatever goes in, either a *Fault comes out with nothing else, or figures that
// are figures.
func TestNothingButFiguresComesOut(t *testing.T) {
	seat := Seat{InterferenceMM: 0.02, WallMM: 0, Material: Steel()}
	press := Press{DiameterMM: 25, InterferenceMM: 0.03, LengthMM: 20, HubMM: 60, HollowMM: 8, Friction: 0.12, Pressing: 0.1, Hub: Steel(), Pin: GreyIron()}
	shrink := Shrink{DiameterMM: 62, InterferenceMM: 0.05, OuterPerK: 22e-6, InnerPerK: 11e-6, RoomC: 20}
	widths := Widths{25, 25, 18, 1}
	shimming := Shimming{FacesMM: 110, CrankMM: 109, LeastMM: 0.1, WantMM: 0.2, MostMM: 0.3, GrowthMM: 0.05, Shims: []Shim{{0.2, 2}, {0.5, 1}}, ASide: 2, Centred: true, CaseLeftMM: 55, CrankLeftMM: 54.5, OffMM: 0.1}
	for _, f := range []struct {
		do   any
		good []any
	}{
		{Measure, []any{[]Micrometer{{Spot{NearEnd, true}, 30}, {Spot{FarEnd, true}, 30.01}, {Spot{FarEnd, true}, 30.02}}, Instrument{0.01, 0.005}}},
		{Between, []any{Known(30, 0.01), Known(30.01, 0.01)}},
		{Running, []any{Known(30.05, 0.01), Known(30.01, 0.01)}},
		{Rollers, []any{Known(30, 0), Known(6, 0), Known(42.1, 0)}},
		{ThouPerInch, []any{25.4, 1.0, 1.5}},
		{Widths.Side, []any{widths, 70.0}},
		{Widths.OverWheels, []any{widths, 0.4}},
		{Gap.Judge, []any{Gap{MeanMM: 0.05, LeastMM: 0.04, MostMM: 0.06}, Limits{0.03, 0.07}}},
		{Press.Joint, []any{press}},
		{Press.For, []any{press, 200.0}},
		{Press.Tapered, []any{press, 0.125}},
		{EyeOutside, []any{40.0, 80.0, 25.0, 30.0}},
		{MustHold, []any{20.0, 6000.0, 4.0}},
		{Margin, []any{300.0, 200.0}},
		{Shrink.InterferenceAt, []any{shrink, 100.0, 20.0}},
		{Shrink.HeatOuter, []any{shrink, 0.02, 20.0}},
		{Shrink.LooseAt, []any{shrink}},
		{Bearing.PlayLeft, []any{Bearing{BoreMM: 25, OutsideMM: 62, PlayMM: 0.02, Ring: Steel()}, seat, Seat{0.02, 80, LightAlloy()}}},
		{Rock.BigEnd, []any{Rock{0.5, 150, 30, 18, 0.3, 50}}},
		{OutOfParallel, []any{Bar{0, 0.1, 100}, Bar{0, 0.2, 100}, 0.01}},
		{EndFloat.Float, []any{EndFloat{110, 109, 0.8, 22e-6, 11e-6}, 60.0, 60.0}},
		{Shimming.Choose, []any{shimming}},
	} {
		rng := rand.New(rand.NewSource(21))
		answered := 0
		for range 2000 {
			if answers(t, f.do, f.good, rng) {
				answered++
			}
		}
		assert.Greater(t, answered, 20, "%v", reflect.TypeOf(f.do)) // the good figures do get through
		assert.Less(t, answered, 2000)
	}
}

// answers calls a function on spoilt figures, looks at what comes out, and says
// whether it was an answer.
func answers(t *testing.T, do any, good []any, rng *rand.Rand) bool {
	t.Helper()
	var in []reflect.Value
	var given []any
	for _, g := range good {
		v := reflect.New(reflect.TypeOf(g)).Elem()
		v.Set(reflect.ValueOf(g))
		if v.Kind() == reflect.Slice {
			v.Set(reflect.AppendSlice(reflect.Zero(v.Type()), v))
		}
		fill(v, rng)
		in = append(in, v)
		given = append(given, v.Interface())
	}
	out := reflect.ValueOf(do).Call(in)
	results, err := out[:len(out)-1], out[len(out)-1].Interface()
	if err == nil {
		for _, r := range results {
			assertFinite(t, r, given)
		}
		return true
	}
	var fault *Fault
	assert.True(t, errors.As(err.(error), &fault), "%T", err)
	assert.NotEmpty(t, fault.Error())
	for _, r := range results {
		assert.True(t, r.IsZero(), "%+v gave %+v with %v", given, r, err)
	}
	return false
}
