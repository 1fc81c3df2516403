package browser

import (
	"bytes"
	"image"
	_ "image/png"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/form"
	"pintwelve/core/link"
)

// example opens the example job at a step.
func example(p *Page, step string) {
	to(p, "jobs")
	p.Press("Look at an example")
	p.Until(`!document.getElementById('true').hidden`)
	to(p, step)
}

// scanned reads the QR code in a picture.
func scanned(t *testing.T, file string) string {
	t.Helper()
	f, err := os.Open(file)
	require.NoError(t, err)
	defer f.Close()
	img, _, err := image.Decode(f)
	require.NoError(t, err)
	bits, err := gozxing.NewBinaryBitmapFromImage(img)
	require.NoError(t, err)
	hints := map[gozxing.DecodeHintType]any{gozxing.DecodeHintType_TRY_HARDER: true}
	result, err := qrcode.NewQRCodeReader().Decode(bits, hints)
	require.NoError(t, err, file)
	return result.GetText()
}

func TestTheSheetSumsTheJobUp(t *testing.T) {
	p, _ := bench(t)
	example(p, "sheet")
	paper := p.Text("#paper")
	for _, words := range []string{
		"Job sheet Example: CB 0417", "Calderbrook 499", "Owner: J. Marlowe", "Came in: 2 Mar 2026", "Went out: 13 Mar 2026",
		"The crank runs true: over one turn neither shaft moves more than 0.5 thou; 2 thou is allowed.", "It came at 4.5 thou.",
		"struck timing at 3", "squeezed at 6", "New crankpin and bush",
		"Side play 16", "Crankpin 31.749", "Cut 1: 529 g", "Balance factor 54.9", "Side clearance 13.8", "End float 10.8", "Run-out, timing side, 0.5",
	} {
		assert.Contains(t, paper, words)
	}
	assert.Equal(t, 2, Eval[int](p, `[...document.querySelectorAll('#paper [data-picture] svg')].filter((e) => e.checkVisibility()).length`))
	assert.LessOrEqual(t, Eval[float64](p, `document.documentElement.scrollWidth`), 360.0)
}

func TestALinkLeavesTheOwnersNameOutUnlessTicked(t *testing.T) {
	p, server := bench(t)
	example(p, "hand-on")
	assert.NotContains(t, p.Text("#carries"), "Marlowe")
	assert.Contains(t, p.Text("#carries"), "3 passes")
	assert.Contains(t, p.Text("#carries"), "weights and balance")
	assert.NotContains(t, p.Text("#carries"), "made-up")
	without := linkOf(p)
	p.Press("With the owner’s name")
	assert.Contains(t, p.Text("#carries"), "owner: J. Marlowe")
	with := linkOf(p)

	other := Launch(t).Open(server.URL("/crank/"))
	for link, named := range map[string]bool{without: false, with: true} {
		other.Visit("about:blank")
		other.Visit(link)
		other.Ready()
		assert.Contains(t, other.Text("#paper"), "The crank runs true")
		assert.Equal(t, named, strings.Contains(other.Text("#paper"), "Marlowe"))
	}
}

// Whatever a job holds, the page says of what kind it is before a link goes.
func TestEveryFieldThatALinkCarriesIsToldOf(t *testing.T) {
	p, _ := bench(t)
	looked := map[string]bool{"bench": true, "look": true, "archived": true} // which pass and pin are looked at; a link leaves them out
	for _, f := range form.Job.Fields() {
		first, _, _ := strings.Cut(f.Pattern, ".")
		if looked[first] {
			continue
		}
		looked[first] = true
		text := "1"
		switch f.Kind {
		case form.Choice:
			text = f.Choices[len(f.Choices)-1]
		case form.Tick:
			text = "yes"
		}
		given, err := link.Encode(form.Form{strings.ReplaceAll(f.Pattern, "*", "1"): text})
		require.NoError(t, err)
		Eval[bool](p, `(document.getElementById('carries')?.replaceChildren(), location.hash = '`+given+`', true)`)
		p.Until(`document.getElementById('carries')?.textContent`)
		assert.NotEqual(t, "nothing yet", Eval[string](p, `document.getElementById('carries').textContent`), f.Pattern)
	}
	assert.Greater(t, len(looked), 40)
}

