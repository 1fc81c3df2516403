package draw

// FitView is one joint’s clearance or interference against its limits, all in one unit.
// A limit that is absent is open: there is no too little, or no too much.
type FitView struct {
	Prefix              string
	Name                string  // of the joint
	Low, High           float64 // limits
	Value               float64
	Half                float64 // how far the value may be out either way
	LowWords, HighWords string  // at the limits: "0.5 thou"
	Words               string  // at the value
	Below, Above        string  // past the limits: "too tight", "too loose"
}

// FitHeight is the height of the viewBox.
const FitHeight = 106

const (
	fitLow, fitHigh = 112, 248 // the limits on the paper
	fitTop, fitFoot = 42, 74   // the bar
	fitEdge         = 3
)

// Fit draws the bar: hatched past the limits, clear between, and the value on it
// as a wedge with its line; past the paper's edge the wedge points outwards.
func Fit(v FitView) string {
	p := pen{make([]byte, 0, 3072)}
	p.open(v.Prefix, FitHeight, v.Name)
	p.describeFit(&v)
	p.described()
	low, high := finite(v.Low), finite(v.High)
	if !low && !high || low && high && v.High <= v.Low {
		return p.close()
	}
	if low {
		p.fitPast(fitEdge, fitLow)
	}
	if high {
		p.fitPast(fitHigh, Width-fitEdge)
	}
	p.lines("ol", point{fitEdge, fitTop}, point{Width - fitEdge, fitTop}, point{fitEdge, fitFoot}, point{Width - fitEdge, fitFoot})
	if finite(v.Value) {
		p.fitValue(&v)
	}
	if low {
		p.fitWords(fitLow, fitLow/2, v.LowWords, v.Below)
	}
	if high {
		p.fitWords(fitHigh, (fitHigh+Width)/2, v.HighWords, v.Above)
	}
	return p.close()
}

func (p *pen) describeFit(v *FitView) {
	switch {
	case !finite(v.Value):
		p.s("Not measured.")
		return
	case v.Value < v.Low:
		p.esc(v.Words)
		p.s(": ")
		p.esc(v.Below)
	case v.Value > v.High:
		p.esc(v.Words)
		p.s(": ")
		p.esc(v.Above)
	default:
		p.esc(v.Words)
		p.s(": within the limits")
	}
	p.s(" (")
	p.esc(v.LowWords)
	p.s(" to ")
	p.esc(v.HighWords)
	p.s(").")
}

// fitPast hatches what lies past a limit.
func (p *pen) fitPast(from, to float64) {
	p.hatch([]point{{from, fitTop}, {to, fitTop}, {to, fitFoot}, {from, fitFoot}}, 7)
}

// fitWords draws a limit with its figure below, and the word for what lies past
// it on the hatching.
func (p *pen) fitWords(limit, past float64, figure, word string) {
	p.line("ol", point{limit, fitTop}, point{limit, fitFoot + 8})
	p.text("tx", middle, point{past, fitFoot - 9}, word)
	half := textWidth(figure, TextSize) / 2
	p.text("tx", middle, point{clamp(limit, max(2, limit-66)+half, min(Width-2, limit+66)-half), FitHeight - 6}, figure)
}

// fitScale returns the paper's x of a figure.
func (v *FitView) fitScale() func(float64) float64 {
	low, high := v.Low, v.High
	// Open to one side: the value stands half-way to it, or as far off.
	switch {
	case !finite(low):
		low = high - max(2*(high-v.Value), 2*(v.Value-high), 1e-9)
	case !finite(high):
		high = low + max(2*(v.Value-low), 2*(low-v.Value), 1e-9)
	}
	return func(x float64) float64 { return fitLow + (x-low)/(high-low)*(fitHigh-fitLow) }
}

func (p *pen) fitValue(v *FitView) {
	scale := v.fitScale()
	left, right := 12.0, Width-12.0
	at := clamp(scale(v.Value), left, right)
	if finite(v.Half) && v.Half > 0 {
		a, b := clamp(scale(v.Value-v.Half), fitEdge, Width-fitEdge), clamp(scale(v.Value+v.Half), fitEdge, Width-fitEdge)
		p.poly("se", point{a, fitTop + 2}, point{b, fitTop + 2}, point{b, fitFoot - 2}, point{a, fitFoot - 2})
	}
	switch x := scale(v.Value); {
	case x < left:
		p.poly("fi", point{fitEdge, fitTop - 9}, point{fitEdge + 16, fitTop - 17}, point{fitEdge + 16, fitTop - 1})
	case x > right:
		p.poly("fi", point{Width - fitEdge, fitTop - 9}, point{Width - fitEdge - 16, fitTop - 17}, point{Width - fitEdge - 16, fitTop - 1})
	default:
		p.line("ol", point{at, fitTop}, point{at, fitFoot})
		p.poly("fi", point{at, fitTop}, point{at - 8, fitTop - 16}, point{at + 8, fitTop - 16})
	}
	half := textWidth(v.Words, TextSize*boldWidth) / 2
	p.text("tx tb", middle, point{clamp(at, half+2, Width-2-half), 19}, v.Words)
}
