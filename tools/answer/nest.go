package main

import (
	"strconv"
	"strings"

	"pintwelve/core/bench"
)

// nest turns the flat answers into JSON's shape: a slash in a name parts a list
// or an object from what is in it, and a number after it is a place in a list.
// Pictures are for the page alone.
func nest(answers *bench.Answers) map[string]any {
	all := map[string]any{}
	for _, e := range answers.Entries {
		if !strings.HasPrefix(e.Name, "picture.") {
			put(all, strings.Split(e.Name, "/"), value(e))
		}
	}
	return listed(all).(map[string]any)
}

func put(in map[string]any, path []string, v any) {
	if len(path) == 1 {
		in[path[0]] = v
		return
	}
	inner, ok := in[path[0]].(map[string]any)
	if !ok {
		inner = map[string]any{}
		in[path[0]] = inner
	}
	put(inner, path[1:], v)
}

// listed turns objects whose names are 0, 1, 2 … into lists.
func listed(v any) any {
	object, ok := v.(map[string]any)
	if !ok {
		return v
	}
	list := make([]any, 0, len(object))
	for i := range len(object) {
		if inner, ok := object[strconv.Itoa(i)]; ok {
			list = append(list, listed(inner))
		}
	}
	if len(object) > 0 && len(list) == len(object) {
		return list
	}
	for name, inner := range object {
		object[name] = listed(inner)
	}
	return object
}

func value(e bench.Entry) any {
	switch e.Kind {
	case bench.Number:
		return e.Number
	case bench.Null:
		return nil
	case bench.EmptyList:
		return []any{}
	default:
		return e.Text
	}
}
