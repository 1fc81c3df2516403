package main

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/form"
	"pintwelve/core/sheet"
	"pintwelve/testdata/links"
)

// What the README's tables name some job is answered with, and what a job is
// answered with the README names: whole, by a pattern such as found.FIELD, or by
// the last of its parts.
func TestTheReadmeNamesTheAnswers(t *testing.T) {
	text, err := os.ReadFile("README.md")
	require.NoError(t, err)
	answered := answeredNames(t)
	told := ticked(string(text))
	require.Greater(t, len(told), 100)

	for name := range answered {
		assert.True(t, told.names(name), "%s is answered, and the README has no word of it", name)
	}
	for _, row := range regexp.MustCompile(`(?m)^\| (.*?) \| (.*) \|$`).FindAllStringSubmatch(string(text), -1) {
		wanted := ticked(row[1])
		for token, pattern := range ticked(row[2]) {
			if strings.Contains(token, "_") {
				wanted[token] = pattern
			}
		}
		for token, pattern := range wanted {
			if _, _, isField := form.Job.Lookup(token); isField {
				continue
			}
			assert.True(t, isAnswered(token, pattern, answered), "the tables have %s, which no job is answered with", token)
		}
	}
}

// tokens are what stands between backticks, with the names that each stands for.
type tokens map[string]*regexp.Regexp

// ticked takes "…", FIELD and KEY for anything.
func ticked(text string) tokens {
	all := tokens{}
	for _, m := range regexp.MustCompile("`([^`\n]+)`").FindAllStringSubmatch(text, -1) {
		all[m[1]] = regexp.MustCompile("^" + regexp.MustCompile(`…|FIELD|KEY`).ReplaceAllString(regexp.QuoteMeta(m[1]), ".+") + "$")
	}
	return all
}

// names tells whether a name is told of: of what is in a list or an object, the
// last part; each throw's figures have the names of one throw's.
func (all tokens) names(name string) bool {
	if of, ok := strings.CutPrefix(name, "balance.throws/"); ok {
		name = "balance." + of[len("0/"):]
	}
	if all[last(name)] != nil {
		return true
	}
	for _, pattern := range all {
		if !strings.Contains(name, "/") && pattern.MatchString(name) {
			return true
		}
	}
	return false
}

// isAnswered tells whether a name of the tables is one, the last part of one, or
// the list or object that it is in.
func isAnswered(token string, pattern *regexp.Regexp, answered map[string]bool) bool {
	for name := range answered {
		if within, _, _ := strings.Cut(name, "/"); pattern.MatchString(name) || pattern.MatchString(within) || token == last(name) {
			return true
		}
	}
	return false
}

// last is the last part of a name that is no number.
func last(name string) string {
	parts := strings.FieldsFunc(name, func(c rune) bool { return c == '/' || c == '.' })
	for len(parts) > 1 && strings.Trim(parts[len(parts)-1], "0123456789") == "" {
		parts = parts[:len(parts)-1]
	}
	return parts[len(parts)-1]
}

func answeredNames(t *testing.T) map[string]bool {
	jobs := tellingJobs()
	for _, given := range links.All(t) {
		jobs = append(jobs, given.Job)
	}
	names := map[string]bool{}
	for _, job := range jobs {
		for _, e := range sheet.Answer(job, "").Entries {
			if kind, _, _ := strings.Cut(e.Name, "."); kind != "picture" && kind != "error" {
				names[e.Name] = true
			}
		}
	}
	return names
}

// tellingJobs are answered with what the given links' jobs aren't.
func tellingJobs() []form.Form {
	read := form.Form{"pass.1.drive.tir": "4", "pass.1.drive.high": "5.50", "pass.1.timing.tir": "4", "pass.1.timing.high": "9"}
	parts := form.Form{
		"weight.piston": "300", "weight.rings": "20", "weight.gudgeon": "100", "weight.clips": "2", "weight.small": "128", "weight.big": "340",
		"weight.rod": "468", "weight.crankpin": "420", "throw": "40",
	}
	twin := read.With(form.Form{"drive.pin": "100", "timing.pin": "100", "pin.b.at": "160", "pin.b.angle": "180", "pin.b.measured": "180.4", "pin.b.order": "1", "dial.a.at": "120", "dial.a.order": "1", "pass.1.dial.a.tir": "8", "pass.1.dial.a.high": "3"})
	return []form.Form{
		parts.With(form.Form{
			"drive.pin": "100", "pin.b.order": "1", "pin.b.at": "200", "pin.b.angle": "180", "knife.apart": "apart",
			"knife.whole.hung": "202", "pin.b.whole.hung": "190", "hole.a.radius": "60", "hole.a.hour": "2", "hole.a.drill": "10", "hole.a.depth": "10",
		}),
		twin, twin.With(form.Form{"dial.b.at": "140", "dial.b.order": "2", "pass.1.dial.b.tir": "7", "pass.1.dial.b.high": "3"}),
		read.With(form.Form{
			"pass.1.gap12": "20", "pass.1.gap3": "20.1", "pass.1.gap6": "20", "pass.1.gap9": "20.1", "pass.1.edge12": "1", "pass.1.edge3": "2", "pass.1.edge9": "3",
		}),
		parts.With(form.Form{
			"knife.whole.hung": "202", "knife.whole.hour": "3", "knife.whole.weight": "5", "knife.whole.radius": "80", "target": "factor", "target.factor": "66",
			"balance.whole": "9 kg", "balance.rolls": "1", "frame.speeds": "1000 2000",
			"hole.a.wheel": "drive", "hole.a.radius": "60", "hole.a.hour": "2", "hole.a.drill": "10", "hole.a.depth": "10",
		}),
		{
			"wheel.drive.diameter": "200", "wheel.drive.width": "28", "wheel.drive.bore": "24", "lighten.top": "9000",
			"cut.3.kind": "blind", "cut.3.holes": "6", "cut.3.circle": "130", "cut.3.drill": "12", "cut.3.depth": "6",
		},
		{"bigend.pin": "25", "bigend.bore": "25.03", "bigend.bush": "32", "bigend.eye": "32.05"},
		{"bigend.kind": "rollers", "bigend.pin": "30", "bigend.roller": "5 5 5", "bigend.eye": "40.02"},
		{"joint.a.pin": "25.06", "joint.a.eye": "25", "joint.a.need": "200", "joint.b.form": "taper", "joint.b.taper": "3", "joint.b.pin": "25", "joint.b.draw": "1", "joint.b.need": "50"},
		{"main.a.bore": "25", "main.a.outside": "52", "main.a.seat": "25.0085", "main.a.housing": "51.97", "heat.clear": "0"},
		{"float.faces": "100", "float.crank": "98.9", "float.shims": "0.1 0.3 0.5", "float.caseleft": "50", "float.crankleft": "49.35"},
	}
}
