package truing

import (
	"pintwelve/core/draw"
	"pintwelve/core/form"
)

// howTo draws, of a crank as an example, what to measure, and where the hours,
// the high spots and the moves stand.
func (a answers) howTo(*form.Reader) {
	blank := form.Read(form.Form{})
	s := readSetUp(blank)
	a.measure(&s, blank)
	face := draw.FaceView{Prefix: "how-high", High: []draw.HighSpot{
		{Letter: "D", Hour: 2, RunOut: "4", HalfSector: 0.5}, {Letter: "T", Hour: 8, RunOut: "3", HalfSector: 0.5},
	}}
	a.Text("picture.how.high", draw.Face(face))
	face = draw.FaceView{Prefix: "how-moves", Moves: []draw.Mark{
		{Kind: draw.Strike, Wheel: draw.Drive, Hour: 3}, {Kind: draw.Squeeze, Hour: 6, Amount: "3 thou"}, {Kind: draw.Spread, Hour: 10, Amount: "2 thou"},
	}}
	a.Text("picture.how.moves", draw.Face(face))
}
