package browser

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// fill4 types a round of readings.
func fill4(p *Page, tirD, highD, tirT, highT string) {
	p.Fill("Drive run-out", tirD)
	p.Fill("Drive high at", highD)
	p.Fill("Timing run-out", tirT)
	p.Fill("Timing high at", highT)
}

func passCount(p *Page) int { return Eval[int](p, `document.querySelectorAll('.pass').length`) }

func TestFourPassesTypedUndoneRedoneReloadedAndShared(t *testing.T) {
	p, server := bench(t)
	rounds := [][4]string{{"6", "3", "5", "9"}, {"4", "3", "3.5", "9"}, {"2.5", "3", "2.5", "9"}, {"1", "3", "0.5", "9"}}
	for i, r := range rounds {
		fill4(p, r[0], r[1], r[2], r[3])
		if i < len(rounds)-1 {
			p.Press("Struck: read again")
			p.Until(`document.getElementById('drive-tir').value === ''`)
		}
	}
	assert.Contains(t, p.Text(headline), "True as it hangs")
	assert.Equal(t, 4, passCount(p))
	says(p, ".pass", "As found: D 6 thou, T 5 thou; struck drive at 3")

	p.Press("Undo")
	assert.Equal(t, "", p.Value("Timing high at"))
	p.Press("Redo")
	assert.Equal(t, "9", p.Value("Timing high at"))
	for range 5 {
		p.Press("Undo")
	}
	assert.Equal(t, 3, passCount(p), "four fields, and then the pass itself")
	for range 5 {
		p.Press("Redo")
	}
	assert.Equal(t, 4, passCount(p))

	p.Until(kept(`Object.keys(form).filter((n) => n.endsWith('.timing.high')).length === 4`))
	p.Reload()
	p.Ready()
	assert.Equal(t, 4, passCount(p))
	assert.Contains(t, p.Text(headline), "True as it hangs")
	link := linkOf(p)

	other := Launch(t).Open(server.URL("/crank/"))
	other.Visit("about:blank")
	other.Visit(link)
	other.Ready()
	assert.Equal(t, 4, passCount(other))
	assert.Contains(t, other.Text(headline), "True as it hangs")
}

// Undo is by what a person calls one change.
func TestUndoTakesBackOneChange(t *testing.T) {
	p, _ := bench(t)
	p.Fill("Drive run-out", "3")
	p.Fill("Drive run-out", "5")
	p.Press("Undo")
	assert.Equal(t, "3", p.Value("Drive run-out"), "left and corrected")
	p.Type("Drive run-out", "3.5")
	p.Type("Drive run-out", "")
	p.Insert("6")
	p.Press("Undo")
	assert.Equal(t, "3.5", p.Value("Drive run-out"), "corrected without leaving it")
	p.Press("Undo")
	assert.Equal(t, "3", p.Value("Drive run-out"))
	for range 3 {
		p.Press("Drive run-out, one division more")
	}
	p.Press("Drive run-out, one division less")
	assert.Equal(t, "4", p.Value("Drive run-out"))
	p.Press("Undo")
	assert.Equal(t, "4.5", p.Value("Drive run-out"), "one way stepped, the other way stepped")
	p.Press("Undo")
	assert.Equal(t, "3", p.Value("Drive run-out"))

	const note = "Note on this pass"
	p.Fill(note, "a burr on the drive centre")
	p.Fill(note, "")
	p.Press("Undo")
	assert.Equal(t, "a burr on the drive centre", p.Value(note), "emptied")

	const face = "[data-picture=face] svg"
	p.Press("A tap on the clock face sets the drive hour")
	p.Tap(face, 0.75, 166.0/330)
	p.Press("A tap on the clock face sets the drive hour")
	p.Drag(face, [2]float64{0.5, 0.2}, [2]float64{0.3, 0.3}, [2]float64{0.25, 166.0 / 330})
	assert.Equal(t, "9", p.Value("Drive high at"))
	p.Press("Undo")
	assert.Equal(t, "3", p.Value("Drive high at"), "a drag is one change, a tap before it another")
}

func TestAnEarlierPassIsLookedAtCorrectedAndTakenOut(t *testing.T) {
	p, _ := bench(t)
	fill4(p, "6", "3", "5", "9")
	p.Press("Struck: read again")
	fill4(p, "3", "3", "2.5", "9")
	Eval[bool](p, `(document.querySelector('.pass [data-look]').click(), true)`)
	assert.Equal(t, "6", p.Value("Drive run-out"))
	assert.True(t, Eval[bool](p, `document.getElementById("did").hidden`), "what was done then is logged")
	p.Fill("Drive run-out", "6.5")
	p.Until(`document.querySelector('.pass').textContent.includes('D 6.5 thou')`) // the list is painted after the first screen
	Eval[bool](p, `(document.querySelectorAll('.pass [data-remove]')[1].click(), true)`)
	assert.Equal(t, 1, passCount(p))
	p.Press("Put it back")
	assert.Equal(t, 2, passCount(p))
}

