package rewrite

import "slices"

// A call writes where to go on into the stack, as a function's number in the upper
// bits and a part's in the lower 16, and hands over a 0: begin at the front. Here
// it hands over where to go on, below 0, and who is called writes it. So the number
// that is another in each function stands once in it, in a local of its own.

// localHere is the local that holds the function's number, below 0.
const (
	localHere = 2
	partBits  = 16
	typeI32   = 0x7f
)

var (
	push = []instruction{
		plain(opLocalGet, localSP), plain(opI32Const, 8), plain(opI32Sub), plain(opLocalTee, localSP), plain(opGlobalSet, globalSP),
		plain(opLocalGet, localSP), some(opI64Const), plain(opI64Store, 3, 0),
	}
	pushed = 6 // which of them says where to go on

	direct   = slices.Concat(push, []instruction{plain(opI32Const, 0), some(opCall)}, entry)
	indirect = slices.Concat(push, []instruction{
		plain(opI64Const, 16), plain(opI64ShrU), plain(opI32WrapI64), plain(opLocalSet, localPart),
		plain(opI32Const, 0), plain(opLocalGet, localPart), some(opCallIndirect),
	}, entry)
)

// calling has the function's calls hand over where to go on, those of functions
// that push it. All that are called through the table do or were handed a part by
// the loop that resumes them.
func (f function) calling(pushes func(int) bool) function {
	if !f.ofGo() {
		return f
	}
	here := -1
	code := replaced(shifted(f.code), func(rest []instruction) ([]instruction, int) {
		isDirect := startsWith(rest, direct) && pushes(rest[len(push)+1].n)
		if !isDirect && !startsWith(rest, indirect) {
			return nil, 0
		}
		back := rest[pushed].n
		if number := back >> partBits; here < 0 {
			here = number
		} else if number != here {
			panic("a call that goes on in another function")
		}
		goOn := []instruction{plain(opLocalGet, localHere), plain(opI32Const, back&(1<<partBits-1)), plain(opI32Sub)}
		if isDirect {
			return slices.Concat(goOn, rest[len(push)+1:len(direct)]), len(direct)
		}
		return slices.Concat(rest[len(push):len(push)+4], goOn, rest[len(push)+5:len(indirect)]), len(indirect)
	})
	if here < 0 {
		return f
	}
	if here >= 1<<(31-partBits) {
		panic("a function's number that is too high")
	}
	locals := slices.Clone(f.locals)
	locals[1]++ // one more of the first kind, numbers of 32 bits
	return function{locals, slices.Insert(code, len(entry), plain(opI32Const, -here<<partBits), plain(opLocalSet, localHere))}
}

// shifted numbers the locals anew, so that localHere is free.
func shifted(all []instruction) []instruction {
	all = slices.Clone(all)
	for n, i := range all {
		if i.op >= opLocalGet && i.op <= opLocalTee && i.n >= localHere {
			all[n].n++
		}
	}
	return all
}

// pushing has a function write into the stack where its caller goes on, if that
// was handed over, and begin at the front.
func (f function) pushing() function {
	if !f.ofGo() {
		return f
	}
	f.code = slices.Insert(slices.Clone(f.code), len(entry),
		plain(opLocalGet, localPart), plain(opI32Const, 0), plain(opI32LtS), plain(opIf, unlabelled, noResult),
		plain(opLocalGet, localSP), plain(opI32Const, 8), plain(opI32Sub), plain(opLocalTee, localSP), plain(opGlobalSet, globalSP),
		plain(opLocalGet, localSP), plain(opI64Const, 0), plain(opLocalGet, localPart), plain(opI64ExtendS), plain(opI64Sub), plain(opI64Store, 3, 0),
		plain(opI32Const, 0), plain(opLocalSet, localPart), plain(opEnd))
	return f
}
