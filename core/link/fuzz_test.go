package link

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/form"
	"pintwelve/testdata/links"
)

// spelledOut says whether a choice may stand in letters: the one thing in which
// two bodies give one form.
func spelledOut(t table, f form.Form) bool {
	for name, text := range f {
		field, _, _ := t.Lookup(name)
		if slices.Contains(choices(field), text) {
			return true
		}
	}
	return false
}

// Any text at all is refused for a reason, or begins with the link of the form it
// gives.
func FuzzDecode(f *testing.F) {
	for _, g := range links.All(f) {
		f.Add(g.Link)
	}
	f.Add(seal(2, nil))
	f.Add("A\n")
	f.Fuzz(func(t *testing.T, text string) {
		job, err := Decode(text)
		if err != nil {
			assert.Contains(t, []Kind{NotLink, Damaged, Newer, TooBig, Crowded}, kindOf(t, err))
			return
		}
		again, err := Encode(job)
		require.NoError(t, err)
		if !spelledOut(form.Job, job) {
			assert.True(t, strings.HasPrefix(digitsIn(text), again))
		}
		same, err := Decode(again)
		require.NoError(t, err)
		assert.Equal(t, job, same)
	})
}

// The same behind a right CRC, where the fuzzer gets at the body.
func FuzzBody(f *testing.F) {
	for _, row := range hostile {
		f.Add(row.body)
	}
	for _, text := range sample {
		body, fault := writeBody(richTable, form.Form{"notes": text, "size": "2", "pass.a.high": "3", "pass.b.high": "3"})
		require.Nil(f, fault)
		f.Add(body)
	}
	f.Fuzz(func(t *testing.T, body []byte) {
		job, fault := readBody(richTable, body)
		if fault != nil {
			assert.Contains(t, []Kind{Damaged, Newer, TooBig}, fault.Kind)
			return
		}
		again, fault := writeBody(richTable, job)
		require.Nil(t, fault)
		if !spelledOut(richTable, job) {
			assert.Equal(t, body, again)
		}
		same, fault := readBody(richTable, again)
		require.Nil(t, fault)
		assert.Equal(t, job, same)
	})
}

// Any two names and texts are refused for a reason, or come back as they were.
func FuzzEncode(f *testing.F) {
	for i, text := range sample {
		f.Add("notes", text, "pass."+string(figures36[i%36])+".turn", "0 .5 1")
	}
	f.Add("notes", "0", "pass.*.turn", "0")
	f.Add("wheel.a.hole.b.plug.c.note", "a", "told", "yes")
	f.Fuzz(func(t *testing.T, name1, text1, name2, text2 string) {
		job := form.Form{name1: text1, name2: text2}
		text, err := encode(richTable, job)
		if err != nil {
			assert.Contains(t, []Kind{Unknown, Unfit}, kindOf(t, err))
			return
		}
		same, err := decode(richTable, text)
		require.NoError(t, err)
		assert.Equal(t, job, same)
	})
}
