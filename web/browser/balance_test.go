package browser

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// balanceStep opens the step with a single weighed as found: 60 %.
func balanceStep(t testing.TB) (*Page, *Server) {
	t.Helper()
	server := Serve(t, "/crank/", Built(t))
	p := Launch(t).Open(server.URL("/crank/#balance"))
	p.Phone()
	p.Ready()
	weigh(p)
	return p, server
}

// weigh types what the scale and the knife-edges show.
func weigh(p hands) {
	for _, row := range [][2]string{
		{"Piston", "300"}, {"Rings", "20"}, {"Gudgeon pin", "100"}, {"Clips", "2"}, {"Small end, rod level", "128"}, {"Big end, rod level", "340"},
		{"Whole rod", "468"}, {"Crankpin with nuts", "420"}, {"Weight hung, so that it stays wherever it is put", "202"}, {"Throw, half the stroke", "40"},
	} {
		p.Fill(row[0], row[1])
	}
}

const planSaid = `document.getElementById('plan-said').textContent`

func balanceSays(p *Page) string { return p.Text("#balance .answer") }

func TestACrankIsWeighedBalancedAndDrilledByTheLabels(t *testing.T) {
	p, _ := balanceStep(t)
	assert.Contains(t, balanceSays(p), "Balance factor 60.0 ± 0.2% as found.")
	assert.Contains(t, balanceSays(p), "Leave it")
	p.Fill("Piston, new", "250")
	assert.Contains(t, balanceSays(p), "off each wheel at 6, 72 mm out.")
	assert.Contains(t, balanceSays(p), "weaken the wheel")
	p.Fill("Zone, outer radius", "54")
	assert.Contains(t, p.Text("#error-zone-out"), "no drill fits")
	p.Fill("Zone, outer radius", "88")
	p.Press("Plan the holes")
	p.Until(planSaid + ` === 'Planned.'`)
	assert.Contains(t, balanceSays(p), "With the holes drawn: ")
	assert.Contains(t, p.Text("#holes"), "each wheel: ")
	assert.True(t, Eval[bool](p, `document.querySelector('[data-picture="holes.timing"] svg desc').textContent.includes('mm across at')`))
	assert.Zero(t, Eval[float64](p, `document.querySelector('.full-size').offsetHeight`), "the template is for paper alone")

	p.Until(kept(`Object.keys(form).some((n) => n.startsWith('hole.'))`))
	p.Reload()
	p.Ready()
	assert.Contains(t, balanceSays(p), "With the holes drawn: ")

	p.Fill("Off the drive wheel", "1")
	assert.Contains(t, Eval[string](p, `document.querySelector('[data-say="after.drive"]').textContent`), "Still to come off")
	p.Press("Drilled: weigh again")
	assert.Contains(t, balanceSays(p), "Now the knife-edges")
	p.Fill("Weight hung, so that it stays wherever it is put", "172")
	assert.Contains(t, balanceSays(p), "Leave it")
}

func TestPlanningIsStopped(t *testing.T) {
	p, _ := balanceStep(t)
	p.Fill("Piston, new", "250")
	said := Eval[[]string](p, `(() => {
		const said = [];
		document.getElementById('plan-holes').click();
		said.push(document.getElementById('plan-said').textContent);
		document.getElementById('plan-stop').click();
		said.push(document.getElementById('plan-said').textContent);
		return said;
	})()`)
	assert.Equal(t, []string{"Planning …", "Stopped; the holes are as they were."}, said)
	p.Press("Plan the holes") // one that is not stopped takes longer than what the stopped one could
	p.Until(planSaid + ` === 'Planned.'`)
	rows := Eval[int](p, `document.querySelectorAll('[data-row="hole"]').length`)
	assert.Positive(t, rows)
	p.Press("Plan the holes")
	p.Until(planSaid + ` === 'Planned.'`)
	assert.Equal(t, rows, Eval[int](p, `document.querySelectorAll('[data-row="hole"]').length`), "a plan takes the place of the one before")
	p.Press("Add a cylinder") // it was planned for one
	assert.Empty(t, Eval[string](p, planSaid))
}

// What was planned for other figures must not come in as if it were for these.
func TestAPlanForOtherFiguresIsLeftOut(t *testing.T) {
	p, _ := balanceStep(t)
	p.Fill("Piston, new", "250")
	Eval[bool](p, `(() => {
		document.getElementById('plan-holes').click();
		const piston = document.querySelector('[name="new.piston"]');
		piston.value = '270';
		return piston.dispatchEvent(new InputEvent('input', { bubbles: true }));
	})()`)
	p.Until(planSaid + `.startsWith('A figure was changed meanwhile')`)
	assert.Zero(t, Eval[int](p, `document.querySelectorAll('[data-row="hole"]').length`))
	p.Press("Plan the holes")
	p.Until(planSaid + ` === 'Planned.'`)
}

func TestTheBalanceFitsTheNarrowestPhoneAndAThumb(t *testing.T) {
	p, _ := balanceStep(t)
	p.Fill("Piston, new", "250")
	p.Press("Add a cylinder")
	p.Press("Add a hole")
	p.Press("Add a hole or a place to keep off")
	p.Narrow()
	assert.LessOrEqual(t, Eval[float64](p, `document.documentElement.scrollWidth`), 320.0)
	small := Eval[[]string](p, `[...document.querySelectorAll('#balance :is(button, input:not([type=checkbox]), select, summary, .tick)')]
		.filter((e) => { const { width, height } = e.getBoundingClientRect(); return width > 0 && (height < 44 || width < 44); }).map((e) => e.name || e.textContent)`)
	assert.Empty(t, small)
}

// BenchmarkPlan times a plan in the core alone, as the worker's runs: 24 drills,
// up to 8 holes, both wheels, unlike so that each is searched, with the
// processor slowed.
func BenchmarkPlan(b *testing.B) {
	for b.Loop() {
		p, _ := balanceStep(b)
		for _, row := range [][2]string{{"Piston, new", "236"}, {"Smallest", "4"}, {"Largest", "15.5"}, {"Step between", "0.5"}} {
			p.Fill(row[0], row[1])
		}
		p.Press("Add a hole or a place to keep off")
		p.Throttle(slowed)
		times := Eval[[]float64](p, `(() => {
			const form = Object.fromEntries([...document.querySelectorAll('#balance [name]')].filter((c) => c.value && !c.name.includes('*')).map((c) => [c.name, c.value]));
			Object.assign(form, { 'keep.a.radius': '80', 'keep.a.hour': '6', 'keep.a.across': '6', 'keep.a.wheel': 'drive' });
			const packed = Object.entries(form).flat().join('\0');
			return Array.from({ length: 20 }, () => {
				const start = performance.now();
				if (!pintwelve('plan', packed, 'key\0k').includes('Planned.')) throw new Error('no plan');
				return performance.now() - start;
			});
		})()`)
		slices.Sort(times)
		require.NotEmpty(b, times)
		b.ReportMetric(times[len(times)/2], "ms-median")
		b.ReportMetric(times[len(times)-1], "ms-worst")
	}
	b.ReportMetric(0, "ns/op")
}
