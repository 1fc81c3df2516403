package lighten

import (
	"strings"

	"pintwelve/core/bench"
	"pintwelve/core/wheel"
)

// The words of the step: each sentence stands here once, one with figures as a
// function whose parameters name them, so that another language is another such
// file. Which is said, and when, is the business of the files that say it. A wheel
// is named by eachWheel or theWheel.

const eachWheel = "each"

func theWheel(side string) string { return "the " + side }

func onThisWheel(side, fault string) string { return bench.Fill("on the % wheel %", side, fault) }

const (
	drivePicture  = "Drive wheel"
	timingPicture = "Timing wheel"
)

// The cuts.

func asMadeName(nth string) string { return bench.Fill("As made %", nth) }

func cutName(nth string) string { return bench.Fill("Cut %", nth) }

func swingName(nth string) string { return bench.Fill("Swing %", nth) }

// What a cut still lacks.
const (
	lacksRim    = "the new diameter"
	lacksHoles  = "the number of holes"
	lacksCircle = "the circle’s diameter"
	lacksDrill  = "the drill"
	lacksFrom   = "the inner diameter"
	lacksTo     = "the outer diameter"
	lacksDepth  = "the depth"
	lacksArm    = "how far the edge is from the middle of the shaft"
	lacksWeight = "the weight"
)

func stillToGive(lacks []string) string {
	return bench.Fill("Still to give: %.", strings.Join(lacks, ", "))
}

// What is wrong with a figure.
const (
	holesComeWhole  = "holes come whole: write 6, or 8"
	runsIntoBore    = "a hole runs into the bore"
	breaksOut       = "a hole breaks out of the rim"
	runIntoAnother  = "the holes run into one another"
	tapsUneven      = "the taps are too uneven to count the swings by: swing it again"
	swingCantGrow   = "the swing can’t grow: the last half-swing is no more than the first"
	tappedOneWay    = "Was the mark tapped one way only? Then say so above."
	tappedBothWays  = "Was the mark tapped both ways? Then say so above."
	lookAtTheTaps   = "Look at the taps and the arm."
	mendWrongFigure = "Mend the figure marked Wrong below."
)

func willDo(got, least, most string) string {
	return bench.Fill("% won’t do: % to % will", got, least, most)
}

func outsideWheel(got, least, most string) string {
	return bench.Fill("% lies outside the wheel: % to % will do", got, least, most)
}

func throughBore(got, least, most string) string {
	return bench.Fill("% goes through the bore: % to % will do", got, least, most)
}

func underInner(got, least, most string) string {
	return bench.Fill("% is less than the inner diameter: % to % will do", got, least, most)
}

func pinStands(got, least, most string) string {
	return bench.Fill("the crankpin stands % from the shaft: % to % will do", got, least, most)
}

func noMetalAt(diameter string) string {
	return bench.Fill("no metal is left between the faces at ⌀ %", diameter)
}

const theCrankpin = "the crankpin"

func placeKeptOff(nth string) string {
	return bench.Fill("place % to keep off under Balance", nth)
}

func holeInto(hour, what string) string {
	return bench.Fill("the hole at % runs into %: another first hour, or another circle", hour, what)
}

func alreadyOff(weight string) string {
	return bench.Fill("the cuts whose size is given already take off %", weight)
}

func weighsNoMore(weight string) string {
	return bench.Fill("the wheel weighs no more than %", weight)
}

func heavierAfter(after, before string) string {
	return bench.Fill("% is more than the % it weighed before: weigh both again", after, before)
}

func noSuchPeriod(got, least, most, guess string) string {
	return bench.Fill("% s a swing can’t be, with this arm in a wheel of this size: % to % s can. %", got, least, most, guess)
}

func tapNotLater(nth string) string {
	return bench.Fill("tap % is not later than the one before it", nth)
}

func fewPasses(got, least string) string {
	return bench.Fill("% different passes are too few: % at least", got, least)
}

// What comes off.
const (
	canBurst    = "A lightened wheel can burst. These figures are no certificate."
	putACutIn   = "Put a cut in below to see what it takes off."
	assumedHere = "Figures in italics are assumed: measure the wheel and type over them."
)

func byTheScale(drive, timing string) string {
	return bench.Fill("Drive wheel %, timing wheel %, by the scale where it was weighed.", drive, timing)
}

func eachWeighs(weight string) string { return bench.Fill("Each wheel weighs %, as drawn.", weight) }

func asDrawn(drive, timing string) string {
	return bench.Fill("As drawn: drive wheel %, timing wheel %.", drive, timing)
}

func offEach(weight string) string { return bench.Fill("% off each wheel", weight) }

func offBoth(drive, timing string) string {
	return bench.Fill("% off the drive wheel, % off the timing wheel", drive, timing)
}

func inertiaOff(part string) string { return bench.Fill("% of the inertia off", part) }

func inAll(weight, part string) string {
	return bench.Fill("In all % and % of the inertia off both wheels.", weight, part)
}

