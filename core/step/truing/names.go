package truing

import "pintwelve/core/crank"

// The names that the form and the answers have for what the crank room numbers;
// what people are told stands in words.go.

var kindNames = [...]string{crank.Strike: "strike", crank.Squeeze: "squeeze", crank.Spread: "spread"}

func kindNamed(name string) crank.Kind {
	for kind, own := range kindNames {
		if own == name {
			return crank.Kind(kind)
		}
	}
	return crank.Strike
}

var mountNames = [...]string{crank.Centres: "centres", crank.VBlocks: "vblocks", crank.OwnBearings: "bearings"}

func mountNamed(name string) crank.Mount {
	for mount, own := range mountNames {
		if own == name {
			return crank.Mount(mount)
		}
	}
	return crank.Centres
}

var verdictNames = [...]string{
	crank.Fit: "true", crank.OutOfTrue: "out of true", crank.NotMendable: "not mendable by bumping",
	crank.TooClose: "too close to call", crank.CantTell: "the dials can't tell", crank.FitAsHung: "true as it hangs",
}

// noVerdict is where none can be given yet.
const noVerdict = "needs a reading"

// adviceNames name what a plan comes to.
var adviceNames = [...]string{
	crank.Unread: "", crank.Work: "work", crank.Leave: "leave", crank.Unmendable: "look elsewhere", crank.Unclear: "read again", crank.Stop: "stop",
}

var cameNames = [...]string{otherWay: "the other way", noEffect: "nothing", hardlyShows: "hardly shows", astray: "astray"}

var causeNames = [...]string{
	crank.HoursFromWrongEnd: fromOtherEnd,
	crank.WrongWheel:        "the wrong wheel",
	crank.WrongMove:         "squeezed for spread",
	crank.TooLight:          "too light",
	crank.NotSupported:      "not supported",
	crank.DialMoved:         "a dial moved",
	crank.PinSlipped:        "the pin slipped",
	crank.DialsExchanged:    dialsExchanged,
	crank.HourMirrored:      "the hour mirrored",
	crank.LowForHigh:        "low taken for high",
	crank.FirstOnly:         "first move only",
	crank.NotDone:           "not done",
	crank.CentreOrShaft:     "bad centre or bent shaft",
	crank.Hinged:            "squeeze hinged off the pin",
	crank.Unlogged:          "something done that isn’t logged",
	crank.Pressure:          "tailstock pressure",
	crank.OtherPin:          "worked at another pin",
}
