package balance

import (
	"strconv"

	"pintwelve/core/bench"
)

// The words of a crank of several throws.

const (
	tooManyThrows    = "Cranks of four throws and more are not balanced here: that wants a balancing machine."
	areTheyApart     = "Can each throw be weighed by itself, its two wheels on their pin, apart from the others? Say so under 2."
	weighItWhole     = "Pins that stand alike are weighed with the crank whole: choose that under 2."
	weighedWhole     = "The pins stand alike: hang the weight anywhere on them, the sum counts. It tells of the throws together, and they are taken to share it alike."
	countedInPlane   = "A throw’s two wheels are counted in the plane of its pin: a couple between them isn’t."
	countedAlike     = "The throws are taken to carry alike, each in the plane of its pin: a couple between them shows on a balancing machine alone."
	joinedUntold     = "Knife-edges can’t tell throws apart that stay joined, unless their pins stand alike at 360° with one throw: choose “nothing: factor known” under 2, or have it balanced on a machine."
	noHolesUnweighed = "No holes are planned for throws that aren’t weighed each by itself."
	firstThrow       = "Pin 1, the nearest to your left hand, its throw by itself:"
	shakeUntold      = "Forces and couples are told once every throw has its factor, one cylinder a pin, and it is measured under True where each pin stands."
	theThrow         = "throw"
	whenFound        = "as found"
	whenAimed        = "as aimed at"
)

func pinName(n int) string { return bench.Fill("Pin %", strconv.Itoa(n+1)) }

func atPin(pin, words string) string { return bench.Fill("%: %", pin, words) }

func asTheyWillRun(upAndDown, round string) string {
	return bench.Fill("As they will run: reciprocating %, rotating %. Weigh every throw with the old parts until all are drilled.", upAndDown, round)
}

func carries(factor, aim, carries, then string) string {
	return bench.Fill("% as found, to have %; its wheels carry % each at the throw, then %.", factor, aim, carries, then)
}

// shakes says what is left at a speed: of force and of couple by turns the greatest of the
// primary, what of it is along the cylinders and across them, and the secondary.
func shakes(speedWhenForceCouple []string) string {
	return bench.Fill("% rpm, %: primary force % kN, % along the cylinders and % across, secondary % kN; primary couple % N·m, % along and % across, secondary % N·m.",
		speedWhenForceCouple...)
}
