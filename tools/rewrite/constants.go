package rewrite

import "pintwelve/tools/module"

// Constants returns all whole numbers that stand in a module's section of code.
func Constants(section module.Reader) map[int]bool {
	all := map[int]bool{}
	for range section.Number() {
		for _, i := range taken(section.Bytes()).code {
			if i.op == opI32Const || i.op == opI64Const {
				all[i.n] = true
			}
		}
	}
	return all
}
