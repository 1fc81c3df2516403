package balance

import (
	"strings"

	"pintwelve/core/balance"
	"pintwelve/core/bench"
	"pintwelve/core/form"
)

// The words of the step: each sentence stands here once, one with figures as a
// function whose parameters name them, so that another language is another such
// file. Which is said, and when, is the business of the files that say it.

// What is asked for.
const (
	weighThePiston   = "Weigh the piston, and what goes up and down with it."
	weighTheSmallEnd = "Weigh the rod’s small end, the rod held level."
	weighTheBigEnd   = "Weigh the rod’s big end, the rod held level."
	weighTheGudgeon  = "Weigh the gudgeon pin; 0 where it lay on the scale with the piston."
	weighTheCrankpin = "Weigh the crankpin: a wheel alone carries half of it."
	whichStated      = "What is the maker’s factor, or the one it is known to have?"
	whichTarget      = "To which factor? The maker’s figure counts."
	whichOpposite    = "It settles: which weight, laid straight opposite, leaves it indifferent?"
	settlesWhere     = "At which hour does it settle lowest?"
	laidHowFar       = "How far from the shaft was that weight laid?"
	oldNotWeighed    = "the new one is weighed and the old one isn’t: what counts is how they differ"
)

func whichFactor(one, other string) string {
	return bench.Fill("Is the factor %, or %? Nothing is taken off before that is said.", one, other)
}

func whatHangs(w balance.Weighing) string {
	return bench.Fill("Now the knife-edges: what hangs % when the crank rests anywhere?", hangs(w))
}

func hangs(w balance.Weighing) string {
	if w.Rods {
		return "at the small end"
	}
	return "at the pin"
}

// The parts.

var partWords = map[form.ID]string{
	form.PartPiston: "piston", form.PartRings: "rings", form.PartGudgeon: "gudgeon pin", form.PartClips: "clips", form.PartSmall: "small end",
	form.PartBig: "big end", form.PartRod: "whole rod", form.PartBearing: "bearing", form.PartCrankpin: "crankpin",
}

// Which of the small parts are blank.
const (
	ringsAndClipsBlank = " Rings and clips are blank: taken as weighed with the piston."
	ringsBlank         = " The rings are blank: taken as weighed with the piston."
	clipsBlank         = " The clips are blank: taken as weighed with the piston."
)

func whatGoes(upAndDown, round, blank string) string {
	return bench.Fill("Reciprocating %, rotating %.%", upAndDown, round, blank)
}

func asItWillRun(upAndDown, round string) string {
	return bench.Fill("As it will run: reciprocating %, rotating %.", upAndDown, round)
}

func cylinderName(nth string) string { return bench.Fill("Cylinder %", nth) }

func rodAgrees(off, allowed string) string {
	return bench.Fill("Rod: the ends come to the whole within %; the scale’s step allows %.", off, allowed)
}

func rodLight(off, allowed string) string {
	return bench.Fill("Rod: the ends are % lighter than the whole, and the scale’s step allows %. An end was not held level, or something touched it.", off, allowed)
}

func rodDoubted(lighter, moves string) string {
	return bench.Fill("The rod’s ends come to % less than the whole rod: weigh them again.%", lighter, moves)
}

func halfAtSmallEnd(moves string) string {
	return bench.Fill(" Half of it at the small end moves the factor by %.", moves)
}

func rodHeavy(ends, whole string) string {
	return bench.Fill("the rod’s ends come to %, more than the whole rod, %: an end was not held level, or something touched it", ends, whole)
}

func rodShort(rod, throw, least string) string {
	return bench.Fill("a rod of % is too short for a throw of %: % or more will do", rod, throw, least)
}

// On the knife-edges.
const (
	pinTwice = "the crankpin can’t be in both wheels: it would count twice"
	noCrank  = "these figures make no crank: look at the weights and at what was on the knife-edges"
)

