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
// WebAssembly file. Its bytes don't depend on the folder, the user's own Go
// flags or the state of the repository.
func Compile(root, program string) ([]byte, error) {
	return compile(root, program, "-s -w -buildid=")
}

// CompileNamed returns the same program with the names of its functions kept
// in the file's name section.
func CompileNamed(root, program string) ([]byte, error) {
	return compile(root, program, "-w -buildid=")
}

func compile(root, program, linked string) ([]byte, error) {
	dir, err := os.MkdirTemp("", "compile")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	out := filepath.Join(dir, "core.wasm")
	// -l: to inline the core's own functions would make the file a tenth larger
	_, err = runGo(root, "build", "-trimpath", "-buildvcs=false", "-gcflags=pintwelve/...=-l", "-ldflags="+linked, "-o", out, program)
	if err != nil {
		return nil, err
	}
	return os.ReadFile(out)
}

// wasmExec returns the loader that belongs to the compiler which Compile runs.
func wasmExec(root string) ([]byte, error) {
	goroot, err := runGo(root, "env", "GOROOT")
	if err != nil {
		return nil, err
	}
	return os.ReadFile(filepath.Join(strings.TrimSpace(goroot), "lib", "wasm", "wasm_exec.js"))
}

func runGo(root string, args ...string) (string, error) {
	cmd := exec.Command("go", args...)
	cmd.Dir = root
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "GOFLAGS=", "GOWASM=", "GOEXPERIMENT=", "GOWORK=off", "CGO_ENABLED=0")
	var out, complaint bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &complaint
	if err := cmd.Run(); err != nil {
		return "", fmt.Errorf("go %s: %w\n%s", strings.Join(args, " "), err, complaint.String())
	}
	return out.String(), nil
}
