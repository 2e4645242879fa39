package main

import (
	"slices"
	"strings"
	"testing"
)

func TestIdleTemplatesAreFound(t *testing.T) {
	source := "package x\n\nfunc (p Page) View() templ.Component {\n\treturn made(func() {\n\t\tok()\n\t})\n}\n\nfunc idle() templ.Component {\n\treturn made(func() {\n\t\tok()\n\t})\n}\n"
	profile := "mode: set\nstrokeledger/web/x/x_templ.go:3.1,4.20 1 1\nstrokeledger/web/x/x_templ.go:4.20,6.3 1 1\nstrokeledger/web/x/x_templ.go:9.1,10.20 1 1\nstrokeledger/web/x/x_templ.go:10.20,12.3 1 0\n"
	ran, err := ranLines(strings.NewReader(profile))
	if err != nil {
		t.Fatal(err)
	}
	const name = "web/x/x_templ.go"
	got, err := idleTemplates(name, []byte(source), ran[name])
	if err != nil || !slices.Equal(got, []string{name + ": idle"}) {
		t.Errorf("%v, %v", got, err)
	}
	if got, err := idleTemplates(name, []byte(source), nil); err != nil || !slices.Equal(got, []string{name + ": Page.View", name + ": idle"}) {
		t.Errorf("%v, %v", got, err)
	}
	if _, err := ranLines(strings.NewReader("mode: set\nx.go:1\n")); err == nil {
		t.Error("a broken profile is read")
	}
}

// A new template comes with a page of web/sample that shows it.
func TestTemplatesAreShownInTheGallery(t *testing.T) {
	idle, err := unshown("../..")
	if err != nil {
		t.Fatal(err)
	}
	if len(idle) > 0 {
		t.Errorf("%d templates are shown by no page of web/sample:\n%s", len(idle), strings.Join(idle, "\n"))
	}
}
