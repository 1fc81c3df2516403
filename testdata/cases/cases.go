// Package cases holds, for tests, cranks whose truth is known: readings of exact rigid
// bodies by full rotations, made apart from the solver. own.json is core/crank's, which
// writes it too.
package cases

import (
	_ "embed"
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"
)

//go:embed truing.json
var truing []byte

//go:embed throws.json
var throws []byte

// Crank is a crank of one throw, its lengths in mm from the left end, its hours as
// seen from the end named.
type Crank struct {
	Name     string
	Throw    float64 `json:"throw_mm"`
	Pin      float64 `json:"pin_middle_mm"`
	Length   float64 `json:"length_mm"`
	Rim      float64 `json:"rim_radius_mm"`
	SeenFrom string  `json:"clock_seen_from"` // "left" or "right"
	Mount    string  // "centres" or "journals"
	Division float64 `json:"division_mm"` // 0: readings aren't rounded
	Supports []Place
	Bearings []Place
	Dials    []Dial
	Truth    struct {
		Offset struct {
			T float64 `json:"towards_12"`
			N float64 `json:"towards_3"`
		} `json:"right_shaft_offset_mm"`
		Gap struct {
			Widest *float64 `json:"widest_clock"` // nil: no gap
			Across float64  `json:"across_rim_mm"`
		} `json:"face_gap"`
		// Run-outs at both dials, or at At in the crank's own bearings, mm.
		Untwist  [2]float64 `json:"tir_after_untwist_mm"`
		Closed   [2]float64 `json:"tir_after_closing_gap_mm"`
		Both     [2]float64 `json:"tir_after_both_mm"`
		Bearings [2]float64 `json:"in_bearings_tir_mm"`
		At       [2]float64 `json:"in_bearings_at_mm"`
	}
}

// Place is where something stands, on the half named: "left" or "right".
type Place struct {
	Half string
	At   float64 `json:"at_mm"`
}

// Dial is a dial's full turn, and what it should be found to show.
type Dial struct {
	Place
	Readings []struct{ Clock, MM float64 }
	TIR      float64 `json:"true_tir_mm"`
	HighSpot float64 `json:"true_high_spot_clock"`
}

// Throws is a crank of several throws: pieces and joints are numbered from the left,
// from 1; hours are seen from the left, 12 being the first pin.
type Throws struct {
	Name string
	Pins []struct {
		At    float64 `json:"at_mm"`
		Throw float64 `json:"throw_mm"`
		Phase float64 `json:"phase_clock"`
	}
	Length   float64 `json:"length_mm"`
	Rim      float64 `json:"rim_radius_mm"`
	Mount    string
	Supports []struct {
		Piece int
		At    float64 `json:"at_mm"`
	}
	Dials []struct {
		Piece  int
		At     float64 `json:"at_mm"`
		RunOut float64 `json:"tir_mm"`
		High   float64 `json:"high_spot_clock"`
		T      float64 `json:"e_towards_12_mm"`
		N      float64 `json:"e_towards_3_mm"`
	}
	Gaps []struct {
		Joint int
		G12   float64 `json:"gap_at_12_mm"`
		G3    float64 `json:"gap_at_3_mm"`
		G6    float64 `json:"gap_at_6_mm"`
		G9    float64 `json:"gap_at_9_mm"`
	} `json:"rim_gaps"`
	Truth struct {
		Joints []struct {
			T        float64   `json:"offset_towards_12_mm"`
			N        float64   `json:"offset_towards_3_mm"`
			Widest   float64   `json:"gap_widest_clock"`
			Across   float64   `json:"gap_across_rim_mm"`
			Untwist  []float64 `json:"tir_after_untwist_mm"`
			CloseGap []float64 `json:"tir_after_closing_gap_mm"`
		}
		All []float64 `json:"tir_after_all_mm"`
	}
}

// OfOne returns the sixteen cranks of one throw.
func OfOne(t testing.TB) []Crank { return read[Crank](t, truing, 16) }

// OfSeveral returns the thirty cranks of several.
func OfSeveral(t testing.TB) []Throws { return read[Throws](t, throws, 30) }

func read[T any](t testing.TB, text []byte, n int) []T {
	t.Helper()
	var file struct{ Cases []T }
	require.NoError(t, json.Unmarshal(text, &file))
	require.Len(t, file.Cases, n)
	return file.Cases
}
