package main

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const strike = `{"pass.1.drive.tir": 4, "pass.1.drive.high": "3", "pass.1.timing.tir": "4 thou", "pass.1.timing.high": 9}`

func answer(t *testing.T, job string) (map[string]any, error) {
	t.Helper()
	var out bytes.Buffer
	if err := run([]string{"-"}, strings.NewReader(job), &out); err != nil {
		assert.Empty(t, out.String())
		return nil, err
	}
	var answers map[string]any
	require.NoError(t, json.Unmarshal(out.Bytes(), &answers))
	return answers, nil
}

func TestAnswersCarryTheirKeys(t *testing.T) {
	a, err := answer(t, strike)
	require.NoError(t, err)
	for _, name := range []string{"offset.towards12_mm", "offset.towards3_mm", "gap.widest_hour", "gap.across_rim_mm", "verdict", "moves", "floor_tir_mm", "bearings"} {
		assert.Contains(t, a, name)
	}
	moves := a["moves"].([]any)
	require.Len(t, moves, 1)
	move := moves[0].(map[string]any)
	assert.Equal(t, "strike", move["kind"])
	assert.Equal(t, "drive", move["wheel"])
	assert.Equal(t, 3.0, move["hour"])
	assert.Equal(t, "drive", move["seen_from"])
	assert.InDelta(t, 4*0.0254*120/75, move["amount_mm"], 1e-9, "both needles' 2e, carried to the pin")
	require.Len(t, move["predicted_tir_mm"], 2)
	for _, v := range move["predicted_tir_mm"].([]any) {
		assert.InDelta(t, 0, v, 1e-12)
	}
	bearings := a["bearings"].(map[string]any)
	assert.Len(t, bearings["tir_mm"], 2)
	assert.Len(t, bearings["tilt_arcmin"], 2)
	for name := range a {
		assert.False(t, strings.HasPrefix(name, "picture."), name)
	}
}

func TestAnEmptyJobIsAnsweredToo(t *testing.T) {
	a, err := answer(t, `{}`)
	require.NoError(t, err)
	assert.Equal(t, "needs a reading", a["verdict"])
	assert.Equal(t, []any{}, a["moves"])
	assert.Nil(t, a["gap.widest_hour"])
}

func TestABadFileIsRefusedWithAMessage(t *testing.T) {
	for _, row := range []struct{ job, says string }{
		{``, "not a flat JSON object"},
		{`[1]`, "not a flat JSON object"},
		{`{"throw": {"mm": 40}}`, `"throw" holds an object: a text or a number will do`},
		{`{"throw": [40]}`, `"throw" holds a list:`},
		{`{"throw": true}`, `"throw" holds true or false:`},
		{`{"throw": null}`, `"throw" holds null:`},
		{`{"throw": "wide"}`, "throw: "},
		{`{"no.such": "1"}`, "no.such: no field has this name"},
		{`{"pass.1.drive.tir": "4", "pass.1.drive.high": "3", "pass.1.timing.tir": "4", "pass.1.timing.high": "9", "drive.at": "150"}`, "drive.at: "},
	} {
		_, err := answer(t, row.job)
		require.Error(t, err, row.job)
		assert.Contains(t, err.Error(), row.says)
	}
	assert.Error(t, run(nil, nil, nil))
	assert.Error(t, run([]string{"/no/such/file"}, nil, nil))
}

func asked(t *testing.T, a map[string]any) []map[string]any {
	t.Helper()
	var all []map[string]any
	for _, each := range a["asks"].([]any) {
		all = append(all, each.(map[string]any))
	}
	return all
}

// A script that knows nothing of cranks fills what is asked until nothing is.
func TestWhatIsAskedNamesItsField(t *testing.T) {
	job := map[string]string{}
	for range 4 {
		text, err := json.Marshal(job)
		require.NoError(t, err)
		a, err := answer(t, string(text))
		require.NoError(t, err)
		assert.Nil(t, a["stop"])
		ask := asked(t, a)[0]
		assert.Equal(t, "reading", ask["what"])
		job[ask["field"].(string)] = "4"
	}
	assert.Equal(t, map[string]string{
		"pass.1.drive.tir": "4", "pass.1.drive.high": "4", "pass.1.timing.tir": "4", "pass.1.timing.high": "4",
	}, job)
}

const opposed = `"pass.1.drive.tir": 8, "pass.1.drive.high": 3, "pass.1.timing.tir": 8, "pass.1.timing.high": 9, "pass.1.order": 1`

// What is asked is answered by writing a choice into the field named.
func TestAScriptAnswersWhatIsAsked(t *testing.T) {
	since := opposed + `, "pass.2.order": 2, "pass.2.drive.tir": 3, "pass.2.drive.high": 9, "pass.2.timing.tir": 3, "pass.2.timing.high": 3`
	for _, row := range []struct{ job, what, field string }{
		{since, "since", "pass.2.since"},
		{`"pass.1.drive.tir": 1, "pass.1.drive.high": 3, "pass.1.timing.tir": 0.5, "pass.1.timing.high": 3`, "centres", "centres"},
		{`"pass.1.drive.tir": 4, "pass.1.drive.high": 6, "pass.1.timing.tir": 4, "pass.1.timing.high": 6`, "pressure", "pass.1.tailstock"},
	} {
		a, err := answer(t, `{`+row.job+`}`)
		require.NoError(t, err)
		ask := asked(t, a)[0]
		assert.Equal(t, row.what, ask["what"])
		assert.Equal(t, row.field, ask["field"])
		for _, choice := range ask["choices"].([]any) {
			again, err := answer(t, `{`+row.job+`, "`+row.field+`": "`+choice.(string)+`"}`)
			require.NoError(t, err, choice)
			for _, other := range asked(t, again) {
				assert.NotEqual(t, row.what, other["what"], choice)
			}
		}
	}
}

func TestAStopTellsItsCausesInOrderAndTheTest(t *testing.T) {
	a, err := answer(t, `{`+opposed+`, "pass.1.done.a.kind": "strike", "pass.1.done.a.hour": 3,
		"pass.2.order": 2, "pass.2.drive.tir": 13, "pass.2.drive.high": 3, "pass.2.timing.tir": 13, "pass.2.timing.high": 9, "pass.2.done.a.hour": 3, "pass.2.done.a.strength": "0.4",
		"pass.3.order": 3, "pass.3.drive.tir": 15.5, "pass.3.drive.high": 3, "pass.3.timing.tir": 15.5, "pass.3.timing.high": 9}`)
	require.NoError(t, err)
	stop := a["stop"].(map[string]any)
	assert.Contains(t, stop["causes"], "hours from the other end")
	assert.Contains(t, stop["causes"], "dials exchanged")
	assert.Contains(t, stop["test"], "Quick test: ")
	assert.Equal(t, []any{}, a["moves"], "no blow is advised")
}
