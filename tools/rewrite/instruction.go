package rewrite

import (
	"fmt"

	"pintwelve/tools/module"
)

// Opcodes that are looked at, or bound a range of them (WebAssembly core specification 1.0, 5.4).
const (
	opUnreachable  = 0x00
	opNop          = 0x01
	opBlock        = 0x02
	opLoop         = 0x03
	opIf           = 0x04
	opEnd          = 0x0b
	opBr           = 0x0c
	opBrIf         = 0x0d
	opBrTable      = 0x0e
	opReturn       = 0x0f
	opCall         = 0x10
	opCallIndirect = 0x11
	opDrop         = 0x1a
	opSelect       = 0x1b
	opLocalGet     = 0x20
	opLocalSet     = 0x21
	opLocalTee     = 0x22
	opGlobalGet    = 0x23
	opGlobalSet    = 0x24
	opFirstLoad    = 0x28
	opFirstStore   = 0x36
	opI64Store     = 0x37
	opLastStore    = 0x3e
	opMemorySize   = 0x3f
	opMemoryGrow   = 0x40
	opI32Const     = 0x41
	opI64Const     = 0x42
	opF32Const     = 0x43
	opF64Const     = 0x44
	opI32Eqz       = 0x45
	opI32LtS       = 0x48
	opI64Eqz       = 0x50
	opI32Add       = 0x6a
	opI32Sub       = 0x6b
	opI64Add       = 0x7c
	opI64Sub       = 0x7d
	opI64ShrU      = 0x88
	opI32WrapI64   = 0xa7
	opI64ExtendS   = 0xac
	opI64ExtendU   = 0xad
	opLastNumeric  = 0xc4
	opPrefix       = 0xfc

	noResult = 0x40 // the type of a block that leaves nothing
)

// instruction is one of a function. A branch and the block that it leaves, or the
// loop that it begins again, have one number; the function's own is 0.
type instruction struct {
	op    byte
	n     int    // its first number: a label, a local, a constant, how a place is aligned
	m     int    // its second: a block's type, an offset
	table []int  // labels of a br_table, the one for all others last
	rest  []byte // what isn't looked at, as it stands
}

// plain is an instruction without numbers, or with those given.
func plain(op byte, numbers ...int) instruction {
	i := instruction{op: op}
	if len(numbers) > 0 {
		i.n = numbers[0]
	}
	if len(numbers) > 1 {
		i.m = numbers[1]
	}
	return i
}

// parse takes a function's instructions apart, up to its end.
func parse(code module.Reader) (all []instruction) {
	open := []int{0}
	label := func(depth int) int { return open[len(open)-1-depth] }
	for blocks := 0; len(open) > 0; {
		i := instruction{op: code.Byte()}
		switch op := i.op; {
		case op == opBlock || op == opLoop || op == opIf:
			blocks++
			i.n, i.m = blocks, int(code.Byte())
			open = append(open, blocks)
		case op == opEnd:
			open = open[:len(open)-1]
		case op == opBr || op == opBrIf:
			i.n = label(code.Number())
		case op == opBrTable:
			i.table = make([]int, code.Number()+1)
			for n := range i.table {
				i.table[n] = label(code.Number())
			}
		case op == opCall || op >= opLocalGet && op <= opGlobalSet || op == opMemorySize || op == opMemoryGrow:
			i.n = code.Number()
		case op == opCallIndirect || op >= opFirstLoad && op <= opLastStore:
			i.n, i.m = code.Number(), code.Number()
		case op == opI32Const || op == opI64Const:
			i.n = code.Signed()
		case op == opF32Const:
			i.rest, code = code[:4], code[4:]
		case op == opF64Const:
			i.rest, code = code[:8], code[8:]
		case op == opPrefix:
			i.rest = prefixed(&code)
		case op > opLastNumeric || op > opReturn && op < opLocalGet && op != opDrop && op != opSelect:
			panic(fmt.Sprintf("an instruction that Go doesn’t write: %#x", op))
		}
		all = append(all, i)
	}
	if len(code) > 0 {
		panic("instructions after a function’s end")
	}
	return all
}

// prefixed takes the rest of an instruction of two bytes.
func prefixed(code *module.Reader) []byte {
	size := 1
	switch kind := (*code)[0]; {
	case kind < 8: // numbers cut to whole ones
	case kind == 10: // memory.copy
		size = 3
	case kind == 11: // memory.fill
		size = 2
	default:
		panic(fmt.Sprintf("an instruction that Go doesn’t write: 0xfc %#x", kind))
	}
	rest := (*code)[:size]
	*code = (*code)[size:]
	return rest
}

// written is what parse takes apart.
func written(all []instruction) (code []byte) {
	open := []int{0}
	depth := func(label int) int {
		for d := range open {
			if open[len(open)-1-d] == label {
				return d
			}
		}
		panic("a branch to a block that isn’t open")
	}
	for _, i := range all {
		code = append(code, i.op)
		switch op := i.op; {
		case op == opBlock || op == opLoop || op == opIf:
			code = append(code, byte(i.m))
			open = append(open, i.n)
		case op == opEnd:
			open = open[:len(open)-1]
		case op == opBr || op == opBrIf:
			code = module.AppendNumber(code, depth(i.n))
		case op == opBrTable:
			code = module.AppendNumber(code, len(i.table)-1)
			for _, label := range i.table {
				code = module.AppendNumber(code, depth(label))
			}
		case op == opCall || op >= opLocalGet && op <= opGlobalSet || op == opMemorySize || op == opMemoryGrow:
			code = module.AppendNumber(code, i.n)
		case op == opCallIndirect || op >= opFirstLoad && op <= opLastStore:
			code = module.AppendNumber(module.AppendNumber(code, i.n), i.m)
		case op == opI32Const || op == opI64Const:
			code = module.AppendSigned(code, i.n)
		default:
			code = append(code, i.rest...)
		}
	}
	return code
}