func inertiaOffDrawn(part string) string {
	return bench.Fill("The cuts as drawn take % of the inertia off.", part)
}

func inAllDrawn(weight, part string) string {
	return bench.Fill("In all % off both wheels; the cuts as drawn take % of the inertia off.", weight, part)
}

func bossFold(boss, density string) string { return bench.Fill("boss %, %", boss, density) }

func wallsFold(web, rimDepth, rimWidth, hole string) string {
	return bench.Fill("web %, rim % and %, holes %", web, rimDepth, rimWidth, hole)
}

func fromTo(before, after string) string { return bench.Fill("% → %", before, after) }

func moreWished(weight, wheel string) string {
	return bench.Fill("% more is wished off % wheel", weight, wheel)
}

func lessWished(weight, wheel string) string {
	return bench.Fill("% less is wished off % wheel", weight, wheel)
}

func leaveOneBlank(wishes []string) string {
	return bench.Fill("%: leave one figure of a cut blank, and it is found.", strings.Join(wishes, ", "))
}

func found(nth, size, more, wheel string) string {
	return bench.Fill("Cut %: %% on % wheel.", nth, size, more, wheel)
}

func sentences(all []string) string { return strings.Join(all, " ") }

func holesOf(n int) string { return bench.Counted(n, "hole", "holes") }

func deep(depth string) string { return bench.Fill("% deep", depth) }

func downTo(diameter string) string { return bench.Fill("down to ⌀ %", diameter) }

func drilled(drill string) string { return bench.Fill("drill %", drill) }

func moreThanCut(more, cut string) string {
	return bench.Fill(", % more where % is cut already,", more, cut)
}

func cutTakes(weight, inertia, wheel string) string {
	return bench.Fill("% and % of the inertia off % wheel", weight, inertia, wheel)
}

func foundTakes(size, takes string) string { return bench.Fill("%: %", size, takes) }

func withOverlap(takes, over string) string {
	return bench.Fill("%; % more is counted with the cuts before", takes, over)
}

func full(words string) string { return words + "." }

// Why a cut can't be found.
const noMetalLeft = "no metal would be left"

func wallUnder(wall wheel.WallKind, least string) string {
	return bench.Fill("% would be under %", wallNames[wall], least)
}

func cantSoLittle(nth, wanted, wheel, least string) string {
	return bench.Fill("Cut % can’t take off as little as % from % wheel: the least is %.", nth, wanted, wheel, least)
}

func cantAnything(nth, wheel, stop string) string {
	return bench.Fill("Cut % can take nothing off % wheel: %.", nth, wheel, stop)
}

func cantSoMuch(nth, wanted, wheel, most, size, stop string) string {
	return bench.Fill("Cut % can’t take % off % wheel. The most is %, %: beyond that %.", nth, wanted, wheel, most, size, stop)
}

// The walls left.
var wallNames = [wheel.HoleToBoss + 1]string{
	wheel.Web: "the web", wheel.RimDepth: "the rim’s depth", wheel.RimWidth: "the rim’s width", wheel.HoleFloor: "the floor under a hole",
	wheel.HoleToBore: "the metal from hole to bore", wheel.HoleToEdge: "the metal from hole to edge", wheel.HoleToHole: "the metal between holes",
	wheel.HoleToBoss: "the metal between hole and boss",
}

func tooThin(walls []string) string { return bench.Fill("Too thin: %.", strings.Join(walls, "; ")) }

func thinWall(wall wheel.WallKind, of, is, at, asked string) string {
	return bench.Fill("% of % wheel % at ⌀ %, % asked", wallNames[wall], of, is, at, asked)
}

func thinByPin(of, is, at, asked string) string {
	return bench.Fill("the metal from hole to crankpin of % wheel % at ⌀ %, % asked", of, is, at, asked)
}

// Whether it holds.
const giveTheSpeed = "Give the highest speed to see how hard the wheels are pulled."

func wouldBurst(speed, pull, strength string) string {
	return bench.Fill("It would burst: at % the pull is % and the material stands %.", speed, pull, strength)
}

func burstsAt(speed string) string { return bench.Fill("It would burst at %.", speed) }

func pulledAt(speed, pull, strength, times string) string {
	return bench.Fill("At % the pull is % at the most; the material tears at %, % times as much.", speed, pull, strength, times)
}

func holeRaises(times, near string) string {
	return bench.Fill("A hole raises the pull at its edge % times.%", times, near)
}

func pinRaises(times, near string) string {
	return bench.Fill("The hole for the crankpin raises the pull at its edge % times.%", times, near)
}

const nearHoles = " Holes nearer to one another, or to an edge, than they are wide are pulled harder than is counted."

// The weigh-in.
const (
	lookAtTheRecesses = " Look at the recesses, or the density."
	scaledNote        = "Weights by the scale and inertia by the swing where a wheel has them, else as drawn."
)

func drawingAgrees(drawn string) string {
	return bench.Fill("The drawing comes to %, as the scale says.", drawn)
}

