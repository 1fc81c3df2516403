package site

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// Compile returns program, a package path of the module in root, as a
// WebAssembly file with the core’s functions not inlined, which saves a tenth, and
// else by Go’s own settings. Its bytes don’t depend on the folder, the user’s own
// Go flags or the state of the repository.
func Compile(root, program string) ([]byte, error) {
	return compile(root, program, "", "-ldflags=-s -w -buildid=", "-gcflags=pintwelve/...=-l")
}

// CompileCore returns the same program made small, with the names of its
// functions kept in the file's name section: no function inlined of the core or of
// the libraries that it uses most, the ends of loops not turned (which writes their
// conditions twice), what is made of a length that isn't known always on the heap (else
// the stack is tried first, for 32 bytes at most), parts in the order that they were in before the
// likelier ones are put next to each other, and the collector that Go 1.25 had, which is smaller.
func CompileCore(root, program string) ([]byte, error) {
	const small = "-l -d=variablemakethreshold=0,ssa/late_fuse/off,ssa/likelyadjust/off"
	args := []string{"-ldflags=-w -buildid=", "-gcflags=pintwelve/...=" + small + ",ssa/loop_rotate/off"}
	for _, library := range []string{
		"internal/reflectlite", "internal/runtime/maps", "internal/strconv", "math", "slices", "sort", "strconv", "strings", "syscall/js", "unicode/utf8",
	} {
		args = append(args, "-gcflags="+library+"="+small)
	}
	return compile(root, program, "nogreenteagc", args...)
}

func compile(root, program, experiments string, args ...string) ([]byte, error) {
	dir, err := os.MkdirTemp("", "compile")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	out := filepath.Join(dir, "core.wasm")
	args = append([]string{"build", "-trimpath", "-buildvcs=false", "-o", out}, args...)
	if _, err = runGo(root, experiments, append(args, program)...); err != nil {
		return nil, err
	}
	return os.ReadFile(out)
}

// wasmExec returns the loader that belongs to the compiler which Compile runs.
func wasmExec(root string) ([]byte, error) {
	goroot, err := runGo(root, "", "env", "GOROOT")
	if err != nil {
		return nil, err
	}
	return os.ReadFile(filepath.Join(strings.TrimSpace(goroot), "lib", "wasm", "wasm_exec.js"))
}

func runGo(root, experiments string, args ...string) (string, error) {
	cmd := exec.Command("go", args...)
	cmd.Dir = root
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "GOFLAGS=", "GOWASM=", "GOEXPERIMENT="+experiments, "GOWORK=off", "CGO_ENABLED=0")
	var out, complaint bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &complaint
	if err := cmd.Run(); err != nil {
		return "", fmt.Errorf("go %s: %w\n%s", strings.Join(args, " "), err, complaint.String())
	}
	return out.String(), nil
}
