package browser

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// stage is one sheet of a whole job as a thumb goes through it, and the most it may cost.
type stage struct {
	what                  string
	do                    func(*Thumb)
	says                  string // of its answer, at the end
	taps, scrolls, fields int
	still                 bool // nothing moves while it is typed
}

// stillness is what moved while figures were typed: in all, as the Layout Instability
// API counts it, whatever touch came before; of that what came by itself, which alone
// makes a page's cumulative layout shift; and the typed field that went furthest.
type stillness struct {
	shift, byItself, furthest float64
	field                     string
}

func (s *stillness) note(typed Typed) {
	for _, each := range typed.Moved {
		s.shift += each.By
		if each.ByItself {
			s.byItself += each.By
		}
	}
	if by := math.Abs(typed.By); by > max(s.furthest, 1) { // a pixel is rounding
		s.furthest, s.field = by, typed.Label
	}
}

func (s stillness) String() string {
	text := fmt.Sprintf("layout shift %.2f, by itself %.2f", s.shift, s.byItself)
	if s.field != "" {
		text += fmt.Sprintf(", “%s” by %.0f px", s.field, s.furthest)
	}
	return text
}

// A 500 single from the door to the customer's sheet, every figure typed by touch:
// looked over and read, split, measured, lightened by 750 g a wheel, balanced and
// drilled, pressed up, trued in three passes, its nuts drawn up, into the cases.
// At the lathe nothing moves while they are typed; elsewhere an answer below may grow, which is
// printed, but the field that is typed in stays under its finger.
// Each sheet gives its answer and leads on to the next; printed by -v.
func TestAWholeJobByTouch(t *testing.T) {
	p, _ := bench(t)
	all := Thumb{}
	for _, s := range []stage{
		{"as found", asItCame, "Looked over: mark it, and split it.", 25, 1, 12, true},
		{"measure", measureTheCrank, "Right, as far as it is measured.", 11, 5, 8, false},
		{"lighten", lightenIt, "750 g off each wheel", 8, 3, 6, false},
		{"balance", balanceIt, "Balance factor 68.0 ± 0.2% as drilled.", 14, 4, 10, false},
		{"press up", pressItUp, "Stop the press at 77.96 mm over the wheels.", 5, 1, 4, false},
		{"true", trueIt, "True: leave it. It is fit to go in.", 16, 1, 12, true},
		{"nuts, true again", nutsAndAgain, "True: leave it. It is fit to go in.", 7, 0, 4, true},
		{"cases", intoTheCases, "The housing is right for its class, but hot, at 90 °C, the race is loose by 0.7 thou", 12, 4, 9, false},
	} {
		h := p.Thumb()
		moved := stillness{}
		h.Typed = moved.note
		s.do(h)
		says(p, ".step:not([hidden]) .headline", s.says)
		t.Logf("%-17s %3d taps, %2d scrolls, %2d fields; %s", s.what, h.Taps, h.Scrolls, h.Fields, moved)
		assert.LessOrEqual(t, h.Taps, s.taps, "%s: taps", s.what)
		assert.LessOrEqual(t, h.Scrolls, s.scrolls, "%s: scrolls", s.what)
		assert.LessOrEqual(t, h.Fields, s.fields, "%s: fields", s.what)
		assert.Zero(t, moved.furthest, "%s: “%s” moved while it was typed", s.what, moved.field)
		if s.still {
			assert.Zero(t, moved, "%s: layout shift", s.what)
		}
		all.Taps, all.Scrolls, all.Fields = all.Taps+h.Taps, all.Scrolls+h.Scrolls, all.Fields+h.Fields
	}
	t.Logf("%-17s %3d taps, %2d scrolls, %2d fields", "the whole job", all.Taps, all.Scrolls, all.Fields)

	p.Thumb().Tap("Pintwelve: the order of the work")
	says(p, answerOf("order"), "Left out: lighten.") // planned, and not weighed after
	p.Thumb().Tap("Job sheet")
	says(p, "#paper", "10.8 ± 0.2 thou")
	paper := strings.Join(strings.Fields(p.Text("#paper")), " ")
	for _, words := range []string{
		"It came at 4.5 thou.", "Run-out, drive shaft 4.5 ± 0.4 thou, high at 8 0.5 ± 0.4 thou, high at 5", "Weight, wheels alone 11389 g as drawn 9889 g as drawn",
		"Inertia, wheels alone 522.1 kg·cm² as drawn 467.4 kg·cm² as drawn", "Balance factor 62.1% 68.0 ± 0.2%", "the crank was pressed apart and up again", "struck timing at 9",
		"the nuts were drawn up", "Pin in bush 1.2 ± 0.1 thou: right.", "Side clearance 13.8 ± 0.4 thou: right.", "End float so shimmed 10.8 ± 0.2 thou: right.",
	} {
		assert.Contains(t, paper, words)
	}
	assert.NotContains(t, paper, "split it", "what is to be done is not the customer's")
}

// says waits for an answer: a thumb doesn't wait for the core.
func says(p *Page, selector, words string) {
	p.t.Helper()
	p.Until(`document.querySelector(` + strconv.Quote(selector) + `)?.textContent.includes(` + strconv.Quote(words) + `)`)
}

