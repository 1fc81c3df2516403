package fitting

import (
	"strings"

	"pintwelve/core/bench"
	"pintwelve/core/fit"
	"pintwelve/core/limits"
)

// The words of the fitting-up: each sentence stands here once, one with figures as a
// function whose parameters name them, so that another language is another such file.

// The verdicts.
const (
	rightSoFar = "Right, as far as it is measured."
	tooTight   = "too tight"
	tooLoose   = "too loose"
	tooLittle  = "too little"
	tooMuch    = "too much"
	tooFar     = "too far"
	tooSlack   = "too slack"
	worn       = "worn"
	outOfTrue  = "out of true"
)

func judgedAs(title, amount, verdict string) string {
	return bench.Fill("% %: %.", title, amount, verdict)
}

func fromToRound(low, high string) string { return bench.Fill("From % to % round it.", low, high) }

func mostUnderLeast(most, least string) string {
	return bench.Fill("the most, %, is less than the least, %", most, least)
}

// As found.
const (
	lookItOver   = "Look it over before you split it."
	splitItNext  = "Looked over: mark it, and split it."
	cracked      = "Cracked: that part goes no further."
	rodBent      = "Rod bent, over 100 mm"
	rodTwisted   = "Rod twisted, over 100 mm"
	hangItFirst  = "Hang it in the lathe before it is split: what the dials show is pass 1."
	byItsRock    = "Big end by its rock"
	rockAssumed  = "not worn, if the big end is as wide and the dial as far up as assumed. Give both"
	sidePlay     = "Side play"
	cheeksStopIt = "The rod’s cheeks stop it first: the clearance is at least this."
	twoWanted    = "two readings are wanted, one at each end of the bar"
)

func lookedAtWords(seen, of string) string { return bench.Fill("% of % looked at.", seen, of) }

func notGood(number string) string { return bench.Fill("Not good: % of what was looked at.", number) }

func itCameAt(drive, timing string) string {
	return bench.Fill("It came at % on the drive side, % on the timing side: pass 1.", drive, timing)
}

func runOutOf(side string) string { return bench.Fill("Run-out, % side,", side) }

func runOutOn(side string) string { return bench.Fill("Run-out, % side", side) }

func divisionOn(side string) string { return bench.Fill("Dial’s division, % side", side) }

const runOutAllowed = "Run-out allowed"

func sayWhich(what string, meanings []string) string {
	return bench.Fill("%: %? Say which.", what, strings.Join(meanings, ", or "))
}

// The big end.
const (
	measureThePin    = "Measure the crankpin: both ends and the middle, then across."
	rollersClearance = "Rollers’ clearance"
	pinInBush        = "Pin in bush"
	bushInRod        = "Bush in rod"
)

func limitsAndSteps(least, most, step string) string {
	return bench.Fill("% to %, by steps of %", least, most, step)
}

func rollersDiffer(by, least, most, alike string) string {
	return bench.Fill("The rollers differ by %, from % to %: one set is within % (common practice, no source).", by, least, most, alike)
}

func pinAndEyeTo(pinLow, pinHigh, eyeLow, eyeHigh string) string {
	return bench.Fill("To hold and not yield: for this eye a pin of % to %; for this pin an eye of % to %.", pinLow, pinHigh, eyeLow, eyeHigh)
}

// The joints.
const (
	pinInDrive       = "Pin in drive wheel"
	pinInTiming      = "Pin in timing wheel"
	driveInWheel     = "Drive shaft in wheel"
	timingInWheel    = "Timing shaft in wheel"
	pastYield        = "past yield"
	cracksTheWheel   = "cracks the wheel"
	slips            = "slips"
	noneHolds        = "No interference holds that without yielding: it wants a longer or bigger pin, or another steel."
	noneHoldsInIron  = "No interference holds that in this cast iron without cracking it: it wants a longer or bigger pin, or a wheel of steel."
	tooSteep         = "Too steep to hold by itself: the nut must hold it."
	itCracks         = "It cracks the wheel: cast iron gives no warning."
	itYields         = "It yields: the figures are those of parts that stay elastic, so more than this joint has."
	ironUnderLighten = "Judged as cast iron, which the wheels are under Lighten: choose what this one is. " + ironBoss
	ironBoss         = "A cast-iron boss: look for cracks with dye before and after, break the eye’s edge, warm the wheel rather than force it."
)

// What settles whether a joint holds.
const (
	powerOrTorque = "the engine’s power and speed, or the torque"
	theTorque     = "the torque"
)

func shortOfYield(by string) string {
	return bench.Fill("not past yield. What must it hold? Give %", by)
}

func shortOfCracking(by string) string {
	return bench.Fill("short of cracking. What must it hold? Give %", by)
}

func jointFold(length, across, friction string) string {
	return bench.Fill("% long, % across, friction %", length, across, friction)
}

func drawTo(torque, draw string) string {
	return bench.Fill("To hold %, draw it at least % past hand-tight.", torque, draw)
}

