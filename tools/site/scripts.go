package site

import (
	"bytes"
	"errors"
	"fmt"
	"maps"
	"path"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

// entries are the scripts that the page starts with, and its worker. Each is one file,
// with all its modules in it: a module of its own costs a request at each start.
var entries = []string{"first.js", "main.js"}

// bundled returns the site with each entry's modules in it, and the modules gone.
func bundled(files Files) (Files, error) {
	out := maps.Clone(files)
	maps.DeleteFunc(out, func(name string, _ []byte) bool { return strings.HasSuffix(name, ".js") && name != worker })
	for _, entry := range entries {
		if _, ok := files[entry]; !ok {
			continue
		}
		result := api.Build(api.BuildOptions{
			EntryPoints: []string{entry},
			Bundle:      true,
			// Here, where every name of a bundle is known to be its own.
			MinifyIdentifiers: true,
			Format:            api.FormatESModule,
			Target:            api.ESNext,
			Charset:           api.CharsetUTF8,
			Plugins:           []api.Plugin{inMemory(files)},
			LogLevel:          api.LogLevelSilent,
		})
		if err := failed(entry, result.Errors); err != nil {
			return nil, err
		}
		out[entry] = result.OutputFiles[0].Contents
	}
	return out, nil
}

// inMemory has the bundler read the site's own modules, and nothing else.
func inMemory(files Files) api.Plugin {
	return api.Plugin{Name: "site", Setup: func(build api.PluginBuild) {
		build.OnResolve(api.OnResolveOptions{Filter: ".*"}, func(args api.OnResolveArgs) (api.OnResolveResult, error) {
			name := path.Join(path.Dir(args.Importer), args.Path)
			if _, ok := files[name]; !ok {
				return api.OnResolveResult{}, fmt.Errorf("no %s in web", name)
			}
			return api.OnResolveResult{Path: name, Namespace: "site"}, nil
		})
		build.OnLoad(api.OnLoadOptions{Filter: ".*", Namespace: "site"}, func(args api.OnLoadArgs) (api.OnLoadResult, error) {
			text := string(files[args.Path])
			return api.OnLoadResult{Contents: &text}, nil
		})
	}}
}

// script returns a script minified. A module's exports and a classic script's
// globals keep their names.
func script(name string, content []byte) ([]byte, error) {
	result := api.Transform(string(content), api.TransformOptions{
		MinifyWhitespace:  true,
		MinifyIdentifiers: true,
		MinifySyntax:      true,
		Target:            api.ESNext,
		Charset:           api.CharsetUTF8,
	})
	return bytes.TrimSuffix(result.Code, []byte("\n")), failed(name, result.Errors)
}

func failed(name string, messages []api.Message) error {
	var all []error
	for _, each := range messages {
		all = append(all, fmt.Errorf("%s: %s", name, each.Text))
	}
	return errors.Join(all...)
}