func drawingOver(drawn, miss, part, advice string) string {
	return bench.Fill("The drawing comes to %, % over the scale (%).%", drawn, miss, part, advice)
}

func drawingUnder(drawn, miss, part, advice string) string {
	return bench.Fill("The drawing comes to %, % under the scale (%).%", drawn, miss, part, advice)
}

func offAsPlanned(off, plan string) string {
	return bench.Fill("Off: %, % planned: as planned, to the scale’s step.", off, plan)
}

func offTooMuch(off, plan, miss string) string {
	return bench.Fill("Off: %, % planned: % too much.", off, plan, miss)
}

func offStill(off, plan, miss string) string {
	return bench.Fill("Off: %, % planned: % still to come off.", off, plan, miss)
}

const weighAlike = "The wheels weigh alike, as far as the scale tells."

func weighsMore(wheel, weight string) string {
	return bench.Fill("The % wheel weighs % more. Wheels that are meant alike are matched before they are pressed: take that off it even all round.", wheel, weight)
}

func wholeIsParts(whole string) string {
	return bench.Fill("The crank weighed whole, %, is what its parts come to.", whole)
}

func wholeOverParts(whole, by, parts string) string {
	return bench.Fill("The crank weighed whole, %, is % more than its parts, %: was something on it that isn’t counted, or a part weighed wrong?", whole, by, parts)
}

func wholeUnderParts(whole, by, parts string) string {
	return bench.Fill("The crank weighed whole, %, is % less than its parts, %: was a part off it that is counted, or one weighed wrong?", whole, by, parts)
}

func weightDrawn(weight string) string { return bench.Fill("% as drawn", weight) }

func inertiaDrawn(inertia string) string { return bench.Fill("% kg·cm² as drawn", inertia) }

func inertiaSwung(inertia string) string {
	return bench.Fill("% kg·cm² as swung, the rest as drawn", inertia)
}

func takenAsSwung(wheel, swung string) string {
	return bench.Fill(" The % wheel is taken as like the % wheel: swing it too.", wheel, swung)
}

// What it does.
const (
	balanceStays = "The cuts are even all round: where the metal was too, the balance factor stays as it was."
	toTheBalance = "To the balance"
)

func placeTurnedOver(nth string) string {
	return bench.Fill("The cuts go over place % to keep off under Balance: of a hole there they take less than all round. Balance the crank after this.", nth)
}

func wheelsAlone(before, after, inertiaBefore, inertiaAfter string) string {
	return bench.Fill("Both wheels: % before, % after. Inertia % before, % after, in kg·cm².", before, after, inertiaBefore, inertiaAfter)
}

func wholeCrank(before, after, inertiaBefore, inertiaAfter string) string {
	return bench.Fill("The whole crank: % before, % after. Inertia % before, % after, in kg·cm².", before, after, inertiaBefore, inertiaAfter)
}

func wholeWeightOnly(before, after, inertiaBefore, inertiaAfter string) string {
	return bench.Fill("The whole crank: % before, % after. Inertia of the wheels alone % before, % after, in kg·cm².", before, after, inertiaBefore, inertiaAfter)
}

func wholeInertiaOnly(before, after, inertiaBefore, inertiaAfter string) string {
	return bench.Fill("Both wheels: % before, % after. Inertia of the whole crank % before, % after, in kg·cm².", before, after, inertiaBefore, inertiaAfter)
}

func picksUp(times string) string {
	return bench.Fill("Clutch out it picks up % times as fast.", times)
}

func swingsAsWide(times string) string {
	return bench.Fill("At the same idle its speed swings % times as wide.", times)
}

func wantsIdle(before, after string) string {
	return bench.Fill("To idle as steadily as at % before it wants %.", before, after)
}

func feltAs(gears []string) string {
	return bench.Fill("On the road the flywheels feel like this much weight, gear by gear: %.", strings.Join(gears, "; "))
}

func balanceMoves(weight string) string {
	return bench.Fill("The cuts are heavier on one side, as much as % at the crankpin: balance the crank after this.", weight)
}

// Swings.
const swungLess = "The crank’s swing comes to less than its wheels alone: look at its arm and weight."

func passesOf(n int) string { return bench.Counted(n, "pass", "passes") }

func passesSoFar(passes string) string {
	return bench.Fill("% so far; go on, 20 or more are better.", passes)
}

func period(seconds, swings, slips string) string {
	return bench.Fill("% there and back, over % swings. %", seconds, swings, slips)
}

func slipsAllowed(missed, doubled int) string {
	return bench.Fill("% missed, % too many: allowed for.", passesOf(missed), bench.Counted(doubled, "tap", "taps"))
}

func swungInertia(inertia, drawing string) string {
	return bench.Fill("Inertia % kg·cm².%", inertia, drawing)
}

func drawingOutside(drawn string) string {
	return bench.Fill(" The drawing’s % lies outside that: look at the recesses, the arm and the weight. The swing counts.", drawn)
}

func drawingInside(drawn string) string {
	return bench.Fill(" The drawing’s % agrees. The swing counts.", drawn)
}
