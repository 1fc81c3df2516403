package browser

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/form"
	"pintwelve/core/link"
)

// mangled is a link as a mail and a chat leave it: a soft line break in it, a
// sign percent-encoded, and more behind it.
func mangled(link string) string {
	before, fragment, _ := strings.Cut(link, "#")
	return before + "#%41" + fragment[1:9] + "=\r\n" + fragment[9:] + ").&fbclid=IwAR0-x"
}

func TestAMangledLinkOpens(t *testing.T) {
	p, _ := bench(t)
	twist(p)
	whole := linkOf(p)
	for _, address := range []string{mangled(whole), whole + ".", whole + ",\u00a0", whole + "_", whole + "%C2%A0", strings.Replace(whole, "#", "?utm_source=mail#*", 1) + "*"} {
		p.Visit("about:blank")
		p.Visit(address)
		p.Ready()
		assert.Contains(t, p.Text("#sheet"), "came by a link", address)
		assert.Contains(t, p.Text("#paper"), "4 thou, high at 3", address)
	}
	p.Visit("about:blank")
	p.Visit(mangled(whole[:len(whole)-1]))
	p.Ready()
	assert.Contains(t, p.Text("#notice"), "damaged")
	p.Visit(whole)
	p.Until(`document.documentElement.classList.contains('guest')`)
	assert.True(t, Eval[bool](p, `document.getElementById('notice').hidden`), "whole, it is not said to be damaged")
}

// A job holds 200 passes and no more, so that no page is held up by one; at the
// bound nothing is lost.
func TestACrowdOfPassesIsRefused(t *testing.T) {
	p, server := bench(t)
	job := form.Form{"bench": "1"}
	for i := range 200 {
		job["pass."+strconv.Itoa(i+1)+".drive.tir"] = "4"
	}
	text, err := link.Encode(job)
	require.NoError(t, err)
	p.Visit("about:blank")
	p.Visit(server.URL("/crank/#" + text))
	p.Ready()
	p.Press("Keep a copy")
	assert.Equal(t, "4", p.Value("Drive run-out"))
	Eval[bool](p, `(document.getElementById('again').click(), true)`)
	assert.Equal(t, "Nothing was added: that would be 201 passes; a job holds 200 at most.", p.Text("#notice-text"))
	assert.Equal(t, 200, Eval[int](p, `document.querySelectorAll('.pass').length`))
}
