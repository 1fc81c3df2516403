package truing

import (
	"math"
	"strconv"
	"strings"

	"pintwelve/core/bench"
	"pintwelve/core/crank"
	"pintwelve/core/form"
)

// The words of the step: each sentence stands here once, one with figures as a
// function whose parameters name them, so that another language is another such
// file. Which is said, and when, is the business of the files that say it; how a
// figure is written, of figures.go.

// What is to be read.
const (
	turnAndRead       = "Turn the crank once and read a dial."
	typeRunOutAndHour = "Type each shaft’s run-out, and the hour where its needle stands highest."
	tapTheFace        = "Tap the clock face, or type it. 12 is the crankpin."
	nothingLogged     = "Nothing is logged as done since."
	notReadYet        = "not read yet"
	measureThePins    = "Measure where each crankpin stands."
	pinHangsOnIt      = "Which pin is at fault hangs on it: type both ends’ distances to their crankpin, and each further pin’s place and angle, under Distances."
)

func readAgain(pass string) string { return bench.Fill("%: read again.", pass) }

func carryTheDial(side string) string {
	return bench.Fill("Carry the dial across to the % shaft and turn again.", side)
}

func pointsRead(taken, of string) string { return bench.Fill("% of % read.", taken, of) }

func nextPoint(taken, of, hour string) string {
	return bench.Fill("% of % read; next at %.", taken, of, hour)
}

func hoursWanted(taken, of string) string {
	return bench.Fill("% of % read; give the hours of three points or more.", taken, of)
}

func firstPointAgain(taken, of string) string {
	return bench.Fill("% of % read; read the first point again to see whether anything moved.", taken, of)
}

func wholeAndBack(of string) string {
	return bench.Fill("All % read, and the first again: the turn is whole.", of)
}

func wholeTurn(of string) string { return bench.Fill("All % read: the turn is whole.", of) }

func beforeIt(runOuts string) string { return bench.Fill("Before: %.", runOuts) }

func hopedFor(runOuts string) string { return bench.Fill("Hoped for: %.", runOuts) }

func oneMoreDial(side string) string {
	return bench.Fill("One more dial is wanted on the % shaft.", side)
}

func readsUnlike(other string) string {
	return bench.Fill("% at the same place reads otherwise: one of them is wrong, or where it stands is", other)
}

func awayFromSupport(place string) string {
	return bench.Fill("Away from where it is held: about % from that shaft’s end.", place)
}

func whichUnit(units string) string { return bench.Fill("%?", units) }

func sayTheUnit(what string) string {
	return bench.Fill("Say what the % is in: nothing is called true before.", what)
}

// The verdict, and what to do.
const (
	trueLeaveIt     = "True: leave it. It is fit to go in."
	trueAsHung      = "True as it hangs: leave it."
	oneDialCantSee  = "One dial a shaft can’t see a bad centre or a bent shaft."
	centresUnproved = "What was read close to the centres doesn’t vouch for them."
	squeezeHinged   = "The squeeze brought this: ease it back and clamp from the other side."
	badCentreShows  = "A bad centre or a bent shaft shows so: read a second place close to each centre."
	lowForHighShows = "One shaft’s low spot taken for its high shows so: look again."
	throwMismatch   = "Throw mismatch: dirt or fretting in the pin’s seats, a bent pin, or halves that don’t belong together."
	elseMismatch    = "Else the throws don’t match."
	cantTellWhich   = "Out of true, but the dials can’t tell which way to work."
	itWasPressure   = "It was pressure: leave the tailstock just snug, and read again."
	pressureShows   = "What these readings show is partly the tailstock’s doing."
	howFarHangs     = "How far and how hard hang on two distances: type them below the readings."
	distancesAlike  = "From that shaft’s own end; the other shaft’s are taken to be alike."
	caution         = "Eye protection. Tailstock backed off. Wheel supported. Soft hammer."
	asLogged        = "As logged: read again"
	bothDone        = "Both done: read again"
)

