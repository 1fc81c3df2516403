package browser

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pintwelve/core/form"
	"pintwelve/core/link"
)

// benchOf opens the page with a job on the bench.
func benchOf(t *testing.T, job form.Form) *Page {
	t.Helper()
	p, server := bench(t)
	put(p, server, job)
	return p
}

// put puts a copy of a job on the bench, as it comes by a link.
func put(p *Page, server *Server, job form.Form) {
	p.t.Helper()
	code, err := link.Encode(job)
	require.NoError(p.t, err)
	p.Visit("about:blank")
	p.Visit(server.URL("/crank/#" + code))
	p.Ready()
	p.Press("Keep a copy")
	to(p, "true")
}

// apart is a crank read twice, nothing logged between.
func apart() form.Form {
	return form.Form{
		"pass.1.order": "1", "pass.1.drive.tir": "8", "pass.1.drive.high": "3", "pass.1.timing.tir": "8", "pass.1.timing.high": "9",
		"pass.2.order": "2", "pass.2.drive.tir": "3", "pass.2.drive.high": "9", "pass.2.timing.tir": "3", "pass.2.timing.high": "3",
	}
}

func fits(t *testing.T, p *Page) {
	t.Helper()
	Eval[bool](p, `(scrollTo(0, 0), true)`)
	assert.LessOrEqual(t, Eval[float64](p, `document.querySelector('.readings').getBoundingClientRect().bottom`), 740.0, p.Text(headline))
	assert.LessOrEqual(t, Eval[float64](p, `document.documentElement.scrollWidth`), 360.0)
}
