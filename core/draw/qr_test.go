package draw

import (
	"encoding/xml"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/qr"
)

func TestTheQRPictureHasEveryModule(t *testing.T) {
	svg := QR("https://example.org/#A")
	require.NoError(t, xml.Unmarshal([]byte(svg), new(struct{})))
	code := qr.Code("https://example.org/#A")
	assert.Contains(t, svg, `data-modules="`+strconv.Itoa(len(code)+2*quiet)+`"`)
	drawn := 0
	for _, run := range regexp.MustCompile(`M(\d+) (\d+)h(\d+)v1H(\d+)`).FindAllStringSubmatch(svg, -1) {
		at := make([]int, 4)
		for i := range at {
			at[i], _ = strconv.Atoi(run[i+1])
		}
		assert.Equal(t, at[0], at[3])
		for x := at[0]; x < at[0]+at[2]; x++ {
			assert.True(t, code[at[1]-quiet][x-quiet])
			drawn++
		}
	}
	dark := 0
	for _, row := range code {
		for _, module := range row {
			if module {
				dark++
			}
		}
	}
	assert.Equal(t, dark, drawn)
	assert.Empty(t, QR(strings.Repeat("x", 3000)))
}
