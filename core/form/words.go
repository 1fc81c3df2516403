package form

import (
	"strconv"
	"strings"
)

// The words of the form, which stand beside a field: each sentence once, its figures
// named, so that another language is another such file.

const (
	tooManyFields = "the job holds too many fields"
	noSuchField   = "no field has this name"
	tickWords     = "a tick is “yes” or blank"
	orderWords    = "an order is a whole number"
)

func outOfRange(given, least, most string) string {
	return "“" + given + "” is out of range: " + least + " to " + most + " will do"
}

func kilogramsOrGrams(given string) string {
	return "“" + given + "” would be grams: write “" + given + " kg”, or “" + given + " g” where that is meant"
}

// inEntry says which entry of a list a fault is in.
func inEntry(number int, fault string) string { return "Entry " + strconv.Itoa(number) + ": " + fault }

func notOneOf(given string, choices []string) string {
	return "“" + given + "” is not one of: " + strings.Join(choices, ", ")
}

func longerThan(bytes int) string { return "the text is longer than " + strconv.Itoa(bytes) + " bytes" }

// crowdWords tell of too many rows: "4250 passes; a job holds 200 at most".
func crowdWords(rows int, what string, most int) string {
	return strconv.Itoa(rows) + " " + what + "; a job holds " + strconv.Itoa(most) + " at most"
}

func allIn(unit string) string { return "all in " + unit }