func worstRunOut(runOut string) string { return bench.Fill("Worst run-out %.", runOut) }

func worstAsHung(runOut, why string) string { return bench.Fill("Worst run-out %. %", runOut, why) }

func bumpingCantMend(left string) string { return bench.Fill("Bumping can’t mend this: %.", left) }

func noFurtherAsRead(left string) string {
	return bench.Fill("As read, bumping gets it no further: %.", left)
}

func tooClose(stands string) string { return bench.Fill("Too close to call: %.", stands) }

func readsInside(tellers string) string {
	return bench.Fill("As read it is inside. What would tell: %.", tellers)
}

func readsOutside(tellers string) string {
	return bench.Fill("As read it is outside. What would tell: %.", tellers)
}

func whatWouldTell(tellers string) string { return bench.Fill("What would tell: %.", tellers) }

func doAndWatch(do, watch string) string { return bench.Fill("%; %.", do, watch) }

func thenAndWatch(do, watch string) string { return bench.Fill("Then %; %.", do, watch) }

func orDo(do string) string { return bench.Fill("Or %.", do) }

func needleTo(dial, runOut string) string { return bench.Fill("% needle to %", dial, runOut) }

func onlyTheWay(way string) string { return bench.Fill("%.", way) }

func thenTheWay(way, more string) string { return bench.Fill("Then %. %", way, more) }

func ifWorkedUnmeasured(way string) string {
	return bench.Fill("If you work on it all the same: %.", way)
}

func ifWorkedOn(do, hard string) string {
	return bench.Fill("If you work on it all the same: %. %", do, hard)
}

func elseTooClose(stands, tellers string) string {
	return bench.Fill("It is too close to call: %. What would tell: %.", stands, tellers)
}

func onlyBack(left string) string {
	return bench.Fill("This only brings it back to where it was: %.", left)
}

func insideButLeans(side, lean, limit string) string {
	return bench.Fill("Run-out is inside, but the % journal leans % in its bearing, %′ allowed.", side, lean, limit)
}

func strikeAt(wheel, hour string) string { return bench.Fill("Strike the % wheel at %", wheel, hour) }

func untilStays(way, amount string) string { return bench.Fill("% until % stays", way, amount) }

func onToPass(pass string) string { return bench.Fill("On to %", pass) }

func doneReadAgain(done string) string { return bench.Fill("%: read again", done) }

// From two metres.
const (
	farReadAgain = "READ AGAIN"
	farWhatDone  = "WHAT WAS DONE?"
	farStop      = "STOP"
)

// How hard.

func blowOf(likened, dose string) string { return bench.Fill("% (%)", likened, dose) }

func wrongWayTrial(hard string) string {
	return bench.Fill("It went the other way: now % as a trial, then read.", hard)
}

func twoTrials(hard, then string) string { return bench.Fill("A trial: %, then %.", hard, then) }

func twoMoves(hard, then string) string { return bench.Fill("%, then %.", hard, then) }

func oneTrial(hard string) string { return bench.Fill("A trial: %; then read.", hard) }

func timesTheFirst(hard, times string) string { return bench.Fill("%: % the first.", hard, times) }

func timesThePass(hard, times, pass string) string {
	return bench.Fill("%: % %’s.", hard, times, pass)
}

// Figures beside what is allowed, or with what stands by them.

func besideAllowed(runOut, limit string) string { return bench.Fill("%, % allowed", runOut, limit) }

func journalLeans(side, lean, limit string) string {
	return bench.Fill("the % journal leans %, %′ allowed", side, lean, limit)
}

func stillLeft(runOut, limit string) string {
	return bench.Fill("% would still be left, % allowed", runOut, limit)
}

func stillLeans(lean, limit string) string {
	return bench.Fill("the journals would still lean %, %′ allowed", lean, limit)
}

func justInside(limit string) string { return bench.Fill("just inside %", limit) }

