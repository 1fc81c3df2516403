package fit

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func spread(least, mean, most, plusMinus float64) Size {
	return Size{MeanMM: mean, LeastMM: least, MostMM: most, PlusMinusMM: plusMinus, SpotPlusMinusMM: 2 * plusMinus}
}

func assertGap(t *testing.T, want, got Gap) {
	t.Helper()
	assert.InDeltaSlice(t, []float64{want.MeanMM, want.LeastMM, want.MostMM, want.PlusMinusMM, want.SpotPlusMinusMM},
		[]float64{got.MeanMM, got.LeastMM, got.MostMM, got.PlusMinusMM, got.SpotPlusMinusMM}, 1e-12)
	assert.Equal(t, want.Findings, got.Findings)
}

func TestClearanceOfAPinInItsEye(t *testing.T) {
	g, err := Running(spread(30.04, 30.05, 30.07, 0.003), spread(29.99, 30, 30.01, 0.004))
	require.NoError(t, err)
	assertGap(t, Gap{0.05, 0.03, 0.08, 0.005, 0.010, nil}, g)

	g, err = Running(spread(30.00, 30.02, 30.03, 0.003), spread(29.99, 30, 30.01, 0.004))
	require.NoError(t, err)
	require.Len(t, g.Findings, 1)
	assert.Equal(t, TightSpot, g.Findings[0].Trouble)
	assert.InDelta(t, -0.01, g.Findings[0].Got, 1e-12)

	g, err = Running(spread(30, 30.5, 31, 0), Known(30, 0))
	require.NoError(t, err)
	assert.Equal(t, []Finding{{TightSpot, 0, 0}}, g.Findings)

	interference, err := Between(Known(61.97, 0.003), Known(62, 0.004)) // a race that interferences is no fault here
	require.NoError(t, err)
	assertGap(t, Gap{-0.03, -0.03, -0.03, 0.005, 0.005, nil}, interference)
}

func TestPinBiggerThanItsEye(t *testing.T) {
	_, err := Running(Known(30, 0), Known(30.02, 0))
	assertFault(t, err, Fault{Field: Pin, Got: 30.02, Least: LeastMM, Most: 30, Detail: Detail{TooBigForHole}})
	_, err = Running(Known(30, 0), Known(30, 0))
	assertFault(t, err, Fault{Field: Pin, Got: 30, Least: LeastMM, Most: 30, Detail: Detail{TooBigForHole}})
	assertFault(t, BushWall(Known(30.1, 0), Known(30.1, 0)), Fault{Field: BushOutside, Got: 30.1, Least: 30.1, Most: MostMM, Detail: Detail{NoWall}})
	assertFault(t, BushWall(Known(0, 0), Known(30.1, 0)), Fault{Field: BushBore, Got: 0, Least: LeastMM, Most: MostMM})
	require.NoError(t, BushWall(Known(30.1, 0), Known(36, 0)))
	_, err = Rollers(Known(30, 0), Known(6, 0), Known(41.9, 0))
	assertFault(t, err, Fault{Field: Pin, Got: 42, Least: LeastMM, Most: 41.9, Detail: Detail{RollersTooBig}})
	_, err = Rollers(Known(30, 0), Known(0, 0), Known(41.9, 0))
	assertFault(t, err, Fault{Field: Roller, Got: 0, Least: LeastMM, Most: MostMM})
	_, err = Running(Known(30, 0), Known(-1, 0))
	assertFault(t, err, Fault{Field: Pin, Got: -1, Least: LeastMM, Most: MostMM})
	mean := 30.0
	_, err = Between(spread(31, mean, 31, 0), Known(29, 0))
	assertFault(t, err, Fault{Field: Eye, Got: 31, Least: LeastMM, Most: mean * (1 + tieSlack)})
	_, err = Between(spread(30, mean, 29, 0), Known(29, 0))
	assertFault(t, err, Fault{Field: Eye, Got: 29, Least: mean * (1 - tieSlack), Most: MostMM})
}

