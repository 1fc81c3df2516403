package sheet

import (
	"math"
	"strconv"

	"pintwelve/core/draw"
	"pintwelve/core/form"
)

// HourAt returns the text of the hour at a point of the clock face, its x and y
// in the picture's own units; "" for no point, or one too near the centre to
// point anywhere.
func HourAt(x, y string) string {
	px, err := strconv.ParseFloat(x, 64)
	py, err2 := strconv.ParseFloat(y, 64)
	dx, dy := px-draw.FaceCentreX, draw.FaceCentreY-py
	if err != nil || err2 != nil || !(math.Hypot(dx, dy) > draw.FaceRim/8) || math.IsInf(dx, 0) || math.IsInf(dy, 0) {
		return ""
	}
	return form.HourText(math.Atan2(dx, dy) * 6 / math.Pi)
}