func drawPast(joint, draw, torque string) string {
	return bench.Fill("%: draw it at least % past hand-tight, to hold %.", joint, draw, torque)
}

func noDrawHolds(joint, torque string) string {
	return bench.Fill("%: no draw holds % without yielding.", joint, torque)
}

func noDrawHoldsIron(joint, torque string) string {
	return bench.Fill("%: no draw holds % without cracking the wheel.", joint, torque)
}

func notMeasured(joint string) string { return bench.Fill("%: not measured.", joint) }

func pressWith(joint, tonnes string) string {
	return bench.Fill("%: press it in with %.", joint, tonnes)
}

func drawnHolds(draw, torque string) string {
	return bench.Fill("Drawn up %, it holds %.", draw, torque)
}

// At the press.
const (
	measureWidths  = "Measure each wheel’s width at the pin, and the rod’s."
	thenOverWheels = "Then measure over the wheels."
	readAnew       = "Pressed up: read it again"
	readWithNuts   = "Nuts tight: read it again"
	sideClearance  = "Side clearance"
)

func matchThem(side, by string) string {
	return bench.Fill("The % wheel weighs % more than the other: match them before they go together.", side, by)
}

func stopAt(width string) string { return bench.Fill("Stop the press at % over the wheels.", width) }

func nutsFold(tight, locked bool) string {
	switch {
	case tight && locked:
		return "tight, locked"
	case tight:
		return "tight, not locked"
	case locked:
		return "locked, not ticked tight"
	}
	return ""
}

func tonnesFold(joints int) string { return bench.Counted(joints, "joint", "joints") }

func givesClearance(low, high string) string {
	return bench.Fill("From % to % gives the rod its side clearance.", low, high)
}

// Into the cases.
const (
	measureSeats    = "Measure the bearing seats and housings."
	noHeatOn        = "No heat drops the bearing on with that interference."
	noHeatIn        = "No heat drops the bearing in with that interference."
	dropsInCold     = "It drops in and out of the case cold."
	neverLets       = "This case doesn’t let the race go by heat: it expands no more than the race."
	looseCold       = "The race has no interference even cold."
	endFloat        = "End float"
	endFloatShimmed = "End float so shimmed"
	rodOffLine      = "Rod off the cylinder’s line"
)

func heatFold(room, running string) string { return bench.Fill("shop %, running %", room, running) }

func classesFold(seat, housing string) string { return bench.Fill("%, %", seat, housing) }

func atTheSeat(side string) string { return bench.Fill("Interference at the % seat", side) }

func inTheHousing(side string) string { return bench.Fill("Interference in the % housing", side) }

func slidesOn(by string) string {
	return bench.Fill("The bearing slides on the shaft cold: it is loose there by %.", by)
}

func tooHotOn(heat, most string) string {
	return bench.Fill("% would drop the bearing on the shaft: more than bearings are commonly let have. Warm it to % and press it on.", heat, most)
}

func warmOn(heat string) string {
	return bench.Fill("Warm the bearing to % to drop it on the shaft.", heat)
}

func wantsClass(interference, letters, grade string) string {
	return bench.Fill("To hold it wants % of interference cold, which %% has.", interference, letters, grade)
}

func wantsMore(interference string) string {
	return bench.Fill("To hold it wants % of interference cold, more than any class here has: a ring of steel in the case, or a race kept by screws or a plate.", interference)
}

const hotterThanCases = "That is more than cases are commonly heated to: check the sizes first."

func heatAlone(heat string) string {
	return bench.Fill("Heat the case to % to drop the bearing in.", heat)
}

func heatOrFreeze(heat, freezer string) string {
	return bench.Fill("Heat the case to % to drop the bearing in; from the freezer at % it drops into the case cold.", heat, freezer)
}

func heatAndFreeze(heat, cold, freezer string) string {
	return bench.Fill("Heat the case to % to drop the bearing in; to % with it from the freezer at %.", heat, cold, freezer)
}

func leftHot(heat, left string) string {
	return bench.Fill("Hot, at %, % of that interference is left.", heat, left)
}

func looseAt(heat string) string {
	return bench.Fill("The race comes loose at %, case and race alike.", heat)
}

func playLeft(left, own string) string {
	return bench.Fill("% of the bearing’s own % of play is left once fitted.", left, own)
}

func noPlayLeft(taken, own string) string {
	return bench.Fill("No play left: the fits take % and the bearing has %. Take one with more play.", taken, own)
}

func floatFold(least, most string) string { return bench.Fill("% to %", least, most) }

func shimsEach(drive, timing string) string {
	return bench.Fill("Shims: drive side %, timing side %.", drive, timing)
}

func shimsInAll(want, least, most string) string {
	return bench.Fill("Shims of % in all would do: from % to %.", want, least, most)
}

func tooWide(by string) string {
	return bench.Fill("No shim helps: the crank with its washers is too wide by at least %.", by)
}

const bindsCold = "No shim helps: what is right hot binds cold."

// The order of work.
const (
	allDone = "All done."
)

