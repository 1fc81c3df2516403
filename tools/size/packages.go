package main

import (
	"fmt"
	"maps"
	"os"
	"slices"
	"text/tabwriter"

	"pintwelve/tools/site"
)

// weighPackages prints the code of each package, largest first. Its brotli is
// that of the package alone; tables and texts are not code and not counted.
func weighPackages() error {
	module, err := site.CompileCore(".", "./wasm")
	if err != nil {
		return err
	}
	code, err := codeByPackage(module)
	if err != nil {
		return err
	}
	table := tabwriter.NewWriter(os.Stdout, 0, 0, 2, ' ', tabwriter.AlignRight)
	defer table.Flush()
	fmt.Fprintln(table, "bytes\tbrotli\tpackage\t")
	for _, name := range slices.SortedFunc(maps.Keys(code), func(a, b string) int { return len(code[b]) - len(code[a]) }) {
		fmt.Fprintf(table, "%d\t%d\t%s\t\n", len(code[name]), packedSize(code[name]), name)
	}
	return nil
}
