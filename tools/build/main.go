// Command build makes the static site. Run it in the repository's top folder.
package main

import (
	"flag"
	"fmt"
	"log"

	"pintwelve/tools/screen"
	"pintwelve/tools/site"
)

func main() {
	log.SetFlags(0)
	out := flag.String("out", "dist", "`folder` to build into; what an earlier build left there is removed")
	empty := flag.Bool("empty", false, "put a Go program that does nothing but answer in the place of core.wasm, to measure against")
	flag.Parse()
	program := "./wasm"
	if *empty {
		program = "./tools/empty/answering"
	}
	files, err := site.Build(".", program, screen.Paint)
	if err != nil {
		log.Fatalln("build:", err)
	}
	if err := files.Write(*out); err != nil {
		log.Fatalln("build:", err)
	}
	fmt.Printf("%s: %d files\n", *out, len(files))
}
