package browser

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// model opens an empty page beside the built site's modules, with the model's own.
func model(t *testing.T) *Page {
	files := WithModules(t)
	for _, name := range []string{"index.html", "idb.js", "run.js", "twin.js"} {
		content, err := os.ReadFile(filepath.Join("model", name))
		require.NoError(t, err)
		files["model/"+name] = content
	}
	p := Launch(t).Tab()
	p.Visit(Serve(t, "/crank/", files).URL("/crank/model/index.html"))
	return p
}

// The model's disk answers, and holds, what the browser's IndexedDB does.
func TestTheModelsDiskIsAsTheBrowsers(t *testing.T) {
	p := model(t)
	const steps = 60
	for seed := 1; seed <= 20; seed++ {
		answers := Eval[[2][]string](p, fmt.Sprintf(`import('./twin.js').then((m) => m.twins(%d, %d))`, seed, steps))
		require.Len(t, answers[1], steps)
		for i := range answers[0] {
			if !assert.Equal(t, answers[1][i], answers[0][i], "seed %d, step %d", seed, i) {
				return
			}
		}
	}
}

// outcome is what some runs came to.
type outcome struct {
	Failed []string `json:"failed"`
	Writes int      `json:"writes"`
	Texts  int      `json:"texts"`
}

func (o *outcome) add(t *testing.T, p *Page, script string) {
	t.Helper()
	each := Eval[outcome](p, `import('./run.js').then((m) => m.`+script+`)`)
	o.Writes += each.Writes
	o.Texts += each.Texts
	for _, failed := range each.Failed {
		if len(o.Failed) < 3 {
			t.Error(failed)
		}
		o.Failed = append(o.Failed, strings.SplitN(failed, "\n", 2)[0])
	}
}

// full is how many runs are asked for by the environment, else the short number.
func full(t *testing.T, short int) int {
	text := os.Getenv("PINTWELVE_RUNS")
	if text == "" {
		return short
	}
	n, err := strconv.Atoi(text)
	require.NoError(t, err, "PINTWELVE_RUNS")
	return n
}

// Seeds that once failed: 195 by a page's own write that it took for another's, 635 and 675 by what
// was typed as a write ended, 9302 by two tabs that kept a deleted job again, 10912 by a job that came
// back to the bench unkept, 1552 by two tabs that kept one job anew after a clear, 5142 and 5254
// by a state that another tab had kept since, 6437 by a write that hung under a second crank,
// the others by what the model did not yet know.
var onceFailed = []int{195, 635, 675, 8032, 9302, 10912, 827, 965, 984, 1244, 1552, 5142, 5254, 6437}

func TestNothingTypedVanishesUnsaid(t *testing.T) {
	p := model(t)
	var all outcome
	for _, seed := range onceFailed {
		all.add(t, p, fmt.Sprintf("runs(%d, %d)", seed, seed+1))
	}
	const atOnce = 50
	runs := full(t, 500)
	for from := 1; from <= runs; from += atOnce {
		all.add(t, p, fmt.Sprintf("runs(%d, %d)", from, min(from+atOnce, runs+1)))
	}
	t.Logf("%d runs, %d texts typed, %d writes: %d lost something unsaid", runs, all.Texts, all.Writes, len(all.Failed))
	assert.Empty(t, all.Failed)
}

func TestEachWriteInTurnFails(t *testing.T) {
	p := model(t)
	var all outcome
	seeds := []int{104} // failed by what the model did not know: undo on one phone makes no newer state on another
	for seed := range full(t, 100) / 100 {
		seeds = append(seeds, seed+1)
	}
	for _, seed := range seeds {
		for _, what := range []string{"fails", "killed before", "killed after", "hangs"} {
			all.add(t, p, fmt.Sprintf("eachWriteFails(%d, %q)", seed, what))
		}
	}
	t.Logf("%d seeds, %d writes, each failed once: %d lost something unsaid", len(seeds), all.Writes, len(all.Failed))
	assert.Empty(t, all.Failed)
}
