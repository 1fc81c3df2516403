package browser

import (
	"bytes"
	"encoding/base64"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"strconv"
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

	// It plays, elsewhere too: a picture of the right size that turns as it goes.
	p.Visit("about:blank")
	played := Eval[struct {
		Wide, High int
		Seconds    float64
		Pictures   int
	}](p, `(async () => {
		const video = document.createElement('video');
		video.muted = true;
		video.src = 'data:`+got.File.Type+`;base64,`+got.File.Bytes+`';
		const canvas = document.createElement('canvas');
		[canvas.width, canvas.height] = [108, 54];
		const pen = canvas.getContext('2d', { willReadFrequently: true });
		const seen = new Set();
		await video.play();
		while (!video.ended) {
			pen.drawImage(video, 0, 0, canvas.width, canvas.height);
			seen.add(pen.getImageData(0, 0, canvas.width, canvas.height).data.join());
			await new Promise((then) => { setTimeout(then, 250); });
		}
		return { Wide: video.videoWidth, High: video.videoHeight, Seconds: video.currentTime, Pictures: seen.size };
	})()`)
	assert.Equal(t, 1080, played.Wide)
	assert.Greater(t, played.High, 500)
	assert.InDelta(t, 8, played.Seconds, 2)
	assert.Greater(t, played.Pictures, 10, "it turns")
}

func TestNoClipIsOfferedWhereNoneCanBeMade(t *testing.T) {
	p, _ := bench(t)
	Eval[bool](p, `(delete window.MediaRecorder, true)`)
	example(p, "sheet")
	assert.True(t, Eval[bool](p, `document.getElementById('send-clip').hidden`))
}

// chosen writes a file for a person to choose.
func chosen(t *testing.T, name string, content []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	require.NoError(t, os.WriteFile(path, content, 0o600))
	return path
}

// dots is a picture of so many points, dark but for its edge.
func dots(t *testing.T, wide, high int) []byte {
	t.Helper()
	img := image.NewGray(image.Rect(0, 0, wide, high))
	for y := range high {
		for x := range wide {
			if x < wide/8 || y < high/8 {
				img.SetGray(x, y, color.Gray{Y: 255})
			}
		}
	}
	var out bytes.Buffer
	require.NoError(t, png.Encode(&out, img))
	return out.Bytes()
}

// The mark as a picture: kept small on this phone, on each sheet and its picture,
// in no link; what is no picture is refused, and that is said.
func TestTheMarkIsTakenFromAPicture(t *testing.T) {
	p, server := bench(t)
	example(p, "sheet")
	choose := func(name string, content []byte) {
		t.Helper()
		setFile(p, "mark-file", chosen(t, name, content))
	}
	refused := func() string { return Eval[string](p, `document.getElementById('mark-refused').innerText`) }
	choose("words.png", []byte("no picture at all"))
	p.Until(`!document.getElementById('mark-refused').hidden`)
	assert.Equal(t, "“words.png” was not taken: it can’t be read as a picture: a PNG, JPEG, WebP or SVG will do.", refused())
	choose("big.png", bytes.Repeat([]byte{0}, 11_000_000))
	p.Until(`document.getElementById('mark-refused').innerText.includes('11 MB')`)
	assert.True(t, Eval[bool](p, `document.getElementById('mark-picture').hidden`))

	choose("bad.svg", []byte(`<svg xmlns="http://www.w3.org/2000/svg" width="100" height="50" onload="window.ran = true"><script>window.ran = true</script><rect width="100" height="50"/></svg>`))
	p.Until(`document.getElementById('mark-picture').naturalWidth === 100`)
	assert.True(t, Eval[bool](p, `document.getElementById('mark-picture').src.startsWith('data:image/png;base64,') && !window.ran`), "encoded anew: its points, and nothing else of it")

	choose("mark.png", dots(t, 3000, 1500))
	p.Until(`document.getElementById('mark-picture').naturalHeight === 120`)
	assert.Equal(t, 240, Eval[int](p, `document.getElementById('mark-picture').naturalWidth`))
	assert.True(t, Eval[bool](p, `document.getElementById('mark-refused').hidden && document.getElementById('mark-picture').checkVisibility()`))
	Eval[bool](p, shareSheet)
	img := sentBy(p, "Send as a picture").picture(t)
	assert.Greater(t, inked(img, image.Rect(70, 60, 160, 100)), 0.9, "the mark on the picture")
	link := sentBy(p, "Send the link").URL
	assert.Less(t, len(link), 1500)

	// It is this phone's, after a reload and in the file of all jobs; another phone takes it over from there.
	p.Reload()
	p.Ready()
	to(p, "sheet")
	p.Until(`document.getElementById('mark-picture').naturalWidth === 240`)
	to(p, "jobs")
	saved := savedFile(p, "Save all jobs in a file")
	assert.Contains(t, saved, `"shop.picture"`)
	assert.NotContains(t, jobsOnly(saved), "image/png")
	other := Launch(t).Open(server.URL("/crank/"))
	other.Ready()
	to(other, "jobs")
	assert.Contains(t, readFile(other, saved), "bench is now as in the file")
	to(other, "sheet")
	other.Until(`document.getElementById('mark-picture').naturalWidth === 240`)

	to(p, "sheet")
	p.Press("Take the picture out")
	assert.True(t, Eval[bool](p, `document.getElementById('mark-picture').closest('.letterhead').hidden`))
}

// A bench from a file holds no picture but a small PNG.
func TestAMarkFromAFileIsLookedOver(t *testing.T) {
	p, _ := bench(t)
	enc := func(raw []byte) string { return "data:image/png;base64," + base64.StdEncoding.EncodeToString(raw) }
	for text, good := range map[string]bool{
		enc(dots(t, 240, 240)): true, enc(dots(t, 241, 10)): false, enc(dots(t, 20000, 2)): false,
		"data:image/svg+xml;base64," + base64.StdEncoding.EncodeToString(dots(t, 9, 9)): false,
		"https://example.com/mark.png": false, enc(bytes.Repeat([]byte{7}, 400)): false, enc(bytes.Repeat(dots(t, 20, 20), 2000)): false,
	} {
		Eval[bool](p, `(localStorage.setItem('pintwelve /crank/ bench', JSON.stringify({ 'shop.picture': `+strconv.Quote(text)+` })), true)`)
		p.Reload()
		p.Ready()
		to(p, "sheet")
		assert.Equal(t, good, Eval[bool](p, `!document.getElementById('mark-picture').hidden`), text[:20])
	}
}
