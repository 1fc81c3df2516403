package form

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/unit"
)

func TestLookupTellsKeysFromNames(t *testing.T) {
	f, keys, ok := Job.Lookup("pass.k3y.drive.tir")
	require.True(t, ok)
	assert.Equal(t, "pass.*.drive.tir", f.Pattern)
	assert.Equal(t, []string{"k3y"}, keys)
	assert.Equal(t, "pass.k3y.drive.tir", Fill(f.Pattern, keys))
	for _, name := range []string{"", ".", "pass", "pass.*.drive.tir", "pass..drive.tir", "pass.K.drive.tir", "pass.1.drive", "throw.x", "pass.1.2.drive.tir", "pass.waytoolongakey.drive.tir"} {
		_, _, ok := Job.Lookup(name)
		assert.False(t, ok, name)
	}
}

func TestRowsStandInTheirOrder(t *testing.T) {
	f := Form{
		"pass.b.order": "1", "pass.a.order": "2", "pass.c.drive.tir": "3", "pass.d.order": "10",
		"pass.B.order": "0", "throw": "40", "pass.a.drive.tir": "1",
	}
	assert.Equal(t, []string{"c", "b", "a", "d"}, f.Rows("pass"))
	assert.Empty(t, f.Rows("dial"))
}

// A reader finds the rows of every group by one walk, as the form does for each.
func TestAReaderFindsTheSameRows(t *testing.T) {
	f := Form{
		"pass.b.order": "1", "pass.a.order": "2", "pass.a.done.x.order": "2", "pass.a.done.y.hour": "3", "pass.a.done": "1",
		"pass.B.order": "0", "throw": "40", "pass..order": "1", ".a.order": "1", "dial.k.at": "3", "...": "1", "pass.waytoolongakey.order": "1",
	}
	r := Read(f)
	for _, group := range []string{"pass", "dial", "hole", "pass.a", "pass.a.done", "pass.b.done", "", ".", "pass.B", "throw"} {
		assert.Equal(t, f.Rows(group), r.Rows(group), group)
	}
	assert.Equal(t, []string{"y", "x"}, r.Apart().Rows("pass.a.done"))
}

func TestCheckFindsWhatIsWrong(t *testing.T) {
	assert.Empty(t, Check(Form{"pass.1.drive.tir": "2", "left": "timing", "throw": "1 5/8 in", "number": "Nº 12"}))
	problems := Check(Form{
		"nosuch": "1", "throw": "wide", "left": "up", "pass.1.order": "01", "number": string(make([]byte, 181)), "rim": "10 m",
	})
	var names []string
	for _, p := range problems {
		names = append(names, p.Name)
		assert.NotEmpty(t, p.Text)
	}
	assert.Equal(t, []string{"left", "nosuch", "number", "pass.1.order", "rim", "throw"}, names)
}

