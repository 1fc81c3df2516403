package jobsheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestDatesAreWrittenAsPeopleReadThem(t *testing.T) {
	for date, expected := range map[string]string{
		"2026-03-09": "9 Mar 2026", "2026-12-31": "31 Dec 2026", "": "", "in March": "in March", "2026-13-01": "2026-13-01", "2026-00-01": "2026-00-01", "2026-/:-01": "2026-/:-01",
	} {
		assert.Equal(t, expected, dateWords(date), date)
	}
}