func justOver(limit string) string { return bench.Fill("just over %", limit) }

func arcMinutes(lean, plus string) string { return bench.PlusMinus(lean+"′", plus+"′") }

func towardsHour(amount, hour string) string { return bench.Fill("% towards %", amount, hour) }

func highAt(runOut, hour string) string { return bench.Fill("%, high at %", runOut, hour) }

// What would make a dial surer.
const (
	halfWayHours = "the half-way hours"
	morePoints   = "a full turn, more points round it"
	finerDial    = "a finer dial"
	secondPlace  = "a second place on that shaft"
	ownDistances = "the assumed distances, measured and typed"
	onceMore     = "read it once more"
)

// What is asked.
const (
	differUnlogged = "These readings differ by more than the dials can, and nothing is logged."
	alikeUnlogged  = "These readings are as before, and nothing is logged: if it was done, say so."
	movedAsAdvised = "Nothing is logged, but the needles moved as what was advised would move them: until you say, it counts as done."
	backItOff      = "Back the tailstock off to just snug. If the needles move, it was pressure, which looks just like a pinch."
	readOnceMore   = "Read both once more, nothing done: the rounds are taken together, and it is surer."
)

func whatWasDone(pass string) string { return bench.Fill("What was done after %?", pass) }

func asTheyStand(words, do string) string { return bench.Fill("% As they stand: %.", words, do) }

func needleDiffers(by string) string {
	return bench.Fill("Read again with nothing done, a needle differs by %: that is a dial or its foot, not the crank. The later readings stand.", by)
}

func sayItThere(pass, next string) string {
	return bench.Fill("What was done after % isn’t said: put % on the bench and say it there.", pass, next)
}

// Why to stop.
const (
	stopFindOut    = "Stop: find out first why it goes wrong."
	freshChalk     = "Read both dials again from fresh chalk, the hours counted from the end that is named, before you strike or squeeze it any more."
	fellElsewhere  = "as logged, the blows fell elsewhere"
	fromOtherEnd   = "hours from the other end"
	dialsExchanged = "dials exchanged"
)

func likeliestFirst(causes string) string { return bench.Fill("Likeliest first: %.", causes) }

func quickTest(hour, side, unit string) string {
	return bench.Fill("Quick test: turn % on the % shaft under its dial. In % from the middle of its swing", hour, side, unit)
}

func ifItShows(figure, means string) string { return bench.Fill("; %: %", figure, means) }

// How the crank sits, and what the needles would show.
const (
	mismatchStays         = "Striking can’t mend a throw mismatch; after a squeeze or spread read again before calling it one."
	assumedLine           = "assumed"
	measuredLine          = "measured"
	distancesAssumedWords = "Distances in italics are assumed. Which way to work doesn’t hang on them much; how much does. Measure and type over them."
	distancesYours        = "All distances are yours."
)

func offsetOf(right, left, twist, mismatch string) string {
	return bench.Fill("At the crankpin the % shaft stands off the % shaft’s line by % of twist and % of throw mismatch.", right, left, twist, mismatch)
}

func inBearings(drive, timing string) string {
	return bench.Fill("Where the sprocket, pinion or rotor sits it would run out % on the drive side, % on the timing side.", drive, timing)
}

func leansInBearings(drive, timing, limit string) string {
	return bench.Fill("Each journal leans in its bearing, in minutes of arc: drive %, timing %; %′ allowed.", drive, timing, limit)
}

func facesParallel(across string) string {
	return bench.Fill("The wheels’ faces stand parallel as far as the dials can tell: no more than % across the rim.", across)
}

func standOpen(hour, wider string) string {
	return bench.Fill("The wheels stand open at %: % wider there than straight across.", hour, wider)
}

func wouldBeLeft(runOut string) string {
	return bench.Fill("With twist and gap both gone, % would be left: bumping gets no further than that.", runOut)
}

