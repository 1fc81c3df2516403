package rewrite

import (
	"fmt"
	"hash/fnv"
)

// machine runs a function on values that are known by how they were worked out
// alone, and takes down all that a run does to the world: an instruction that is
// taken in neither by name nor as a jump makes a value of those it takes. Which
// way a condition goes is drawn by what it asks and how often that was asked, so
// that it goes the same way however it is written.
type machine struct {
	seed    uint64
	pushes  func(int) bool
	locals  map[int]value
	globals map[int]value
	stack   []value
	made    map[uint64]made // how values were made, by their base
	ends    map[uint64]bool // the stack's ends
	asked   map[uint64]int
	trace   []string
	done    bool
}

// value is a base and a whole number added to it; base 0 is a known number.
type value struct {
	base uint64
	add  int
}

type made struct {
	op   byte
	from value
}

const mostEvents, mostSteps = 150, 20000

// run returns what a function does that is called with an argument.
func run(all []instruction, argument int, seed uint64, pushes func(int) bool) []string {
	m := &machine{seed: seed, pushes: pushes, locals: map[int]value{}, globals: map[int]value{},
		made: map[uint64]made{}, ends: map[uint64]bool{}, asked: map[uint64]int{}}
	m.locals[localPart] = value{0, argument}
	m.newEnd()
	ends, begins, labels := blocksOf(all)
	var heights = map[int]int{0: 0}
	for at, steps := 0, 0; !m.done && steps < mostSteps && len(m.trace) < mostEvents; steps++ {
		i := all[at]
		at++
		to := -1
		switch i.op {
		case opBlock, opLoop:
			heights[labels[at-1]] = len(m.stack)
		case opIf:
			if !m.holds(m.pop()) {
				at = ends[labels[at-1]] + 1
				continue
			}
			heights[labels[at-1]] = len(m.stack)
		case opBr:
			to = i.n
		case opBrIf:
			if m.holds(m.pop()) {
				to = i.n
			}
		case opBrTable:
			part := m.pop()
			if part.base != 0 {
				m.tell("a table of what isn't known")
				m.done = true
				continue
			}
			n := part.add
			if n < 0 || n >= len(i.table) {
				n = len(i.table) - 1
			}
			to = i.table[n]
		case opEnd:
			if at == len(all) {
				m.leave()
			}
		default:
			m.step(i)
		}
		if to >= 0 {
			m.stack = m.stack[:heights[to]]
			at = ends[to] + 1
			if begin, loop := begins[to]; loop {
				at = begin + 1
			}
		}
	}
	return m.trace
}

// blocksOf returns by label where blocks end and where loops begin, and by place
// the label of the block that begins there.
func blocksOf(all []instruction) (ends, begins, labels map[int]int) {
	ends, begins, labels = map[int]int{}, map[int]int{}, map[int]int{}
	open := []int{0}
	for at, i := range all {
		switch i.op {
		case opLoop:
			begins[i.n] = at
			fallthrough
		case opBlock, opIf:
			labels[at] = i.n
			open = append(open, i.n)
		case opEnd:
			ends[open[len(open)-1]] = at
			open = open[:len(open)-1]
		}
	}
	return ends, begins, labels
}

func (m *machine) step(i instruction) {
	switch op := i.op; {
	case op == opUnreachable:
		m.tell("unreachable")
		m.done = true
	case op == opReturn:
		m.leave()
	case op == opNop:
	case op == opDrop:
		m.pop()
	case op == opLocalGet:
		m.put(m.locals[i.n])
	case op == opLocalSet:
		m.locals[i.n] = m.pop()
	case op == opLocalTee:
		m.locals[i.n] = m.stack[len(m.stack)-1]
	case op == opGlobalGet:
		m.put(m.globals[i.n])
	case op == opGlobalSet:
		m.globals[i.n] = m.pop()
		if i.n != globalSP {
			m.tell("global", i.n, m.globals[i.n])
		}
	case op == opI32Const || op == opI64Const:
		m.put(value{0, i.n})
	case op == opF32Const || op == opF64Const:
		m.put(value{m.hash(op, i.rest), 0})
	case op == opCall:
		m.call("call", i.n, value{}, m.pushes(i.n))
	case op == opCallIndirect:
		m.call("through the table", 0, m.pop(), true)
	case op >= opFirstLoad && op < opFirstStore:
		place := m.pop()
		place.add += i.m
		m.put(value{m.hash(op, place, len(m.trace)), 0})
	case op >= opFirstStore && op <= opLastStore:
		stored, place := m.pop(), m.pop()
		place.add += i.m
		m.tell("store", op, place, stored)
	case op == opPrefix && len(i.rest) > 1 || op == opMemoryGrow:
		of := []any{"memory", op, i.rest}
		for range memoryTakes(i) {
			of = append(of, m.pop())
		}
		m.tell(of...)
		if op == opMemoryGrow {
			m.put(value{m.hash("grown", len(m.trace)), 0})
		}
	case op == opMemorySize:
		m.put(value{m.hash("size", len(m.trace)), 0})
	default:
		m.work(i)
	}
}

