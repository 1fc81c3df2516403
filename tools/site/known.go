package site

import (
	"log"

	"pintwelve/tools/rewrite"
)

// core is a program made small, or as Go writes it by itself where that isn't the Go that
// is known, or its layout isn't: then the page loads more, and works.
func core(root, program, version string) ([]byte, error) {
	if !rewrite.Knows(version) {
		log.Printf("site: core.wasm is left as %s writes it; it is made small with %s alone", version, rewrite.Go)
		return Compile(root, program)
	}
	compiled, err := CompileCore(root, program)
	if err != nil {
		return nil, err
	}
	short, err := shortened(compiled)
	if err != nil {
		log.Println("site: core.wasm is left as Go writes it:", err)
		return Compile(root, program)
	}
	return short, nil
}
