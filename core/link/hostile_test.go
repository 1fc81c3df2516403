package link

import (
	"runtime"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/form"
)

// Worked by hand from the layout in body.go and the code in letters.go, so that
// neither changes unseen: no keys 1, one row 010, no depth 1, one field 1, its
// number 6 00110, in figures 0, "2" 1001, end 011.
func TestBodyByHand(t *testing.T) {
	const bits = "1" + "010" + "1" + "1" + "00110" + "0" + "1001" + "011" + "00000"
	var body []byte
	for i := 0; i < len(bits); i += 8 {
		b, err := strconv.ParseUint(bits[i:i+8], 2, 8)
		require.NoError(t, err)
		body = append(body, byte(b))
	}
	got, fault := writeBody(form.Job, form.Form{"tolerance": "2"})
	require.Nil(t, fault)
	assert.Equal(t, body, got)
	f, err := Decode(seal(1, body))
	require.NoError(t, err)
	assert.Equal(t, form.Form{"tolerance": "2"}, f)
}

func TestDecodeTellsWhy(t *testing.T) {
	whole, err := Encode(form.Form{"tolerance": "2"})
	require.NoError(t, err)
	for _, row := range []struct {
		name, text string
		want       Kind
	}{
		{"nothing", "", NotLink},
		{"an anchor", "as-found", NotLink},
		{"a long anchor", "how-to-measure-a-crank", NotLink},
		{"other signs", "%2e%2e/", NotLink},
		{"a beginning", whole[:3], Damaged},
		{"no end", whole[:len(whole)-1], Damaged},
		{"version 0", seal(0, []byte{0xC0}), Damaged},
		{"version 2, other layout", seal(2, []byte("anything at all")), Newer},
		{"version 255, no body", seal(255, nil), Newer},
		{"version 2, cut", seal(2, []byte("anything at all"))[:20], Damaged},
		{"no body", seal(1, nil), Damaged},
		{"at the bound", strings.Repeat("A", MaxText), Damaged},
		{"over the bound", strings.Repeat("A", MaxText+1), TooBig},
		{"far over the bound", strings.Repeat("%41", 10*MaxText), TooBig},
		{"escapes of escapes", strings.Repeat("%25", 10*MaxText), NotLink},
		{"an escape cut off", "%4", NotLink},
	} {
		f, err := Decode(row.text)
		assert.Nil(t, f, row.name)
		assert.Equal(t, row.want, kindOf(t, err), row.name)
	}
}

// A table that lacks what a link holds is older than the link.
func TestOlderTableSaysNewer(t *testing.T) {
	older := newRich([]form.Field{
		{Pattern: "size", Number: 1},
		{Pattern: "stands", Number: 7, Kind: form.Choice, Choices: []string{"", "above"}},
		{Pattern: "notes", Number: 301, Kind: form.Words, Long: 40},
		{Pattern: "pass.*.order", Number: 30, Kind: form.Order},
	}...)
	for _, row := range []struct {
		f    form.Form
		want Kind
	}{
		{form.Form{"size": "1", "stands": "above", "notes": "a", "pass.a.order": "1"}, 0},
		{form.Form{"size": "1", "told": "yes"}, Newer},
		{form.Form{"pass.a.high": "1"}, Newer},
		{form.Form{"wheel.a.hole.b.plug.c.fit.d.note": "1"}, Newer},
		{form.Form{"stands": "below"}, Newer},
		{form.Form{"notes": strings.Repeat("long ", 9)}, Newer},
	} {
		text, err := encode(richTable, row.f)
		require.NoError(t, err)
		_, err = decode(older, text)
		assert.Equal(t, row.want, kindOf(t, err), "%q", row.f)
	}
}

// So is one whose names nest less.
func TestDeeperNamesSayNewer(t *testing.T) {
	_, err := Decode(seal(1, craft(func(w *bitWriter) { gammas(w, 1, 2, maxDepth+2) })))
	assert.Equal(t, Newer, kindOf(t, err))
	for _, field := range form.Job.Fields() {
		assert.LessOrEqual(t, stars(&field), maxDepth, field.Pattern)
	}
}

// A choice that was typed before its list had it still reads the same.
func TestChoiceListMayGrow(t *testing.T) {
	before := newRich(form.Field{Pattern: "stands", Number: 7, Kind: form.Choice, Choices: []string{"above"}})
	after := newRich(form.Field{Pattern: "stands", Number: 7, Kind: form.Choice, Choices: []string{"above", "below"}})
	for _, word := range []string{"above", "below"} {
		text, err := encode(before, form.Form{"stands": word})
		require.NoError(t, err)
		f, err := decode(after, text)
		require.NoError(t, err)
		assert.Equal(t, form.Form{"stands": word}, f)
	}
}

// craft writes a body by hand.
func craft(write func(w *bitWriter)) []byte {
	var w bitWriter
	write(&w)
	return w.bytes
}

