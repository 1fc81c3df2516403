package main

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"text/tabwriter"

	"pintwelve/tools/screen"
	"pintwelve/tools/site"
)

// steps are the folders of core/step, in the order of the work, with the fragments
// of web/steps that stand on the page for them.
var steps = [...]struct {
	folder    string
	fragments []string
}{
	{"fitting", []string{"order.html", "found.html", "measure.html", "press.html", "cases.html"}},
	{"lighten", []string{"lighten.html"}},
	{"balance", []string{"balance.html"}},
	{"truing", []string{"true.html", "how.html"}},
	{"jobsheet", []string{"sheet.html"}},
}

// weighSteps prints how many bytes of brotli core.wasm and index.html are less
// without each step. What two steps share counts for neither, nor do the modules
// of the page or a step's rows of the field table, which stay.
func weighSteps(root string) error {
	whole, err := site.Build(root, "./wasm", screen.Paint)
	if err != nil {
		return err
	}
	table := tabwriter.NewWriter(os.Stdout, 0, 0, 2, ' ', tabwriter.AlignRight)
	defer table.Flush()
	fmt.Fprintln(table, "core.wasm\tindex.html\tboth\tof the step\t")
	core, page := packedSize(whole["core.wasm"]), packedSize(whole["index.html"])
	for _, s := range steps {
		rest, err := without(root, s.folder, s.fragments)
		if err != nil {
			return fmt.Errorf("without %s: %w", s.folder, err)
		}
		inCore, inPage := core-packedSize(rest["core.wasm"]), page-packedSize(rest["index.html"])
		fmt.Fprintf(table, "%d\t%d\t%d\t%s\t\n", inCore, inPage, inCore+inPage, s.folder)
	}
	return nil
}

// without builds the site from a copy of the repository that has a step left out.
func without(root, folder string, fragments []string) (site.Files, error) {
	dir, err := os.MkdirTemp("", "without")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	if err := leaveOut(root, dir, folder, fragments); err != nil {
		return nil, err
	}
	return site.Build(dir, "./wasm", screen.Paint)
}

// leaveOut copies to dir what of the repository goes into the site, but of a step
// only what others name, hollow, and of the page none of its fragments.
func leaveOut(root, dir, folder string, fragments []string) error {
	for _, part := range []string{"core", "wasm", "web"} {
		if err := os.CopyFS(filepath.Join(dir, part), os.DirFS(filepath.Join(root, part))); err != nil {
			return err
		}
	}
	for _, name := range []string{"go.mod", "go.sum"} {
		if err := rewritten(filepath.Join(root, name), filepath.Join(dir, name), func(text []byte) ([]byte, error) { return text, nil }); err != nil {
			return err
		}
	}
	page := filepath.Join(dir, "web", "index.html")
	if err := rewritten(page, page, func(text []byte) ([]byte, error) { return withoutFragments(text, fragments) }); err != nil {
		return err
	}
	step := filepath.Join(dir, "core", "step", folder)
	return filepath.WalkDir(step, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || strings.HasSuffix(path, "_test.go") {
			return err
		}
		return rewritten(path, path, hollow)
	})
}

func rewritten(from, to string, change func([]byte) ([]byte, error)) error {
	text, err := os.ReadFile(from)
	if err != nil {
		return err
	}
	if text, err = change(text); err != nil {
		return fmt.Errorf("%s: %w", from, err)
	}
	return os.WriteFile(to, text, 0o644)
}

// withoutFragments returns the page's source with no place for some of its steps.
func withoutFragments(page []byte, fragments []string) ([]byte, error) {
	for _, name := range fragments {
		place := regexp.MustCompile(`<step src="` + regexp.QuoteMeta(name) + `"[^>]*></step>`)
		if !place.Match(page) {
			return nil, fmt.Errorf("no place for %s", name)
		}
		page = place.ReplaceAll(page, nil)
	}
	return page, nil
}
