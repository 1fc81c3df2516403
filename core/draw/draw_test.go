package draw

import (
	"encoding/xml"
	"flag"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "rewrite the golden pictures in testdata")

// golden compares a picture byte for byte with the one kept, and checks it as
// every picture is checked.
func golden(t *testing.T, name, svg string) {
	t.Helper()
	checkPicture(t, svg)
	file := filepath.Join("testdata", name+".svg")
	if *update {
		require.NoError(t, os.WriteFile(file, []byte(svg+"\n"), 0o644))
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, strings.TrimSuffix(string(want), "\n"), svg, "%s differs; look at it, then run with -update", name)
}

// checkPicture asserts what holds of every picture: XML, a name and a
// description that the root points to, no style, no number that is none.
func checkPicture(t *testing.T, svg string) {
	t.Helper()
	ids, described := map[string]string{}, map[string]bool{}
	d := xml.NewDecoder(strings.NewReader(svg))
	for {
		token, err := d.Token()
		if err == io.EOF {
			break
		}
		require.NoError(t, err, svg)
		start, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		for _, a := range start.Attr {
			assert.NotContains(t, []string{"style", "onload", "onclick", "href"}, a.Name.Local)
			assert.NotContains(t, a.Value, "NaN")
			assert.NotContains(t, a.Value, "Inf")
			switch a.Name.Local {
			case "id":
				assert.NotContains(t, ids, a.Value, "id used twice")
				ids[a.Value] = start.Name.Local
			case "aria-labelledby":
				for _, id := range strings.Fields(a.Value) {
					described[id] = true
				}
			}
		}
		if start.Name.Local == "svg" {
			assert.Regexp(t, `role="(img|group)" aria-labelledby`, svg)
			assert.Contains(t, svg, `viewBox="0 0 360 `)
		}
	}
	require.Len(t, described, 2)
	for id := range described {
		assert.Contains(t, []string{"title", "desc"}, ids[id], "aria-labelledby names %q", id)
	}
}

const hostile = `"><script>alert(1)</script>&'` + "\x00\xff\ufffe"

func TestNumbersAreShortAndFinite(t *testing.T) {
	nan := (0.0 - 0) / zero
	for _, row := range []struct {
		in   float64
		want string
	}{
		{0, "0"}, {-0.001, "0"}, {1.5, "1.5"}, {-12.345, "-12.35"}, {0.05, "0.05"}, {100, "100"}, {nan, "0"}, {1 / zero, "0"}, {1e300, "0"},
	} {
		assert.Equal(t, row.want, string(appendFixed(nil, row.in, 2)), "%g", row.in)
	}
	assert.Equal(t, "-0.0000001", string(appendFixed(nil, -1e-7, 7)))
}

var zero float64

// Digits that count, and no exponent (in the chart's description "1.23e+07" was
// read out).
func TestDigitsHaveNoExponent(t *testing.T) {
	for _, row := range []struct {
		x    float64
		n    int
		want string
	}{
		{0, 3, "0"}, {4, 3, "4"}, {1.0 / 3, 3, "0.333"}, {-2.5, 3, "−2.5"}, {12345678, 3, "12300000"}, {0.00001234, 3, "0.0000123"},
		{1234567.8, 6, "1234570"}, {22.5 / 7, 6, "3.21429"}, {1e-9, 3, "0.000000001"},
	} {
		var p pen
		p.digits(row.x, row.n)
		assert.Equal(t, row.want, string(p.b))
	}
}

func TestLabelsAreEscapedAndCut(t *testing.T) {
	var p pen
	p.esc(hostile)
	assert.Equal(t, `&quot;&gt;&lt;script&gt;alert(1)&lt;/script&gt;&amp;'   `, string(p.b))
	p = pen{}
	p.esc(strings.Repeat("é", 100))
	assert.Equal(t, strings.Repeat("é", maxLabel)+"…", string(p.b))
	p = pen{}
	p.id(`9"a b<-1`, "t")
	assert.Equal(t, "ab-1-t", string(p.b))
}

// readPoint reads "x y" back from a path.
func readPoint(t *testing.T, xy string) point {
	t.Helper()
	x, y, ok := strings.Cut(xy, " ")
	require.True(t, ok, xy)
	px, err := strconv.ParseFloat(x, 64)
	require.NoError(t, err)
	py, err := strconv.ParseFloat(y, 64)
	require.NoError(t, err)
	return point{px, py}
}

// A picture 304 px wide, which is what a phone of 320 px leaves it, has text of
// 16 px; no picture sets another size.
func TestTextIsLargeEnough(t *testing.T) {
	assert.GreaterOrEqual(t, TextSize*304.0/Width, 16.0)
	for name, svg := range goldens(t) {
		assert.Equal(t, 1, strings.Count(svg, "font-size="), name)
		assert.Contains(t, svg, `font-size="19"`, name)
	}
}

// Every class that a picture uses has its look, and is told in the package's
// comment.
func TestClassesHaveTheirLook(t *testing.T) {
	css, err := os.ReadFile("../../web/draw.css")
	require.NoError(t, err)
	source, err := os.ReadFile("draw.go")
	require.NoError(t, err)
	comment, _, _ := strings.Cut(string(source), "\npackage draw")
	for name, svg := range goldens(t) {
		for _, part := range strings.Split(svg, `class="`)[1:] {
			for _, class := range strings.Fields(part[:strings.IndexByte(part, '"')]) {
				if class == "turns" {
					continue // for the page to find, not for a look
				}
				assert.Regexp(t, `\.`+class+`\b`, string(css), name)
				if class != "dw" {
					assert.Regexp(t, `\s`+class+`  `, comment, name)
				}
			}
		}
	}
}

func goldens(t *testing.T) map[string]string {
	t.Helper()
	files, err := filepath.Glob("testdata/*.svg")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	all := map[string]string{}
	for _, file := range files {
		svg, err := os.ReadFile(file)
		require.NoError(t, err)
		all[file] = string(svg)
	}
	return all
}

func TestShopMarks(t *testing.T) {
	for name, m := range map[string]ShopMark{
		"shop-wheel": {"m", "HW", Wheel}, "shop-hexagon": {"m", "T&D", Hexagon}, "shop-shield": {"m", "K", Shield},
	} {
		golden(t, name, Shop(m))
	}
	checkPicture(t, Shop(ShopMark{Prefix: hostile, Letters: hostile}))
}
