package browser

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// setUp sets the bench of a shop that works in hundredths on V-blocks.
func setUp(p *Page) {
	p.Choose("Dials read in", "millimetres")
	p.Choose("The crank is turned", "on V-blocks")
	p.Choose("At your left hand at the lathe is the", "timing side")
	p.Choose("Hours are numbered as seen from the", "timing side")
	p.Fill("Run-out allowed on either shaft", "0.04")
	p.Fill("Drive dial, one division is", "0.01")
	p.Fill("Timing dial, one division is", "0.002")
	p.Fill("Drive run-out", "0.11")
}

// stands tells the set-up that the page shows.
func stands(p *Page) []string {
	return []string{
		p.Value("Dials read in"), p.Value("The crank is turned"), p.Value("At your left hand at the lathe is the"), p.Value("Hours are numbered as seen from the"),
		p.Value("Run-out allowed on either shaft"), p.Value("Drive dial, one division is"), p.Value("Timing dial, one division is"),
	}
}

var ofTheShop = []string{"metric", "vblocks", "timing", "timing", "0.04", "0.01", "0.002"}

func afresh(p *Page) {
	to(p, "jobs")
	p.Press("Start another crank")
	p.Until(`!document.getElementById('true').hidden`)
}

func TestANewCrankTakesOverTheBenchOfThePhone(t *testing.T) {
	p, server, b := benchIn(t)
	setUp(p)
	afresh(p)
	assert.Equal(t, "", p.Value("Drive run-out"))
	assert.Equal(t, ofTheShop, stands(p))
	assert.Contains(t, p.Text("#bench-said"), "This is the bench of this phone")
	p.Reload()
	p.Ready()
	assert.Equal(t, ofTheShop, stands(p), "nothing was typed into it yet")

	p.Fill("Run-out allowed on either shaft", "0.03")
	tab := b.Open(server.URL("/crank/"))
	tab.Phone()
	afresh(tab)
	assert.Equal(t, "0.03", tab.Value("Run-out allowed on either shaft"), "changed in one place")
}

func TestACrankThatStandsOtherwiseLeavesTheBenchAlone(t *testing.T) {
	p, _ := bench(t)
	twist(p)
	p.Fill("Run-out allowed on either shaft", "1")
	name(p, "1", "", "A")
	afresh(p)
	p.Fill("Run-out allowed on either shaft", "3")
	p.Fill("Drive run-out", "2")
	to(p, "jobs")
	listed(p, 2)
	Eval[bool](p, `([...document.querySelectorAll('#jobs-rows .job-open')].find((e) => e.textContent.startsWith('1')).click(), true)`)
	p.Until(`document.getElementById('tolerance').value === '1'`)
	p.Choose("Dials read in", "millimetres")
	p.Fill("Run-out allowed on either shaft", "0.0127")
	p.Until(`document.getElementById('bench-said').textContent.includes('Run-out allowed on either shaft')`)
	assert.Contains(t, p.Text("#bench-said"), "stand otherwise")
	p.Press("Set this crank as on the bench")
	assert.Equal(t, []string{"metric", "0.0762"}, []string{p.Value("Dials read in"), p.Value("Run-out allowed on either shaft")},
		"the units agreed when they were changed, so that the bench went with them, its own figure meaning the same")
	assert.Equal(t, "0.102", p.Value("Drive run-out"))
	p.Press("Undo")
	p.Press("Make this crank’s the bench")
	afresh(p)
	assert.Equal(t, "0.0127", p.Value("Run-out allowed on either shaft"))
}

func TestTheBenchGoesWithTheFile(t *testing.T) {
	p, _ := bench(t)
	setUp(p)
	to(p, "jobs")
	saved := savedFile(p, "Save all jobs in a file")

	other, _ := bench(t)
	to(other, "jobs")
	assert.Contains(t, readFile(other, saved), "This phone’s bench is now as in the file.")
	afresh(other)
	assert.Equal(t, ofTheShop, stands(other))

	third, _ := bench(t)
	third.Fill("Run-out allowed on either shaft", "1")
	third.Fill("Drive run-out", "4")
	to(third, "jobs")
	assert.Contains(t, readFile(third, saved), "Its bench stands otherwise")
	assert.NotContains(t, readFile(third, strings.Replace(saved, `"left": "timing"`, `"left": "<b>"`, 1)), "now as in the file")
	third.Press("Take over the file’s bench")
	afresh(third)
	assert.Equal(t, []string{"metric", "vblocks", "drive", "timing", "0.04", "0.01", "0.002"}, stands(third), "what no control could have made is left out")
}