// gammas writes numbers in γ code.
func gammas(w *bitWriter, numbers ...uint64) {
	for _, n := range numbers {
		w.gamma(n)
	}
}

// figure writes a text in figures.
func figure(w *bitWriter, text string) {
	w.put(0, 1)
	figures.write(w, text)
}

// hostile is bodies that no version writes, under a right CRC.
var hostile = []struct {
	name string
	body []byte
}{
	{"a γ number without end", make([]byte, 12000)},
	{"keys beyond the end", craft(func(w *bitWriter) { gammas(w, 1<<31) })},
	{"rows beyond the end", craft(func(w *bitWriter) { gammas(w, 1, 1<<31) })},
	{"depth beyond the end", craft(func(w *bitWriter) { gammas(w, 1, 2, maxDepth+1) })},
	{"fields beyond the end", craft(func(w *bitWriter) { gammas(w, 1, 2, 1, 1<<31, 1) })},
	{"a key beyond the last", craft(func(w *bitWriter) { gammas(w, 2); w.wide(maxKeyNumber + 1); gammas(w, 2, 2, 1, 1, 30); figure(w, "1") })},
	{"a key that overflows", craft(func(w *bitWriter) { gammas(w, 3); w.wide(9); w.wide(1<<64 - 1) })},
	{"keys that go too far together", craft(func(w *bitWriter) {
		gammas(w, 3)
		w.wide(9)
		w.wide(maxKeyNumber)
		gammas(w, 3, 2, 1, 1, 30)
		figure(w, "1")
		gammas(w, 2, 2)
		w.put(1, 1)
		figure(w, "1")
	})},
	{"a key that no row has", craft(func(w *bitWriter) { gammas(w, 2); w.wide(9); gammas(w, 2, 1, 1, 1); figure(w, "1") })},
	{"a place out of range", craft(func(w *bitWriter) { gammas(w, 2); w.wide(9); gammas(w, 2, 2, 2, 1, 30); figure(w, "1") })},
	{"a place far out of range", craft(func(w *bitWriter) { gammas(w, 2); w.wide(9); gammas(w, 2, 2, 1<<32-1, 1, 30); figure(w, "1") })},
	{"a row twice", craft(func(w *bitWriter) {
		gammas(w, 1, 3, 1, 1, 1)
		figure(w, "1")
		gammas(w, 1)
		w.put(1, 1)
		figure(w, "2")
	})},
	{"rows out of order", craft(func(w *bitWriter) {
		gammas(w, 2)
		w.wide(9)
		gammas(w, 3, 2, 1, 1, 30)
		figure(w, "1")
		gammas(w, 1, 1, 1)
		figure(w, "2")
	})},
	{"a step back by overflow", craft(func(w *bitWriter) { gammas(w, 1, 2, 1, 2, 2, 1<<64-1); figure(w, "1"); figure(w, "1") })},
	{"a field of another depth", craft(func(w *bitWriter) { gammas(w, 1, 2, 1, 1, 30); figure(w, "1") })},
	{"an old shape spelled out", craft(func(w *bitWriter) {
		gammas(w, 3)
		w.wide(9)
		w.wide(1)
		gammas(w, 3, 2, 1, 1, 30)
		figure(w, "1")
		gammas(w, 2, 2)
		w.put(0, 1)
		gammas(w, 1, 30)
		figure(w, "2")
	})},
	{"figures in words", craft(func(w *bitWriter) { gammas(w, 1, 2, 1, 1, 1); w.put(0b110, 3); words.write(w, "12") })},
	{"words in plain bytes", craft(func(w *bitWriter) {
		gammas(w, 1, 2, 1, 1, 1)
		w.put(0b111, 3)
		gammas(w, 3)
		for _, c := range "abc" {
			w.put(uint64(c), 8)
		}
	})},
	{"plain bytes beyond the end", craft(func(w *bitWriter) { gammas(w, 1, 2, 1, 1, 1); w.put(0b111, 3); gammas(w, 1<<31) })},
	{"a letter spelled by its bits", craft(func(w *bitWriter) {
		gammas(w, 1, 2, 1, 1, 1)
		w.put(0b110, 3)
		words.put(w, other)
		w.put('e', 8)
		words.write(w, "nough")
	})},
	{"a text without end", craft(func(w *bitWriter) { gammas(w, 1, 2, 1, 1, 1); w.put(0, 1); w.put(0b001001, 6) })},
	{"a NUL", craft(func(w *bitWriter) {
		gammas(w, 1, 2, 1, 1, 1)
		w.put(0b111, 3)
		gammas(w, 2)
		w.put(0x0000, 16)
	})},
	{"no UTF-8", craft(func(w *bitWriter) {
		gammas(w, 1, 2, 1, 1, 1)
		w.put(0b111, 3)
		gammas(w, 2)
		w.put(0xC3C3, 16)
	})},
	{"a bit left over", craft(func(w *bitWriter) { gammas(w, 1, 2, 1, 1, 1); figure(w, "1"); w.put(1, 1) })},
	{"a byte left over", craft(func(w *bitWriter) { gammas(w, 1, 2, 1, 1, 1); figure(w, "1"); w.put(0, 9) })},
}

