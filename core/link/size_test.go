package link

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/form"
)

// shop is a job's table with all that a pass may hold, whatever the job's own
// has by now: both quick forms, a turn of readings, and what was done.
var shop = newRich(shopFields()...)

func shopFields() (all []form.Field) {
	all = append(all,
		form.Field{Pattern: "left", Number: 1, Kind: form.Choice, Choices: []string{"drive", "timing"}},
		form.Field{Pattern: "tolerance", Number: 6},
		form.Field{Pattern: "throw", Number: 7},
		form.Field{Pattern: "rim", Number: 8},
		form.Field{Pattern: "engine", Number: 200, Kind: form.Words, Long: 80},
		form.Field{Pattern: "number", Number: 201, Kind: form.Words, Long: 20},
		form.Field{Pattern: "pass.*.order", Number: 30, Kind: form.Order},
		form.Field{Pattern: "pass.*.struck", Number: 60, Kind: form.Choice, Choices: []string{"", "drive", "timing"}},
		form.Field{Pattern: "pass.*.struckat", Number: 61},
		form.Field{Pattern: "pass.*.blows", Number: 62},
		form.Field{Pattern: "pass.*.strength", Number: 63, Kind: form.Choice, Choices: []string{"usual", "light", "hard"}},
		form.Field{Pattern: "pass.*.clamped", Number: 64, Kind: form.Choice, Choices: []string{"", "squeeze", "spread"}},
		form.Field{Pattern: "pass.*.clampedat", Number: 65},
		form.Field{Pattern: "pass.*.turned", Number: 66},
	)
	for i, side := range []string{"drive", "timing"} {
		n := 10 * (i + 1)
		all = append(all,
			form.Field{Pattern: side + ".at", Number: n + 1},
			form.Field{Pattern: side + ".pin", Number: n + 2},
			form.Field{Pattern: side + ".bearing", Number: n + 3},
			form.Field{Pattern: "pass.*." + side + ".how", Number: n + 30, Kind: form.Choice, Choices: []string{"hour", "halfway", "pin", "turn"}},
			form.Field{Pattern: "pass.*." + side + ".tir", Number: n + 31},
			form.Field{Pattern: "pass.*." + side + ".high", Number: n + 32},
			form.Field{Pattern: "pass.*." + side + ".turn", Number: n + 37, Kind: form.List, Long: 200},
		)
	}
	return all
}

// sixPasses is a crank trued in six passes, set up by measuring, with both a run-out
// and a whole turn read at each dial, and a strike and a clamp in each pass.
func sixPasses(turns [2]string) form.Form {
	f := form.Form{
		"left": "timing", "tolerance": "1.5", "throw": "41.3", "rim": "187",
		"drive.at": "74.5", "drive.pin": "121", "drive.bearing": "68.5",
		"timing.at": "71", "timing.pin": "117.5", "timing.bearing": "65",
		"engine": "Single 350, long stroke", "number": "112",
	}
	keys := []string{"k3x9q0vd", "8fm2z7ta", "c01pw5ge", "zy6h4n8r", "5d7u2bqs", "m9e0xj3l"}
	for i, key := range keys {
		p := "pass." + key + "."
		f[p+"order"] = strconv.Itoa(i)
		for j, side := range []string{"drive", "timing"} {
			f[p+side+".how"] = "turn"
			f[p+side+".tir"] = []string{"4.5", "3", "2.5", "1.5", "1", "0.7"}[(i+j)%6]
			f[p+side+".high"] = []string{"4:30", "10:15", "3", "7:45", "12", "1:30"}[(i+2*j)%6]
			f[p+side+".turn"] = turns[j]
		}
		f[p+"struck"] = []string{"drive", "timing"}[i%2]
		f[p+"struckat"] = []string{"3", "9", "2:30"}[i%3]
		f[p+"blows"] = strconv.Itoa(1 + i%3)
		f[p+"strength"] = []string{"usual", "light", "hard"}[i%3]
		f[p+"clamped"] = []string{"squeeze", "spread"}[i%2]
		f[p+"clampedat"] = []string{"6", "2:30", "10"}[i%3]
		f[p+"turned"] = []string{"0.25", "0.5", "1"}[i%3]
	}
	return f
}

// A job of six passes fits 700 characters of link, with turns of 8 and of 12
// readings in half and in tenth thou.
func TestSixPassesFit(t *testing.T) {
	for _, row := range []struct {
		name  string
		turns [2]string
	}{
		{"8 readings", [2]string{"0 .5 1 1.5 1 .5 0 -.5", "0 -.5 -1.5 -2 -1.5 -.5 0 .5"}},
		{"12 readings", [2]string{"0 .5 1 1.5 2 2 1.5 1 .5 0 -.5 -.5", "0 -.5 -1 -1.5 -2 -2 -1.5 -1 -.5 0 .5 .5"}},
		{"12 readings to a tenth", [2]string{"0.0 0.4 0.9 1.3 1.6 1.7 1.6 1.2 0.7 0.3 0.0 -0.1", "0.0 -0.3 -0.7 -1.1 -1.4 -1.6 -1.4 -1.2 -0.8 -0.4 -0.1 0.1"}},
	} {
		f := sixPasses(row.turns)
		text, err := encode(shop, f)
		require.NoError(t, err, row.name)
		t.Logf("%s: %d fields, %d characters", row.name, len(f), len(text))
		assert.LessOrEqual(t, len(text), 700, row.name)
		got, err := decode(shop, text)
		require.NoError(t, err, row.name)
		assert.Equal(t, f, got, row.name)
	}
}
