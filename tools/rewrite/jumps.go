package rewrite

import "slices"

// straight has jumps forward leave the block that ends where they go. Go writes a
// function as a loop around nested blocks with a table of branches at their core,
// one block ending where each part begins, and every jump sets the number of its
// part and begins the loop again. The table alone reads that number.
func straight(all []instruction) []instruction {
	at := slices.IndexFunc(all, func(i instruction) bool { return i.op == opBrTable })
	if at < 1 || !partIsReadAt(all, at-1) {
		return all
	}
	loop := loopOf(all[:at-1])
	jump := []instruction{some(opI32Const), plain(opLocalSet, localPart), plain(opBr, loop)}
	open := map[int]bool{}
	var labels []int
	return replaced(all, func(rest []instruction) ([]instruction, int) {
		switch i := rest[0]; i.op {
		case opBlock, opLoop, opIf:
			labels = append(labels, i.n)
			open[i.n] = true
		case opEnd:
			if last := len(labels) - 1; last >= 0 {
				delete(open, labels[last])
				labels = labels[:last]
			}
		case opI32Const:
			to := all[at].table[max(0, min(i.n, len(all[at].table)-1))]
			if startsWith(rest, jump) && i.n >= 0 && open[to] {
				return []instruction{plain(opBr, to)}, len(jump)
			}
		}
		return nil, 0
	})
}

// partIsReadAt says whether the number of the part is read at one place alone, but
// where a call has put its function there right before.
func partIsReadAt(all []instruction, at int) bool {
	get, put := plain(opLocalGet, localPart), plain(opLocalSet, localPart)
	for n, i := range all {
		if like(i, plain(opLocalTee, localPart)) {
			return false
		}
		if like(i, get) && n != at && !(n > 1 && startsWith(all[n-2:], []instruction{put, some(opI32Const)})) {
			return false
		}
	}
	return like(all[at], get)
}

// loopOf returns the label of the loop whose first instructions are the blocks that
// these instructions end with, or -1.
func loopOf(all []instruction) int {
	for n := len(all) - 1; n >= 0; n-- {
		switch all[n].op {
		case opLoop:
			return all[n].n
		case opBlock:
		default:
			return -1
		}
	}
	return -1
}

// ifs writes "if, branch, end" as a branch if.
func ifs(all []instruction) []instruction {
	pattern := []instruction{some(opIf), some(opBr), plain(opEnd)}
	return replaced(all, func(rest []instruction) ([]instruction, int) {
		if !startsWith(rest, pattern) || rest[1].n == rest[0].n {
			return nil, 0
		}
		return []instruction{plain(opBrIf, rest[1].n)}, len(pattern)
	})
}

// loops leaves out loops that nothing begins again.
func loops(all []instruction) []instruction {
	for n := 0; n < len(all); n++ {
		if i := all[n]; i.op == opLoop && i.m == noResult && !slices.ContainsFunc(all, i.isLeftBy) {
			all = without(all, n, endOf(all, n))
		}
	}
	return all
}

// isLeftBy says whether a branch goes to a block's or a loop's label.
func (i instruction) isLeftBy(branch instruction) bool {
	return (branch.op == opBr || branch.op == opBrIf) && branch.n == i.n ||
		branch.op == opBrTable && slices.Contains(branch.table, i.n)
}

// unwound has a function return where Go branches to its end in order to, which
// is at another depth from part to part.
func unwound(all []instruction) []instruction {
	end := []instruction{plain(opUnreachable), plain(opEnd), plain(opI32Const, 1), plain(opEnd)}
	first := slices.IndexFunc(all, func(i instruction) bool { return i.op == opBlock })
	last := len(all) - len(end) + 1 // where the block ends
	if first < 0 || last < 1 || !startsWith(all[last-1:], end) || endOf(all, first) != last {
		return all
	}
	block := all[first]
	branch := plain(opBrIf, block.n)
	if slices.ContainsFunc(all, func(i instruction) bool { return block.isLeftBy(i) && !like(i, branch) }) {
		return all
	}
	return replaced(without(all, first, last, last+1), func(rest []instruction) ([]instruction, int) {
		if !like(rest[0], branch) {
			return nil, 0
		}
		return []instruction{plain(opIf, unlabelled, noResult), plain(opI32Const, 1), plain(opReturn), plain(opEnd)}, 1
	})
}

// unlabelled is the label of blocks that no branch leaves.
const unlabelled = -1

// without leaves out the instructions at places.
func without(all []instruction, places ...int) []instruction {
	out := make([]instruction, 0, len(all))
	for n, i := range all {
		if !slices.Contains(places, n) {
			out = append(out, i)
		}
	}
	return out
}

// endOf returns where the block ends that begins at a place.
func endOf(all []instruction, at int) int {
	for n, depth := at, 0; ; n++ {
		switch all[n].op {
		case opBlock, opLoop, opIf:
			depth++
		case opEnd:
			if depth--; depth == 0 {
				return n
			}
		}
	}
}
