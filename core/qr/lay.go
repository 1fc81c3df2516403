package qr

// layout is a code in the making.
type layout struct {
	size  int
	dark  [][]bool
	fixed [][]bool // of a function pattern, so that no data goes there
}

func laid(version, mask int, bytes []byte) [][]bool {
	l := layout{size: 4*version + 17}
	for range l.size {
		l.dark = append(l.dark, make([]bool, l.size))
		l.fixed = append(l.fixed, make([]bool, l.size))
	}
	l.patterns(version)
	l.format(mask)
	l.version(version)
	l.data(mask, bytes)
	return l.dark
}

func (l *layout) set(x, y int, dark bool) {
	if x >= 0 && y >= 0 && x < l.size && y < l.size {
		l.dark[y][x], l.fixed[y][x] = dark, true
	}
}

// patterns sets the finders, the timing and the alignment patterns (6.3).
func (l *layout) patterns(version int) {
	for i := range l.size {
		l.set(6, i, i%2 == 0)
		l.set(i, 6, i%2 == 0)
	}
	last := l.size - 4
	l.rings(3, 3, 4, 0b1011)
	l.rings(last, 3, 4, 0b1011)
	l.rings(3, last, 4, 0b1011)
	if version == 1 {
		return
	}
	at := alignments(version)
	for i, x := range at {
		for j, y := range at {
			ends := len(at) - 1
			if i == 0 && j == 0 || i == 0 && j == ends || i == ends && j == 0 {
				continue
			}
			l.rings(x, y, 2, 0b101)
		}
	}
}

// rings sets the square rings about a module: bit r of the pattern says whether
// the ring at distance r is dark.
func (l *layout) rings(x, y, most, pattern int) {
	for dy := -most; dy <= most; dy++ {
		for dx := -most; dx <= most; dx++ {
			r := max(dx, -dx, dy, -dy)
			l.set(x+dx, y+dy, pattern>>r&1 == 1)
		}
	}
}

// alignments are the rows and columns of the alignment patterns (annex E).
func alignments(version int) []int {
	n := version/7 + 2
	step := (version*8 + n*3 + 5) / (n*4 - 4) * 2
	at := make([]int, n)
	at[0] = 6
	for i := n - 1; i > 0; i-- {
		at[i] = 4*version + 10 - step*(n-1-i)
	}
	return at
}

// format sets the level and the mask with their BCH code (7.9), twice.
func (l *layout) format(mask int) {
	const levelL = 0b01
	data := levelL<<3 | mask
	bits := (data<<10 | remainder(data, 10, 0x537)) ^ 0x5412
	for i := range 15 {
		dark := bits>>i&1 == 1
		switch {
		case i < 6:
			l.set(8, i, dark)
		case i < 8:
			l.set(8, i+1, dark)
		case i == 8:
			l.set(7, 8, dark)
		default:
			l.set(14-i, 8, dark)
		}
		if i < 8 {
			l.set(l.size-1-i, 8, dark)
		} else {
			l.set(8, l.size-15+i, dark)
		}
	}
	l.set(8, l.size-8, true)
}

// version sets the version with its BCH code (7.10), twice.
func (l *layout) version(version int) {
	if version < 7 {
		return
	}
	bits := version<<12 | remainder(version, 12, 0x1f25)
	for i := range 18 {
		dark := bits>>i&1 == 1
		l.set(l.size-11+i%3, i/3, dark)
		l.set(i/3, l.size-11+i%3, dark)
	}
}

// remainder is that of data times 2^degree over the generator, in GF(2).
func remainder(data, degree, generator int) int {
	for range degree {
		data = data<<1 ^ data>>(degree-1)*generator
	}
	return data & (1<<degree - 1)
}

// data runs up and down in columns of two from the right, past what is fixed
// (7.7.3), under the mask.
func (l *layout) data(mask int, bytes []byte) {
	at := 0
	for right := l.size - 1; right > 0; right -= 2 {
		if right == 6 {
			right--
		}
		for i := range l.size {
			y := i
			if (right+1)&2 == 0 {
				y = l.size - 1 - i
			}
			for x := right; x > right-2; x-- {
				if l.fixed[y][x] {
					continue
				}
				bit := at < 8*len(bytes) && bytes[at/8]>>(7-at%8)&1 == 1
				l.dark[y][x] = bit != masked(mask, x, y)
				at++
			}
		}
	}
}

// masked says whether a mask turns a module over (table 10).
func masked(mask, x, y int) bool {
	v := 0
	switch mask {
	case 0:
		v = (x + y) % 2
	case 1:
		v = y % 2
	case 2:
		v = x % 3
	case 3:
		v = (x + y) % 3
	case 4:
		v = (x/3 + y/2) % 2
	case 5:
		v = x*y%2 + x*y%3
	case 6:
		v = (x*y%2 + x*y%3) % 2
	case 7:
		v = ((x+y)%2 + x*y%3) % 2
	}
	return v == 0
}

// penalty is how hard a code would be to read (table 11).
func penalty(c [][]bool) int {
	total, darks := 0, 0
	for _, across := range [...]bool{true, false} {
		at := func(i, j int) bool {
			if across {
				return c[i][j]
			}
			return c[j][i]
		}
		for i := range c {
			run, window := 0, 0
			for j := range c {
				if j > 0 && at(i, j) == at(i, j-1) {
					run++
				} else {
					run = 1
				}
				if run == 5 {
					total += 3
				} else if run > 5 {
					total++
				}
				window = window << 1 & 0x7ff
				if at(i, j) {
					window |= 1
				}
				if j >= 10 && (window == 0b10111010000 || window == 0b00001011101) {
					total += 40
				}
			}
		}
	}
	for y := range c {
		for x := range c {
			if c[y][x] {
				darks++
			}
			if x > 0 && y > 0 && c[y][x] == c[y-1][x] && c[y][x] == c[y][x-1] && c[y][x] == c[y-1][x-1] {
				total += 3
			}
		}
	}
	all := len(c) * len(c)
	return total + 10*(max(20*darks-10*all, 10*all-20*darks)/all)
}
