package qr

import (
	"image"
	"image/color"
	"strings"
	"testing"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"rsc.io/qr/coding"
)

// text is one of a length, of letters such as a link holds.
func text(length int) string {
	const letters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_#/:"
	return strings.Repeat(letters, length/len(letters)+1)[:length]
}

// Every version, and every mask, is module by module as rsc.io/qr/coding has it.
func TestEveryVersionIsAsTheReferenceHasIt(t *testing.T) {
	for version := least; version <= most; version++ {
		for mask := range 8 {
			if version > 8 && mask != version%8 {
				continue
			}
			words := text((8*dataBytes(version) - 4 - lengthBits(version)) / 8)
			plan, err := coding.NewPlan(coding.Version(version), coding.L, coding.Mask(mask))
			require.NoError(t, err)
			require.Equal(t, plan.DataBytes, dataBytes(version))
			expected, err := plan.Encode(coding.String(words))
			require.NoError(t, err)
			got := laid(version, mask, withChecks(version, written(version, words)))
			require.Len(t, got, expected.Size)
			for y, row := range got {
				for x, dark := range row {
					require.Equal(t, expected.Black(x, y), dark, "version %d, mask %d, at %d %d", version, mask, x, y)
				}
			}
		}
	}
}

// A decoder that shares no code with it reads every length back.
func TestAnIndependentDecoderReadsTheCode(t *testing.T) {
	for _, length := range []int{0, 1, 17, 18, 78, 300, 700, 1100, 2953} {
		code := Code(text(length))
		const scale, quiet = 3, 4
		img := image.NewGray(image.Rect(0, 0, (len(code)+2*quiet)*scale, (len(code)+2*quiet)*scale))
		for y := range img.Rect.Dy() {
			for x := range img.Rect.Dx() {
				mx, my := x/scale-quiet, y/scale-quiet
				if mx < 0 || my < 0 || mx >= len(code) || my >= len(code) || !code[my][mx] {
					img.SetGray(x, y, color.Gray{Y: 255})
				}
			}
		}
		bits, err := gozxing.NewBinaryBitmapFromImage(img)
		require.NoError(t, err)
		result, err := qrcode.NewQRCodeReader().Decode(bits, map[gozxing.DecodeHintType]any{gozxing.DecodeHintType_PURE_BARCODE: true})
		require.NoError(t, err, length)
		assert.Equal(t, text(length), result.GetText())
	}
}

// ISO/IEC 18004 table 7: 1-L takes 17 bytes, 40-L 2953.
func TestTheSmallestVersionThatHoldsTheText(t *testing.T) {
	assert.Len(t, Code(text(17)), 21)
	assert.Len(t, Code(text(18)), 25)
	assert.Len(t, Code(text(2953)), 177)
	assert.Nil(t, Code(text(2954)))
}

// Table 11, by hand: a row of six alike takes 3 + 1, a block of two by
// two 3, and 21 dark of 36, which is 8 % over a half, 10.
func TestPenaltiesByHand(t *testing.T) {
	code := func(rows ...string) (c [][]bool) {
		for _, row := range rows {
			var line []bool
			for _, r := range row {
				line = append(line, r == '#')
			}
			c = append(c, line)
		}
		return c
	}
	assert.Equal(t, 0, penalty(code("#.", ".#")))
	assert.Equal(t, 3+100, penalty(code("##", "##")), "one block, and all of it dark")
	assert.Equal(t, 4+10, penalty(code("######", "#.#.#.", ".#.#.#", "#.#.#.", ".#.#.#", "#.#.#.")))
}
