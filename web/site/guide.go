package site

import (
	"bytes"
	"embed"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/parser"

	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// GuidePage is a longer page of help: files, commands, and how to run the app.
// Its text is a Markdown file in the folder help, so that it reads as well in
// the repository.
type GuidePage struct {
	layout.Page
	Text   string      // HTML of the text, with its heading
	Others []GuideLink // the other guides
}

// GuideLink leads to a guide.
type GuideLink struct{ At, Name string }

//go:embed help/*.md
var guideFiles embed.FS

// guideNames are the guides, in the order in which they are listed.
var guideNames = []string{"files", "commands", "settings", "phone", "proxy", "processes", "backup"}

// guide is one text, ready to be shown.
type guide struct{ name, heading, html string }

// guides makes all of them, once. Raw HTML in a text is left out.
var guides = sync.OnceValue(func() []guide {
	writer := goldmark.New(goldmark.WithExtensions(extension.Table), goldmark.WithParserOptions(parser.WithAutoHeadingID()))
	var all []guide
	for _, name := range guideNames {
		source, err := guideFiles.ReadFile("help/" + name + ".md")
		if err != nil {
			panic("site: " + err.Error())
		}
		var text bytes.Buffer
		if err := writer.Convert(source, &text); err != nil {
			panic(fmt.Sprintf("site: %s: %v", name, err))
		}
		heading, _, _ := strings.Cut(strings.TrimPrefix(string(source), "# "), "\n")
		all = append(all, guide{name, heading, linked(text.String())})
	}
	return all
})

// fileLink is a link from one guide to another as the repository has it.
var fileLink = regexp.MustCompile(`href="([a-z]+)\.md(#[a-z-]+)?"`)

// linked leads links to files to the pages of the app, and lets tables that are
// wider than a phone be moved.
func linked(html string) string {
	html = fileLink.ReplaceAllString(html, `href="`+paths.Guide("$1")+`$2"`)
	html = strings.ReplaceAll(html, "<pre>", `<pre tabindex="0">`)
	return strings.ReplaceAll(strings.ReplaceAll(html, "<table>", `<div class="scroll-area" tabindex="0"><table class="plain-table">`), "</table>", "</table></div>")
}

// NewGuidePage makes the page of a guide; there is none by another name.
func NewGuidePage(page layout.Page, name string) (GuidePage, bool) {
	i := slices.Index(guideNames, name)
	if i < 0 {
		return GuidePage{}, false
	}
	g := guides()[i]
	page.Title = g.heading
	p := GuidePage{Page: page, Text: g.html}
	for _, other := range guideLinks() {
		if other.At != paths.Guide(name) {
			p.Others = append(p.Others, other)
		}
	}
	return p, true
}

func guideLinks() []GuideLink {
	var all []GuideLink
	for _, g := range guides() {
		all = append(all, GuideLink{paths.Guide(g.name), g.heading})
	}
	return all
}
