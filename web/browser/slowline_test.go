package browser

import (
	"maps"
	"testing"

	"github.com/chromedp/cdproto/network"
	"github.com/stretchr/testify/require"

	"pintwelve/tools/site"
)

// What a slow 4G line gives: bytes a second, and milliseconds to an answer's first byte.
const (
	slowLine  = 1.6e6 / 8
	slowDelay = 150
)

// BenchmarkSlowLine times a first visit on a slow 4G line with the processor slowed
// too, to the end of the frame that shows the first answer, and to the first paint.
// In turns with it come the same page with an empty Go program as core, made by the
// core's flags as Go writes it, which is what tools/size counts by; the same with
// that program made as small as the core is; and the site that PINTWELVE_AGAINST
// names. All files come packed as tools/serve packs them.
func BenchmarkSlowLine(b *testing.B) {
	const visits = 7
	for b.Loop() {
		hosts := map[string]*Server{"here": packed(b, Built(b)), "empty": packed(b, asLinked(b)), "small-empty": packed(b, Empty(b))}
		if files := against(b); files != nil {
			hosts["against"] = packed(b, files)
		}
		took := map[string][]begun{}
		for round := range 1 + visits {
			for name, s := range hosts {
				visit := slowVisit(b, s)
				if round > 0 { // the first of each warms the machine's file caches
					took[name] = append(took[name], visit)
				}
			}
		}
		reportStarts(b, "shown", took, func(s begun) float64 { return s.ShownAt })
		reportStarts(b, "painted", took, func(s begun) float64 { return s.PaintedAt })
	}
	b.ReportMetric(0, "ns/op")
}

// asLinked is the site with an empty Go program that is left as Go writes it. Its
// service worker wouldn't keep it, which comes after the first answer.
func asLinked(b *testing.B) site.Files {
	files := maps.Clone(Empty(b))
	program, err := site.Compile(repository, "./tools/empty/answering")
	require.NoError(b, err)
	files["core.wasm"] = program
	return files
}

// slowVisit returns what a first visit on the slow line took.
func slowVisit(b *testing.B, s *Server) begun {
	browser := LaunchIn(b, Profile(b))
	defer browser.Quit()
	p := browser.Tab()
	send(p, network.Enable, network.EnableParams{})
	send(p, network.EmulateNetworkConditionsByRule, network.EmulateNetworkConditionsByRuleParams{
		MatchedNetworkConditions: []*network.Conditions{{Latency: slowDelay, DownloadThroughput: slowLine, UploadThroughput: slowLine}},
	})
	took := timeStart(p, s.URL("/"), slowed)
	core := Eval[struct{ Bytes, Took float64 }](p, `(() => {
		const { encodedBodySize, startTime, responseEnd } = performance.getEntriesByType('resource').find(({ name }) => name.endsWith('core.wasm'));
		return { Bytes: encodedBodySize, Took: responseEnd - startTime };
	})()`)
	require.GreaterOrEqual(b, core.Took, 0.95*(slowDelay+1e3*core.Bytes/slowLine), "the line isn't slow")
	return took
}
