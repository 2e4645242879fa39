package sample

import (
	"regexp"
	"strings"
	"testing"
)

// Every page has an address of its own, and renders to a whole page that is the
// same each time.
func TestPagesRender(t *testing.T) {
	address := regexp.MustCompile(`^[a-z-]+/[a-z0-9-]+/[a-z0-9-]+$`)
	seen := map[string]bool{}
	for _, p := range Pages() {
		if !address.MatchString(p.At()) {
			t.Errorf("%q is no address", p.At())
		}
		if seen[p.At()] {
			t.Errorf("%s comes twice", p.At())
		}
		seen[p.At()] = true
		var first, again strings.Builder
		if err := p.View.Render(t.Context(), &first); err != nil {
			t.Errorf("%s: %v", p.At(), err)
		}
		if err := p.View.Render(t.Context(), &again); err != nil || first.String() != again.String() {
			t.Errorf("%s is another page the second time: %v", p.At(), err)
		}
		if got := first.String(); !strings.HasPrefix(got, "<!doctype html>") || !strings.Contains(got, "<h1") || !strings.HasSuffix(got, "</html>") {
			t.Errorf("%s is not a whole page with a heading: %.80q", p.At(), got)
		}
		if strings.Contains(first.String(), "NaN") {
			t.Errorf("%s shows a number that is none", p.At())
		}
	}
	if len(seen) == 0 {
		t.Error("no pages")
	}
}
