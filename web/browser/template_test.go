package browser

import (
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pixelsPerMM is how finely the print is measured: 254 dpi.
const pixelsPerMM = 10

// The template is as large on paper as the wheel: the rim on the print, from its
// outermost ink to that opposite, is the wheel's diameter and the line's own thickness.
func TestTheTemplateIsFullSizeOnPaper(t *testing.T) {
	if _, err := exec.LookPath("pdftoppm"); err != nil {
		t.Skip("pdftoppm is not installed (poppler-utils): the print is not measured")
	}
	p, _ := balanceStep(t)
	p.Fill("Wheel diameter", "180")
	p.Fill("Piston, new", "250")
	p.Press("Plan the holes")
	p.Until(planSaid + ` === 'Planned.'`)
	// The outline's own thickness, mm: the drawing's 360 units are as wide as the rim and 3 on either side.
	line := Eval[float64](p, `(document.querySelector('.full-size p').hidden = true,
		parseFloat(getComputedStyle(document.querySelector('.full-size svg .ol')).strokeWidth) * 180 / 354)`)
	edge := 0.25 // inches, about the 6 mm of the style sheet
	Eval[bool](p, `(document.documentElement.classList.add('print-template'), true)`)
	for name, inches := range map[string][2]float64{"a4": {8.27, 11.69}, "letter": {8.5, 11}} {
		file := filepath.Join(t.TempDir(), name+".pdf")
		pdf := send(p, page.PrintToPDF, page.PrintToPDFParams{PaperWidth: inches[0], PaperHeight: inches[1], MarginTop: &edge, MarginBottom: &edge, MarginLeft: &edge, MarginRight: &edge}).Data
		require.NoError(t, os.WriteFile(file, pdf, 0o600))
		out := strings.TrimSuffix(file, ".pdf")
		require.NoError(t, exec.Command("pdftoppm", "-r", "254", "-gray", "-png", file, out).Run())
		pages, err := filepath.Glob(out + "*.png")
		require.NoError(t, err)
		wheels := 0
		for _, each := range pages {
			if mm := widest(t, each); mm > 100 {
				wheels++
				t.Logf("%s: a wheel of 180 mm is %.1f mm on paper, its line of %.2f mm aside", name, mm-line, line)
				assert.InDelta(t, 180, mm-line, 0.3, "%s", name)
			}
		}
		assert.Equal(t, 2, wheels, "%s: one page a wheel", name)
	}
}

// widest is the widest span of ink on a row of a picture, mm.
func widest(t *testing.T, file string) float64 {
	t.Helper()
	f, err := os.Open(file)
	require.NoError(t, err)
	defer f.Close()
	picture, err := png.Decode(f)
	require.NoError(t, err)
	most := 0.0
	for y := picture.Bounds().Min.Y; y < picture.Bounds().Max.Y; y++ {
		first, last := -1, -1
		for x := picture.Bounds().Min.X; x < picture.Bounds().Max.X; x++ {
			if ink, _, _, _ := picture.At(x, y).RGBA(); ink < 0x8000 {
				if first < 0 {
					first = x
				}
				last = x
			}
		}
		most = math.Max(most, float64(last-first)/pixelsPerMM)
	}
	return most
}