func TestAStepIsOneDivision(t *testing.T) {
	for _, row := range []struct {
		form     Form
		name     string
		by       int
		expected string
	}{
		{Form{}, "pass.1.drive.tir", 1, "0.5"},
		{Form{}, "pass.1.drive.tir", -1, "0"},
		{Form{"pass.1.drive.tir": "2"}, "pass.1.drive.tir", 1, "2.5"},
		{Form{"pass.1.drive.tir": "2.2"}, "pass.1.drive.tir", 1, "2.5"},
		{Form{"pass.1.drive.tir": "2", "drive.division": "0.1"}, "pass.1.drive.tir", -1, "1.9"},
		{Form{"pass.1.timing.tir": "2", "drive.division": "0.1"}, "pass.1.timing.tir", -1, "1.5"},
		{Form{"pass.1.timing.tir": "2", "drive.division": "0.1", "dials": "one"}, "pass.1.timing.tir", -1, "1.9"},
		{Form{"pass.1.timing.tir": "0.05", "timing.division": "0.01", "units": "metric"}, "pass.1.timing.tir", 1, "0.06"},
		{Form{"pass.1.drive.high": "12"}, "pass.1.drive.high", 1, "12:15"},
		{Form{"pass.1.drive.high": "12"}, "pass.1.drive.high", -1, "11:45"},
		{Form{"pass.1.drive.tir": "two"}, "pass.1.drive.tir", 1, "two"},
		{Form{"left": "timing"}, "left", 1, "timing"},
		{Form{}, "nosuch", 1, ""},
		{Form{"timing.division": "1", "dial.a.half": "timing", "pass.1.dial.a.tir": "2"}, "pass.1.dial.a.tir", 1, "3"},
		{Form{"timing.division": "1", "dial.a.half": "drive", "pass.1.dial.a.turn": "2"}, "pass.1.dial.a.turn", 1, "2.5"},
		{Form{"bigend.eye": " "}, "bigend.eye", 1, " 8"},
		{Form{"pass.1.drive.turn": "0;.5;1"}, "pass.1.drive.turn", 1, "0;.5;1.5"},
		{Form{"pass.1.drive.turn": "0;.5;1"}, "pass.1.drive.turn", -1, "0;.5;0.5"},
		{Form{"pass.1.drive.turn": "0; 2;"}, "pass.1.drive.turn", 1, "0; 2;2.5"},
		{Form{"pass.1.drive.turn": "0, 2, 4"}, "pass.1.drive.turn", 1, "0, 2, 4.5"},
		{Form{"pass.1.drive.turn": "0 2 thou"}, "pass.1.drive.turn", 1, "0 2.5 thou"},
		{Form{"pass.1.drive.turn": "0 2thou"}, "pass.1.drive.turn", 1, "0 2.5thou"},
		{Form{"pass.1.drive.turn": "0 2  thou"}, "pass.1.drive.turn", 1, "0 2 2.5 thou"},
		{Form{"pass.1.drive.turn": "0 0.05 mm"}, "pass.1.drive.turn", 1, "0 0.06 mm"},
		{Form{"pass.1.drive.turn": "0 x"}, "pass.1.drive.turn", 1, "0 x"},
	} {
		assert.Equal(t, row.expected, Step(row.form, row.name, row.by), "%v", row)
	}
}

// One reader of lists: what Enter makes of one reads as a list again, with what
// was typed in it and nothing else.
func TestEnterGoesOnInAList(t *testing.T) {
	const name = "pass.1.drive.turn"
	for _, row := range []struct {
		text, before, after string
		done                bool
	}{
		{"", "0 ", "", false},
		{"98", "98 ", "", false},
		{"98 ", "98 98 ", "", false},
		{"0; 2", "0; 2;", "", false},
		{"0; 2;", "0; 2;2;", "", false},
		{"0, 2", "0, 2 ", "", false},
		{"0 2 thou", "0 2 ", " thou", false},
		{"0 2  thou", "0 2 2 ", " thou", false},
		{"0 2thou", "0 2 ", " thou", false},
		{"0 2 thous and", "0 2 thous and", "", true}, // wrong: left as it is
		{"0 1 2 1", "0 1 2 1 ", "", false},           // open for the first point again
		{"0 1 2 1 ", "0 1 2 1", "", true},
		{"0 1 2 1  mm", "0 1 2 1 mm", "", true},
		{"0 1 2 1 0", "0 1 2 1 0", "", true},
	} {
		before, after, done := Next(Form{name: row.text}, name, 4, 5)
		assert.Equal(t, []any{row.before, row.after, row.done}, []any{before, after, done}, "%q", row.text)
	}
	for text, want := range map[string]int{"0; 2;": 4, "0 2 thou": 3, "0;.5;1": 4} {
		f := Form{name: text}
		for range 2 {
			before, after, _ := Next(f, name, 4, 5)
			f[name] = before + after
		}
		assert.Len(t, Read(f).Numbers(9, ReadingTurn, "1", "drive"), want, f[name])
	}
}

func TestOtherUnitsRewriteBareFiguresAlone(t *testing.T) {
	f := Form{"pass.1.drive.tir": "2", "pass.1.timing.tir": "0.05 mm", "throw": "42", "tolerance": "x"}
	assert.Equal(t, Form{"pass.1.drive.tir": "0.0508"}, InUnits(f, "metric", 0))
	assert.Empty(t, InUnits(f, "inch", 0))
	assert.Equal(t, Form{"pass.1.drive.tir": "0.051"}, InUnits(f, "metric", 0.1))
	f["drive.division"] = "0.1"
	assert.Equal(t, Form{"pass.1.drive.tir": "0.0508", "drive.division": "0.00254"}, InUnits(f, "metric", 0.1), "a finer dial shows more")
}