func asFound(factor string) string { return bench.Fill("Balance factor % as found.", factor) }

func asItStands(factor string) string { return bench.Fill("Balance factor % as drilled.", factor) }

func notWeighed(factor string) string { return bench.Fill("% (not weighed)", factor) }

func byOneWheel(factor, wheel string) string {
	return bench.Fill("% (by the % wheel, taken for both)", factor, wheel)
}

func otherAlike(wheel string) string {
	return bench.Fill(" The % wheel is taken as like it, and done alike: weigh that too.", wheel)
}

func heavyToSide(hour, gmm, plus string) string {
	return bench.Fill("To one side it is heavy at % by % ± % g·mm.", hour, gmm, plus)
}

func wheelAlone(wheel, factor, carries string) string {
	return bench.Fill("The % wheel alone: as for %, were both like it; it carries %.", wheel, factor, carries)
}

func noSuchFactor(factor, most string) string {
	return bench.Fill("that makes a factor of %, which no crank has: look at this weight, at what was on, and at the weights of the parts; up to % will do", factor, most)
}

func cantAimAt(factor, most string) string {
	return bench.Fill("the factor it has is %, which can’t be aimed at: give one, up to %", factor, most)
}

const theCrank = "crank"

func theWheel(side string) string { return side + " wheel" }

// What comes off.
const (
	nearAsAsked = "Leave it: that is as near as you asked."
	holesWeaken = "Holes near the crankpin’s boss or the rim weaken the wheel. Eye protection; the wheel clamped; the pin and bearing covered from swarf."
)

func takeOffEach(weight, hour, out, face string) string {
	return bench.Fill("Take % off each wheel at %, % mm out%.", weight, hour, out, face)
}

func takeOffWheel(weight, wheel, hour, out, face string) string {
	return bench.Fill("Take % off the % wheel at %, % mm out%.", weight, wheel, hour, out, face)
}

func leaveWheel(wheel string) string { return bench.Fill("Leave the % wheel.", wheel) }

func orders(all []string) string { return strings.Join(all, " ") }

func onOuterFace(wheel, hour string) string {
	return bench.Fill(", on the % wheel’s own outer face at %", wheel, hour)
}

func inAll(gmm, plus, hour string) string {
	return bench.Fill("In all % ± % g·mm at %.", gmm, plus, hour)
}

func thenHas(factor string) string   { return bench.Fill("It then has %.", factor) }
func toHave(factor string) string    { return bench.Fill("To have: %.", factor) }
func thatKeeps(factor string) string { return bench.Fill("That keeps % with the new parts.", factor) }

func toProve(all []string) string { return bench.Fill("To prove it: %.", strings.Join(all, "; ")) }

func hung(weight string, w balance.Weighing, what string) string {
	return bench.Fill("% hung % leaves the % indifferent", weight, hangs(w), what)
}

func laidOpposite(weight, what string) string {
	return bench.Fill("% laid straight opposite the pin, as far out, leaves the % indifferent", weight, what)
}

// The holes of the job.
const (
	bothWheels   = "each wheel"
	rightThrough = "right through"
	overAnEdge   = "it stands over an edge or a slope of the wheel, where what it takes isn’t known: half the drill off that will do"
)

func unevenZone(least, most string) string {
	return bench.Fill("In the zone the wheels are from % to % thick: planned for the least.", least, most)
}

func finishCut(nth string) string {
	return bench.Fill("Finish cut % under Lighten, or take it out: it isn’t counted here while it lacks a figure.", nth)
}

func zoneOutside(zone, wheel string) string {
	return bench.Fill("% is outside the wheel, whose radius is %", zone, wheel)
}

func holeOutside(wheel string) string {
	return bench.Fill("the hole runs out of the wheel, whose radius is %", wheel)
}

func holeTooDeep(reach, wheel, most string) string {
	return bench.Fill("with its point it is % deep and the wheel % thick: choose right through, or % at most", reach, wheel, most)
}

