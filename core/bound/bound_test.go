package bound

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestOutside(t *testing.T) {
	assert.Equal(t, "figure 3 [2] 0.0000001234 not in 2 to 3", Outside(3, 2, 1.234e-7, 2, 3))
	assert.Equal(t, "figure 0 [0] NaN not in 0 to +Inf", Outside(0, 0, math.NaN(), 0, math.Inf(1)))
}

func TestWithin(t *testing.T) {
	type field uint8
	assert.NoError(t, Within[string](field(1), 0, 2, 2, 3))
	assert.NoError(t, Within[string](field(1), 0, 3, 2, 3))
	var fault *Fault[field, string]
	assert.ErrorAs(t, Within[string](field(1), 4, 3.5, 2, 3), &fault)
	assert.Equal(t, Fault[field, string]{Field: 1, Item: 4, Got: 3.5, Least: 2, Most: 3}, *fault)
	assert.Equal(t, "figure 1 [4] 3.5 not in 2 to 3", fault.Error())
	assert.Error(t, Within[string](field(1), 0, math.NaN(), 2, 3))
}

func TestFirst(t *testing.T) {
	one, two := errors.New("one"), errors.New("two")
	assert.NoError(t, First())
	assert.NoError(t, First(nil, nil))
	assert.Equal(t, one, First(nil, one, two))
}
