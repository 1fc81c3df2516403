//go:build js && wasm

// Command answering is an empty Go program that the page can start on: it
// answers every call with an empty flat object, since a page without any
// answer would never be ready. Against it the cold start is measured.
package main

func main() { select {} }

var message []byte

//go:wasmexport room
func room(bytes int32) *byte {
	message = make([]byte, max(1, bytes))
	return &message[0]
}

//go:wasmexport answer
func answer(int32) int32 { return 0 }
