package draw

// inOrder sorts a list stably by a number of each. Lists here are short, and
// the library's sort weighs ten times as much in WebAssembly for each type that
// it is used on.
func inOrder[T any](list []T, by func(T) float64) {
	for i := 1; i < len(list); i++ {
		for k := i; k > 0 && by(list[k]) < by(list[k-1]); k-- {
			list[k], list[k-1] = list[k-1], list[k]
		}
	}
}
