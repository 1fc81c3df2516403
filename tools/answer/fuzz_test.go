package main

import (
	"bytes"
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"

	"pintwelve/testdata/links"
)

// FuzzJobFile holds, for any bytes: a file is refused with words, or is answered
// with JSON that has a verdict, and the job read from it is read from its own
// JSON again.
func FuzzJobFile(f *testing.F) {
	for _, g := range links.All(f) {
		job, err := json.Marshal(g.Job)
		require.NoError(f, err)
		f.Add(job)
	}
	for _, text := range []string{``, `{}`, `[]`, `null`, `{"throw": 1e400}`, `{"throw": {}}`, `{"throw": "1", "throw": 2}`, `{"no.such": "1"}`, "{\"notes\": \"\xff\"}"} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		job, err := parse(text)
		if err != nil {
			require.NotEmpty(t, err.Error())
			return
		}
		written, err := json.Marshal(job)
		require.NoError(t, err)
		again, err := parse(written)
		require.NoError(t, err)
		require.Equal(t, job, again)

		var out bytes.Buffer
		if err := run([]string{"-"}, bytes.NewReader(text), &out); err != nil {
			require.NotEmpty(t, err.Error())
			require.Empty(t, out.String())
			return
		}
		var answers map[string]any
		require.NoError(t, json.Unmarshal(out.Bytes(), &answers))
		require.Contains(t, answers, "verdict")
	})
}