// The orders of the page, as a person reads them.
var (
	strikeOrder = regexp.MustCompile(`(?i)strike the (drive|timing) wheel at ([0-9:]+)`)
	gapOrder    = regexp.MustCompile(`(?i)(squeeze|spread)(?: the wheels)? at ([0-9:]+)`)
	hardnesses  = regexp.MustCompile(`\(([0-9.]+)\)|([0-9.]+) turns?`)
)

// obey logs what the page says, by its own fields, and has the dials read again.
func obey(t *testing.T, p *Page) {
	said := p.Text(headline)
	then := Eval[string](p, `document.querySelector('[data-say="truing.then"]').textContent`)
	hard := hardnesses.FindAllStringSubmatch(Eval[string](p, `document.querySelector('[data-say="truing.hard"]').textContent`), -1)
	require.NotNil(t, hard, said)
	orders := []string{said, then}[:len(hard)]
	for i, order := range orders {
		p.Press("Something else was done")
		set := func(field, value string) {
			Eval[bool](p, `(() => {
				const row = [...document.querySelectorAll('[data-row="pass.*.done"]')].at(-1);
				const control = row.querySelector('[name="pass.*.done.*.`+field+`"]');
				control.value = `+strconv.Quote(value)+`;
				control.dispatchEvent(new Event('input', { bubbles: true }));
				return true;
			})()`)
		}
		if m := strikeOrder.FindStringSubmatch(order); m != nil {
			set("kind", "strike")
			set("wheel", strings.ToLower(m[1]))
			set("hour", m[2])
			set("strength", hard[i][1])
		} else {
			m := gapOrder.FindStringSubmatch(order)
			require.NotNil(t, m, order)
			set("kind", strings.ToLower(m[1]))
			set("hour", m[2])
			set("turns", hard[i][2])
		}
	}
	p.Press("Read again")
}

func TestAMadeUpCrankIsTruedByThePagesOwnWords(t *testing.T) {
	p, _ := bench(t)
	for _, seed := range []string{"one", "two", "three"} {
		Eval[bool](p, `(document.querySelector('#hand-over details').open = true)`)
		p.Fill("Its number, any letters or figures; the same gives the same crank", seed)
		p.Press("Put it on the bench")
		p.Until(`document.querySelector('[data-say="block.name"]').textContent === 'Made-up crank ` + seed + `'`)
		passes := 0
		for ; passes < 8 && strings.Contains(p.Text(headline), " needle to "); passes++ {
			obey(t, p)
		}
		assert.True(t, strings.HasPrefix(p.Text(headline), "True") || strings.HasPrefix(p.Text(headline), "Too close"), "%s: %s", seed, p.Text(headline))
		t.Logf("crank %s: %d rounds of moves, then: %s %s", seed, passes, p.Text(headline), Eval[string](p, `document.querySelector('[data-say="truing.then"]').textContent`))
	}
}

func TestAFullTurnIsTypedByADialWithAKeyboard(t *testing.T) {
	p, _ := bench(t)
	p.Choose("Drive dial is read by", "a full turn")
	p.Choose("Drive turn is read at", "12, 3, 6 and 9")
	p.Fill("Timing run-out", "1")
	p.Fill("Timing high at", "12")
	p.Type("Drive turn, reading by reading", "98")
	for _, value := range []string{"99", "0", "99"} {
		p.Enter()
		p.Insert(value)
	}
	assert.Equal(t, "98 99 0 99", p.Value("Drive turn, reading by reading"))
	says(p, "[data-say='turn.drive']", "full movement 2 thou, fitted run-out 2")
	says(p, "[data-say='turn.drive.zero']", "passed zero")
}

func TestAtTheLatheOneTapGoesToTheNextReading(t *testing.T) {
	p, _ := bench(t)
	p.Press("At the lathe")
	quiet()
	assert.Equal(t, "Drive run-out", p.Text(".lathe-what"))
	p.Press("One division more")
	p.Press("One division more")
	p.Press("Next")
	assert.Equal(t, "Drive high at", strings.Join(strings.Fields(p.Text(".lathe-what")), " "))
	p.Press("Leave the view at the lathe")
	assert.Equal(t, "1", p.Value("Drive run-out"))
}
