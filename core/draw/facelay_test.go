package draw

import (
	"encoding/xml"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// texts reads the boxes of all labels back from a picture.
func texts(t *testing.T, svg string) (boxes []box, words []string) {
	t.Helper()
	var root struct {
		Text []struct {
			X      float64 `xml:"x,attr"`
			Y      float64 `xml:"y,attr"`
			Class  string  `xml:"class,attr"`
			Anchor string  `xml:"text-anchor,attr"`
			Turn   string  `xml:"transform,attr"`
			Words  string  `xml:",chardata"`
		} `xml:"text"`
	}
	require.NoError(t, xml.Unmarshal([]byte(svg), &root))
	for _, k := range root.Text {
		size := float64(TextSize)
		if strings.Contains(k.Class, "tm") || strings.Contains(k.Class, "tb") {
			size *= boldWidth
		}
		w := textWidth(k.Words, size)
		x := k.X
		switch k.Anchor {
		case "middle":
			x -= w / 2
		case "end":
			x -= w
		}
		b := box{x, k.Y - 15, x + w, k.Y + 4.5}
		if k.Turn != "" {
			require.True(t, strings.HasPrefix(k.Turn, "rotate(-90 "), k.Turn)
			require.Equal(t, "middle", k.Anchor)
			b = box{k.X - 15, k.Y - w/2, k.X + 4.5, k.Y + w/2}
		}
		boxes = append(boxes, b)
		words = append(words, k.Words)
	}
	return boxes, words
}

// apart asserts that no label lies on another or leaves the picture.
func apart(t *testing.T, svg string, height float64) {
	t.Helper()
	boxes, words := texts(t, svg)
	for i, a := range boxes {
		require.True(t, a.x0 >= 0 && a.x1 <= Width && a.y0 >= 0 && a.y1 <= height, "%q leaves the picture: %v", words[i], a)
		for j, b := range boxes[:i] {
			require.False(t, a.hits(b), "%q %v on %q %v", words[i], a, words[j], b)
		}
	}
}

func layOut(v FaceView) *faceLayout {
	var l faceLayout
	l.lay(v)
	return &l
}

// checkFace returns what is wrong with a layout: a label on another, on a glyph,
// on the wheel, off the picture, or under a leader.
func checkFace(l *faceLayout) string {
	for i := range l.marks[:l.nMarks] {
		m := &l.marks[i]
		b := m.label.box
		w, h := m.label.size()
		switch {
		case m.label.n == 0 || b.x1-b.x0 < w-1e-9 || b.y1-b.y0 < h-1e-9:
			return fmt.Sprintf("mark %d has no label", i)
		case b.x0 < 0 || b.y0 < 0 || b.x1 > Width || b.y1 > FaceHeight-22:
			return fmt.Sprintf("label %d leaves the picture", i)
		case !b.clear(disc{point{FaceCentreX, FaceCentreY}, FaceRim + 2}):
			return fmt.Sprintf("label %d on the wheel", i)
		case m.at.leads() && (disc{point{FaceCentreX, FaceCentreY}, FaceRim}).cut(m.at.tail, m.at.end):
			return fmt.Sprintf("leader %d across the wheel", i)
		}
		for j := range l.marks[:l.nMarks] {
			n := &l.marks[j]
			for _, d := range n.body {
				if !b.clear(d) {
					return fmt.Sprintf("label %d on glyph %d", i, j)
				}
			}
			if i == j {
				continue
			}
			if b.hits(n.label.box) {
				return fmt.Sprintf("label %d on label %d", i, j)
			}
			if n.at.leads() && b.cut(n.at.tail, n.at.end) {
				return fmt.Sprintf("leader %d through label %d", j, i)
			}
			for _, d := range m.body[1:] {
				for _, e := range n.body[1:] {
					if d.hits(e) {
						return fmt.Sprintf("glyph %d on glyph %d", i, j)
					}
				}
			}
		}
	}
	return ""
}

func TestMovesKeepApartAtEveryPairOfHours(t *testing.T) {
	kinds := []Mark{{Kind: Strike, Wheel: Drive}, {Kind: Strike, Wheel: Timing}, {Kind: Squeeze}, {Kind: Spread}}
	amounts := []string{"2 thou", "0.05 mm", "12.5 thou"}
	tried, bad := 0, 0
	for k1 := range kinds {
		for k2 := range kinds {
			for q1 := range 24 {
				for q2 := range 48 {
					a, b := kinds[k1], kinds[k2]
					a.Hour, b.Hour = float64(q1)/2, float64(q2)/4
					a.Amount, b.Amount = amounts[(q1+q2)%3], amounts[(q1+k2)%3]
					l := layOut(FaceView{Moves: []Mark{a, b}})
					tried++
					if wrong := checkFace(l); wrong != "" {
						if bad++; bad <= 20 {
							t.Errorf("%s for %+v", wrong, []Mark{a, b})
						}
					}
				}
			}
		}
	}
	t.Logf("%d of %d pairs collide", bad, tried)
}

func TestHighSpotsKeepApartAtEveryPairOfHours(t *testing.T) {
	for q1 := range 24 {
		for q2 := range 48 {
			l := layOut(FaceView{High: []HighSpot{{"D", float64(q1) / 2, "1.5", 0.3}, {"T", float64(q2) / 4, "12", 0}}})
			for i := range l.spots[:2] {
				s := &l.spots[i]
				w, _ := s.label.size()
				require.Greater(t, w, 20.0, "run-out left out at %d, %d", q1, q2)
				assert.True(t, s.label.box.within(disc{point{FaceCentreX, FaceCentreY}, faceFree}))
				for j := range l.spots[:2] {
					assert.True(t, s.label.box.clear(l.spots[j].body()), "label on triangle at %d, %d", q1, q2)
				}
			}
			assert.False(t, l.spots[0].label.box.hits(l.spots[1].label.box), "%d %d", q1, q2)
			assert.False(t, l.spots[0].body().hits(l.spots[1].body()), "%d %d", q1, q2)
		}
	}
}

func TestLabelsOfTheDrawnFaceKeepApart(t *testing.T) {
	for h := 0.0; h < 12; h += 0.5 {
		for g := 0.0; g < 12; g += 1.5 {
			apart(t, Face(FaceView{
				High:  []HighSpot{{"D", h, "1.5", 0.3}, {"T", g, "2", 6 * math.Floor(g/6)}},
				Moves: []Mark{{Strike, Timing, h, "2 thou"}, {Spread, 0, g, "1.5 thou"}},
			}), FaceHeight)
		}
	}
	for _, v := range faces {
		apart(t, Face(v), FaceHeight)
	}
}

// rotated returns where the point of the rim at 12 comes to lie by each of the
// turns written into a picture.
func rotated(t *testing.T, svg string) (at []point) {
	for _, part := range strings.Split(svg, `transform="rotate(`)[1:] {
		deg, err := strconv.ParseFloat(part[:strings.IndexByte(part, ' ')], 64)
		require.NoError(t, err)
		assert.True(t, strings.HasPrefix(part[strings.IndexByte(part, ' '):], " 180 166)"), "turned about the centre")
		s, c := math.Sincos(deg * math.Pi / 180)
		at = append(at, point{FaceCentreX + FaceRim*s, FaceCentreY - FaceRim*c})
	}
	return at
}

func TestGlyphsStandOnTheirHour(t *testing.T) {
	for i := range 240 {
		hour := float64(i)/20 + 1.0/3000
		want := onFace(FaceRim, hour)
		for kind := Strike; kind <= Spread; kind++ {
			svg := Face(FaceView{Moves: []Mark{{kind, Drive, hour, ""}}})
			// The glyphs are drawn about (0, 0), moved to the rim at 12, then turned.
			require.Contains(t, svg, `<g transform="translate(180 46)">`)
			at := rotated(t, svg)
			require.Len(t, at, 1)
			assert.InDelta(t, want.x, at[0].x, 1e-6)
			assert.InDelta(t, want.y, at[0].y, 1e-6)
		}
	}
	assert.True(t, strings.Contains(strikeGlyph, `M0 0L11 -26L-11 -26Z`), "the wedge's point is the point of the rim")
}

func TestHighSpotStandsOnTheShaft(t *testing.T) {
	svg := Face(FaceView{High: []HighSpot{{"D", 4.2, "1", 0}}})
	assert.Contains(t, svg, `rotate(126 180 166)"><path class="op" d="M169.5 146L190.5 146L180 128Z"`)
}

func TestStrikesAtOneHourShareTheirPoint(t *testing.T) {
	svg := Face(FaceView{Moves: []Mark{{Strike, Drive, 3, "1"}, {Strike, Timing, 3, "2"}}})
	at := rotated(t, svg)
	require.Len(t, at, 2)
	assert.Equal(t, at[0], at[1])
	assert.Contains(t, svg, "translate(180 46) rotate(", "the second leans over about its point")
}

func TestAbsentNumbersDrawNothing(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	svg := Face(FaceView{
		Prefix: hostile,
		High:   []HighSpot{{"D", nan, "1", 0}, {"T", inf, "1", 0}, {hostile, 3, hostile, nan}},
		Moves:  []Mark{{Strike, Drive, nan, "1"}, {Squeeze, Drive, -inf, "1"}, {9, Drive, 1, "1"}, {Strike, Drive, 3, hostile}},
	})
	checkPicture(t, svg)
	assert.NotContains(t, svg, "<script")
	assert.Equal(t, 1, strings.Count(svg, `class="mf"`))
	assert.Zero(t, strings.Count(svg, "L190.5 146"), "no high spot without an hour")
}

func TestNothingIsToldByColourAlone(t *testing.T) {
	assert.Len(t, map[string]bool{strikeGlyph: true, squeezeGlyph: true, spreadGlyph: true}, 3)
	svg := Face(faces["face-both"])
	for _, word := range []string{">Strike<", ">timing<", ">2.5 thou<", ">Spread<", ">1.5 thou<", ">Seen from the drive side<"} {
		assert.Contains(t, svg, word)
	}
}
