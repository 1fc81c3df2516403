// Command size prints what a first visit loads: the brotli bytes, at the highest
// quality, of every file of the site, over those of an empty Go program
// compiled with the same flags. With -steps it prints what each step of the bench
// adds to that. Run it in the repository's top folder.
package main

import (
	"bytes"
	"flag"
	"fmt"
	"log"
	"os"
	"text/tabwriter"

	"github.com/andybalholm/brotli"

	"pintwelve/tools/screen"
	"pintwelve/tools/site"
)

func main() {
	log.SetFlags(0)
	packages := flag.Bool("packages", false, "print what each package's code weighs in core.wasm, instead")
	perStep := flag.Bool("steps", false, "print how much less is loaded without each step of the bench, instead")
	budget := flag.Float64("budget", 1.72, "most that the site may weigh, in empty Go programs")
	flag.Parse()
	if err := printed(*packages, *perStep, *budget); err != nil {
		log.Fatalln("size:", err)
	}
}

func printed(packages, perStep bool, budget float64) error {
	switch {
	case packages:
		return weighPackages()
	case perStep:
		return weighSteps(".")
	}
	ratio, err := weigh()
	if err == nil && ratio > budget {
		err = fmt.Errorf("%.3f is over the budget of %.2f", ratio, budget)
	}
	return err
}

func weigh() (float64, error) {
	files, err := site.Build(".", "./wasm", screen.Paint)
	if err != nil {
		return 0, err
	}
	empty, err := site.Compile(".", "./tools/empty")
	if err != nil {
		return 0, err
	}
	shortened, err := site.Build(".", "./tools/empty", screen.Paint)
	if err != nil {
		return 0, err
	}
	return report(files, empty, shortened["core.wasm"]), nil
}

// report prints the table. Shortened is the empty program with its data as short
// as the site's core has it, which Go itself doesn't do: the ratio is over empty.
func report(files site.Files, empty, shortened []byte) float64 {
	table := tabwriter.NewWriter(os.Stdout, 0, 0, 2, ' ', tabwriter.AlignRight)
	defer table.Flush()
	fmt.Fprintln(table, "bytes\tbrotli\tfile\t")
	plain, packed := 0, 0
	for _, path := range files.Paths() {
		content, brotli := len(files[path]), packedSize(files[path])
		plain, packed = plain+content, packed+brotli
		fmt.Fprintf(table, "%d\t%d\t%s\t\n", content, brotli, path)
	}
	base := packedSize(empty)
	ratio := float64(packed) / float64(base)
	fmt.Fprintf(table, "%d\t%d\tall %d files\t\n", plain, packed, len(files))
	fmt.Fprintf(table, "%d\t%d\tempty Go program\t\n", len(empty), base)
	fmt.Fprintf(table, "\t%.3f\tratio\t\n", ratio)
	fmt.Fprintf(table, "%d\t%d\tempty, its data shortened\t\n", len(shortened), packedSize(shortened))
	fmt.Fprintf(table, "\t%.3f\tratio over that\t\n", float64(packed)/float64(packedSize(shortened)))
	return ratio
}

func packedSize(content []byte) int {
	var packed bytes.Buffer
	w := brotli.NewWriterLevel(&packed, brotli.BestCompression)
	w.Write(content)
	w.Close()
	return packed.Len()
}
