package truing

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestStrikesAreLikenedToBlows(t *testing.T) {
	for dose, words := range map[float64]string{
		0.2: "a tap", 0.5: "a light blow", 1: "a usual blow", 1.4: "a hard blow", 1.8: "two usual blows", 3: "three usual blows", 40: "many blows",
	} {
		assert.Equal(t, words, blows(dose), dose)
	}
}
