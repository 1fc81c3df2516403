package sheet

import "pintwelve/core/bench"

// The words of the title block and of the order of work.

const (
	title = "Pintwelve"

	lookItOver   = "look it over as found"
	splitIt      = "split it"
	measureIt    = "measure"
	lightenIt    = "lighten"
	balanceIt    = "balance"
	pressItUp    = "press it up"
	trueIt       = "true it"
	nutsAndLocks = "nuts and locks"
	trueItAgain  = "true it again"
	intoTheCases = "into the cases"
)

func seenFrom(side string) string { return bench.Fill("seen from % side", side) }

func allowed(runOut string) string { return bench.Fill("% allowed", runOut) }
