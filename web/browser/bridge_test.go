package browser

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Whatever was asked before, and of whichever form, a call is of the form that it is given:
// texts that have come, are others or have gone, over many calls, tell a core no more and no
// less than the form does one that was just started.
func TestACallIsOfTheFormItIsGiven(t *testing.T) {
	p := Launch(t).Tab()
	p.Visit(Serve(t, "/", WithModules(t)).URL("/"))
	p.Ready()
	assert.Empty(t, Eval[[]string](p, `import('./bridge.js').then(async ({ startCore }) => {
		const used = await startCore();
		const names = ['number', 'pass.1.drive.tir', 'pass.1.drive.high', 'pass.1.timing.tir', 'pass.1.timing.high', 'pass.2.order', 'pass.2.drive.tir', 'dial.a.order', 'notes', 'units'];
		const texts = ['3', '4:30', 'metric', '1\u00002', 'ü\n', ''];
		let seed = 8;
		const any = (all) => all[(seed = seed * 16807 % 2147483647) % all.length];
		const wrong = [];
		let form = {};
		for (let i = 0; i < 300; i++) {
			if (i % 7 === 0) form = { [any(names)]: any(texts) };
			else if (i % 3 === 0) delete form[any(names)];
			else form[any(names)] = any(texts);
			const fresh = i % 25 === 24 ? await startCore() : null;
			for (const [verb, args] of [['answer', { part: 'true' }], ['encode', {}]]) {
				const given = used(verb, form, args);
				if (fresh && JSON.stringify(given) !== JSON.stringify(fresh(verb, form, args))) wrong.push(i + verb + JSON.stringify(form));
			}
		}
		return wrong;
	})`))
}
