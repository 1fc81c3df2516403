// Command answer answers a job file on standard output.
//
//	go run ./tools/answer job.json
//	go run ./tools/answer - < job.json
//
// A job file is flat JSON: the names of core/form's table, each with the text
// as it would be typed (a bare number may stand for its text). The answers are
// JSON too, in mm and in hours of the end that the job is seen from. A file
// that can't be read, or a figure that can't be used, ends it with a message on
// standard error and exit code 2.
package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"strconv"

	"pintwelve/core/bench"
	"pintwelve/core/form"
	"pintwelve/core/sheet"
)

func main() {
	if err := run(os.Args[1:], os.Stdin, os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "answer:", err)
		os.Exit(2)
	}
}

func run(args []string, stdin io.Reader, stdout io.Writer) error {
	if len(args) != 1 {
		return errors.New("give one job file, or - for standard input")
	}
	text, err := read(args[0], stdin)
	if err != nil {
		return err
	}
	job, err := parse(text)
	if err != nil {
		return err
	}
	answers := sheet.Answer(job, "")
	if err := faults(job, answers); err != nil {
		return err
	}
	out := json.NewEncoder(stdout)
	out.SetEscapeHTML(false)
	out.SetIndent("", "  ")
	return out.Encode(nest(answers))
}

// mostBytes is more than any job can be.
const mostBytes = 4 << 20

func read(name string, stdin io.Reader) ([]byte, error) {
	from := stdin
	if name != "-" {
		file, err := os.Open(name)
		if err != nil {
			return nil, err
		}
		defer file.Close()
		from = file
	}
	text, err := io.ReadAll(io.LimitReader(from, mostBytes+1))
	if err == nil && len(text) > mostBytes {
		err = fmt.Errorf("a job file has at most %d bytes", mostBytes)
	}
	return text, err
}

// parse reads a flat object of texts and numbers.
func parse(text []byte) (form.Form, error) {
	var flat map[string]any
	if err := json.Unmarshal(text, &flat); err != nil {
		return nil, fmt.Errorf("not a flat JSON object: %w", err)
	}
	job := form.Form{}
	for name, value := range flat {
		switch v := value.(type) {
		case string:
			job[name] = v
		case float64:
			job[name] = strconv.FormatFloat(v, 'f', -1, 64)
		default:
			return nil, fmt.Errorf("%q holds %s: a text or a number will do", name, kindOf(value))
		}
	}
	return job, nil
}

// kindOf names what a field can't hold; its content may be as long as a file.
func kindOf(value any) string {
	switch value.(type) {
	case []any:
		return "a list"
	case map[string]any:
		return "an object"
	case bool:
		return "true or false"
	}
	return "null"
}

// faults says what is wrong with a job: with a field by itself, or with what
// the answers make of it.
func faults(job form.Form, answers *bench.Answers) error {
	var all []error
	for _, p := range form.Check(job) {
		all = append(all, fmt.Errorf("%s: %s", p.Name, p.Text))
	}
	if all == nil {
		all = answers.Faults()
	}
	return errors.Join(all...)
}
