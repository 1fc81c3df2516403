package site

import (
	"log"
	"strings"
)

// knownGo is the release of Go by whose compiler, linker and runtime the shortening goes
// and is tested.
const knownGo = "go1.26"

// core is a program made small, or as Go writes it by itself where that isn't the Go that
// is known, or its layout isn't: then the page loads more, and works.
func core(root, program, version string) ([]byte, error) {
	if version != knownGo && !strings.HasPrefix(version, knownGo+".") && !strings.HasPrefix(version, knownGo+"-") {
		log.Printf("site: core.wasm is left as %s writes it; it is made small with %s alone", version, knownGo)
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
