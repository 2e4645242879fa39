package site

import (
	"slices"
	"strings"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/shotsfile"
	"strokeledger/web/form"
	"strokeledger/web/layout"
)

// Every example of the page of help reads as it says.
func TestExamplesOfHelp(t *testing.T) {
	for _, l := range NewHelpPage(layout.Page{}).Lines {
		read := form.ParseLine(l.Line, golf.CardHole{Number: 1, Par: l.Par, Length: helpLength * golf.Yard}, form.StandardUnits)
		if len(read.Problems) > 0 || read.Hole.Strokes() != l.Score || read.Hole.PickedUp != strings.HasSuffix(l.Line, "-") {
			t.Errorf("%s: %d strokes, %v", l.Line, read.Hole.Strokes(), read.Problems)
		}
	}
}

// The page names each column that a shots file may have, and no other.
func TestColumnsOfHelp(t *testing.T) {
	var told []string
	for _, c := range NewHelpPage(layout.Page{}).Columns {
		told = append(told, strings.Split(c.Term, ", ")...)
	}
	var file strings.Builder
	if err := shotsfile.NewWriter(&file).Flush(); err != nil {
		t.Fatal(err)
	}
	header, _, _ := strings.Cut(file.String(), "\n")
	known := strings.Split(strings.TrimSpace(header), ",")
	slices.Sort(told)
	slices.Sort(known)
	if !slices.Equal(told, known) {
		t.Errorf("%q, want %q", told, known)
	}
}
