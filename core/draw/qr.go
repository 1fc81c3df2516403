package draw

import (
	"strconv"
	"strings"

	"pintwelve/core/qr"
)

// quiet is the margin that ISO/IEC 18004, 6.3.8 asks for, in modules.
const quiet = 4

// QR draws a text as a QR code, black on white whatever the page is, one unit to
// a module; data-modules says how many it is wide. It returns "" for a text that
// no code holds.
func QR(text string) string {
	code := qr.Code(text)
	if code == nil {
		return ""
	}
	var path strings.Builder
	for y, row := range code {
		for x := 0; x < len(row); x++ {
			start := x
			for x < len(row) && row[x] {
				x++
			}
			if x > start {
				for i, v := range [...]int{start + quiet, y + quiet, x - start, start + quiet} {
					path.WriteString([...]string{"M", " ", "h", "v1H"}[i])
					path.WriteString(strconv.Itoa(v))
				}
			}
		}
	}
	const shape = `<svg class="qr" viewBox="0 0 % %" data-modules="%" role="img" aria-label="QR code of the link" shape-rendering="crispEdges"><path class="qr-paper" d="M0 0H%V%H0"/><path class="qr-ink" d="`
	return strings.Join(strings.Split(shape, "%"), strconv.Itoa(len(code)+2*quiet)) + path.String() + `"/></svg>`
}
