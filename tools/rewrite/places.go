package rewrite

import "slices"

// places writes what Go adds to the stack's end, for a place in it, as the offset
// that each load and store has. No sum of them is beyond the memory's end.
func places(all []instruction) []instruction {
	added := []instruction{plain(opLocalGet, localSP), plain(opI64ExtendU), some(opI64Const), plain(opI64Add), plain(opI32WrapI64)}
	offsets := map[int]int{}
	var gone []int
	for n := range all {
		if !startsWith(all[n:], added) || all[n+2].n < 0 {
			continue
		}
		if user := userOf(all, n+len(added)); user >= 0 {
			gone = append(gone, n+1, n+2, n+3, n+4)
			offsets[user] = all[n+2].n
		}
	}
	if len(gone) == 0 {
		return all
	}
	all = slices.Clone(all)
	for n, offset := range offsets {
		all[n].m += offset
	}
	out := make([]instruction, 0, len(all))
	for n, i := range all {
		if len(gone) > 0 && gone[0] == n {
			gone = gone[1:]
			continue
		}
		out = append(out, i)
	}
	return out
}

// userOf returns the load or store that takes, as its place, the value that
// stands on top before the instruction at; -1 if none does, or if something between
// them does more than work out a value.
func userOf(all []instruction, at int) int {
	for n, depth := at, 1; n < len(all); n++ {
		takes, gives := effect(all[n])
		if takes < 0 {
			return -1
		}
		if takes >= depth {
			if takes == depth && all[n].op >= opFirstLoad && all[n].op <= opLastStore {
				return n
			}
			return -1
		}
		depth += gives - takes
	}
	return -1
}

// effect returns how many values an instruction takes and gives; takes is -1 for
// one that doesn't only work out values, or stores.
func effect(i instruction) (takes, gives int) {
	switch op := i.op; {
	case op == opLocalGet || op == opGlobalGet || op >= opI32Const && op <= opF64Const:
		return 0, 1
	case op >= opFirstStore && op <= opLastStore:
		return 2, 0
	case op >= opFirstLoad && op < opFirstStore, op == opLocalTee && i.n != localSP:
		return 1, 1
	case op == opSelect:
		return 3, 1
	case op < opI32Eqz:
		return -1, 0
	case op == opI32Eqz || op == opI64Eqz, // and those of one number (5.4.7)
		op >= 0x67 && op <= 0x69, op >= 0x79 && op <= 0x7b, op >= 0x8b && op <= 0x91, op >= 0x99 && op <= 0x9f,
		op >= opI32WrapI64 && op <= opLastNumeric, op == opPrefix && len(i.rest) == 1:
		return 1, 1
	case op <= opLastNumeric:
		return 2, 1
	}
	return -1, 0
}

// returns writes the two sums by which a function gives back its place in the
// stack as one, and leaves the copy of the stack's end, which nobody reads then.
func returns(all []instruction) []instruction {
	back := []instruction{plain(opLocalGet, localSP), some(opI32Const), plain(opI32Add), plain(opLocalTee, localSP), plain(opGlobalSet, globalSP)}
	end := []instruction{some(opI32Const), plain(opReturn)}
	once, twice := slices.Concat(back, end), slices.Concat(back, back, end)
	return replaced(all, func(rest []instruction) ([]instruction, int) {
		size, of := 0, 0
		switch {
		case startsWith(rest, twice):
			size, of = rest[1].n+rest[len(back)+1].n, len(twice)
		case startsWith(rest, once):
			size, of = rest[1].n, len(once)
		default:
			return nil, 0
		}
		return append([]instruction{plain(opLocalGet, localSP), plain(opI32Const, size), plain(opI32Add), plain(opGlobalSet, globalSP)},
			rest[of-len(end):of]...), of
	})
}

// truths leaves out where a yes or no is made a wide number to be asked about or
// made narrow again, and what isn't not.
func truths(all []instruction) []instruction {
	wideZero := []instruction{plain(opI64ExtendU), plain(opI64Eqz)}
	wideNarrow := []instruction{plain(opI64ExtendU), plain(opI32WrapI64)}
	all = replaced(all, func(rest []instruction) ([]instruction, int) {
		switch {
		case startsWith(rest, wideZero):
			return []instruction{plain(opI32Eqz)}, len(wideZero)
		case startsWith(rest, wideNarrow):
			return nil, len(wideNarrow)
		}
		return nil, 0
	})
	notNot := []instruction{plain(opI32Eqz), plain(opI32Eqz)}
	return replaced(all, func(rest []instruction) ([]instruction, int) {
		if startsWith(rest, notNot) && len(rest) > 2 && (rest[2].op == opIf || rest[2].op == opBrIf) {
			return nil, len(notNot)
		}
		return nil, 0
	})
}