func holeLine(nth, where, drill, radius, hour, degrees, face, deep, takes string) string {
	return bench.Fill("%. %: % drill, % from the shaft at % (%)%, %, %", nth, where, drill, radius, hour, degrees, face, deep, takes)
}

func bothNumbers(one, other string) string { return bench.Fill("% and %", one, other) }

func bothByName(one, other string) string { return bench.Fill("% and % wheel", one, other) }

func wheelsUnlike(one, thick, other, thickToo string) string {
	return bench.Fill("there the % wheel is % thick and the % wheel %: write a hole right through once for each", one, thick, other, thickToo)
}

func toShoulder(deep string) string { return bench.Fill("% deep to the shoulder", deep) }

func takes(weight string) string { return bench.Fill("takes %", weight) }

func plugTakes(plug, weight string) string { return bench.Fill("plug of %, takes %", plug, weight) }

func plugAdds(plug, weight string) string { return bench.Fill("plug of %, adds %", plug, weight) }

// What they keep off.
const (
	keptBoss      = "the crankpin’s boss"
	keptPin       = "the crankpin"
	keptBore      = "the shaft’s bore"
	keptLightened = "a hole drawn under Lighten"
	keptRim       = "the rim’s edge"
	lacksRadius   = "how far from the shaft"
	lacksHour     = "its hour"
	lacksAcross   = "how far across"
)

func keptPlace(nth string) string { return bench.Fill("place % to keep off", nth) }

func keptHole(nth string) string { return bench.Fill("hole %", nth) }

func stillToGive(lacks []string) string {
	return bench.Fill("Still to give: %.", strings.Join(lacks, ", "))
}

func finishPlace(nth string, lacks []string) string {
	return bench.Fill("Finish place % to keep off, or take it out: %.", nth, strings.Join(lacks, ", "))
}

func holeRunsInto(what, further string) string {
	return bench.Fill("the hole runs into %: % further off will do", what, further)
}

func runsIntoAssumed(what, across string) string {
	return bench.Fill("It runs into %, assumed % across: measure that.", what, across)
}

func onlyLeft(left, what, asked string) string {
	return bench.Fill("Only % is left to %; % is asked.", left, what, asked)
}

// What the holes make of it.
const noSideLeft = "no side imbalance left"

func withTheHoles(factor, side string) string {
	return bench.Fill("With the holes drawn: %, %.", factor, side)
}

func factorNew(factor string) string { return bench.Fill("% with the new parts", factor) }

func factorDrawn(factor string) string { return bench.Fill("% with the holes drawn", factor) }

func sideLeft(gmm, hour string) string { return bench.Fill("% g·mm heavy at % left", gmm, hour) }

func planAgain(factor string) string {
	return bench.Fill("The holes drawn don’t make what is aimed at, %: plan them again.", factor)
}

func rocks(gmm string) string {
	return bench.Fill("One wheel loses % g·mm more than the other: that rocks the crank from end to end.", gmm)
}

// Planning them.
const (
	nothingWanted = "No hole is wanted: it is as near as asked."
	plannedNow    = "Planned."
	easeSeveral   = "No one limit alone is in the way: ease several, or use plugs."
	noKeepOuts    = "nothing to keep off"
	noDrillSet    = "that makes no set of drills, or more than a hundred: give the smallest, the largest, and the step between"
	manyKeepOuts  = "there are more than a hundred places to keep off"
	noPlan        = "these figures make no drilling plan: look at the zone, the drills and the wheel’s thickness"
)

func wheelCant(wheel, why string) string { return bench.Fill("% wheel: %.", wheel, why) }

func outOfReach(wheel, comes, of, ways string) string {
	return bench.Fill("Out of reach on the % wheel: % of % g·mm comes off. %", wheel, comes, of, ways)
}

func anyWouldFree(ways []string) string {
	return bench.Fill("Any of these would free it: %.", strings.Join(ways, "; "))
}

