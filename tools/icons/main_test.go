package main

import (
	"bytes"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestCommittedIconsAreTheDrawnOnes(t *testing.T) {
	for name, drawn := range icons() {
		committed, err := os.ReadFile(filepath.Join("..", "..", "web", "icons", name))
		require.NoError(t, err)
		assert.Equal(t, drawn, committed, "%s: run go run ./tools/icons", name)
	}
}

func TestPinStandsAt12AndNowhereElse(t *testing.T) {
	picture, err := png.Decode(bytes.NewReader(face(1).png(size, plain)))
	require.NoError(t, err)
	middle, pin := size/2, 126
	assert.Equal(t, ink, picture.At(middle, middle-pin), "12")
	assert.Equal(t, paper, picture.At(middle, middle+pin), "6")
	assert.Equal(t, paper, picture.At(middle+pin, middle), "3")
	assert.Equal(t, paper, picture.At(middle-pin, middle), "9")
}

func TestMaskableKeepsWithinTheSafeZone(t *testing.T) {
	for angle := range 360 {
		sin, cos := math.Sincos(float64(angle) * math.Pi / 180)
		const safe = 0.4 * size // radius, from the same source as maskable
		assert.Positive(t, face(maskable).distance(safe*cos, safe*sin), "%d°", angle)
	}
}