func afterOneAlone(kind string) string { return bench.Fill("After the % alone", kind) }

const afterBoth = "After both"

func setUpLine(mount, division string) string { return bench.Fill("% · % dials", mount, division) }

// Each shaft, and each turn of the needle.

func furtherPlace(letter string) string { return bench.Fill("Place %", letter) }

func turnShows(letter, full, runOut string) string {
	return bench.Fill("%: full movement %, fitted run-out %.", letter, full, runOut)
}

func outOfRound(by string) string {
	return bench.Fill("Out of round by %: the shaft’s own shape, not its place.", by)
}

func perhapsOutOfRound(by string) string {
	return bench.Fill("Out of round, or scatter, by up to %: more points would tell.", by)
}

func needlePassedZero(turn string) string {
	return bench.Fill("The needle passed zero: the readings were taken on past it, one turn of it being %.", turn)
}

func scatterBy(amount string) string { return bench.Fill("Readings scatter by about %.", amount) }

func halvesApart(letter, hours string) string {
	return bench.Fill("%: the half-way hours lie % apart, where half a turn is 6. One is misread, or the shaft is out of round: read a full turn.", letter, hours)
}

// The cross-checks.
const (
	checksSayOtherwise = "The rim gaps or the straight-edge say otherwise than the dials, by more than either can be out: find out which before you strike."
	dialsDiffer        = "The dials say otherwise, by more than either can be out: find out which before you strike."
	dialsAgree         = "The dials agree."
)

func openByGaps(hour, across string) string {
	return bench.Fill("By the rim gaps the wheels stand open at %, by %.", hour, across)
}

func gapsAskew(by string) string {
	return bench.Fill("12 and 6 together differ from 3 and 9 together by %: one gap is misread, or a face isn’t flat.", by)
}

func byStraightEdge(twist, mismatch, side, by string) string {
	return bench.Fill("By the straight-edge: % of twist, % of throw mismatch; the % rim’s radius is % the larger.", twist, mismatch, side, by)
}

// The passes, and what was done.
const (
	asWasAdvised  = ", as advised"
	nutsDrawnUp   = "; the nuts were drawn up"
	pressedAnew   = "; the crank was pressed apart and up again"
	somethingDone = "; something was done that isn’t logged"
)

// passName names a pass, counted from 0.
func passName(i int) string {
	if i == 0 {
		return "As found"
	}
	return bench.Fill("Pass %", strconv.Itoa(i+1))
}

// afterName names a pass within a sentence.
func afterName(i int) string {
	if i == 0 {
		return "the first readings"
	}
	return lowerFirst(passName(i))
}

func inUnit(figure, unit string) string { return bench.Fill("% %", figure, unit) }

func dialShows(letter, runOut string) string { return bench.Fill("% %", letter, runOut) }

func passSaid(pass, runOuts, done string) string { return bench.Fill("%: %%", pass, runOuts, done) }

// The sheet.
const (
	notJudgedAssumed = "This crank’s distances were assumed, not measured: how it would run and lean in its bearings is left out."
)

func sheetLine(state string) string { return bench.Fill("Job sheet: %", state) }

func sheetLineOf(name, state string) string { return bench.Fill("Job sheet %: %", name, state) }

func hoursSeenFrom(side string) string {
	return bench.Fill("Hours run clockwise as seen from the % side; 12 is the crankpin.", side)
}

func cameAt(runOut string) string { return bench.Fill("It came at %.", runOut) }

// What is wrong with a figure.
const (
	turnNeedsThree = "a turn needs readings at three different hours or more, all of one dial: as 0 .5 1 .5 at 12, 3, 6 and 9"
	sameHourTwice  = "the needle can’t rise and fall through half-way at the same hour: give the hour where it falls, as 9 for one that rises at 3"
)

func pinOutsideWheel(throw, wheel string) string {
	return bench.Fill("a throw of % in a wheel of % puts the crankpin outside the wheel: the throw must be less than half the wheel", throw, wheel)
}

