package site

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestMinified(t *testing.T) {
	for _, test := range []struct{ path, in, out string }{
		{"policy.html",
			"<!doctype html>\n<html lang=\"en-GB\">\n<head>\n<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; img-src 'self' blob: data:\">\n</head>\n<body></body></html>",
			"<!doctype html><html lang=en-GB><head><meta http-equiv=Content-Security-Policy content=\"default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; img-src 'self' blob: data:\"></head><body></body></html>"},
		{"module.html",
			"<script src=\"wasm_exec.js\" defer></script>\n<script type=\"module\" src=\"main.js\"></script>",
			"<script src=wasm_exec.js defer></script><script type=module src=main.js></script>"},
		{"template.html",
			"<template id=\"row\">\n  <li><input type=\"text\" name=\"pass.*.drive.tir\"></li>\n</template>",
			"<template id=row><li><input type=text name=pass.*.drive.tir></li></template>"},
		{"picture.html",
			"<svg viewBox=\"0 0 9 9\" aria-labelledby=\"t\"><title id=\"t\">Clock</title><desc>Why</desc><path class=\"ink\" d=\"M0 0 L9 9\"/></svg>",
			"<svg viewBox=\"0 0 9 9\" aria-labelledby=\"t\"><title id=\"t\">Clock</title><desc>Why</desc><path class=\"ink\" d=\"M0 0 9 9\"/></svg>"},
		{"module.js",
			"import { a } from './a.js';\n// why\nexport async function b(x) { return (await a(x))?.y ?? null; }\n",
			"import{a as r}from\"./a.js\";export async function b(n){return(await r(n))?.y??null}"},
		{"style.css",
			".face { color: #ffffff; }\n@media (prefers-color-scheme: dark) { .face { color: black; } }",
			".face{color:#fff}@media(prefers-color-scheme:dark){.face{color:#000}}"},
		{"app.webmanifest", "{ \"start_url\": \"./\", \"n\": 1.0 }", "{\"start_url\":\"./\",\"n\":1.0}"},
		{"core.wasm", "\x00asm  \n", "\x00asm  \n"},
	} {
		small, err := minified(Files{test.path: []byte(test.in)})
		require.NoError(t, err, test.path)
		assert.Equal(t, test.out, string(small[test.path]), test.path)
	}
}

func TestAPagesModulesAreOneScript(t *testing.T) {
	files, err := bundled(Files{
		"main.js":    []byte("import { one } from './one.js'; console.log(one());"),
		"one.js":     []byte("import { two } from './two.js'; export const one = () => two; export const unused = 'unused';"),
		"two.js":     []byte("export const two = 'zwölf';"),
		"sw.js":      []byte("self.x = 1;"),
		"index.html": []byte("<p>"),
	})
	require.NoError(t, err)
	assert.Equal(t, []string{"index.html", "main.js", "sw.js"}, files.Paths())
	small, err := minified(files)
	require.NoError(t, err)
	assert.Equal(t, `var o="zwölf",t=()=>o;console.log(t());`, string(small["main.js"]))
}

func TestAModuleThatIsNotThereEndsTheBuild(t *testing.T) {
	_, err := bundled(Files{"main.js": []byte("import './other.js';")})
	assert.ErrorContains(t, err, "other.js")
}

func TestBrokenScriptEndsTheBuild(t *testing.T) {
	_, err := minified(Files{"main.js": []byte("let = = 1")})
	assert.ErrorContains(t, err, "main.js")
}
