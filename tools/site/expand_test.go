package site

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func page(t *testing.T, files Files) string {
	out, err := expanded(files)
	require.NoError(t, err)
	return string(out[pageFile])
}

func TestWritesOutWhatThePageSaysForShort(t *testing.T) {
	for _, row := range []struct{ name, source, want string }{
		{
			"all else to the letter",
			"<!doctype html>\n<p CLASS=x>a &amp; b<br></p><!-- said --><script src=a.js></script>\n",
			"<!doctype html>\n<p CLASS=x>a &amp; b<br></p><!-- said --><script src=a.js></script>\n",
		},
		{
			"a length", `<field name="throw">Throw</field>`,
			`<div class="field"><label for="throw">Throw</label>` +
				`<span class="with-unit"><input id="throw" inputmode="decimal" name="throw"><span class="unit">mm</span></span><p class="error"></p></div>`,
		},
		{
			"in the dials’ unit, with a sign", `<field name="pass.*.edge3" when="mount=centres">Step at 3</field>`,
			`<div class="field" data-when="mount=centres"><label for="edge3">Step at 3</label>` +
				`<span class="with-unit"><input id="edge3" inputmode="text" name="pass.*.edge3"><span class="unit" data-unit="fine"></span></span><p class="error"></p></div>`,
		},
		{
			"a choice", `<field name="units" class="wide" options="inch: thou | metric: millimetres">Dials read in</field>`,
			`<div class="field wide"><label for="units">Dials read in</label><select id="units" name="units">` +
				`<option value="inch">thou</option><option value="metric">millimetres</option></select><p class="error"></p></div>`,
		},
		{
			"what stands under it, an id and a unit of its own",
			`<field name="tolerance" id="allowed" unit="">Allowed<p class="hint">Yours, <a href="#how">or</a> the maker’s.</p></field>`,
			`<div class="field"><label for="allowed">Allowed</label><input id="allowed" inputmode="decimal" name="tolerance">` +
				`<p class="hint">Yours, <a href="#how">or</a> the maker’s.</p><p class="error"></p></div>`,
		},
		{
			"in a row the label holds the control",
			`<template><field name="dial.*.at"><span class="unseen">Dial</span> at</field></template><field name="rim">Rim</field>`,
			`<template><div class="field"><label><span class="unseen">Dial</span> at ` +
				`<span class="with-unit"><input inputmode="decimal" name="dial.*.at"><span class="unit">mm</span></span></label><p class="error"></p></div></template>` +
				`<div class="field"><label for="rim">Rim</label>` +
				`<span class="with-unit"><input id="rim" inputmode="decimal" name="rim"><span class="unit">mm</span></span><p class="error"></p></div>`,
		},
		{
			"steps up and down, a unit that switches, shown where the core says so",
			`<field name="pass.*.drive.tir" if="truing.new" steps switches>Drive run-out</field>`,
			`<div class="field" data-if="truing.new"><label for="drive-tir">Drive run-out</label><div class="stepper">` +
				`<button type="button" data-step="-1" data-for="pass.*.drive.tir" aria-label="Drive run-out, one division less">−</button>` +
				`<span class="with-unit"><input id="drive-tir" inputmode="decimal" name="pass.*.drive.tir">` +
				`<button type="button" class="unit"><span data-unit="fine"></span><span class="unseen"> as the unit of Drive run-out</span></button></span>` +
				`<button type="button" data-step="1" data-for="pass.*.drive.tir" aria-label="Drive run-out, one division more">+</button>` +
				`</div><p class="error"></p></div>`,
		},
		{
			"in a row the buttons stand beside the label, named by what is written of it",
			`<template><field name="pass.*.dial.*.tir" unit="" steps><span data-say="dial.*.letter"></span> run-out</field></template>`,
			`<template><div class="field"><div class="stepper">` +
				`<button type="button" data-step="-1" data-for="pass.*.dial.*.tir" aria-label="run-out, one division less">−</button>` +
				`<label><span data-say="dial.*.letter"></span> run-out <input inputmode="decimal" name="pass.*.dial.*.tir"></label>` +
				`<button type="button" data-step="1" data-for="pass.*.dial.*.tir" aria-label="run-out, one division more">+</button>` +
				`</div><p class="error"></p></div></template>`,
		},
		{
			"a long unit, not read out", `<field name="plug.density" unsaid>Density</field>`,
			`<div class="field"><label for="plug-density">Density</label><span class="with-unit long-unit">` +
				`<input id="plug-density" inputmode="decimal" name="plug.density"><span class="unit" aria-hidden="true">kg/m³</span></span><p class="error"></p></div>`,
		},
		{
			"once a side",
			`<each side="drive timing"><input type="radio" value="{side}" {checked} aria-label="{S}"><field name="{side}.at" unit="">{Side}</field></each>`,
			`<input type="radio" value="drive" checked aria-label="D"><div class="field"><label for="drive-at">Drive</label><input id="drive-at" inputmode="decimal" name="drive.at"><p class="error"></p></div>` +
				`<input type="radio" value="timing" aria-label="T"><div class="field"><label for="timing-at">Timing</label><input id="timing-at" inputmode="decimal" name="timing.at"><p class="error"></p></div>`,
		},
	} {
		assert.Equal(t, row.want, page(t, Files{pageFile: []byte(row.source)}), row.name)
	}
}

func TestStepsGoIntoThePage(t *testing.T) {
	files := Files{
		pageFile: []byte("<main>\n<step src=\"a.html\"></step>\n</main>"), "steps/a.html": []byte("<h2>A</h2>"), "main.js": []byte("1"),
	}
	out, err := expanded(files)
	require.NoError(t, err)
	assert.Equal(t, Files{pageFile: []byte("<main>\n<h2>A</h2>\n</main>"), "main.js": []byte("1")}, out)
}

func TestTellsWhatThePageSaysWrongly(t *testing.T) {
	for source, want := range map[string]string{
		`<field name="thow">Throw</field>`:                            `web/index.html: <field name="thow">: the form's table has no such field`,
		`<field name="throw">Throw`:                                   `no </field>`,
		`<field name="units">Dials</field>`:                           `options belong to a choice`,
		`<field name="throw" options="a: b">Throw</field>`:            `options belong to a choice`,
		`<field name="units" options="inch: thou">Dials</field>`:      `1 options, the table has 2: inch, metric`,
		`<field name="units" options="inch: a | mm: b">Dials</field>`: `option "mm" where the table has "metric"`,
		`<step src="gone.html"></step>`:                               `no file web/steps/gone.html`,
		`<each side="drive">`:                                         `no </each>`,
		`<step src="gone.html">`:                                      `no </step>`,
	} {
		_, err := expanded(Files{pageFile: []byte(source)})
		assert.ErrorContains(t, err, want, source)
	}
}
