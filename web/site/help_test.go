package site

import (
	"strings"
	"testing"

	"strokeledger/analysis/golf"
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

// A hole that was picked up counts the strokes played and what was left.
func TestScoresOfExamples(t *testing.T) {
	for _, c := range []struct {
		line HelpLine
		want string
	}{
		{HelpLine{Line: "f150 g20 g3", Score: 4}, "4"},
		{HelpLine{Line: "f150 r30 -", Score: 3}, "3 and what was left"},
	} {
		if got := c.line.scored(); got != c.want {
			t.Errorf("%s: %q, want %q", c.line.Line, got, c.want)
		}
	}
}