func TestRollersCountTwice(t *testing.T) {
	g, err := Rollers(spread(29.99, 30, 30.01, 0.003), spread(5.999, 6, 6.002, 0.002), spread(42.02, 42.03, 42.04, 0))
	require.NoError(t, err)
	assertGap(t, Gap{0.03, 42.02 - 42.014, 42.04 - 41.988, 0.005, 0.010, nil}, g)
}

func TestThouPerInchOfDiameter(t *testing.T) {
	l, err := ThouPerInch(25.4, 1, 1.5) // an inch: 1 and 1½ thou
	require.NoError(t, err)
	assert.InDelta(t, 0.0254, l.LeastMM, 1e-15)
	assert.InDelta(t, 0.0381, l.MostMM, 1e-15)
	_, err = ThouPerInch(25.4, 1.5, 1)
	assertFault(t, err, Fault{Field: MostWanted, Got: 1, Least: 1.5, Most: 1e3})
}

func TestSideClearanceAndTheWidthOverTheWheels(t *testing.T) {
	w := Widths{LeftMM: 25.1, RightMM: 24.9, RodMM: 18, WashersMM: 1}
	mouth, side, err := w.Side(69.4)
	require.NoError(t, err)
	assert.InDelta(t, 19.4, mouth, 1e-12)
	assert.InDelta(t, 0.4, side, 1e-12)
	over, err := w.OverWheels(0.4)
	require.NoError(t, err)
	assert.InDelta(t, 69.4, over, 1e-12)
	_, _, err = w.Side(68.5)
	assertFault(t, err, Fault{Field: OverWheels, Got: 68.5, Least: 25.1 + 24.9 + 19, Detail: Detail{TooNarrow}})
	_, _, err = w.Side(0)
	assertFault(t, err, Fault{Field: OverWheels, Got: 0, Least: LeastMM, Most: MostMM})
	_, err = Widths{}.OverWheels(0.4)
	assertFault(t, err, Fault{Field: WheelWidth, Got: 0, Least: LeastMM, Most: MostMM})
	_, err = w.OverWheels(-0.1)
	assertFault(t, err, Fault{Field: SideClearance, Got: -0.1, Most: MostMM})
}

// ISO 14253-1: inside the limits less ±, outside the limits and ±, or neither.
func TestJudgeByTheDecisionRule(t *testing.T) {
	for _, row := range []struct {
		least, most, plusMinus float64
		want                   Judgement
	}{
		{0.04, 0.06, 0.005, Judgement{Clear, Clear}},
		{0.035, 0.065, 0.005, Judgement{Clear, Clear}},
		{0.034, 0.066, 0.005, Judgement{Doubtful, Doubtful}},
		{0.026, 0.05, 0.005, Judgement{Doubtful, Clear}},
		{0.024, 0.05, 0.005, Judgement{Beyond, Clear}},
		{0.04, 0.076, 0.005, Judgement{Clear, Beyond}},
		{0.02, 0.08, 0.005, Judgement{Beyond, Beyond}},
		{0.03, 0.07, 0, Judgement{Clear, Clear}},
		{0.0299, 0.0701, 0, Judgement{Beyond, Beyond}},
	} {
		got, err := Gap{LeastMM: row.least, MostMM: row.most, SpotPlusMinusMM: row.plusMinus}.Judge(Limits{0.03, 0.07})
		require.NoError(t, err)
		assert.Equal(t, row.want, got, "%v", row)
	}
	got, err := Gap{LeastMM: -0.03, MostMM: -0.02}.Judge(Limits{-0.025, -0.01}) // an interference too great
	require.NoError(t, err)
	assert.Equal(t, Judgement{Beyond, Clear}, got)
	_, err = Gap{}.Judge(Limits{0.07, 0.03})
	assertFault(t, err, Fault{Field: MostWanted, Got: 0.03, Least: 0.07, Most: MostMM})
	_, err = Gap{LeastMM: math.NaN()}.Judge(Limits{0.03, 0.07})
	require.Error(t, err)
}
