package site

import (
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/tools/rewrite"
)

// onKnownGo skips a test of what goes by one release of Go on any other.
func onKnownGo(t *testing.T) {
	if !rewrite.Knows(runtime.Version()) {
		t.Skipf("%s writes other files than %s, by which this goes; the site has them as they are", runtime.Version(), rewrite.Go)
	}
}

// Another Go's program is left as it is: the page must build there too.
func TestAnotherGosProgramIsLeftAsItIs(t *testing.T) {
	plain, err := Compile("../..", "./tools/empty")
	require.NoError(t, err)
	for _, version := range []string{"go1.27", "go1.260.1", "go1.25.3", "devel go1.27-abc"} {
		got, err := core("../..", "./tools/empty", version)
		require.NoError(t, err)
		assert.Equal(t, len(plain), len(got), version)
	}
	onKnownGo(t)
	got, err := core("../..", "./tools/empty", rewrite.Go+".99")
	require.NoError(t, err)
	assert.Less(t, len(got), len(plain))
}
