package bound

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestOutside(t *testing.T) {
	assert.Equal(t, "fit: figure 3 [2] 1.23457 not in 2 to 3", Outside("fit", 3, 2, 1.23456789, 2, 3))
	assert.Equal(t, "fit: figure 0 [0] NaN not in 0 to +Inf", Outside("fit", 0, 0, math.NaN(), 0, math.Inf(1)))
}

func TestFirst(t *testing.T) {
	one, two := errors.New("one"), errors.New("two")
	assert.NoError(t, First())
	assert.NoError(t, First(nil, nil))
	assert.Equal(t, one, First(nil, one, two))
}
