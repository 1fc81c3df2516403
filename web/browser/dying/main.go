//go:build js && wasm

// Command dying is a core that dies of what is typed, as the real one must not:
// to see that the page outlives it. Else it answers the dials as the core does.
package main

import (
	"os"
	"strings"
	"syscall/js"

	"pintwelve/core/form"
	"pintwelve/core/sheet"
)

func main() {
	desk := sheet.Desk{}
	js.Global().Set("pintwelve", js.FuncOf(func(_ js.Value, args []js.Value) any {
		desk.Change(texts(strings.Split(args[1].String(), "\x00")), strings.Split(args[2].String(), "\x00"))
		_, part, _ := strings.Cut(args[3].String(), "part\x00")
		return answer(&desk, part)
	}))
	select {}
}

func texts(parts []string) form.Form {
	f := form.Form{}
	for i := 0; i+1 < len(parts); i += 2 {
		f[parts[i]] = parts[i+1]
	}
	return f
}

func answer(desk *sheet.Desk, part string) string {
	if end := ends[desk.Form()["pass.1.drive.tir"]]; end != nil {
		end()
	}
	var out []string
	for _, e := range desk.Answer(part).Entries {
		out = append(out, e.Name, e.Text)
	}
	return strings.Join(out, "\x00")
}

// ends are the ways in which a Go program dies, recover or not.
var ends = map[string]func(){
	"deep":    func() { deeper(1) },
	"memory":  func() { held = make([]byte, 6<<30) },
	"exit":    func() { os.Exit(3) },
	"blocked": func() { <-make(chan int) },
	"panic":   func() { panic("not recovered") },
}

var held []byte

func deeper(n int) int { return deeper(n+1) + deeper(n+2) }
