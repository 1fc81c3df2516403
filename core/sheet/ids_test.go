package sheet

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
)

// An address leads to one place of the page, and a label to one control.
func TestNoTwoPlacesOfThePageShareAnID(t *testing.T) {
	seen := map[string]bool{}
	for _, m := range regexp.MustCompile(`<[a-z][^>]*\sid="?([^"\s>]+)`).FindAllStringSubmatch(webText(t, ".html"), -1) {
		assert.False(t, seen[m[1]], "two elements are called %s", m[1])
		seen[m[1]] = true
	}
	assert.Greater(t, len(seen), 100)
}
