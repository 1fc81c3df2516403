package draw

import (
	"strconv"
	"strings"

	"rsc.io/qr/coding"
)

// quiet is the margin that ISO/IEC 18004, 6.3.8 asks for, in modules.
const quiet = 4

// QR draws a text as a QR code (ISO/IEC 18004) in bytes: the smallest that holds
// it, at the strongest level of that size. It returns "" for a text that none
// holds. The code is black on white whatever the page is.
func QR(text string) string {
	words := coding.String(text)
	for version := coding.Version(coding.MinVersion); version <= coding.MaxVersion; version++ {
		for level := coding.H; level >= coding.L; level-- {
			if words.Bits(version) <= 8*version.DataBytes(level) {
				return qrPicture(words, version, level)
			}
		}
	}
	return ""
}

// qrPicture lays the text's bits out. The bits are laid here, not by the
// library's own Encode, whose errors are formatted at the cost of 100 kB in
// what a phone loads.
func qrPicture(words coding.String, version coding.Version, level coding.Level) string {
	plan, err := coding.NewPlan(version, level, 0)
	if err != nil {
		panic("draw: QR: " + err.Error())
	}
	var bits coding.Bits
	words.Encode(&bits, version)
	bits.AddCheckBytes(version, level)
	data := bits.Bytes()
	dark := func(p coding.Pixel) bool {
		at := p.Offset()
		carries := p.Role() == coding.Data || p.Role() == coding.Check
		return (p&coding.Black != 0) != (carries && data[at/8]>>(7-at%8)&1 == 1)
	}
	var path strings.Builder
	for y, row := range plan.Pixel {
		for x := 0; x < len(row); x++ {
			start := x
			for x < len(row) && dark(row[x]) {
				x++
			}
			if x > start {
				path.WriteString("M" + strconv.Itoa(start+quiet) + " " + strconv.Itoa(y+quiet) + "h" + strconv.Itoa(x-start) + "v1H" + strconv.Itoa(start+quiet) + "z")
			}
		}
	}
	size := strconv.Itoa(len(plan.Pixel) + 2*quiet)
	return `<svg class="qr" viewBox="0 0 ` + size + " " + size + `" data-modules="` + size + `" role="img" aria-label="QR code of the link" shape-rendering="crispEdges"><rect width="` +
		size + `" height="` + size + `" fill="#fff"/><path fill="#000" d="` + path.String() + `"/></svg>`
}
