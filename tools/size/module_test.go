package main

import (
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/tools/rewrite"
	"pintwelve/tools/site"
)

func TestCodeByPackageOfAnEmptyProgram(t *testing.T) {
	if !rewrite.Knows(runtime.Version()) {
		t.Skipf("%s isn’t %s, for which the core's flags are", runtime.Version(), rewrite.Go)
	}
	module, err := site.CompileCore("../..", "./tools/empty")
	require.NoError(t, err)
	code, err := codeByPackage(module)
	require.NoError(t, err)
	assert.NotEmpty(t, code["main"])
	all := 0
	for _, body := range code {
		all += len(body)
	}
	assert.Greater(t, len(code["runtime"]), all*8/10, "an empty program is its runtime")
	assert.Less(t, all, len(module))
}

func TestCodeByPackageRefusesWhatIsNoNamedModule(t *testing.T) {
	bare, err := site.Compile("../..", "./tools/empty")
	require.NoError(t, err)
	for name, module := range map[string][]byte{
		"empty": {}, "text": []byte("not a module at all"), "without names": bare, "cut short": bare[:len(bare)/2],
	} {
		_, err := codeByPackage(module)
		assert.ErrorIs(t, err, errModule, name)
	}
}