func doneOf(done, of string) string { return bench.Fill("% of % done", done, of) }

func nextIs(task string) string { return bench.Fill("Next: %.", task) }

func leftOut(task string) string { return bench.Fill("Left out: %.", task) }

const (
	rightWord     = "right"
	tooCloseWords = "too close to call"
)

func sizeSaid(mean, taper, oval string) string {
	return bench.Fill("%%%.", mean, taper, oval)
}

func andTaper(by string) string { return bench.Fill(", taper %", by) }

func andOval(by string) string { return bench.Fill(", oval %", by) }

func interferenceOf(joint string) string { return bench.Fill("%, interference", joint) }

func holdsAndPushes(torque, in, out string) string {
	return bench.Fill("Holds %. Press it in with %; it comes out at %.", torque, in, out)
}

func holdsBarely(torque, in string) string {
	return bench.Fill("Holds %. Press it in with %; it comes out by itself.", torque, in)
}

func stressOfSteel(pressure, hoop, mises, yield string) string {
	return bench.Fill("Pressure %; at the eye’s bore % of hoop tension, % by von Mises against % yield.", pressure, hoop, mises, yield)
}

func stressOfIron(pressure, hoop, strength string) string {
	return bench.Fill("Pressure %; at the eye’s bore % of hoop tension. Cast iron doesn’t yield, it cracks: judged against its tensile strength, %.", pressure, hoop, strength)
}

func pinYields(mises, yield string) string {
	return bench.Fill("The pin yields, with % by von Mises against %: the figures are those of parts that stay elastic, so more than this joint has.", mises, yield)
}

func eyeYieldsAt(draw string) string {
	return bench.Fill("The eye begins to yield at a draw of %.", draw)
}

func eyeCracksAt(draw string) string {
	return bench.Fill("The eye cracks, or the pin yields, at a draw of %.", draw)
}

func mustHoldTimes(torque, times string) string {
	return bench.Fill("It must hold %: % times over.", torque, times)
}

func mustHoldOnly(torque, part string) string {
	return bench.Fill("It must hold %: it holds only % of that.", torque, part)
}

func partOf(low, high string) string { return bench.Fill("for this hole a part of % to %", low, high) }

func holeOf(low, high string) string { return bench.Fill("for this part a hole of % to %", low, high) }

func toGrind(ways []string) string { return bench.Fill("To grind: %.", strings.Join(ways, ", or ")) }

func growsMore(cold, by, running, hot string) string {
	return bench.Fill("Without shims % cold; the case grows % more than the crank by %, which leaves % hot.", cold, by, running, hot)
}

func growsLess(cold, by, running, hot string) string {
	return bench.Fill("Without shims % cold; the case grows % less than the crank by %, which leaves % hot.", cold, by, running, hot)
}

func rightButLoose(heat, by string) string {
	return bench.Fill("The housing is right for its class, but hot, at %, the race is loose by %.", heat, by)
}

func looseHot(heat, by string) string {
	return bench.Fill("Hot, at %, the race is loose by %.", heat, by)
}

// faultWords say what can't be: what was given, and the most and the least that would
// do.
func faultWords(kind fit.Kind, given, most, least string) string {
	return bench.Fill([...]string{
		fit.OutOfRange:     "% is out of reach here: no more than %, no less than %, will do",
		fit.TooBigForHole:  "% doesn’t go into %, and clearance is meant: measure both again, or look whether two were exchanged",
		fit.NoInterference: "no interference: a press needs the pin bigger than its eye, but this one’s interference is %",
		fit.TooBigForEye:   "the pin is % bigger than its eye, and up to % can be pressed: measure both again",
		fit.NoWall:         "% leaves no wall beside %",
		fit.NeverLoose:     "% comes loose at no heat",
		fit.Astray:         "% is far from the other readings: was a figure left out? From % down to % would go with them",
		fit.TooNarrow:      "% over the wheels is no more than wheels, rod and washers take, %: measure them again",
		fit.RollersTooBig:  "with a roller on each side it is %, which doesn’t go into the rod’s eye of %: measure all three again",
		fit.NoRoom:         "% over the crank doesn’t go between faces % apart: measure both again",
	}[kind], given, most, least)
}

// classFault says why a class can't be taken: the class, the size, and the grades that
// there are.
func classFault(problem limits.Problem, class, size, fromGrade, toGrade string) string {
	return bench.Fill([...]string{
		limits.NotAClass:       "“%” is not a class: write k5 for a seat, N7 for a housing",
		limits.UnknownLetter:   "% is not a class for this: a seat takes f g h js j k m n p r s, a housing F G H JS J K M N P R",
		limits.GradeNotCovered: "% has a grade that is not covered: grades 5 to 8 are",
		limits.NotASize:        "% needs a size",
		limits.SizeNotCovered:  "% at %: sizes from 3 to 180 mm are covered",
		limits.NotDefined:      "the standard has no % at %: it gives these letters grades % to % there",
	}[problem], class, size, fromGrade, toGrade)
}
