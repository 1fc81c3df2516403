package truing

import (
	"strconv"
	"strings"

	"pintwelve/core/bench"
)

// The words of a crank of several throws.

// pinName names a joint by its pin.
func pinName(joint int) string { return bench.Fill("pin %", strconv.Itoa(joint+1)) }

const (
	everyNeedleInside       = "Every needle is inside: leave it."
	everyNeedleInsideAsHung = "Every needle is inside as it hangs: leave it."
	throwsDontMatch         = "The throws don’t match: look to the pins and their seats."
	cantTellWhichPin        = "Out of true, but these readings can’t tell at which pin."
	cantTellTwist           = "the readings can’t tell twist"
	cantTellGap             = "; the readings can’t tell the gap"
	cantBeHeldThere         = "the crank can’t be held there: it must lie clear of every pin, the drive and the timing side’s apart"
)

func strikeWheelOfPin(wheel, pin, hour string) string {
	return bench.Fill("Strike the % wheel of % at %", wheel, pin, hour)
}

func closeWheelsOfPin(way, pin, hour string) string {
	return bench.Fill("% the wheels of % at %", way, pin, hour)
}

func worstAndMain(runOut, main string) string {
	return bench.Fill("Worst run-out %. %.", runOut, main)
}

func leansUntold(ways string) string {
	return bench.Fill("How every journal leans in its bearing isn’t told; what would tell: %.", ways)
}

func insideBut(main, then string) string {
	return bench.Fill("The needles are inside; but %. %", main, then)
}

// inMain says how the crank would run in a main bearing.
func inMain(where, how string) string { return bench.Fill("main bearing %: %", where, how) }

func inMainEnds(where, how string) string { return bench.Fill("Main bearing %: %.", where, how) }

const cantTellRuns = "the readings can’t tell how it runs"

func leansBy(lean, limit string) string {
	return bench.Fill("the journal leans %, %′ allowed", lean, limit)
}

func runsOutBy(runOut, limit string) string {
	return bench.Fill("the journal runs out by %, % allowed", runOut, limit)
}

func runsAndLeans(runOut, lean, limit string) string {
	return bench.Fill("the journal runs out by % and leans %, %′ allowed", runOut, lean, limit)
}

func mainOffJournal(at string) string {
	return bench.Fill("a main bearing at % from the left end stands on a pin or past its journal: give the middle of the bearing", at)
}

// andHard says how hard a move is to be: "strike … (a light blow (0.4))".
func andHard(move, hard string) string { return bench.Fill("%: %", move, hard) }

func theFirst(hard string) string { return bench.Fill("The first: %.", hard) }

// thenTheRest says what comes after the first move.
func thenTheRest(moves []string) string {
	if len(moves) == 0 {
		return "Then read again. Hours are that pin’s own: it is 12."
	}
	return bench.Fill("Then %. Then read again. Hours are each pin’s own: it is 12.", strings.Join(moves, "; "))
}

func allDone(moves string) string { return bench.Fill("All % done: read again", moves) }

func farAtPin(do, pin string) string { return bench.Fill("PIN % · %", pin, do) }

// atPin ends what was done at a pin, ofPin begins what is said of one.
func atPin(pin string) string { return bench.Fill(" at %", pin) }

func ofPin(pin, words string) string { return bench.Fill("At %: %", pin, words) }

func gapAcrossPin(pin string) string {
	return bench.Fill("the gap across the wheels of % at 12, 3, 6 and 9", pin)
}

func dialFromLeft(at, where string) string {
	return bench.Fill("a dial % from the left end, %", at, where)
}

func orElse(ways []string) string { return strings.Join(ways, ", or ") }

func onTheShaft(side string) string { return bench.Fill("on the % shaft", side) }

func onTheJournal(from, to string) string {
	return bench.Fill("on the journal between % and %", from, to)
}

func pinSits(pin, twist, gap string) string { return bench.Fill("%: %%.", pin, twist, gap) }

func twistAndMismatch(twist, mismatch string) string {
	return bench.Fill("% of twist, % of throw mismatch", twist, mismatch)
}

func openAtBy(hour, by string) string { return bench.Fill("; open at % by %", hour, by) }

func numbered(number, move string) string { return bench.Fill("%. %.", number, move) }

func runOutsIn(unit string) string {
	return bench.Fill("Run-out in %, now and after each move:", unit)
}

func hoursOfPin1SeenFrom(side string) string {
	return bench.Fill("Hours run clockwise as seen from the % side; 12 is pin 1.", side)
}

