package jobsheet

import (
	"strings"

	"pintwelve/core/bench"
)

const months = "JanFebMarAprMayJunJulAugSepOctNovDec"

// What is added where the crank was read out of true in its cases.
const (
	plainOutInCases = " Read in its cases it is out of true."
	lineOutInCases  = "; out of true in its cases"
)

// dateWords writes a date as people read it: "9 Mar 2026". What is no date
// stands as it is.
func dateWords(date string) string {
	if len(date) != 10 || date[4] != '-' || date[7] != '-' {
		return date
	}
	month := 10*int(date[5]-'0') + int(date[6]-'0')
	if month < 1 || month > 12 {
		return date
	}
	return bench.Fill("% % %", strings.TrimPrefix(date[8:], "0"), months[3*month-3:3*month], date[:4])
}
