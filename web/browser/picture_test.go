package browser

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The README's picture is the first screen as it stands: make picture writes it.
func TestTheReadmesPicture(t *testing.T) {
	p, _ := bench(t)
	twist(p)
	Eval[bool](p, `(document.activeElement.blur(), scrollTo(0, 0), true)`)
	assert.Equal(t, "Strike the drive wheel at 3; drive needle to 1.4 thou.", p.Text(headline))
	for _, part := range []string{headline, "#face svg", "#drive-tir", "#timing-high"} {
		assert.True(t, Eval[bool](p, `(({top, bottom}) => top >= 0 && bottom <= innerHeight)(document.querySelector('`+part+`').getBoundingClientRect())`), "%s is in the picture", part)
	}
	if file := os.Getenv("PINTWELVE_PICTURE"); file != "" {
		p.Screenshot(file)
	}
}