func runOutAt(dial string) string { return bench.Fill("Run-out, %", dial) }

// dialBetween names a dial on an inner journal; its pins stay on one line.
func dialBetween(letter, from, to string) string {
	return bench.Fill("%, pins %–\u2060%", letter, from, to)
}

func whatWouldTellMore(ways string) string { return bench.Fill("What would tell more: %.", ways) }

// pinOnFace names the pin whose clock face stands above.
func pinOnFace(pin string) string { return bench.Fill("%, 12 on this face", pin) }

func tooManyThrows(given string) string {
	return bench.Fill("% throws: a crank of six at most can be worked out", given)
}

func pinNotBeyond(at, before string) string {
	return bench.Fill("% from the left end is not beyond the pin before it, which stands at %: measure from the end at your left hand", at, before)
}

func throwOutsideWheel(throw, wheel string) string {
	return bench.Fill("a throw of % puts the crankpin outside a wheel of %: the throw must be less than half the wheel", throw, wheel)
}

func dialOnPin(at string) string {
	return bench.Fill("a dial at % from the left end stands on a pin or past the end: give a place on a shaft or an inner journal", at)
}

// The words of a pin alone: two pieces and their pin, before they are joined.

const (
	isTrue          = "is true"
	isTrueAsHung    = "is true as it hangs"
	joinNext        = "Join the pieces, then read the whole."
	joinedReadWhole = "Joined: read the whole"
	wholeCrank      = "Whole crank"
	asJoined        = "As joined"
	foundAsJoined   = "“As found” is here as the crank was joined from these."
	pieceHangsOnIt  = "Type them below the readings: what to do, and how hard, hangs on them."
)

func alonePin(pin int) string { return bench.Fill("Pin % alone", strconv.Itoa(pin)) }

func aloneIs(alone, how, next string) string { return bench.Fill("% %. %", alone, how, next) }

func aloneNext(pin string) string { return bench.Fill("Next % alone, then join.", pin) }

func readAloneNext(pin string) string { return bench.Fill("Read % alone", pin) }

func passOfStage(stage, pass string) string { return bench.Fill("%, %", stage, pass) }

func measureThePiece(alone string) string {
	return bench.Fill("%: measure where its dials and its pin stand.", alone)
}

func aloneState(alone, state string) string { return bench.Fill("%: %", lowerFirst(alone), state) }

// aloneCame says how a pin alone was left, and by its dials how it came.
func aloneCame(state, found string) string { return bench.Fill("%; it came at %.", state, found) }

func noSuchPin(pins string) string {
	return bench.Fill("this crank has % pins: give one of them, or the whole crank", pins)
}

func notJoined(state string) string {
	return bench.Fill("The crank isn’t joined yet; %.", state)
}

// The words of the angles between pins.

const giveIndexAllowed = "How far it may be out is the maker’s to say: give it, and this is judged."

func indexAndWhat(stands, what string) string { return bench.Fill("% %", stands, what) }

func indexAsMeant(pin, stands, nominal string) string {
	return bench.Fill("% stands at %: at %° as far as this tells.", pin, stands, nominal)
}

func pastNominal(pin, stands, by, nominal, at string) string {
	return bench.Fill("% stands at %: % past %°, the way the hours run, % at the pin.", pin, stands, by, nominal, at)
}

func shortOfNominal(pin, stands, by, nominal, at string) string {
	return bench.Fill("% stands at %: % short of %°, the way the hours run, % at the pin.", pin, stands, by, nominal, at)
}

func indexInside(limit string) string { return bench.Fill("Inside %.", limit) }

func indexTooClose(limit string) string {
	return bench.Fill("Too close to % to call: measure finer.", limit)
}

func indexPressed(limit string) string {
	return bench.Fill("More than %: its journal is pressed and can be turned in its seat, in a press, by the maker’s data.", limit)
}

func indexSolid(limit string) string {
	return bench.Fill("More than %, and its journal is solid: nothing turns it. Time each cylinder by its own pin, or change the wheels.", limit)
}

func indexWhich(limit string) string {
	return bench.Fill("More than %. Is the journal before it pressed or solid? Only a pressed one can be turned.", limit)
}

func levelDull(above, throw string) string {
	return bench.Fill("% from the shafts’ middle at a throw of % is near 12 or 6, where a height says little of an angle: turn the crank, or use a dividing head", above, throw)
}

func levelBeyond(above, throw string) string {
	return bench.Fill("% from the shafts’ middle is more than the throw of %: give the heights of the middles, each top less half its diameter", above, throw)
}
