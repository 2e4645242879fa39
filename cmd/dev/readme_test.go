package main

import (
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

var markdownLink = regexp.MustCompile(`\]\(([^)#]+)(#[^)]*)?\)`)

// Every file that the documents link to is there.
func TestLinksOfTheDocuments(t *testing.T) {
	documents := []string{"README.md", "DEVELOPERS.md"}
	guides, err := filepath.Glob("../../web/site/help/*.md")
	if err != nil || len(guides) == 0 {
		t.Fatalf("%d guides, %v", len(guides), err)
	}
	for _, guide := range guides {
		documents = append(documents, "web/site/help/"+filepath.Base(guide))
	}
	seen := 0
	for _, name := range documents {
		text, err := os.ReadFile("../../" + name)
		if err != nil {
			t.Fatal(err)
		}
		for _, found := range markdownLink.FindAllStringSubmatch(string(text), -1) {
			if seen++; strings.Contains(found[1], "://") {
				continue
			}
			if to := path.Join(path.Dir(name), found[1]); !exists("../../" + to) {
				t.Errorf("%s leads to %s, which is not there", name, to)
			}
		}
	}
	if seen < 10 {
		t.Errorf("%d links in all", seen)
	}
}

// The README shows two pictures, small enough for a slow line.
func TestPicturesOfTheReadme(t *testing.T) {
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	shown := regexp.MustCompile(`!\[[^\]]{20,}\]\((static/readme/[a-z]+\.webp)\)`).FindAllStringSubmatch(string(text), -1)
	if len(shown) != 2 {
		t.Fatalf("%d pictures with words for those who cannot see them", len(shown))
	}
	for _, found := range shown {
		info, err := os.Stat("../../" + found[1])
		if err != nil {
			t.Fatal(err)
		}
		if info.Size() == 0 || info.Size() > mostPicture {
			t.Errorf("%s has %d bytes; at most %d", found[1], info.Size(), mostPicture)
		}
	}
}
