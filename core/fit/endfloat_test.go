package fit

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Each part grown by itself, L (1 + α ΔT).
func TestEndFloatColdAndHot(t *testing.T) {
	rng := rand.New(rand.NewSource(18))
	for range 200 {
		e := EndFloat{FacesMM: 110 + rng.Float64(), CrankMM: 108 + rng.Float64(), ShimsMM: 0.8, CasePerK: 22e-6, CrankPerK: 11.5e-6}
		caseK, crankK := 80*rng.Float64(), 120*rng.Float64()
		f, err := e.Float(caseK, crankK)
		require.NoError(t, err)
		assert.InDelta(t, e.FacesMM-e.CrankMM-e.ShimsMM, f.ColdMM, 1e-12)
		hot := e.FacesMM*(1+e.CasePerK*caseK) - (e.CrankMM+e.ShimsMM)*(1+e.CrankPerK*crankK)
		assert.InDelta(t, hot, f.HotMM, 1e-11)
		assert.InDelta(t, hot-f.ColdMM, f.GrowthMM, 1e-11)
	}
}

func TestEndFloatThatBinds(t *testing.T) {
	e := EndFloat{FacesMM: 110, CrankMM: 109.5, ShimsMM: 0.48, CasePerK: 11.5e-6, CrankPerK: 11.5e-6}
	f, err := e.Float(20, 80) // the crank warms before its case
	require.NoError(t, err)
	require.Len(t, f.Findings, 1)
	assert.Equal(t, Finding{BindsHot, f.HotMM, 0}, f.Findings[0])
	e.ShimsMM = 0.6
	f, err = e.Float(0, 0)
	require.NoError(t, err)
	assert.Equal(t, []Finding{{BindsCold, f.ColdMM, 0}, {BindsHot, f.HotMM, 0}}, f.Findings)
	f, err = EndFloat{FacesMM: 110, CrankMM: 110, CasePerK: 22e-6, CrankPerK: 11.5e-6}.Float(0, 0)
	require.NoError(t, err)
	assert.Equal(t, Floating{}, f) // a float of 0 just turns
	e.CrankMM = 0
	_, err = e.Float(0, 0)
	assertFault(t, err, Fault{Field: OverCrank, Got: 0, Least: LeastMM, Most: MostMM})
}
