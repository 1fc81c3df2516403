package screen

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The answers are the core's own; what shows and what doesn't follows from them, as
// web/paint.js has it.
func TestTheFirstScreenIsTheCoresAnswerToAnEmptyJob(t *testing.T) {
	painted, err := Paint([]byte(`<!doctype html><html><head></head><body>
<header><a data-say="block.tolerance">x</a></header>
<section class="step" id="order"><p data-say="truing.headline">x</p></section>
<section class="step" id="true" data-key="1">
<p data-say="truing.headline">Getting ready</p><p data-say="truing.caution">x</p>
<b data-if="truing.new" hidden>new</b><b data-if="truing.did">did</b>
<select name="pass.*.drive.how"><option value="hour">h</option><option value="turn">t</option></select>
<i data-when="pass.*.drive.how=hour|pin" hidden></i><i data-when="pass.*.drive.how=turn"></i>
<input name="throw" placeholder="mm"><p class="error">wrong</p><span data-unit="fine"></span>
<div data-picture="face"></div>
<div data-later><span data-say="pass.name"></span></div>
<template><p data-say="truing.headline">kept</p></template>
</section></body></html>`))
	require.NoError(t, err)
	page := string(painted)
	for _, want := range []string{
		`<a data-say="block.tolerance">2 thou allowed</a>`,
		`id="order" hidden=""><script type="text/html"><p data-say="truing.headline">x</p></script></section>`,
		`<p data-say="truing.headline">Turn the crank once and read a dial.</p><p data-say="truing.caution" hidden=""></p>`,
		`<b data-if="truing.new">new</b><b data-if="truing.did" hidden="">did</b>`,
		`<i data-when="pass.*.drive.how=hour|pin"></i><i data-when="pass.*.drive.how=turn" hidden=""></i>`,
		`<p class="error" hidden="">wrong</p><span data-unit="fine">thou</span>`,
		`<div data-picture="face"><svg`,
		`<span data-say="pass.name">As found</span>`,
		`<template><p data-say="truing.headline">kept</p></template>`,
	} {
		assert.Contains(t, page, want)
	}
	assert.Contains(t, page, `<input name="throw" data-hint="mm" placeholder="42 mm assumed"/>`)
}
