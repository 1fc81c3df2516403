//go:build js && wasm

// Command answering is an empty Go program that the page can start on: it
// answers every call with an empty flat object, since a page without any
// answer would never be ready. Against it the cold start is measured.
package main

import "syscall/js"

func main() {
	js.Global().Set("pintwelve", js.FuncOf(func(js.Value, []js.Value) any { return "" }))
	select {}
}
