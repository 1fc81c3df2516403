package draw

import "sort"

// hatch draws the thin lines of cut metal inside a polygon, at 45° rising to
// the right, or to the left where steps is negative, so many units apart.
func (p *pen) hatch(poly []point, step float64) {
	rise := 1.0
	if step < 0 {
		rise, step = -1, -step
	}
	// Along a line y + rise·x is constant; k counts the lines from the paper's
	// corner, so that parts hatched alike have their lines in step.
	low, high := level(poly[0], rise), level(poly[0], rise)
	for _, q := range poly {
		low, high = min(low, level(q, rise)), max(high, level(q, rise))
	}
	p.path("hx")
	pitch := step * 1.4142
	var cuts []float64
	for c := (float64(int(low/pitch)) + 0.5) * pitch; c < high; c += pitch {
		cuts = cuts[:0]
		for i, a := range poly {
			b := poly[(i+1)%len(poly)]
			la, lb := level(a, rise), level(b, rise)
			if (la < c) != (lb < c) {
				cuts = append(cuts, a.x+(b.x-a.x)*(c-la)/(lb-la))
			}
		}
		sort.SliceStable(cuts, func(i, j int) bool { return cuts[i] < cuts[j] })
		for i := 0; i+1 < len(cuts); i += 2 {
			p.stroke(point{cuts[i], c - rise*cuts[i]}, point{cuts[i+1], c - rise*cuts[i+1]})
		}
	}
	p.pathEnd()
}

func level(q point, rise float64) float64 { return q.y + rise*q.x }

// poly draws a closed outline.
func (p *pen) poly(class string, pts ...point) {
	p.path(class)
	for i, q := range pts {
		if i == 0 {
			p.move(q)
		} else {
			p.to(q)
		}
	}
	p.shut()
	p.pathEnd()
}
