//go:build js && wasm

// Command wasm is the bridge between the page and the core: one function,
// call(verb, texts, gone, arguments) → flat object. The form lies on the core's desk: texts
// are what has come into it or is another since the last call, gone the names of what has
// left it. Texts and arguments are flat objects apart, so that no argument has a field's
// name; each crosses as one string, its names and texts with NULs between them.
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
	desk := &sheet.Desk{}
	verbs := verbsOn(desk)
	js.Global().Set("pintwelve", js.FuncOf(func(_ js.Value, args []js.Value) any {
		desk.Change(unpack(args[1].String()).form(), parted(args[2].String(), "\x00"))
		return call(verbs, args[0].String(), desk.Form(), unpack(args[3].String())).pack()
	}))
	select {}
}

// call answers a verb. A fault in the core is told to the page rather than
// ending the program, which would cost the page its core.
func call(verbs map[string]verb, name string, job form.Form, args flat) (out flat) {
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
	return v(job, args)
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

// verb is one thing that the page may ask of a form, by arguments.
type verb func(job form.Form, args flat) flat

// verbsOn are all of them; the form lies on the desk.
func verbsOn(desk *sheet.Desk) map[string]verb {
	return map[string]verb{
		// answer: a form, "part" → the texts of its answers
		"answer": func(job form.Form, args flat) (out flat) {
			out.addTexts(desk.Answer(args.get("part")))
			return out
		},
		// step: a form, "name" and "by" → the field's new text
		"step": func(job form.Form, args flat) (out flat) {
			name := args.get("name")
			by := 1
			if args.get("by") == "-1" {
				by = -1
			}
			out.add(name, form.Step(job, name, by))
			return out
		},
		// next: a form, "name" → "before", "text" and "done", as truing.Next gives them
		"next": func(job form.Form, args flat) (out flat) {
			name := args.get("name")
			before, after, done := truing.Next(job, name)
			out.add("before", before)
			out.add("text", before+after)
			if done {
				out.add("done", "yes")
			}
			return out
		},
		// tap: "x" and "y" of the clock face → the hour there
		"tap": func(job form.Form, args flat) (out flat) {
			out.add("hour", truing.HourAt(args.get("x"), args.get("y")))
			return out
		},
		// units: a form, "to" → the fields that change, so that no verdict does
		"units": func(job form.Form, args flat) (out flat) {
			out.addForm(sheet.InUnits(job, args.get("to")))
			return out
		},
		// done: a form, "rows", keys for new rows with spaces between, one a move at most, and "pass" for a new pass or none → the fields that log the advice and begin it
		"done": func(job form.Form, args flat) (out flat) {
			out.addForm(truing.Done(job, parted(args.get("rows"), " "), args.get("pass")))
			return out
		},
		// again: a form, "pass" for the key of a new one → the fields that begin a new pass
		"again": func(job form.Form, args flat) (out flat) {
			out.addForm(truing.Again(job, args.get("pass")))
			return out
		},
		// near: a form, "first" and "second" for the keys of new rows → the fields that add a place close to each centre
		"near": func(job form.Form, args flat) (out flat) {
			out.addForm(truing.NearCentres(job, [2]string{args.get("first"), args.get("second")}))
			return out
		},
		// pins: a form, "throws", "apart" in degrees, "keys" for fifteen new rows → the fields that make a crank of so many throws
		"pins": func(job form.Form, args flat) (out flat) {
			out.addForm(truing.Pins(job, form.Whole(args.get("throws")), form.Whole(args.get("apart")), parted(args.get("keys"), " ")))
			return out
		},
		// plan: a form, "key" for new rows → the fields that hold the holes, and "say.plan.…"; can be slow
		"plan": func(job form.Form, args flat) (out flat) {
			out.addTexts(sheet.Plan(job, args.get("key")))
			return out
		},
		// drilled: a form, "key" for new rows → the fields that log the holes and clear the knife-edges
		"drilled": func(job form.Form, args flat) (out flat) {
			out.addForm(balance.Drilled(job, args.get("key")))
			return out
		},
		// tryout: "seed", "start" and the "throws", so many degrees "apart" → the form of a made-up crank
		"tryout": func(job form.Form, args flat) (out flat) {
			out.addForm(truing.TryOut(args.get("seed"), args.get("start"), form.Whole(args.get("throws")), form.Whole(args.get("apart"))))
			return out
		},
		// qr: "text" → "svg", or "" where no QR code holds it
		"qr": func(job form.Form, args flat) (out flat) {
			out.add("svg", draw.QR(args.get("text")))
			return out
		},
		// encode: a form → "link", or "problem"
		"encode": func(job form.Form, args flat) (out flat) {
			text, err := link.Encode(job)
			if err != nil {
				out.add("problem", err.Error())
				return out
			}
			out.add("link", text)
			return out
		},
		// crowd: a form → "problem" where a group has more rows than it may
		"crowd": func(job form.Form, args flat) (out flat) {
			for _, c := range form.Crowds(job) {
				out.add("problem", c.String())
			}
			return out
		},
		// unfit: a form → what in it no control could have made
		"unfit": func(job form.Form, args flat) (out flat) {
			for _, p := range form.Unfit(job) {
				out.add(p.Name, p.Text)
			}
			return out
		},
		// decode: "link" → the form, or "problem"
		"decode": func(job form.Form, args flat) (out flat) {
			opened, err := link.Decode(args.get("link"))
			if err != nil {
				out.add("problem", err.Error())
				return out
			}
			out.addForm(opened)
			return out
		},
	}
}

// flat is a flat object: names and texts in turn.
type flat struct{ parts []string }

func unpack(packed string) flat {
	parts := parted(packed, "\x00")
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

// get returns the text under a name.
func (f flat) get(name string) string {
	for i := 0; i < len(f.parts); i += 2 {
		if f.parts[i] == name {
			return f.parts[i+1]
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

// parted takes texts apart that stand in one.
func parted(text, by string) []string {
	if text == "" {
		return nil
	}
	return strings.Split(text, by)
}
