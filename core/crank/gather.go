package crank

// pooling is which rounds are taken together, and why no others.
type pooling struct {
	first  int // index of the first of its passes, and of the last
	last   int
	began  int // the pass that it was begun with; another may stand in the place of that
	rounds int
	// unlogged tells that something must have come between the readings before and
	// this one, though no move is logged; said, that the user says so.
	unlogged, said bool
	discrepancy    Figure // of a needle, mm: from a round before it with nothing done between
}

func alone(i int) pooling { return pooling{first: i, last: i, began: i, rounds: 1} }

// coming is what becomes of a round before which no move is logged.
type coming uint8

const (
	another  coming = iota // it is one of its own
	joining                // it is taken together with the one before
	standing               // it stands in the place of that
)

// follows says what becomes of the i-th round, of what the user says came before it, which
// differs from those pooled here or doesn't, by so much.
func (was *pooling) follows(i int, since Since, differ bool, by Figure) (pooling, coming) {
	next := alone(i)
	switch {
	case since == Changed:
		next.unlogged, next.said = true, true
	case !differ:
		return next, joining
	case since == Nothing:
		next.first, next.began, next.unlogged, next.said, next.discrepancy = was.first, was.began, was.unlogged, was.said, by
		return next, standing
	default:
		next.unlogged = true
	}
	return next, another
}

// gathering are passes that are being taken together, of a crank of one throw or of several:
// rounds with no move logged between them are one where they agree (MODEL §7).
type gathering interface {
	latest() (round *pooling, worked bool) // the round so far; nil before the first
	since(pass int) Since
	differs(pass int) (differ bool, by Figure) // from the latest round
	begin(pass int, with pooling)
	join(pass int)
	stand(pass int, with pooling) // in the place of the latest round
}

// gather goes on with the passes from one up to so many.
func gather(g gathering, from, passes int) {
	for i := from; i < passes; i++ {
		was, worked := g.latest()
		if was == nil || worked {
			g.begin(i, alone(i))
			continue
		}
		differ, by := g.differs(i)
		switch next, comes := was.follows(i, g.since(i), differ, by); comes {
		case another:
			g.begin(i, next)
		case joining:
			g.join(i)
			was.last = i
		case standing:
			g.stand(i, next)
		}
	}
}

// settled is how many rounds stay as they are where so many of the passes are alike: all
// before the last that was begun within these, and the pass which that was begun with.
func settled(rounds, alike int, began func(round int) int) (stay, from int) {
	for stay+1 < rounds && began(stay+1) < alike {
		stay++
	}
	if stay == 0 {
		return 0, 0
	}
	return stay, began(stay)
}