func unevenLists(readings, hours string) string {
	return bench.Fill("% for %: give as many of one as of the other", readings, hours)
}

func noRunOut(given string) string {
	return bench.Fill("% can’t be a run-out: write 0 or more, as 1.5", given)
}

func beyondThePin(given, pin string) string {
	return bench.Fill("% from the shaft’s end is not short of the crankpin’s middle, which stands at %: measure from this shaft’s own end, or give the distance to the crankpin", given, pin)
}

func madeUpCrank(seed string) string { return bench.Fill("Made-up crank %", seed) }

// Words for what the crank room numbers.
var (
	kindWords    = [...]string{crank.Strike: "strike", crank.Squeeze: "squeeze", crank.Spread: "spread"}
	loudWords    = [...]string{crank.Strike: "STRIKE", crank.Squeeze: "SQUEEZE", crank.Spread: "SPREAD"}
	didWords     = [...]string{crank.Strike: "Struck", crank.Squeeze: "Squeezed", crank.Spread: "Spread"}
	mountWords   = [...]string{crank.Centres: "between centres", crank.VBlocks: "on V-blocks", crank.OwnBearings: "in its own bearings"}
	supportWords = [...]string{crank.Centres: "centre", crank.VBlocks: "V-block seat", crank.OwnBearings: "bearing seat"}
)

func closeAt(kind crank.Kind, hour string) string {
	return bench.Fill("% the wheels at %", upperFirst(kindWords[kind]), hour)
}

func closeUntil(kind crank.Kind, hour, amount string) string {
	return bench.Fill("% at % until % stays", kindWords[kind], hour, amount)
}

func farStrike(wheel, hour string) string {
	return bench.Fill("% % at %", loudWords[crank.Strike], wheel, hour)
}

func farClose(kind crank.Kind, hour string) string {
	return bench.Fill("% at %", loudWords[kind], hour)
}

func struckAt(wheel, hour, hard string) string {
	return bench.Fill("; struck % at %, %", wheel, hour, hard)
}

func closedAt(kind crank.Kind, hour, hard string) string {
	return bench.Fill("; % at %, %", lowerFirst(didWords[kind]), hour, hard)
}

// standingWords say what a pass comes to: from two metres; in the list of jobs,
// with the worst run-out; and to the customer, with that and what is allowed.
var standingWords = [...]struct{ far, state, plain string }{
	crank.Fit:       {"TRUE", "true to %", "The crank runs true: over one turn neither shaft moves more than %; % is allowed."},
	crank.OutOfTrue: {"out of true", notTrueState, notTruePlain},
	crank.NotMendable: {
		"not mendable by bumping", "can’t be trued as it stands, %",
		"As it stands the crank can’t be trued: a shaft moves % over one turn, % is allowed, and its halves don’t match.",
	},
	crank.TooClose: {"too close to call", "% as read, too close to call", "The crank runs true or very nearly, as far as the dials can tell: %, and % is allowed."},
	crank.CantTell: {"the dials can't tell", "%, more readings wanted", notTruePlain},
	crank.FitAsHung: {
		"true as it hangs", "true as it hangs, to %",
		"Hung between its centres the crank runs true: over one turn neither shaft moves more than %; % is allowed. The centres themselves were not tried.",
	},
	untried: {
		"not mendable by bumping", notTrueState,
		"As it stands the crank can’t be trued: a shaft moves % over one turn, % is allowed. Its halves don’t match, or a centre or a shaft is bad: that was not tried.",
	},
	unmeasured: {"", "not measured to the end yet", "Not measured to the end yet."},
	leansOpen: {
		"needles inside", "needles inside, to %",
		"Over one turn no shaft moves more than %; % is allowed. How every journal would lean in its bearing was not measured.",
	},
}

const (
	notTrueState = "not true yet, %"
	notTruePlain = "Not true yet: a shaft still moves % over one turn; % is allowed."
)

