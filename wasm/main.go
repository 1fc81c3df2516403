//go:build js && wasm

// Command wasm is the bridge between the page and the core: one function,
// call(verb, flat object) → flat object. A flat object crosses as one string,
// its names and texts with NULs between them.
package main

import (
	"strings"
	"syscall/js"

	"pintwelve/core/bench"
	"pintwelve/core/draw"
	"pintwelve/core/form"
	"pintwelve/core/link"
	"pintwelve/core/sheet"
	"pintwelve/core/step/balance"
	"pintwelve/core/step/truing"
)

func main() {
	verbs := verbsOn(&sheet.Desk{})
	js.Global().Set("pintwelve", js.FuncOf(func(_ js.Value, args []js.Value) any {
		return call(verbs, args[0].String(), unpack(args[1].String())).pack()
	}))
	select {}
}

// call answers a verb. A fault in the core is told to the page rather than
// ending the program, which would cost the page its core.
func call(verbs map[string]verb, name string, in flat) (out flat) {
	defer func() {
		if fault := recover(); fault != nil {
			out = flat{}
			out.add("fault", describe(fault))
		}
	}()
	v, ok := verbs[name]
	if !ok {
		panic("no verb " + name)
	}
	return v(in)
}

func describe(fault any) string {
	switch f := fault.(type) {
	case error:
		return f.Error()
	case string:
		return f
	default:
		return "unknown fault"
	}
}

// verb is one thing that the page may ask.
type verb func(flat) flat

// verbsOn are all of them; the form that was answered last lies on the desk.
func verbsOn(desk *sheet.Desk) map[string]verb {
	return map[string]verb{
		// answer: the form with "part" → the texts of its answers
		"answer": func(in flat) (out flat) {
			part := in.take("part")
			out.addTexts(desk.Answer(in.form(), part))
			return out
		},
		// step: the form with "step.name" and "step.by" → the field's new text
		"step": func(in flat) (out flat) {
			name := in.take("step.name")
			by := 1
			if in.take("step.by") == "-1" {
				by = -1
			}
			out.add(name, form.Step(in.form(), name, by))
			return out
		},
		// next: the form with "next.name" → "before", "text" and "done", as truing.Next gives them
		"next": func(in flat) (out flat) {
			name := in.take("next.name")
			before, after, done := truing.Next(in.form(), name)
			out.add("before", before)
			out.add("text", before+after)
			if done {
				out.add("done", "yes")
			}
			return out
		},
		// tap: a point of the clock face → the hour there
		"tap": func(in flat) (out flat) {
			out.add("hour", truing.HourAt(in.take("x"), in.take("y")))
			return out
		},
		// units: the form with "units.to" → the fields that change, so that no verdict does
		"units": func(in flat) (out flat) {
			to := in.take("units.to")
			out.addForm(sheet.InUnits(in.form(), to))
			return out
		},
		// done: the form with keys for new rows, one a move, and for a new pass or none → the fields that log the advice and begin it
		"done": func(in flat) (out flat) {
			var rows []string
			for _, name := range [...]string{"key.0", "key.1"} {
				if key := in.take(name); key != "" {
					rows = append(rows, key)
				}
			}
			pass := in.take("key.pass")
			out.addForm(truing.Done(in.form(), rows, pass))
			return out
		},
		// again: the form with a key → the fields that begin a new pass
		"again": func(in flat) (out flat) {
			pass := in.take("key.pass")
			out.addForm(truing.Again(in.form(), pass))
			return out
		},
		// near: the form with keys for new rows → the fields that add a place close to each centre
		"near": func(in flat) (out flat) {
			rows := [2]string{in.take("key.0"), in.take("key.1")}
			out.addForm(truing.NearCentres(in.form(), rows))
			return out
		},
		// plan: the form with a key for new rows → the fields that hold the holes, and "say.plan.…"; can be slow
		"plan": func(in flat) (out flat) {
			key := in.take("key")
			out.addTexts(balance.Plan(in.form(), key))
			return out
		},
		// drilled: the form with a key for new rows → the fields that log the holes and clear the knife-edges
		"drilled": func(in flat) (out flat) {
			key := in.take("key")
			out.addForm(balance.Drilled(in.form(), key))
			return out
		},
		// tryout: "seed" and "start" → the form of a made-up crank
		"tryout": func(in flat) (out flat) {
			out.addForm(truing.TryOut(in.take("seed"), in.take("start")))
			return out
		},
		// qr: "text" → "svg", or "" where no QR code holds it
		"qr": func(in flat) (out flat) {
			out.add("svg", draw.QR(in.take("text")))
			return out
		},
		// encode: the form → "link", or "problem"
		"encode": func(in flat) (out flat) {
			text, err := link.Encode(in.form())
			if err != nil {
				out.add("problem", err.Error())
				return out
			}
			out.add("link", text)
			return out
		},
		// crowd: the form → "problem" where a group has more rows than it may
		"crowd": func(in flat) (out flat) {
			for _, c := range form.Crowds(in.form()) {
				out.add("problem", c.String())
			}
			return out
		},
		// unfit: the form → what in it no control could have made
		"unfit": func(in flat) (out flat) {
			for _, p := range form.Unfit(in.form()) {
				out.add(p.Name, p.Text)
			}
			return out
		},
		// decode: "link" → the form, or "problem"
		"decode": func(in flat) (out flat) {
			job, err := link.Decode(in.take("link"))
			if err != nil {
				out.add("problem", err.Error())
				return out
			}
			out.addForm(job)
			return out
		},
	}
}

// flat is a flat object: names and texts in turn.
type flat struct{ parts []string }

func unpack(packed string) flat {
	if packed == "" {
		return flat{}
	}
	parts := strings.Split(packed, "\x00")
	return flat{parts[:len(parts)&^1]}
}

func (f flat) pack() string { return strings.Join(f.parts, "\x00") }

func (f *flat) add(name, text string) { f.parts = append(f.parts, name, text) }

func (f *flat) addForm(job form.Form) {
	for name, text := range job {
		f.add(name, text)
	}
}

// addTexts adds what the page shows: the values beside it are for others.
func (f *flat) addTexts(answers *bench.Answers) {
	for _, e := range answers.Entries {
		if e.Kind == bench.Text {
			f.add(e.Name, e.Text)
		}
	}
}

// take returns the text under a name and leaves the rest.
func (f *flat) take(name string) string {
	for i := 0; i < len(f.parts); i += 2 {
		if f.parts[i] == name {
			text := f.parts[i+1]
			f.parts = append(f.parts[:i], f.parts[i+2:]...)
			return text
		}
	}
	return ""
}

func (f flat) form() form.Form {
	job := make(form.Form, len(f.parts)/2)
	for i := 0; i < len(f.parts); i += 2 {
		job[f.parts[i]] = f.parts[i+1]
	}
	return job
}
