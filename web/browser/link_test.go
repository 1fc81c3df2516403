package browser

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
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
	link := linkOf(p)
	for _, address := range []string{mangled(link), link + ".", link + ",\u00a0", link + "_", link + "%C2%A0", strings.Replace(link, "#", "?utm_source=mail#*", 1) + "*"} {
		p.Visit("about:blank")
		p.Visit(address)
		p.Ready()
		assert.Contains(t, p.Text("#notice"), "came by a link", address)
		assert.Contains(t, p.Text("#paper"), "4 thou, high at 3", address)
	}
	p.Visit("about:blank")
	p.Visit(mangled(link[:len(link)-1]))
	p.Ready()
	assert.Contains(t, p.Text("#notice"), "damaged")
}