func stateWords(s standing, worst string) string { return bench.Fill(standingWords[s].state, worst) }

func plainWords(s standing, worst, allowed string) string {
	return bench.Fill(standingWords[s].plain, worst, allowed)
}

func leansTooMuch(worst, allowed string) string {
	return bench.Fill("Not true yet: over one turn no shaft moves more than %, and % is allowed, but a shaft leans in its bearing more than it may.", worst, allowed)
}

func leansAsAssumed(worst, allowed string) string {
	return bench.Fill("Not true yet: over one turn no shaft moves more than %, and % is allowed, but a shaft leans in its bearing more than it may, as reckoned with assumed distances.", worst, allowed)
}

// invitation asks for what a dial's reading lacks.
func invitation(lacks lack, dial string) string {
	return bench.Fill([...]string{
		runOut:  "Now the % dial’s run-out.",
		hour:    "At which hour does the % needle stand highest?",
		halfway: "At which hours does the % needle rise and fall through half-way?",
		pinAt:   "Where does the pin point when the % needle stands highest?",
		points:  "Go on round with the % dial.",
		mending: "Mend the % dial’s figure marked Wrong.",
	}[lacks], dial)
}

// furtherDial names a dial by its letter, where its shaft has more than one.
func furtherDial(letter, side string) string { return bench.Fill("%, %", letter, side) }

// doubtWords are the figures of the step whose unit can be in doubt.
var doubtWords = map[form.ID]string{
	form.ReadingTIR: "run-out", form.ReadingTurn: "turn", form.Tolerance: "run-out allowed", form.ShaftDivision: "dial’s division", form.ShaftSweep: "dial’s turn of the needle",
}

func dialsFigure(dial, figure string) string { return bench.Fill("% %", dial, figure) }

func figureOfPass(figure, pass string) string { return bench.Fill("% of %", figure, pass) }

// oneOf joins what may do in the place of each other.
func oneOf(ways []string) string { return strings.Join(ways, ", or ") }

func dialWays(dial, ways string) string { return bench.Fill("% dial: %", dial, ways) }

// shaftWords say what the dials make of a shaft and of what holds it, which stands
// so far off the shaft's axis, towards an hour.
func shaftWords(state crank.ShaftState, side, support, off, hour string) string {
	return bench.Fill([...]string{
		crank.Unseen:        "With one dial on the % shaft its % is taken on trust.",
		crank.Sound:         "The % shaft’s % can be trusted.",
		crank.SupportOrBent: "On the % side, a bad % or a bent shaft: the dials’ line passes % from it, towards %. A third place on that shaft would tell which; the dials alone are gone by.",
		crank.BadSupport:    "Don’t trust the % shaft’s %: it stands % off the shaft’s axis, towards %. The dials alone are gone by.",
		crank.Bent:          "The % shaft is bent, or a dial was misread: its dials don’t stand on one line.",
	}[state], side, support, off, hour)
}

func hoursMirrored(dial string) string {
	return bench.Fill("the hours of % had been read from the other end", dial)
}

func readingsSwapped(dial, other string) string {
	return bench.Fill("those of % and % had been exchanged", dial, other)
}

func slipFirst(wouldFit string) string {
	return bench.Fill("% Find out which before you strike.", wouldFit)
}

func wouldFit(slips []string) string {
	return bench.Fill("The readings would fit if %.", strings.Join(slips, ", or if "))
}

func cameBackHigher(by string) string {
	return bench.Fill("The first point came back % higher: the dial or the crank has moved. Read the turn again.", by)
}

func cameBackLower(by string) string {
	return bench.Fill("The first point came back % lower: the dial or the crank has moved. Read the turn again.", by)
}

