package bench

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/core/unit"
)

// A figure and its ± end at one decimal: rounded to hundredths, 0.5 is 0.50 beside 0.12.
func TestAFigureAndItsPlusEndAtOneDecimal(t *testing.T) {
	for _, row := range []struct{ figure, plus, want string }{
		{"0.5", "0.12 mm", "0.50 ± 0.12 mm"},
		{"3", "0.25 thou", "3.00 ± 0.25 thou"},
		{"62.1", "1%", "62.1 ± 1.0%"},
		{"−0.5", "0.12 mm", "−0.50 ± 0.12 mm"},
		{"12", "3 g·mm", "12 ± 3 g·mm"},
		{"?", "0.1 mm", "? ± 0.1 mm"},
	} {
		assert.Equal(t, row.want, PlusMinus(row.figure, row.plus))
	}
	assert.Equal(t, "0.50 ± 0.12 mm", Gauge{unit.MM, 0.01}.Within(0.5, 0.12))
}
