package link

import (
	"math/rand"
	"slices"
	"strconv"
	"strings"

	"pintwelve/core/form"
)

// rich is a table with every kind of field and every depth, for what the job's
// own table has no field of yet.
type rich struct{ fields []form.Field }

func (t rich) Fields() []form.Field { return t.fields }

func (t rich) Lookup(name string) (*form.Field, []string, bool) {
	for i := range t.fields {
		if keys, ok := match(t.fields[i].Pattern, name); ok {
			return &t.fields[i], keys, true
		}
	}
	return nil, nil, false
}

func match(pattern, name string) (keys []string, ok bool) {
	if !strings.HasSuffix(name, pattern[strings.LastIndexByte(pattern, '*')+1:]) {
		return nil, false
	}
	p, n := strings.Split(pattern, "."), strings.Split(name, ".")
	if len(p) != len(n) {
		return nil, false
	}
	for i := range p {
		if p[i] == "*" {
			keys = append(keys, n[i])
		}
		if p[i] != n[i] && p[i] != "*" || p[i] == "*" && !form.ValidKey(n[i]) {
			return nil, false
		}
	}
	return keys, true
}

// newRich is a table of fields; those that say nothing else take 40 bytes.
func newRich(fields ...form.Field) rich {
	for i := range fields {
		if fields[i].Long == 0 {
			fields[i].Long = 40
		}
	}
	return rich{fields}
}

var richTable = newRich([]form.Field{
	{Pattern: "size", Number: 1},
	{Pattern: "units", Number: 2, Kind: form.Choice, Choices: []string{"inch", "metric"}},
	{Pattern: "stands", Number: 7, Kind: form.Choice, Choices: []string{"", "above", "0", "below"}},
	{Pattern: "owner", Number: 300, Kind: form.Words, Long: 80},
	{Pattern: "notes", Number: 301, Kind: form.Words, Long: 4000},
	{Pattern: "told", Number: 70000, Kind: form.Tick},
	{Pattern: "pass.*.order", Number: 30, Kind: form.Order},
	{Pattern: "pass.*.turn", Number: 31, Kind: form.List, Long: 200},
	{Pattern: "pass.*.high", Number: 32},
	{Pattern: "pass.*.done", Number: 33, Kind: form.Tick},
	{Pattern: "pass.*.cut.*.order", Number: 40, Kind: form.Order},
	{Pattern: "pass.*.cut.*.depth", Number: 35},
	{Pattern: "wheel.*.hole.*.plug.*.note", Number: 50, Kind: form.Words, Long: 100},
	{Pattern: "wheel.*.hole.*.plug.*.fit.*.note", Number: 51, Kind: form.Words, Long: 100},
}...)

// sample is what people type, paste and get wrong, and what is hard on a code.
var sample = []string{
	"", "2", "0.5", ".5", "-1.25", "4:30", "12", "0 .5 1 1.5 1 .5 0 -.5", "1 5/8", "+1", "0,5", "-0",
	" 2 thou", "2 thou ", "2 bananas", "2 lb 3 oz", "1½", "−0.5", "0\t.5\t1", "0; .5; 1", "yes", "Yes", "metric",
	"Brass hammer, light; it moved at once.\nLeft over night.", "père", "\r\n", "№ 7 в работе", "曲軸", "🔧", "\u202eabc",
	" ", "  ", ":", "\xc2\xa0", "A", "ÿ", "'", "end.", "0000000000000000000000000000000000000000",
}

// alphabet is for texts of no sense at all.
var alphabet = []rune("0123456789 .,:;/+-−½abcxyzABCXYZ\"'\n\t\r~|é曲🔧\u00a0\u200d\uffff")

// random returns a form of up to most names, any text that fits under each.
func random(rnd *rand.Rand, t table, most int) form.Form {
	f := form.Form{}
	keys := make([]string, 1+rnd.Intn(6))
	for i := range keys {
		keys[i] = randomKey(rnd)
	}
	fields := t.Fields()
	for range rnd.Intn(most + 1) {
		field := &fields[rnd.Intn(len(fields))]
		var row []string
		for range stars(field) {
			row = append(row, keys[rnd.Intn(len(keys))])
		}
		f[form.Fill(field.Pattern, row)] = randomText(rnd, field)
	}
	return f
}

func randomKey(rnd *rand.Rand) string {
	key := make([]byte, 1+rnd.Intn(form.MaxKey))
	for i := range key {
		key[i] = figures36[rnd.Intn(36)]
	}
	return string(key)
}

func randomText(rnd *rand.Rand, f *form.Field) string {
	text := ""
	switch n := rnd.Intn(4); {
	case n == 0 && len(choices(f)) > 0:
		text = choices(f)[rnd.Intn(len(choices(f)))]
	case n == 1:
		text = strconv.FormatFloat(float64(rnd.Intn(4000)-2000)/100, 'f', -1, 64)
	case n == 2:
		runes := make([]rune, rnd.Intn(30))
		for i := range runes {
			runes[i] = alphabet[rnd.Intn(len(alphabet))]
		}
		text = string(runes)
	default:
		text = sample[rnd.Intn(len(sample))]
	}
	for len(text) > f.Long {
		runes := []rune(text)
		text = string(slices.Delete(runes, 0, 1))
	}
	return text
}
