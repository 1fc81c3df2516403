package link

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/form"
)

// kindOf is the kind of an error of this package; 0 for none.
func kindOf(t *testing.T, err error) Kind {
	t.Helper()
	if err == nil {
		return 0
	}
	var e *Error
	require.ErrorAs(t, err, &e)
	return e.Kind
}

// Every form comes back as it was typed. Seeds stated: 1 for the job's table, 2
// for the rich one.
func TestRoundTrip(t *testing.T) {
	for i, table := range []table{form.Job, richTable} {
		rnd := rand.New(rand.NewSource(int64(i + 1)))
		for range 1000 {
			f := random(rnd, table, 60)
			text, err := encode(table, f)
			require.NoError(t, err, "%q", f)
			got, err := decode(table, text)
			require.NoError(t, err, "%q", f)
			require.Equal(t, f, got)
		}
	}
}

// Every text that people type comes back from every field that it fits.
func TestSamplesRoundTrip(t *testing.T) {
	for _, field := range richTable.fields {
		for _, text := range sample {
			if len(text) > field.Long {
				continue
			}
			f := form.Form{form.Fill(field.Pattern, []string{"a", "0", "zzzzzzzzzzzz", "00"}): text}
			link, err := encode(richTable, f)
			require.NoError(t, err, "%q", f)
			got, err := decode(richTable, link)
			require.NoError(t, err, "%q", f)
			assert.Equal(t, f, got)
		}
	}
}

func TestEncodeRefuses(t *testing.T) {
	for _, row := range []struct {
		f    form.Form
		want Error
	}{
		{form.Form{"throw": "1", "thrown": "1"}, Error{Unknown, "thrown"}},
		{form.Form{"": "1"}, Error{Unknown, ""}},
		{form.Form{"pass.A.order": "1"}, Error{Unknown, "pass.A.order"}},
		{form.Form{"pass.abcdefghijklm.order": "1"}, Error{Unknown, "pass.abcdefghijklm.order"}},
		{form.Form{"throw": "a\x00b"}, Error{Unfit, "throw"}},
		{form.Form{"throw": "a\x1bb"}, Error{Unfit, "throw"}},
		{form.Form{"throw": "a\x7fb"}, Error{Unfit, "throw"}},
		{form.Form{"throw": "a\u0085b"}, Error{Unfit, "throw"}},
		{form.Form{"throw": "a\xffb"}, Error{Unfit, "throw"}},
		{form.Form{"throw": "a\xed\xa0\x80b"}, Error{Unfit, "throw"}}, // half a surrogate pair
		{form.Form{"throw": "00000000000000000000000000000000000000000"}, Error{Unfit, "throw"}},
	} {
		text, err := Encode(row.f)
		var e *Error
		require.ErrorAs(t, err, &e, "%q", row.f)
		assert.Equal(t, row.want, *e, "%q", row.f)
		assert.Empty(t, text)
		assert.NotEmpty(t, e.Error())
	}
}