func asItCame(h *Thumb) {
	h.Tap("Pintwelve: the order of the work")
	h.Tap("As found")
	for _, each := range []string{
		"Cracks, by dye: webs at the pin, shaft roots, keyways", "Oil-ways, pump to big end", "Sludge trap", "Crankpin seats: fretting, scoring, picking up",
		"Tapers, blued", "Threads and nuts", "Keys and keyways", "Witness marks across wheels and pin",
	} {
		h.Choose(each, "good")
	}
	h.Tap("To the lathe: pass 1")
	touch4(h, "4.5", "8", "4.5", "4")
	h.Tap("Pintwelve: the order of the work")
	says(h.p, answerOf("order"), "Next: split it.") // not to true what is to be pressed apart
	h.Tap("As found")
	says(h.p, "#found", "It came at 4.5 thou on the drive side, 4.5 thou on the timing side: pass 1.")
}

func measureTheCrank(h *Thumb) {
	h.Tap("Next: measure")
	h.Fill("Crankpin", "25.000 25.000 25.000")
	h.Fill("Bush, inside", "25.030 25.030")
	h.Fill("Bush, outside", "32.000 32.000")
	h.Fill("Rod’s eye", "32.030 32.030")
	h.Tap("Add a joint")
	h.Fill("Pin or shaft where it sits mm", "25.040")
	h.Fill("Eye in the wheel mm", "25.000")
	h.Unfold("duty")
	h.Fill("Power", "20")
	h.Fill("At a speed of", "5500")
}

func lightenIt(h *Thumb) {
	h.Tap("Next: lighten")
	h.Fill("Diameter of the drive wheel", "190")
	h.Fill("Width over all of the drive wheel", "26")
	h.Fill("Bore for the shaft of the drive wheel", "24")
	h.Tap("Add a cut")
	h.Fill("Weight to come off each wheel, in all", "0.75 kg")
	h.Fill("Cut 1 Inner diameter", "60")
	h.Fill("Cut 1 Outer diameter", "160")
}

func balanceIt(h *Thumb) {
	p := h.p
	h.Tap("Next: balance")
	for _, row := range [][2]string{
		{"Piston", "285"}, {"Rings", "22"}, {"Gudgeon pin", "86"}, {"Clips", "3"}, {"Small end, rod level", "148"}, {"Big end, rod level", "312"},
		{"Weight hung, so that it stays wherever it is put", "190"},
	} {
		h.Fill(row[0], row[1])
	}
	assert.Contains(p.t, balanceSays(p), "Balance factor 62.1 ± 0.2% as found.")
	h.Choose("Aim at", "another factor")
	h.Fill("Factor to aim at", "68")
	h.Tap("Plan the holes")
	p.Until(planSaid + ` === 'Planned.'`)
	assert.Contains(p.t, balanceSays(p), "With the holes drawn: 68%")
	h.Tap("Drilled: weigh again")
	assert.Contains(p.t, balanceSays(p), "Now the knife-edges")
	h.Fill("Weight hung, so that it stays wherever it is put", "222")
	assert.Contains(p.t, balanceSays(p), "Leave it")
}

func pressItUp(h *Thumb) {
	h.Tap("Next: press up")
	h.Fill("Drive wheel’s width at the pin", "30")
	h.Fill("Timing wheel’s width at the pin", "30")
	h.Fill("Rod’s width at the big end", "17.6")
	h.Fill("Over the wheels, as measured", "77.95")
}

func trueIt(h *Thumb) {
	h.Tap("Pressed up: read it again")
	says(h.p, headline, "Pass 2: read again.")
	assert.NotContains(h.p.t, h.p.Text("#true .before"), "Nothing is logged")
	touch4(h, "3", "5", "5.5", "7:30")
	says(h.p, headline, "Strike the timing wheel at 9") // nothing is asked that the button has said
	h.Tap("Struck: read again")
	touch4(h, "2", "5", "2.5", "7:30")
	h.Tap("Struck: read again")
	touch4(h, "0.5", "5", "0.5", "7:30")
	h.Tap("Centres known good")
}

func nutsAndAgain(h *Thumb) {
	h.Tap("Nuts and locks next")
	h.Tap("Nuts tight")
	h.Tap("Nuts tight: read it again")
	touch4(h, "0.5", "5", "1", "7:30")
}

func intoTheCases(h *Thumb) {
	h.Tap("Pintwelve: the order of the work")
	h.Tap("Cases")
	h.Tap("Add a main bearing")
	h.Fill("Bearing’s bore mm", "25")
	h.Fill("Bearing’s outside mm", "52")
	h.Fill("Shaft’s seat, as measured mm", "25.006")
	h.Fill("Housing, as measured mm", "51.98")
	h.Fill("Between the case faces", "100")
	h.Fill("Over the crank, shoulder to shoulder", "98.9")
	h.Fill("Shims you have, sizes", "0.1 0.5 0.9")
	h.Fill("Drive side run-out in the cases", "0.5")
	h.Fill("Timing side run-out in the cases", "0.5")
}
