package rewrite

import "slices"

// anyNumbers in the place of an instruction's first number has a pattern match
// whatever its numbers are.
const anyNumbers = -1 << 62

// some is a pattern that each instruction of an opcode matches.
func some(op byte) instruction { return instruction{op: op, n: anyNumbers} }

func like(i, pattern instruction) bool {
	return i.op == pattern.op && (pattern.n == anyNumbers || i.n == pattern.n && i.m == pattern.m)
}

// startsWith says whether instructions start with those of a pattern.
func startsWith(all, pattern []instruction) bool {
	return len(all) >= len(pattern) && slices.EqualFunc(all[:len(pattern)], pattern, like)
}

// replaced hands what is left at each place to a function, which returns what to
// write in the place of how many instructions, or of none.
func replaced(all []instruction, by func(rest []instruction) (instead []instruction, of int)) []instruction {
	out := make([]instruction, 0, len(all))
	for len(all) > 0 {
		instead, of := by(all)
		if of == 0 {
			instead, of = all[:1], 1
		}
		out = append(out, instead...)
		all = all[of:]
	}
	return out
}
