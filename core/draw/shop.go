package draw

import "math"

// ShopMark is a shop's own mark: up to three letters in a shape.
type ShopMark struct {
	Prefix, Letters string
	Shape           Shape
}

// Shape is what a shop's letters stand in.
type Shape uint8

// The shapes of a mark.
const (
	Wheel Shape = iota
	Hexagon
	Shield
)

// ShopMarkHeight is the height of the viewBox.
const ShopMarkHeight = Width

// Shop draws a shop's mark.
func Shop(m ShopMark) string {
	p := pen{make([]byte, 0, 1024)}
	p.open(m.Prefix, ShopMarkHeight, "The shop’s mark")
	letters := []rune(m.Letters)
	letters = letters[:min(len(letters), 3)]
	p.esc(string(letters))
	p.described()
	c := point{Width / 2, ShopMarkHeight / 2}
	switch m.Shape {
	case Hexagon:
		p.poly("op", corners(c, 160)...)
		p.poly("th", corners(c, 140)...)
	case Shield:
		p.poly("op", point{40, 30}, point{320, 30}, point{320, 190}, point{180, 340}, point{40, 190})
		p.poly("th", point{56, 46}, point{304, 46}, point{304, 183}, point{180, 317}, point{56, 183})
		c.y -= 25
	default:
		p.circle("op", c, 160)
		p.circle("th", c, 140)
	}
	size := [...]float64{0, 190, 130, 95}[len(letters)]
	if size > 0 {
		p.s(`<g transform="translate(`)
		p.xy(c)
		p.s(`) scale(`)
		p.n(size / TextSize)
		p.s(`)">`)
		p.text("fi tb", middle, point{0, 0.35 * TextSize}, string(letters))
		p.s(`</g>`)
	}
	return p.close()
}

// corners are those of a hexagon that stands on its point.
func corners(c point, r float64) (all []point) {
	for i := range 6 {
		sin, cos := math.Sincos(float64(i) * math.Pi / 3)
		all = append(all, c.plus(r*sin, -r*cos))
	}
	return all
}
