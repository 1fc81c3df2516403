// Package jobsheet is the step "Job sheet": it sums a job up, for the customer in
// plain words and for the file in figures.
package jobsheet

import (
	"strings"

	"pintwelve/core/bench"
	"pintwelve/core/draw"
	"pintwelve/core/form"
	"pintwelve/core/unit"
)

// Name is the part by which the page asks for the sheet.
const Name = "sheet"

// Of returns the step that sums up what the steps say, in their order.
func Of(steps []*bench.Step) bench.Step {
	return bench.Step{Name: Name, Answer: func(a *bench.Answers, r *form.Reader) {
		known(a, r)
		shop(a, r)
		for _, s := range steps {
			switch {
			case s.OnSheet != nil:
				s.OnSheet(a, r)
			case s.Holds(r.Form):
				a.Say("sheet.has."+s.Name, "yes")
				s.Fill(a, r)
			}
		}
		tabled(a)
		outInCases(a)
	}}
}

// outInCases says where the sheet says how the crank goes that it was read out of true
// in its cases, which come after.
func outInCases(a *bench.Answers) {
	if !a.OutInCases() {
		return
	}
	for i := range a.Entries {
		switch e := &a.Entries[i]; e.Name {
		case "say.sheet.plain":
			e.Text += plainOutInCases
		case "say.sheet.line":
			e.Text += lineOutInCases
		}
	}
}

// tabled says whether the sheet's table of before and after has a row, beyond those of
// the run-out.
func tabled(a *bench.Answers) {
	for _, row := range [...]string{"found.drive", "weight.found", "factor.found"} {
		if _, ok := a.Get("say.sheet." + row); ok {
			a.Say("sheet.table", "yes")
			return
		}
	}
}

// known says what the job is known by.
func known(a *bench.Answers, r *form.Reader) {
	a.Say("sheet.title", r.Text(form.Number))
	a.Say("sheet.engine", r.Text(form.Engine))
	a.Say("sheet.owner", r.Text(form.Owner))
	a.Say("sheet.in", dateWords(r.Text(form.DateIn)))
	a.Say("sheet.out", dateWords(r.Text(form.DateOut)))
	a.Say("sheet.notes", r.Text(form.Notes))
}

// shop says who did the work, and draws their mark.
func shop(a *bench.Answers, r *form.Reader) {
	a.Say("shop.name", r.Text(form.ShopName))
	a.Say("shop.telephone", r.Text(form.ShopTelephone))
	if letters := strings.TrimFunc(r.Text(form.ShopMark), unit.IsSpace); letters != "" {
		shape := map[string]draw.Shape{"hexagon": draw.Hexagon, "shield": draw.Shield}[r.Word(form.ShopShape)]
		a.Text("picture.shop", draw.Shop(draw.ShopMark{Prefix: "shop", Letters: letters, Shape: shape}))
	}
	if r.Text(form.ShopName)+r.Text(form.ShopTelephone)+r.Text(form.ShopMark) != "" {
		a.Say("sheet.shop", "yes")
	}
}