func TestNoNameOrNumberStandsTwice(t *testing.T) {
	names, numbers := map[string]bool{}, map[int]bool{}
	for _, f := range Job.Fields() {
		assert.False(t, names[f.Pattern], f.Pattern)
		assert.False(t, numbers[f.Number], "%d", f.Number)
		names[f.Pattern], numbers[f.Number] = true, true
	}
}

// Each name of names.go has its row, and each row what its kind wants: a range, in
// which what stands in lies, words, or room for text.
func TestEveryRowIsWhole(t *testing.T) {
	for id := range table {
		row := &table[id]
		require.NotEmpty(t, row.Pattern, "%d", id)
		assert.NotZero(t, row.Numbers[0], row.Pattern)
		assert.Equal(t, strings.Contains(row.Pattern, "@"), len(row.Places) > 0, row.Pattern)
		switch row.Kind {
		case Quantity, List:
			assert.Less(t, row.Min, row.Max, row.Pattern)
			assert.Equal(t, row.Kind == List, row.Long > 0, row.Pattern)
		case Choice:
			assert.NotEmpty(t, row.Choices, row.Pattern)
		case Words:
			assert.NotZero(t, row.Long, row.Pattern)
		}
		if row.Default != "" {
			v, err := unit.Parse(row.Default, row.Unit)
			require.NoError(t, err, row.Pattern)
			assert.GreaterOrEqual(t, v, row.Min, row.Pattern)
			assert.LessOrEqual(t, v, row.Max, row.Pattern)
		}
	}
}

func TestNamesAreFilledInTurn(t *testing.T) {
	for _, row := range []struct {
		id   ID
		keys []string
		name string
	}{
		{Throw, nil, "throw"},
		{ShaftPin, []string{"timing"}, "timing.pin"},
		{ReadingTIR, []string{"k3y", "drive"}, "pass.k3y.drive.tir"},
		{ReadingTIR, []string{"k3y", "dial.b"}, "pass.k3y.dial.b.tir"},
		{PartPiston, []string{"cylinder.a.new"}, "cylinder.a.new.piston"},
		{CutDepth, []string{"made", "a"}, "made.a.depth"},
	} {
		name := row.id.Name(row.keys...)
		assert.Equal(t, row.name, name)
		_, _, ok := Job.Lookup(name)
		assert.True(t, ok, name)
	}
	assert.Panics(t, func() { ReadingTIR.Name("k3y") })
	assert.Panics(t, func() { Throw.Name("k3y") })
}

func BenchmarkTable(b *testing.B) {
	for range b.N {
		newTable(&table)
	}
}

func TestANewPartTakesThePlaceOfTheWeighed(t *testing.T) {
	for name, weighed := range map[string]string{
		"new.piston": "weight.piston", "cylinder.b.new.rod": "cylinder.b.weight.rod", "weight.piston": "", "new.house": "", "throw": "", "cylinder.b.weight.rod": "",
	} {
		got, ok := Renewed(name)
		assert.Equal(t, weighed, got, name)
		assert.Equal(t, weighed != "", ok, name)
	}
}

// On the knife-edges a reader's pin has fields of its own, each kind in each place.
func TestAPinsOwnReadings(t *testing.T) {
	r := Read(Form{"pin.b.whole.hung": "100", "knife.whole.hung": "200", "pin.b.drive.hour": "3", "pin.b.timing.weight": "x", "pin.b.whole.radius": "70", "throw": "40"})
	hung, _ := r.Number(KnifeHung, "whole")
	assert.Equal(t, 200.0, hung)
	r.Pin = "b"
	hung, _ = r.Number(KnifeHung, "whole")
	assert.Equal(t, 100.0, hung)
	assert.Equal(t, "3", r.Text(KnifeHour, "drive"))
	assert.Equal(t, 70.0, r.Or(1, KnifeRadius, "whole"))
	assert.True(t, r.Blank(KnifeRadius, "drive"))
	r.Number(KnifeWeight, "timing")
	assert.Equal(t, "pin.b.timing.weight", r.Problems[0].Name)
	assert.Equal(t, "40", r.Text(Throw), "all else is the crank's")
}
