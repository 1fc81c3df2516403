package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// FuzzJobFile holds, for any bytes: a file is refused with words, or is answered
// with JSON that has a verdict, and the job read from it is read from its own
// JSON again.
func FuzzJobFile(f *testing.F) {
	files, err := filepath.Glob("../../testdata/links/*.txt")
	require.NoError(f, err)
	require.NotEmpty(f, files)
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(f, err)
		_, job, _ := bytes.Cut(text, []byte("\n"))
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