func memoryTakes(i instruction) int {
	if i.op == opMemoryGrow {
		return 1
	}
	return 3
}

// work makes a value of those that an instruction takes.
func (m *machine) work(i instruction) {
	takes, _ := effect(i)
	from := make([]value, takes)
	for n := range from {
		from[takes-1-n] = m.pop()
	}
	a := from[0]
	switch i.op {
	case opI32Add, opI64Add:
		if b := from[1]; b.base == 0 {
			m.put(value{a.base, a.add + b.add})
			return
		}
	case opI32Sub, opI64Sub:
		if b := from[1]; b.base == 0 {
			m.put(value{a.base, a.add - b.add})
			return
		}
	case opI32LtS:
		if b := from[1]; a.base == 0 && b.base == 0 {
			m.put(value{0, map[bool]int{true: 1}[a.add < b.add]})
			return
		}
	case opI64ExtendS, opI64ExtendU:
		if a.base == 0 && (a.add >= 0 || i.op == opI64ExtendS) || m.ends[a.base] {
			m.put(a)
			return
		}
	case opI32WrapI64:
		if how := m.made[a.base]; a.add == 0 && how.op == opI64ExtendU {
			m.put(how.from)
			return
		}
		if a.base == 0 || m.ends[a.base] {
			m.put(a)
			return
		}
	case opI32Eqz, opI64Eqz:
		if how := m.made[a.base]; a.add == 0 && how.op == opI64ExtendU {
			a = how.from
		}
		zero := value{m.hash("zero", a), 0}
		m.made[zero.base] = made{opI32Eqz, a}
		m.put(zero)
		return
	}
	of := value{m.hash(i.op, i.rest, from), 0}
	m.made[of.base] = made{i.op, a}
	m.put(of)
}

// call takes down a call; one that hands over where to go on has that written, as
// the function that is called does.
func (m *machine) call(how string, function int, target value, pushes bool) {
	var argument value
	if len(m.stack) > 0 {
		argument = m.pop()
	}
	if pushes && argument.base == 0 && argument.add < 0 {
		end := m.globals[globalSP]
		end.add -= 8
		m.globals[globalSP] = end
		m.tell("store", byte(opI64Store), end, value{0, -argument.add})
		argument = value{}
	}
	m.tell(how, function, target, argument, m.globals[globalSP])
	m.newEnd()
	m.put(value{m.hash("result", len(m.trace)), 0})
}

// newEnd has the stack end nobody knows where.
func (m *machine) newEnd() {
	end := m.hash("end", len(m.trace))
	m.ends[end] = true
	m.globals[globalSP] = value{end, 0}
}

func (m *machine) leave() {
	m.done = true
	result := value{}
	if len(m.stack) > 0 {
		result = m.pop()
	}
	m.tell("return", result, m.globals[globalSP])
}

// holds draws which way a condition goes.
func (m *machine) holds(v value) bool {
	no := false
	for how := m.made[v.base]; v.add == 0 && how.op == opI32Eqz; how = m.made[v.base] {
		v, no = how.from, !no
	}
	if v.base == 0 {
		return (v.add != 0) != no
	}
	what := m.hash("asked", v)
	m.asked[what]++
	return (m.hash(m.seed, what, m.asked[what])%3 > 0) != no
}

func (m *machine) hash(of ...any) uint64 {
	h := fnv.New64a()
	fmt.Fprint(h, of...)
	return h.Sum64() | 1
}

func (m *machine) tell(of ...any) { m.trace = append(m.trace, fmt.Sprint(of...)) }

func (m *machine) put(v value) { m.stack = append(m.stack, v) }

func (m *machine) pop() value {
	v := m.stack[len(m.stack)-1]
	m.stack = m.stack[:len(m.stack)-1]
	return v
}
