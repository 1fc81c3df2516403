package browser

import (
	"strings"
	"testing"

	"github.com/chromedp/cdproto/accessibility"
	"github.com/chromedp/cdproto/dom"
	"github.com/stretchr/testify/assert"
)

func TestEverySectionSaysWhatItIsFor(t *testing.T) {
	p, _ := bench(t)
	silent := Eval[[]string](p, `[...document.querySelectorAll('main h2')]
		.filter((h) => !h.closest('summary, #paper') && h.textContent !== 'Take care' && h.nextElementSibling?.tagName !== 'P')
		.map((h) => h.textContent)`)
	assert.Empty(t, silent)
}

// Each method is reached from the page of them all and stands by its fields, folded
// away until it is asked for, as a picture with a name and a description.
func TestHowEachIsMeasuredStandsByItsFields(t *testing.T) {
	p, _ := bench(t)
	for id, field := range map[string]string{
		"how-feel": "found.rock", "how-two-bars": "found.bendbig", "how-eye": "bigend.eye", "how-swing": "", "how-rod-ends": "weight.small",
		"how-knife-edges": "knife.whole.hung", "how-float": "float.faces",
	} {
		shown := `document.querySelector('#` + id + ` > svg')?.checkVisibility() ?? false`
		assert.False(t, Eval[bool](p, shown), id)
		to(p, "how")
		Eval[bool](p, `(document.querySelector('[href="#`+id+`"]').click(), true)`)
		p.Until(shown)
		assert.True(t, Eval[bool](p, `(({ top, bottom }) => top >= 0 && bottom <= innerHeight)(document.getElementById('`+id+`').getBoundingClientRect())`), "%s is seen whole", id)
		assert.Regexp(t, `^image: .+: .+\.$`, named(p, "#"+id+" > svg"), id)
		if field != "" {
			assert.True(t, Eval[bool](p, `document.getElementById('`+id+`').closest('.sheet').querySelector('[name="`+field+`"]').checkVisibility()`), id)
		}
	}
}

// named is the role, name and description that a screen reader gets of an element.
func named(p *Page, selector string) string {
	p.t.Helper()
	root := send(p, dom.GetDocument, dom.GetDocumentParams{}).Root
	node := send(p, dom.QuerySelector, dom.QuerySelectorParams{NodeID: root.NodeID, Selector: selector}).NodeID
	seen := send(p, accessibility.GetPartialAXTree, accessibility.GetPartialAXTreeParams{NodeID: node}).Nodes[0]
	said := ""
	for _, each := range []*accessibility.Value{seen.Role, seen.Name, seen.Description} {
		said += ": " + strings.Trim(string(each.Value), `"`)
	}
	return strings.TrimPrefix(said, ": ")
}

func TestHowToMeasureStandsOnThePhone(t *testing.T) {
	p, server, b := benchIn(t)
	p.Until(`navigator.serviceWorker.controller !== null`)
	address := server.URL("/crank/#how")
	server.Stop()
	tab := b.Tab()
	tab.Phone()
	tab.WithoutHTTPCache()
	tab.Visit(address)
	tab.Ready()
	assert.Equal(t, 3, Eval[int](tab, `[...document.querySelectorAll('#how figure svg')].filter((e) => e.checkVisibility()).length`))
	assert.Contains(t, tab.Text("#how"), "half the stroke")
	assert.LessOrEqual(t, Eval[float64](tab, `document.documentElement.scrollWidth`), 360.0)
}