func TestHostileBodiesAreDamaged(t *testing.T) {
	for _, row := range hostile {
		f, fault := readBody(richTable, row.body)
		require.NotNil(t, fault, row.name)
		assert.Nil(t, f, row.name)
		assert.Equal(t, Damaged, fault.Kind, row.name)
	}
}

// The same bodies must be refused for what they are, not for a slip in the
// writing of them: one built in their manner opens.
func TestCraftedBodyOpens(t *testing.T) {
	body := craft(func(w *bitWriter) { gammas(w, 2); w.wide(9); gammas(w, 2, 2, 1, 1, 30); figure(w, "1") })
	f, fault := readBody(richTable, body)
	require.Nil(t, fault)
	assert.Equal(t, form.Form{"pass.8.order": "1"}, f)
}

// crowd is a job of many rows, all of forty blanks: the most names that the
// bytes of a link can hold.
func crowd(rows int) (rich, form.Form) {
	var fields []form.Field
	for n := range 40 {
		fields = append(fields, form.Field{Pattern: "pass.*.field" + strconv.Itoa(n), Number: n + 1})
	}
	f := form.Form{}
	for i := range rows {
		for _, field := range fields {
			f[form.Fill(field.Pattern, []string{numberKey(uint64(i + 1))})] = ""
		}
	}
	return newRich(fields...), f
}

// A link holds MaxNames names and no more.
func TestManyNames(t *testing.T) {
	table, f := crowd(form.MaxNames / 40)
	text, err := encode(table, f)
	require.NoError(t, err)
	got, err := decode(table, text)
	require.NoError(t, err)
	assert.Equal(t, f, got)

	_, f = crowd(form.MaxNames/40 + 1)
	_, err = encode(table, f)
	assert.Equal(t, TooBig, kindOf(t, err))
}

// A reading stops at MaxNames, and takes no more memory than so many names do
// (3 MB were measured).
func TestReadingIsBounded(t *testing.T) {
	table, _ := crowd(0)
	const rows = form.MaxNames/40 + 40
	body := craft(func(w *bitWriter) {
		w.gamma(rows + 1)
		for range rows {
			w.wide(1)
		}
		w.gamma(rows + 1)
		for i := range rows {
			gammas(w, 2, min(uint64(i), 1)+1)
			if i > 0 {
				w.put(1, 1)
			} else {
				gammas(w, 40)
				for range 40 {
					w.gamma(1)
				}
			}
			for range 40 {
				figure(w, "")
			}
		}
	})
	text := seal(1, body)
	require.LessOrEqual(t, len(text), MaxText)
	_, err := decode(table, text)
	assert.Equal(t, TooBig, kindOf(t, err))
	assert.Less(t, allocated(func() { decode(table, text) }), uint64(12<<20))
	for _, row := range hostile {
		assert.Less(t, allocated(func() { readBody(richTable, row.body) }), uint64(1<<20), row.name)
	}
}

// allocated is how many bytes a call allocates.
func allocated(call func()) uint64 {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	call()
	runtime.ReadMemStats(&after)
	return after.TotalAlloc - before.TotalAlloc
}

// 4,250 passes fit into a link of 15 kB, and held a page for 14 s.
func TestACrowdOfPassesIsRefused(t *testing.T) {
	f := form.Form{}
	for i := range uint64(4250) {
		f["pass."+numberKey(i+1)+".drive.tir"] = "1"
	}
	text, err := encode(form.Job, f)
	require.NoError(t, err)
	assert.Less(t, len(text), MaxText)
	got, err := Decode(text)
	assert.Nil(t, got)
	assert.Equal(t, Crowded, kindOf(t, err))
	assert.EqualError(t, err, "The job of this link is too big: 4250 passes; a job holds 200 at most.")
	_, err = Encode(f)
	assert.Equal(t, Crowded, kindOf(t, err))
}

// A job that fits the form but no link is told to go by file.
func TestLongNotesAreTooBig(t *testing.T) {
	f := form.Form{}
	for i := range uint64(20) {
		f["wheel."+numberKey(i+1)+".hole.a.plug.b.note"] = strings.Repeat("曲", 33)
	}
	_, err := encode(richTable, f)
	require.NoError(t, err)
	for i := range uint64(200) {
		f["wheel."+numberKey(i+1)+".hole.a.plug.b.note"] = strings.Repeat("曲", 33)
	}
	_, err = encode(richTable, f)
	assert.Equal(t, TooBig, kindOf(t, err))
}
