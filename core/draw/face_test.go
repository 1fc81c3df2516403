package draw

import "testing"

var faces = map[string]FaceView{
	"face-empty":    {Prefix: "f"},
	"face-strike":   {Prefix: "f", High: []HighSpot{{"D", 9, "2", 0.3}, {"T", 3.2, "1.5", 0.6}}, Moves: []Mark{{Strike, Drive, 3, "2 thou"}}},
	"face-squeeze":  {Prefix: "f", SeenFrom: Timing, High: []HighSpot{{"D", 6, "1.5", 0.2}, {"T", 6, "1.5", 0.2}}, Moves: []Mark{{Squeeze, 0, 6, "3 thou"}}},
	"face-both":     {Prefix: "f", High: []HighSpot{{"D", 1.5, "2.5 thou", 0}, {"T", 10.5, "2 thou", 0}}, Moves: []Mark{{Strike, Timing, 9, "2.5 thou"}, {Spread, 0, 10, "1.5 thou"}}},
	"face-same":     {Prefix: "f", High: []HighSpot{{"D", 0, "2.5", 1}, {"T", 0, "2", 0}}, Moves: []Mark{{Strike, Timing, 3, "2.5 thou"}, {Squeeze, 0, 3, "1.5 thou"}}},
	"face-unknown":  {Prefix: "f", High: []HighSpot{{"D", 4, "0.2", 6}, {"T", 1.5, "0.5", 2}}},
	"face-before":   {Prefix: "f", High: []HighSpot{{"D", 5, "0.5", 0.6}}, Before: []HighSpot{{"D", 5, "3", 0.6}, {"T", 7.5, "5.5", 0.6}}, Bare: true},
	"face-diagonal": {Prefix: "f", High: []HighSpot{{"D", 7.5, "2.5", 0}, {"T", 4.5, "2", 0}}, Moves: []Mark{{Strike, Drive, 4.5, "0.05 mm"}, {Strike, Timing, 10.5, "0.05 mm"}}},
}

func TestFaceGolden(t *testing.T) {
	for name, v := range faces {
		t.Run(name, func(t *testing.T) { golden(t, name, Face(v)) })
	}
}

func BenchmarkFace(b *testing.B) {
	v := faces["face-both"]
	b.ReportAllocs()
	for range b.N {
		Face(v)
	}
}
