package main

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"strconv"
)

// size is the side of the drawing; its origin is the middle, y downwards.
const size = 512

var (
	paper = color.RGBA{0xfb, 0xfa, 0xf6, 0xff}
	ink   = color.RGBA{0x17, 0x1a, 0x1c, 0xff}
)

// ring is a circle drawn with a line of the given width; a disc has radius 0
// and its diameter for a width.
type ring struct{ x, y, radius, width float64 }

// stroke is a straight line with round ends.
type stroke struct{ x1, y1, x2, y2, width float64 }

// drawing is what is inked.
type drawing struct {
	rings   []ring
	strokes []stroke
}

// face is the clock face, scaled about the middle.
func face(scale float64) drawing {
	var d drawing
	for hour := 1; hour < 12; hour++ {
		inner := 166.0
		if hour%3 == 0 {
			inner = 140
		}
		sin, cos := math.Sincos(float64(hour) * math.Pi / 6)
		d.strokes = append(d.strokes, stroke{inner * sin, -inner * cos, 186 * sin, -186 * cos, 14})
	}
	d.rings = []ring{{0, 0, 218, 28}, {0, -126, 0, 104}, {0, 0, 30, 12}}
	for i, r := range d.rings {
		d.rings[i] = ring{r.x * scale, r.y * scale, r.radius * scale, r.width * scale}
	}
	for i, s := range d.strokes {
		d.strokes[i] = stroke{s.x1 * scale, s.y1 * scale, s.x2 * scale, s.y2 * scale, s.width * scale}
	}
	return d
}

func (d drawing) svg() []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="%d %d %d %d">`+"\n", -size/2, -size/2, size, size)
	fmt.Fprintf(&b, `<path fill="%s" d="M%d %dh%dv%dh%dz"/>`+"\n", hex(paper), -size/2, -size/2, size, size, -size)
	fmt.Fprintf(&b, `<g fill="none" stroke="%s" stroke-linecap="round">`+"\n", hex(ink))
	for _, r := range d.rings {
		if r.radius == 0 {
			fmt.Fprintf(&b, `<path stroke-width="%s" d="M%s %sh0"/>`+"\n", short(r.width), short(r.x), short(r.y))
			continue
		}
		fmt.Fprintf(&b, `<circle cx="%s" cy="%s" r="%s" stroke-width="%s"/>`+"\n", short(r.x), short(r.y), short(r.radius), short(r.width))
	}
	for _, s := range d.strokes {
		fmt.Fprintf(&b, `<path stroke-width="%s" d="M%s %sL%s %s"/>`+"\n", short(s.width), short(s.x1), short(s.y1), short(s.x2), short(s.y2))
	}
	b.WriteString("</g>\n</svg>\n")
	return b.Bytes()
}

func hex(c color.RGBA) string {
	return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B)
}

func short(x float64) string {
	return strconv.FormatFloat(math.Round(x*10)/10+0, // no -0
		'f', -1, 64)
}

// Shades from paper to ink: four, two bits a pixel, make an edge of one pixel smooth
// to the eye; two, one bit, do where a picture is as large as ever shown, or shrunk.
const (
	smooth = 4
	plain  = 2
)

// png paints the drawing on side × side pixels in a number of shades.
func (d drawing) png(side, steps int) []byte {
	picture := image.NewPaletted(image.Rect(0, 0, side, side), shades(steps))
	scale := float64(size) / float64(side)
	for py := range side {
		for px := range side {
			x, y := (float64(px)+0.5)*scale-size/2, (float64(py)+0.5)*scale-size/2
			inked := min(max(0.5-d.distance(x, y)/scale, 0), 1)
			picture.SetColorIndex(px, py, uint8(math.Round(inked*float64(steps-1))))
		}
	}
	var b bytes.Buffer
	encoder := png.Encoder{CompressionLevel: png.BestCompression}
	if err := encoder.Encode(&b, picture); err != nil {
		panic(err) // a buffer takes everything
	}
	return b.Bytes()
}

// distance is how far a point lies from the ink, negative within it.
func (d drawing) distance(x, y float64) float64 {
	nearest := math.Inf(1)
	for _, r := range d.rings {
		nearest = min(nearest, math.Abs(math.Hypot(x-r.x, y-r.y)-r.radius)-r.width/2)
	}
	for _, s := range d.strokes {
		nearest = min(nearest, s.distance(x, y))
	}
	return nearest
}

func (s stroke) distance(x, y float64) float64 {
	dx, dy := s.x2-s.x1, s.y2-s.y1
	along := min(max(((x-s.x1)*dx+(y-s.y1)*dy)/(dx*dx+dy*dy), 0), 1)
	return math.Hypot(x-s.x1-along*dx, y-s.y1-along*dy) - s.width/2
}

func shades(steps int) color.Palette {
	palette := make(color.Palette, steps)
	for i := range palette {
		mix := func(p, k uint8) uint8 {
			return uint8(math.Round(float64(p) + (float64(k)-float64(p))*float64(i)/float64(steps-1)))
		}
		palette[i] = color.RGBA{mix(paper.R, ink.R), mix(paper.G, ink.G), mix(paper.B, ink.B), 0xff}
	}
	return palette
}
