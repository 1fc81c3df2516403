package site

import (
	"cmp"
	"errors"
	"fmt"
	"html/template"
	"io"
	"maps"
	"regexp"
	"slices"
	"strings"

	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// A field of the job in the page's source is one line:
//
//	<field name="bigend.pin" placeholder="ends and middle">Crankpin<p class="as-read" data-say="bigend.pin"></p></field>
//
// Its content is the label, and from the first <p> on what stands under the
// control; name is the field's pattern in the form's table, which gives the
// control, the unit, how a phone's keyboard opens, and the words that a choice
// takes. The attributes say the rest:
//
//	class="wide"       a class of the field beside its own
//	when="a=b|c"       shown while field a stands at b or c
//	options="a: words | b: words"  what the choices are called, in the table's order
//	id="…"             an id in the place of the one made of the name
//	unit="…"           a unit in the place of the table's; "" for none
//	unsaid             in a row: the unit isn't read out with the label
//	if="…"             shown while the core says that
//	switches           the unit is a button that changes it
//	steps              buttons beside it go up and down by a division
//
// and any other one goes to the control.
type field struct {
	Class, When  string
	If           string
	Label, Under template.HTML
	ID           string // none within a row, where the label holds the control
	Control      template.HTML
	Less, More   template.HTML // the buttons of one that steps
}

var fieldMarkup = template.Must(template.New("field").Parse(`<div class="field{{with .Class}} {{.}}{{end}}"{{with .When}} data-when="{{.}}"{{end}}{{with .If}} data-if="{{.}}"{{end}}>
{{- if .ID}}<label for="{{.ID}}">{{.Label}}</label>{{end}}
{{- with .Less}}<div class="stepper">{{.}}{{end}}
{{- if .ID}}{{.Control}}{{else}}<label>{{.Label}} {{.Control}}</label>{{end}}
{{- with .More}}{{.}}</div>{{end}}
{{- .Under}}<p class="error"></p></div>`))

// writeField writes a field out as the page has it.
func writeField(out io.Writer, given map[string]string, content string, inRow bool) error {
	row, ok := rowNamed(given["name"])
	if !ok {
		return errors.New("the form's table has no such field")
	}
	f := field{Class: take(given, "class"), When: take(given, "when"), If: take(given, "if")}
	if label, under, more := strings.Cut(content, "<p"); more {
		f.Label, f.Under = template.HTML(label), template.HTML("<p"+under)
	} else {
		f.Label = template.HTML(content)
	}
	if !inRow {
		f.ID = cmp.Or(given["id"], idOf(row.Pattern))
		given["id"] = f.ID
	}
	stepped := has(given, "steps")
	var err error
	f.Control, err = control(row, given, string(f.Label))
	if err != nil {
		return err
	}
	if stepped {
		f.Less, f.More = stepper(row.Pattern, string(f.Label))
	}
	return fieldMarkup.Execute(out, f)
}

func take(given map[string]string, name string) string {
	value := given[name]
	delete(given, name)
	return value
}

// has takes an attribute that says all by being there.
func has(given map[string]string, name string) bool {
	_, is := given[name]
	delete(given, name)
	return is
}

// stepper makes the buttons on either side of a control, named by what is written of its
// label: in a row the legend says the rest.
func stepper(pattern, label string) (less, more template.HTML) {
	label = strings.Trim(markup.ReplaceAllString(label, ""), " ")
	button := func(by, words, sign string) template.HTML {
		return template.HTML(fmt.Sprintf(`<button type="button" data-step="%s" data-for="%s" aria-label="%s, one division %s">%s</button>`, by, pattern, label, words, sign))
	}
	return button("-1", "less", "−"), button("1", "more", "+")
}

var markup = regexp.MustCompile("<[^>]*>")

// rowNamed finds the row of the form's table by its pattern.
func rowNamed(pattern string) (*form.Field, bool) {
	rows := form.Job.Fields()
	for i := range rows {
		if rows[i].Pattern == pattern {
			return &rows[i], true
		}
	}
	return nil, false
}

// idOf names a control that stands on the page once: the pass on the bench is
// one, so its star says nothing.
func idOf(pattern string) string {
	return strings.ReplaceAll(strings.TrimPrefix(pattern, "pass.*."), ".", "-")
}

// control writes what the text is typed into or chosen from.
func control(row *form.Field, given map[string]string, label string) (template.HTML, error) {
	options, chosen := given["options"]
	delete(given, "options")
	if chosen != (row.Kind == form.Choice) {
		return "", errors.New("options belong to a choice, and to each")
	}
	if chosen {
		inside, err := optionsOf(row, options)
		return template.HTML("<select"+spelled(given)+">") + inside + "</select>", err
	}
	ownUnit, own := given["unit"]
	unsaid, switches := has(given, "unsaid"), has(given, "switches")
	delete(given, "unit")
	if given["inputmode"] == "" && (row.Kind == form.Quantity || row.Kind == form.List) {
		given["inputmode"] = keyboard(row)
	}
	input := template.HTML("<input" + spelled(given) + ">")
	inUnit := unitOf(row)
	if own {
		inUnit = named(ownUnit)
	}
	if unsaid {
		inUnit = template.HTML(strings.Replace(string(inUnit), `class="unit"`, `class="unit" aria-hidden="true"`, 1))
	}
	if switches {
		inUnit = template.HTML(`<button type="button" class="unit"><span data-unit="fine"></span><span class="unseen"> as the unit of ` + template.HTMLEscapeString(label) + `</span></button>`)
	}
	if inUnit == "" {
		return input, nil
	}
	if longUnit(row) {
		return `<span class="with-unit long-unit">` + input + inUnit + `</span>`, nil
	}
	return `<span class="with-unit">` + input + inUnit + `</span>`, nil
}

// keyboard opens without letters where neither a sign nor a second figure is
// ever wanted.
func keyboard(row *form.Field) string {
	if row.Kind == form.List || row.Min < 0 {
		return "text"
	}
	return "decimal"
}

// unitOf is the unit as it stands in the field: fine ones are the dials', which
// the core names, and an hour is written as one.
func unitOf(row *form.Field) template.HTML {
	switch {
	case row.Kind != form.Quantity && row.Kind != form.List, row.Unit == unit.OClock:
		return ""
	case row.Metric != row.Unit:
		return `<span class="unit" data-unit="fine"></span>`
	}
	return named(row.Unit.Name())
}

// longUnit tells whether a unit takes more room than a field has beside a figure.
func longUnit(row *form.Field) bool { return row.Unit == unit.KgPerCubicMetre }

// named is a unit of some name; none where that is blank.
func named(name string) template.HTML {
	if name == "" {
		return ""
	}
	return template.HTML(`<span class="unit">` + template.HTMLEscapeString(name) + `</span>`)
}

// optionsOf writes the choices out, which must be the table's.
func optionsOf(row *form.Field, named string) (template.HTML, error) {
	var out strings.Builder
	all := strings.Split(named, "|")
	if len(all) != len(row.Choices) {
		return "", fmt.Errorf("%d options, the table has %d: %s", len(all), len(row.Choices), strings.Join(row.Choices, ", "))
	}
	for i, one := range all {
		value, words, ok := strings.Cut(one, ":")
		if value = strings.TrimSpace(value); !ok || value != row.Choices[i] {
			return "", fmt.Errorf("option %q where the table has %q", value, row.Choices[i])
		}
		fmt.Fprintf(&out, `<option value="%s">%s</option>`, template.HTMLEscapeString(value), template.HTMLEscapeString(strings.TrimSpace(words)))
	}
	return template.HTML(out.String()), nil
}

// spelled writes attributes in one order, so that two builds are alike.
func spelled(given map[string]string) string {
	var out strings.Builder
	for _, name := range slices.Sorted(maps.Keys(given)) {
		fmt.Fprintf(&out, ` %s="%s"`, name, template.HTMLEscapeString(given[name]))
	}
	return out.String()
}
