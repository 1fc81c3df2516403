package main

import (
	"os"
	"os/exec"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Each folder of core/step is weighed, and the core stands without it.
func TestTheCoreStandsWithoutEachStep(t *testing.T) {
	folders, err := os.ReadDir("../../core/step")
	require.NoError(t, err)
	require.Len(t, steps, len(folders))
	for _, s := range steps {
		dir := t.TempDir()
		require.NoError(t, leaveOut("../..", dir, s.folder, s.fragments), s.folder)
		build := exec.Command("go", "build", "-trimpath", "./core/sheet")
		build.Dir = dir
		said, err := build.CombinedOutput()
		assert.NoError(t, err, "%s: %s", s.folder, said)
	}
}

func TestHollowLeavesNothingToReach(t *testing.T) {
	source := `package any

import (
	"strings"

	"pintwelve/core/bench"
)

var Step = bench.Step{Name: "any", Answer: answer, Fields: "any. ", Done: done}

// Plan plans.
func Plan(text string) string { return strings.ToLower(text) }

func answer() {}
`
	want := `package any

import (
	

	"pintwelve/core/bench"
)

var Step = bench.Step{Name: "any", Answer: nil, Fields: "any. ", Done: nil}

// Plan plans.
func Plan(text string) string { panic(0) }

func answer() {}
`
	got, err := hollow([]byte(source))
	require.NoError(t, err)
	assert.Equal(t, want, string(got))
	_, err = hollow([]byte("no Go"))
	assert.Error(t, err)
}