// cameWords say what came of a thing done that wasn't as it was meant; astray it
// moved a needle by so much.
func cameWords(c came, kind crank.Kind, pass, by string) string {
	return bench.Fill([...]string{
		otherWay:    "The % after % went the other way; it is left out of the reckoning.",
		noEffect:    "The % after % should have shown, and didn’t; it is left out of the reckoning.",
		hardlyShows: "The % after % hardly shows.",
		astray:      "The % after % also moved what it should not have, by % on a needle.",
	}[c], kindWords[kind], pass, by)
}

func lookWhether(came, causes string) string { return bench.Fill("% Look whether %.", came, causes) }

// causeSentences go on from "Look whether".
var causeSentences = [...]string{
	crank.HoursFromWrongEnd: "the hour was read from the other end",
	crank.WrongWheel:        "the other wheel was struck",
	crank.WrongMove:         "it was squeezed where it should have been spread, or at the opposite hour",
	crank.TooLight:          "it was too light for this fit and sprang back",
	crank.NotSupported:      "the other wheel was not held, or the clamp stood askew",
	crank.DialMoved:         "a dial or its foot slipped",
	crank.PinSlipped:        "the pin has shifted in its seat",
	crank.DialsExchanged:    "the two dials’ readings were exchanged",
	crank.HourMirrored:      "the work was done at the hour as seen from the other end",
	crank.LowForHigh:        "the low spot was taken for the high one",
	crank.FirstOnly:         "only the first of the two moves was done",
	crank.NotDone:           "it was not done at all",
	crank.CentreOrShaft:     "a centre is bad or a shaft is bent",
	crank.Hinged:            "the squeeze closed the gap about one end of the pin",
	crank.Unlogged:          "something was done that isn’t logged",
	crank.Pressure:          "the tailstock presses on the crank",
	crank.OtherPin:          "the work was done at another pin",
}

// causeWords are the causes in few words.
var causeWords = [...]string{
	crank.HoursFromWrongEnd: "hours from the other end",
	crank.WrongWheel:        "the wrong wheel",
	crank.WrongMove:         "squeezed for spread",
	crank.TooLight:          "too light",
	crank.NotSupported:      "not supported",
	crank.DialMoved:         "a dial moved",
	crank.PinSlipped:        "the pin slipped",
	crank.DialsExchanged:    "dials exchanged",
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

// Of a squeeze or spread: how hard.

const oneTurn = "1 turn"

func turnsOf(number string) string { return bench.Fill("% turns", number) }

func overTheWedge(amount string) string { return bench.Fill("% over the wedge", amount) }

func underTheClamp(amount string) string { return bench.Fill("% under the clamp", amount) }

// likening is a word for what goes up to a figure.
type likening struct {
	to    float64
	words string
}

func likened(x float64, rows ...likening) string {
	for _, row := range rows {
		if x <= row.to {
			return row.words
		}
	}
	return ""
}

// blows likens a strike's dose to blows.
func blows(dose float64) string {
	return likened(dose, likening{0.35, "a tap"}, likening{0.75, "a light blow"}, likening{1.25, "a usual blow"}, likening{1.75, "a hard blow"},
		likening{2.5, "two usual blows"}, likening{3.5, "three usual blows"}, likening{math.Inf(1), "many blows"})
}

// timesWords liken a dose to an earlier one.
func timesWords(times float64) string {
	return likened(times, likening{0.18, "a small part of"}, likening{0.29, "about ¼ of"}, likening{0.42, "about ⅓ of"}, likening{0.6, "about ½ of"},
		likening{0.85, "about ¾ of"}, likening{1.2, "as hard as"}, likening{1.75, "about 1½ ×"}, likening{2.5, "about 2 ×"}, likening{math.Inf(1), "many times"})
}

func lowerFirst(s string) string { return string(s[0]-'A'+'a') + s[1:] }

// upperFirst leaves figures as they are.
func upperFirst(s string) string {
	if s[0] >= 'a' && s[0] <= 'z' {
		return string(s[0]-'a'+'A') + s[1:]
	}
	return s
}
