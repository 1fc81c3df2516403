// Package links holds, for tests, the links that someone may have: each must
// open for ever. A file is a link on its first line and the job behind it, flat
// JSON, on the others. Files are only ever added.
//
// To add one, write the job under a blank first line and run
//
//	go test -run TestGivenLinksOpen ./core/link
//
// which fails and says the line to put there.
package links

import (
	"embed"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

//go:embed *.txt
var files embed.FS

// Given is one link with the job that it opens.
type Given struct {
	Name, Link string
	Job        map[string]string
}

// All returns the given links in the order of their files' names.
func All(t testing.TB) (all []Given) {
	t.Helper()
	entries, err := files.ReadDir(".")
	require.NoError(t, err)
	for _, entry := range entries {
		text, err := files.ReadFile(entry.Name())
		require.NoError(t, err)
		link, job, _ := strings.Cut(string(text), "\n")
		g := Given{Name: entry.Name(), Link: link}
		require.NoError(t, json.Unmarshal([]byte(job), &g.Job), g.Name)
		require.NotEmpty(t, g.Job, g.Name)
		all = append(all, g)
	}
	return all
}

// Named returns the given link in a file.
func Named(t testing.TB, name string) Given {
	t.Helper()
	for _, g := range All(t) {
		if g.Name == name {
			return g
		}
	}
	require.FailNow(t, "no such link is given: "+name)
	return Given{}
}
