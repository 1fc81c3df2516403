package browser

import (
	"bytes"
	"encoding/base64"
	"image"
	"image/color"
	"image/png"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// shareSheet stands in for the phone's: what it is given is kept.
const shareSheet = `(() => {
	navigator.canShare = ({ files }) => files.every((file) => file.size > 0);
	navigator.share = async (what) => {
		const [file] = what.files ?? [];
		const bytes = file && new Uint8Array(await file.arrayBuffer());
		window.shared = { ...what, file: file && { name: file.name, type: file.type, bytes: btoa(Array.from(bytes, (b) => String.fromCharCode(b)).join('')) } };
	};
	return true;
})()`

// sent is what the share sheet was given last.
type sent struct {
	Title, Text, URL string
	File             struct{ Name, Type, Bytes string }
}

func sentBy(p *Page, button string) sent {
	p.t.Helper()
	Eval[bool](p, `(delete window.shared, true)`)
	p.Press(button)
	p.Until(`window.shared`)
	return Eval[sent](p, `(({ title, text, url, file }) => ({ Title: title, Text: text, URL: url ?? '', File: { Name: file?.name ?? '', Type: file?.type ?? '', Bytes: file?.bytes ?? '' } }))(window.shared)`)
}

func (s sent) picture(t *testing.T) image.Image {
	t.Helper()
	raw, err := base64.StdEncoding.DecodeString(s.File.Bytes)
	require.NoError(t, err)
	img, err := png.Decode(bytes.NewReader(raw))
	require.NoError(t, err)
	return img
}

// inked is the share of a region's points that are dark.
func inked(img image.Image, region image.Rectangle) float64 {
	dark := 0
	for y := region.Min.Y; y < region.Max.Y; y++ {
		for x := region.Min.X; x < region.Max.X; x++ {
			if color.GrayModel.Convert(img.At(x, y)).(color.Gray).Y < 96 {
				dark++
			}
		}
	}
	return float64(dark) / float64(region.Dx()*region.Dy())
}

func sign(p *Page) {
	to(p, "sheet")
	p.Fill("Shop’s name", "Hollin & Wray <engines>")
	p.Fill("Telephone", "01632 960118")
	p.Fill("Mark: up to three letters", "HW")
	p.Choose("in a", "hexagon")
}

// The picture that a messenger gets: its words and both faces, as on the page.
func TestTheSheetGoesAsAPicture(t *testing.T) {
	p, _ := bench(t)
	example(p, "sheet")
	sign(p)
	Eval[bool](p, shareSheet)
	got := sentBy(p, "Send as a picture")
	assert.Equal(t, "Job sheet Example: CB 0417: true to 0.5 thou", got.Text)
	assert.Equal(t, "image/png", got.File.Type)
	assert.Equal(t, "pintwelve-job-sheet-example-cb-0417-true-to-0-5-th.png", got.File.Name)
	img := got.picture(t)
	if file := os.Getenv("PINTWELVE_PICTURE"); file != "" {
		raw, _ := base64.StdEncoding.DecodeString(got.File.Bytes)
		require.NoError(t, os.WriteFile(file, raw, 0o600))
	}
	size := img.Bounds().Size()
	assert.Equal(t, 1080, size.X)
	assert.Greater(t, size.Y, 1200)
	assert.Equal(t, uint8(255), color.GrayModel.Convert(img.At(4, 4)).(color.Gray).Y, "white paper, in the dark too")
	// Each of the two faces, and the mark, wherever the words above have put them.
	for half := range 2 {
		assert.InDelta(t, 0.05, inked(img, image.Rect(half*540, 0, half*540+540, size.Y)), 0.045)
	}
	assert.Greater(t, inked(img, image.Rect(48, 48, 168, 168)), 0.05, "the mark")

	// It says what the page says: a figure changed changes it, and it alone.
	again := sentBy(p, "Send as a picture")
	assert.Equal(t, got.File.Bytes, again.File.Bytes)
	to(p, "true")
	Eval[bool](p, `(document.querySelectorAll('#passes .pass [data-look]')[2].click(), true)`)
	p.Fill("Timing run-out", "1.5")
	to(p, "sheet")
	other := sentBy(p, "Send as a picture")
	assert.Equal(t, "Job sheet Example: CB 0417: true to 1.5 thou", other.Text)
	assert.NotEqual(t, got.File.Bytes, other.File.Bytes)
	assert.Contains(t, p.Text("#paper"), "1.5")
	drawn := Eval[string](p, `document.querySelectorAll('#paper .two-faces svg desc')[1].textContent`)
	assert.Contains(t, drawn, "run-out 1.5", "the figure in the picture that was sent")
}

// A browser without a share sheet for files saves the picture.
func TestWhereNothingIsSharedThePictureIsSaved(t *testing.T) {
	p, _ := bench(t)
	twist(p)
	to(p, "sheet")
	Eval[bool](p, `(navigator.canShare = () => false, HTMLAnchorElement.prototype.click = function () { window.got = this.download; }, true)`)
	p.Press("Send as a picture")
	p.Until(`window.got`)
	assert.Equal(t, "pintwelve-job-sheet-not-true-yet-4-thou.png", Eval[string](p, `window.got`))
	assert.Equal(t, "Saved as pintwelve-job-sheet-not-true-yet-4-thou.png.", p.Text("#sent-said"))
}

func TestALinkGoesWithALineOfWords(t *testing.T) {
	p, server := bench(t)
	example(p, "sheet")
	sign(p)
	Eval[bool](p, shareSheet)
	got := sentBy(p, "Send the link")
	assert.Equal(t, "Job sheet Example: CB 0417: true to 0.5 thou", got.Text)
	other := Launch(t).Open(server.URL("/crank/"))
	other.Visit("about:blank")
	other.Visit(got.URL)
	other.Ready()
	for _, words := range []string{"Hollin & Wray <engines>", "01632 960118", "The crank runs true"} {
		assert.Contains(t, other.Text("#paper"), words)
	}
	assert.True(t, Eval[bool](other, `document.querySelector('#paper .mark svg').textContent.includes('HW')`))
	other.Press("Keep a copy")
	to(other, "sheet")
	assert.NotContains(t, other.Text("#paper"), "Hollin", "a copy's sheets are those of the phone that keeps it")
}

// The shop is typed once: it stands on the next crank's sheet and after a reload,
// and in no job.
func TestTheShopIsTypedOnceAPhone(t *testing.T) {
	p, _ := bench(t)
	twist(p)
	sign(p)
	assert.Contains(t, p.Text("#paper"), "Hollin & Wray <engines>")
	p.Reload()
	p.Ready()
	assert.Equal(t, "HW", p.Value("Mark: up to three letters"))
	to(p, "jobs")
	p.Press("Start another crank")
	to(p, "sheet")
	assert.Contains(t, p.Text("#paper"), "01632 960118")
	assert.Equal(t, "hexagon", Eval[string](p, `document.getElementById('shop-shape').value`))
	to(p, "jobs")
	assert.NotContains(t, jobsOnly(savedFile(p, "Save all jobs in a file")), "Hollin")
}

// jobsOnly is the part of a file that holds its jobs.
func jobsOnly(file string) string { return file[strings.Index(file, `"jobs"`):] }

// A turn of both pictures, recorded: the bytes are those of a clip.
func TestTheTurnGoesAsAClip(t *testing.T) {
	p, _ := bench(t)
	example(p, "sheet")
	Eval[bool](p, shareSheet)
	if !Eval[bool](p, `Boolean(window.MediaRecorder && HTMLCanvasElement.prototype.captureStream)`) {
		t.Skip("this browser records no clips")
	}
	p.Press("Make a clip")
	p.Until(`document.getElementById('send-clip').textContent === 'Send the clip'`)
	got := sentBy(p, "Send the clip")
	raw, err := base64.StdEncoding.DecodeString(got.File.Bytes)
	require.NoError(t, err)
	mp4, webm := bytes.Contains(raw[:16], []byte("ftyp")), bytes.HasPrefix(raw, []byte{0x1a, 0x45, 0xdf, 0xa3})
	assert.True(t, mp4 || webm, "% x", raw[:16])
	assert.Greater(t, len(raw), 20_000)
	assert.Contains(t, got.File.Name, "pintwelve-job-sheet-")
}

func TestNoClipIsOfferedWhereNoneCanBeMade(t *testing.T) {
	p, _ := bench(t)
	Eval[bool](p, `(delete window.MediaRecorder, true)`)
	example(p, "sheet")
	assert.True(t, Eval[bool](p, `document.getElementById('send-clip').hidden`))
}
