package site

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"strokeledger/analysis/shotsfile"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// Every file of the folder is a guide, its first line is its heading, and its
// links to files are links to pages of the app.
func TestGuides(t *testing.T) {
	files, err := os.ReadDir("help")
	if err != nil {
		t.Fatal(err)
	}
	if len(files) != len(guideNames) {
		t.Errorf("%d files, %d guides", len(files), len(guideNames))
	}
	address := regexp.MustCompile(`href="([^"]*)"`)
	for _, name := range guideNames {
		p, ok := NewGuidePage(layout.Page{}, name)
		if !ok || p.Title == "" || !strings.Contains(p.Text, ">"+p.Title+"</h1>") || strings.Count(p.Text, "<h1") != 1 {
			t.Errorf("%s has the title %q: %.80s", name, p.Title, p.Text)
		}
		if len(p.Others) != len(guideNames)-1 {
			t.Errorf("%s leads to %d others", name, len(p.Others))
		}
		for _, found := range address.FindAllStringSubmatch(p.Text, -1) {
			if !slices.ContainsFunc(guideNames, func(other string) bool { return paths.Guide(other) == found[1] }) {
				t.Errorf("%s leads to %s", name, found[1])
			}
		}
		if strings.Contains(p.Text, "style=") || strings.Contains(p.Text, "raw HTML") {
			t.Errorf("%s has styles or HTML of its own", name)
		}
	}
}

func TestGuideOfAnotherName(t *testing.T) {
	for _, name := range []string{"", "nothing", "../guide", "backup.md"} {
		if _, ok := NewGuidePage(layout.Page{}, name); ok {
			t.Errorf("there is a guide %q", name)
		}
	}
}

// The guide to files names each column of a shots file, and its example is one.
func TestGuideToFiles(t *testing.T) {
	source, err := guideFiles.ReadFile("help/files.md")
	if err != nil {
		t.Fatal(err)
	}
	var header strings.Builder
	if err := shotsfile.NewWriter(&header).Flush(); err != nil {
		t.Fatal(err)
	}
	for column := range strings.SplitSeq(strings.TrimSpace(header.String()), ",") {
		if !strings.Contains(string(source), "`"+column+"`") {
			t.Errorf("no word about %s", column)
		}
	}
	_, example, _ := strings.Cut(string(source), "```\n")
	example, _, _ = strings.Cut(example, "```")
	rounds := 0
	for r, err := range shotsfile.NewReader(strings.NewReader(example), shotsfile.Limits{}).Rounds() {
		if err != nil {
			t.Fatal(err)
		}
		if rounds++; r.Holes[0].Strokes() != 5 {
			t.Errorf("%d strokes", r.Holes[0].Strokes())
		}
	}
	if rounds != 1 {
		t.Errorf("%d rounds", rounds)
	}
}
