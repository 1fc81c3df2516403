package unit

import (
	"errors"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
)

// Whatever an error offers must itself be taken, and no two kinds are called
// the same.
func TestExamplesWouldDo(t *testing.T) {
	kinds := map[string]Kind{}
	for _, u := range append([]Unit{Plain}, allUnits()...) {
		_, err := Parse("bananas", u)
		var e *Error
		if !assert.True(t, errors.As(err, &e), u.Name()) {
			continue
		}
		for _, either := range strings.Split(e.Example, " or ") {
			for _, text := range strings.Split(either, ", ") {
				_, err := Parse(text, u)
				assert.NoError(t, err)
			}
		}
		if known, ok := kinds[e.Problem]; ok {
			assert.Equal(t, known, u.Kind(), e.Problem)
		}
		kinds[e.Problem] = u.Kind()
	}
	assert.Len(t, kinds, int(Taper)+1)
}

func TestGivenIsShortAndPrintable(t *testing.T) {
	for text, want := range map[string]string{
		"":                         "(nothing)",
		"2\u00a0x\nm":              "2 x m",
		"\x00\u202e\u200f\x7f\xff": strings.Repeat("\uFFFD", 5),
		"Öl 5 µm":                  "Öl 5 µm",
		strings.Repeat("é", 24):    strings.Repeat("é", 24),
		strings.Repeat("é", 25):    strings.Repeat("é", 24) + "…",
	} {
		_, err := Parse(text, MM)
		var e *Error
		if assert.True(t, errors.As(err, &e), "%q", text) {
			assert.Equal(t, want, e.Given, "%q", text)
		}
	}
}

func allUnits() (all []Unit) {
	for u := MM; int(u) < len(units); u++ {
		all = append(all, u)
	}
	return all
}

func TestUnseenIsNotPrinted(t *testing.T) {
	for r := rune(0); r < 0xe0000; r++ { // beyond are tags and variation selectors
		if Unseen(r) {
			assert.False(t, unicode.IsPrint(r), "%U", r)
		}
	}
	for _, r := range "aZ0 é°µ½″−я曲\U0001F527" {
		assert.False(t, Unseen(r), "%U", r)
	}
}

func TestSpaceIsWhiteSpace(t *testing.T) {
	for r := rune(0); r <= unicode.MaxRune; r++ {
		if IsSpace(r) != unicode.IsSpace(r) {
			assert.Fail(t, "a space or none", "%U", r)
		}
	}
}
