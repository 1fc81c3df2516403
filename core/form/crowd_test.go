package form

import (
	"maps"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"

	"pintwelve/testdata/links"
)

// rowsOf is a form with so many rows of a group.
func rowsOf(group, field string, n int) Form {
	f := Form{}
	for i := range n {
		f[group+"."+strconv.FormatInt(int64(i), 36)+"."+field] = "1"
	}
	return f
}

func TestAGroupHasItsMostRows(t *testing.T) {
	assert.Empty(t, Crowds(rowsOf("pass", "drive.tir", 200)))
	f := rowsOf("pass", "drive.tir", 4250)
	maps.Copy(f, rowsOf("pass.done.done", "kind", 21)) // a pass whose key is a group's word
	crowds := Crowds(f)
	assert.Equal(t, []Crowd{{"pass", 4251, 200, "passes"}, {"pass.done.done", 21, 20, "moves in one pass"}}, crowds)
	assert.Equal(t, "4251 passes; a job holds 200 at most", crowds[0].String())
	assert.Empty(t, Crowds(rowsOf("pass", "done.a.kind", 200)), "each pass has its own")
}

// Every group of the table has its bound, and every bound a group.
func TestEveryGroupIsBounded(t *testing.T) {
	for group := range Job.groups {
		assert.Positive(t, mostRows[group].rows, group)
		assert.NotEmpty(t, mostRows[group].what, group)
	}
	assert.Len(t, mostRows, len(Job.groups))
}

func TestGivenLinksAreNotCrowded(t *testing.T) {
	for _, g := range links.All(t) {
		assert.Empty(t, Crowds(g.Job), g.Name)
	}
}

// A crowded file is told in one line; the rows that the page has to leave out
// are told by name.
func TestCheckTellsOfACrowd(t *testing.T) {
	f := rowsOf("pass", "drive.tir", 203)
	assert.Equal(t, []Problem{{"", "203 passes; a job holds 200 at most"}}, Check(f))
	var left []string
	for _, p := range Unfit(f) {
		left = append(left, p.Name)
	}
	keys := f.Rows("pass")
	assert.ElementsMatch(t, []string{"pass." + keys[200] + ".drive.tir", "pass." + keys[201] + ".drive.tir", "pass." + keys[202] + ".drive.tir"}, left)
}
