package link

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Both codes are complete: the widths fill Kraft's sum, Σ 2^−width = 1, exactly.
func TestCodesAreComplete(t *testing.T) {
	for _, code := range []*prefixCode{figures, words} {
		sum := 0
		for _, width := range code.width {
			if width > 0 {
				sum += 1 << (16 - width)
			}
		}
		assert.Equal(t, 1<<16, sum)
	}
}

// Bits counted by hand from the groups in letters.go: the end takes 5 in words,
// lengths of 2 and 3 take 3 in γ code.
func TestMannerOfText(t *testing.T) {
	for text, want := range map[string]int{
		"":           inFigures,
		"1 5/8":      inFigures,
		"1 5/8 in":   inWords,
		"A ":         plain,   // 11 + 3 + 5 = 19 bits; plain, 3 + 16 = 19
		"A e":        inWords, // 11 + 3 + 4 + 5 = 23; plain, 3 + 24 = 27
		"\t\t":       plain,   // 15 + 15 + 5; plain 3 + 16
		"rivé":       plain,   // 4 + 4 + 7 + 15 + 15 + 5 = 50; plain, 5 + 40 = 45
		"в работе":   plain,
		"the seats ": inWords,
	} {
		assert.Equal(t, want, mannerOf(text), "%q", text)
	}
}
