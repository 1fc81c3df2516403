package main

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/tools/site"
)

func TestRatioCountsEveryFileOverTheEmptyProgram(t *testing.T) {
	program := []byte("\x00asm and what follows")
	assert.Equal(t, 1.0, report(site.Files{"core.wasm": program}, program, program))
	assert.Equal(t, 2.0, report(site.Files{"core.wasm": program, "copy.wasm": program}, program, program))
}
