package crank

import "pintwelve/core/clock"

// Since is what the user says came between the round of readings before and this
// one, where no move is logged there.
type Since uint8

// The answers. Unsaid rounds count as one as long as they agree; rounds with
// nothing done between them count as one too, and where these differ, the dials
// do: the later stands. After what wasn't logged a new round begins, and it
// teaches nothing.
const (
	Unsaid  Since = iota
	Nothing       // read again, nothing done
	Changed       // something that isn't logged: nuts drawn up, something else
)

// What names a thing to ask.
type What uint8

// What may be asked.
const (
	AskSince     What = iota // what was done: the rounds differ and nothing is logged
	AskCentres               // are the centres good: a place close to each would tell
	AskPressure              // does backing the tailstock off to just snug move the needles
	AskReadAgain             // read again, nothing done
	AskWitness               // the quick test that tells causes apart: see Witness
)

// Ask is one thing to ask of the user, as it concerns a pass, by its index.
type Ask struct {
	What What
	Pass int
}

// Witness is the one quick test that tells the causes of moves gone the other way
// apart: the clock point Hour, seen from the left end, of the half Half is marked
// with chalk and turned under the plunger of the dial there. The dial as logged
// shows Shows from the middle of its swing; with its hours from the other end
// Mirrored, the two dials exchanged Exchanged [mm]. Where it shows Shows, the blows
// fell elsewhere: the wheel or the hour.
type Witness struct {
	Half                       clock.End
	Station                    int // whose dial
	Hour                       float64
	Shows, Mirrored, Exchanged float64
}