func holesOf(n int) string { return bench.Counted(n, "hole", "holes") }

func besideThese(holes string) string {
	return bench.Fill("drill this, and % more beside it", holes)
}

func biggerDrill(drill string) string    { return bench.Fill("a % drill", drill) }
func deeperHoles(deep string) string     { return bench.Fill("holes % deep", deep) }
func widerZone(angle string) string      { return bench.Fill("a zone of % either way", angle) }
func thinnerWall(wall string) string     { return bench.Fill("a wall of %", wall) }
func factorWithin(percent string) string { return bench.Fill("a factor within %", percent) }

func noDrillFits(room, smallest string) string {
	return bench.Fill("no drill fits between the radii with the wall and the keep-outs: there is room for %, and the smallest drill is %", room, smallest)
}

func notOutside(outer, inner string) string {
	return bench.Fill("% is not outside the inner radius, %", outer, inner)
}

func zoneAway(away, goes string) string {
	return bench.Fill("the zone is % away from where metal must come off, and goes % either way", away, goes)
}

func noDepthLeft(takes, all string) string {
	return bench.Fill("no hole has a depth left: the point and the wall take %, and % is all there is", takes, all)
}

func deeperThanWheel(deep, most string) string {
	return bench.Fill("% is deeper than the wheel is thick: up to % will do", deep, most)
}

func plugsAlike(density, least string) string {
	return bench.Fill("plugs of % are hardly heavier or lighter than the wheel: % or more will do", density, least)
}

func stepTooFine(step, least string) string {
	return bench.Fill("% is too fine for this wheel: % or more will do", step, least)
}

// Weighed after drilling, and by a grade.

func noHoleThere(wheel string) string {
	return bench.Fill("no hole is planned in the % wheel", wheel)
}

func muchMoreOff(plan string) string {
	return bench.Fill("the plan takes off %: this is more than twice that", plan)
}

func asPlanned(wheel, off, plus string) string {
	return bench.Fill("% wheel: as planned, within %; the scale can’t tell better than %.", wheel, off, plus)
}

func offThePlan(wheel, off, plus, left, hour string) string {
	return bench.Fill("% wheel: % off the plan, more than the scale’s step makes of it (%). Still to come off: % g·mm at %.", wheel, off, plus, left, hour)
}

func gradePermits(grade, rpm, gmm string) string {
	return bench.Fill("G % at % rpm permits % g·mm for this crank, the part that goes up and down aside.", grade, rpm, gmm)
}

func edgesFine(gmm, grade string) string {
	return bench.Fill("The knife-edges show % g·mm, as for G %: fine enough.", gmm, grade)
}

func edgesCoarse(gmm, grade string) string {
	return bench.Fill("The knife-edges show % g·mm at best, as for G %: not fine enough to prove it.", gmm, grade)
}

// The force on the frame.

func force(greatest, upright, level string) string {
	return bench.Fill("%: % upright, % level", greatest, upright, level)
}

func drawnAt(rpm, more string) string {
	return bench.Fill("Drawn at % rpm; at another speed it is the same shape, as the square of the speed.%", rpm, more)
}

const sideNotCounted = " What it is heavy by to one side shakes it too, as found, and isn’t counted here."

// What holds in the folds.
const ownOuterFace = "from its own outer face"

func moreCylinders(n string) string { return n + " more" }

func partWeighs(part form.ID, weight string) string { return partWords[part] + " " + weight }

func listed(all []string) string { return strings.Join(all, ", ") }

func settlesAt(hour, weight string) string { return bench.Fill("at %, % opposite", hour, weight) }

func speedDrawn(rpm string) string { return bench.Fill("at % rpm", rpm) }

func zoneHolds(from, to, thick, wall string) string {
	return bench.Fill("% to %, % thick, wall %", from, to, thick, wall)
}

func nearEnough(within, grade string) string { return bench.Fill("within %, G %", within, grade) }
