package browser

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/css"
	"github.com/chromedp/cdproto/dom"
	"github.com/chromedp/cdproto/performance"
)

// BenchmarkLongJob sets a key in a job of 100 passes against one in a job of a single pass,
// in turns, the processor slowed: from its press to the end of the frame that shows the
// answer, and busy, all that the page's thread does for it, the rest of the answer and the
// keeping too. Every dial is read by a turn of eight points, and after every pass a strike
// is logged.
func BenchmarkLongJob(b *testing.B) {
	const turns, keysEach = 6, 6
	for b.Loop() {
		pages := map[int]*typedPage{1: longPage(b, 1), 100: longPage(b, 100)}
		frame, busy := map[int][]float64{}, map[int][]float64{}
		for turn := range turns {
			for passes, p := range pages {
				for i := range keysEach {
					before := p.busy()
					frame[passes] = append(frame[passes], p.press(turn*keysEach+i))
					time.Sleep(700 * time.Millisecond) // the rest is answered, and the screen kept
					busy[passes] = append(busy[passes], p.busy()-before)
				}
			}
		}
		for what, times := range map[string]map[int][]float64{"frame": frame, "busy": busy} {
			for passes, all := range times {
				slices.Sort(all)
				b.ReportMetric(median(all), fmt.Sprintf("ms-%s-%d", what, passes))
				b.ReportMetric(all[len(all)*95/100], fmt.Sprintf("ms-p95-%s-%d", what, passes))
			}
			b.ReportMetric(median(times[100])/median(times[1]), what+"-100-of-1")
		}
	}
	b.ReportMetric(0, "ns/op")
}

// longPage is the site with a job of so many passes, the last of which is typed in.
func longPage(b *testing.B, passes int) *typedPage {
	job := map[string]string{}
	for i := range passes {
		at := fmt.Sprintf("pass.p%d.", i)
		job[at+"order"] = strconv.Itoa(i + 1)
		for _, side := range []string{"drive", "timing"} {
			job[at+side+".how"], job[at+side+".points"], job[at+side+".turn"] = "turn", "8", swung(passes-i)
		}
		if i < passes-1 {
			job[at+"done.a.kind"], job[at+"done.a.order"], job[at+"done.a.wheel"], job[at+"done.a.hour"] = "strike", "1", "drive", "9"
		}
	}
	p := Launch(b).Tab()
	p.Phone()
	p.Visit(Serve(b, "/", WithModules(b)).URL("/"))
	p.Ready()
	keep(p, job)
	p.Reload()
	p.Ready()
	send(p, css.Disable, cdp.Empty{})
	send(p, dom.Disable, cdp.Empty{})
	send(p, performance.Enable, performance.EnableParams{})
	p.Throttle(slowed)
	typed := &typedPage{p, []string{`[name="pass.*.drive.turn"]`}, []string{swung(1)}, `[data-picture="face"]`}
	for i := range 3 {
		typed.press(i)
	}
	return typed
}

// swung is a turn of eight points of a needle that stands highest at 3.
func swung(runOut int) string {
	var all []string
	for n := range 8 {
		all = append(all, strconv.FormatFloat(float64(runOut)/2*(1+math.Sin(float64(n)*math.Pi/4)), 'f', 1, 64))
	}
	return strings.Join(all, " ")
}

// busy is how long the page's thread has worked in all, ms.
func (p *typedPage) busy() float64 {
	for _, m := range send(p.Page, performance.GetMetrics, cdp.Empty{}).Metrics {
		if m.Name == "TaskDuration" {
			return 1000 * m.Value
		}
	}
	return 0
}
