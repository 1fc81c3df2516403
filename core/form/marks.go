package form

// marks are names: its own, and those of others that were taken in whole, which costs
// less than name by name.
type marks struct {
	own   map[string]bool
	taken []*marks
}

func (m *marks) has(name string) bool {
	if m.own[name] {
		return true
	}
	for _, t := range m.taken {
		if t.has(name) {
			return true
		}
	}
	return false
}

// put marks a name; false where it is marked.
func (m *marks) put(name string) bool {
	if m.has(name) {
		return false
	}
	if m.own == nil {
		m.own = map[string]bool{}
	}
	m.own[name] = true
	return true
}

// takes tells whether a name of others is none of these; it is marked by join, or at once
// where they haven't marked it.
func (m *marks) takes(from *marks, name string) bool {
	if from.has(name) {
		return !m.has(name)
	}
	return m.put(name)
}

// join takes the others in.
func (m *marks) join(from *marks) {
	if from.own != nil || from.taken != nil {
		m.taken = append(m.taken, from)
	}
}