func TestALinkTooLongForAMessengerOffersTheFile(t *testing.T) {
	p, _ := bench(t)
	twist(p)
	to(p, "hand-on")
	assert.Contains(t, p.Text("#link-length"), "characters long.")
	assert.True(t, Eval[bool](p, `document.querySelector('#screen-qr svg') !== null`))
	to(p, "jobs")
	p.Fill("Notes, for the sheet", strings.Repeat("A quite long story. ", 90))
	to(p, "hand-on")
	assert.Contains(t, p.Text("#link-length"), "send the file instead")
	assert.True(t, Eval[bool](p, `document.getElementById('screen-qr').hidden`))
	assert.Contains(t, savedFile(p, "Save the file"), "A quite long story.")
}

func TestThePhonesOwnShareSheetIsUsed(t *testing.T) {
	p, _ := bench(t)
	twist(p)
	Eval[bool](p, `(navigator.share = async ({ url }) => { window.shared = url; }, true)`)
	to(p, "hand-on")
	p.Press("Send the link")
	p.Until(`document.getElementById('share-said').textContent === 'Sent.'`)
	assert.Contains(t, Eval[string](p, `window.shared`), "/crank/#A")
}

func TestTheQRCodeIsReadFromTheScreen(t *testing.T) {
	p, _ := bench(t)
	example(p, "hand-on")
	link := linkOf(p)
	Eval[bool](p, `(document.getElementById('screen-qr').scrollIntoView(), true)`)
	file := filepath.Join(t.TempDir(), "screen.png")
	p.Screenshot(file)
	assert.Equal(t, link, scanned(t, file))
}

func TestTheSheetAsPlainText(t *testing.T) {
	p, _ := bench(t)
	example(p, "sheet")
	Eval[bool](p, `(Object.defineProperty(navigator, 'clipboard', { value: { writeText: async (text) => { window.pasted = text; } } }), true)`)
	p.Press("Copy as plain text")
	p.Until(`window.pasted`)
	text := Eval[string](p, `window.pasted`)
	assert.True(t, strings.HasPrefix(text, "Job sheet Example: CB 0417\n"), text)
	assert.Contains(t, text, "Pass 2: D 2.5 thou, T 2.5 thou; squeezed at 6")
	assert.NotContains(t, text, "\n\n\n")
}

// The page that Chromium prints has its words and its QR code: one or two pages
// of A4, and of Letter.
func TestThePrintedSheet(t *testing.T) {
	p, _ := bench(t)
	example(p, "hand-on")
	link := linkOf(p)
	for name, inches := range map[string][2]float64{"a4": {8.27, 11.69}, "letter": {8.5, 11}} {
		pdf := send(p, page.PrintToPDF, page.PrintToPDFParams{PaperWidth: inches[0], PaperHeight: inches[1]}).Data
		file := filepath.Join(t.TempDir(), name+".pdf")
		require.NoError(t, os.WriteFile(file, pdf, 0o600))
		pages := bytes.Count(pdf, []byte("/Type /Page\n"))
		assert.True(t, pages == 1 || pages == 2, "%s: %d pages", name, pages)
		for _, tool := range []string{"pdftotext", "pdftoppm"} {
			if _, err := exec.LookPath(tool); err != nil {
				t.Skip(tool + " is not installed (poppler-utils): the printed words and QR code are not read back")
			}
		}
		words, err := exec.Command("pdftotext", "-layout", file, "-").Output()
		require.NoError(t, err)
		for _, expected := range []string{"Job sheet Example: CB 0417", "The crank runs true", "As found", "As left", "squeezed at 6", "New crankpin and bush"} {
			assert.Contains(t, string(words), expected)
		}
		assert.NotContains(t, string(words), "Send the link")
		out := strings.TrimSuffix(file, ".pdf")
		require.NoError(t, exec.Command("pdftoppm", "-r", "150", "-png", "-f", strconv.Itoa(pages), file, out).Run())
		pictures, err := filepath.Glob(out + "*.png")
		require.NoError(t, err)
		require.NotEmpty(t, pictures)
		assert.Equal(t, link, scanned(t, pictures[len(pictures)-1]))
	}
}
