package browser

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Nothing moves under a finger while figures are typed: readings of each sort, a
// figure that is wrong or in doubt and is typed again, and those of the other steps.
func TestNothingMovesWhileFiguresAreTyped(t *testing.T) {
	p, _ := bench(t)
	h := p.Thumb()
	still := func(what string) {
		t.Helper()
		for _, shift := range p.Shifts() {
			assert.Fail(t, "moved", "%s: %+v", what, shift)
		}
		p.WatchShifts()
	}
	p.WatchShifts()
	h.Fill("Drive run-out", "0.14")
	h.Fill("Drive high at", "3")
	h.Fill("Timing run-out", "5.5")
	still("a figure in doubt")
	h.Fill("Drive run-out", "3")
	still("typed again")
	h.Fill("Timing run-out", "much")
	h.Fill("Timing high at", "4")
	still("a figure that is wrong")
	h.Fill("Timing run-out", "5.5")
	still("put right")

	p.Choose("Drive dial is read by", "a full turn")
	topOf(p)
	p.WatchShifts()
	for n, text := range []string{"0", "0 .5", "0 .5 1", "0 .5 1 .5", "0 .5 1 .5 0"} {
		h.Fill("Drive turn, reading by reading", text)
		still([]string{"first", "second", "third", "fourth", "closing"}[n] + " point of a turn")
	}
	// Elsewhere what a figure brings comes below it: the field stays under its finger.
	for _, step := range []string{"found", "press", "measure", "cases"} {
		to(p, step)
		count := `[...document.querySelectorAll('#` + step + ` input:not([type=checkbox], [type=radio], [type=range])')].filter((e) => e.checkVisibility()).slice(0, 8)`
		moved := Eval[[]string](p, `(async () => {
			const frame = () => new Promise((then) => requestAnimationFrame(() => requestAnimationFrame(then)));
			await frame();
			const moved = [];
			let size = 25;
			for (const field of `+count+`) {
				size += 0.03; // each goes over the one before
				field.scrollIntoView({ block: 'center' });
				field.focus();
				await frame();
				const before = field.getBoundingClientRect().top;
				for (const letter of size.toFixed(2)) {
					field.value += letter;
					field.dispatchEvent(new Event('input', { bubbles: true }));
					await frame();
				}
				const by = field.getBoundingClientRect().top - before;
				if (Math.abs(by) > 0.5) moved.push(field.labels[0].innerText + ' by ' + by);
			}
			return moved;
		})()`)
		assert.Empty(t, moved, step)
	}
}
