package site

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
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

// The page says of every column of a shots file what it is, in their order.
func TestEveryColumnIsExplained(t *testing.T) {
	var header bytes.Buffer
	if err := shotsfile.NewWriter(&header).Flush(); err != nil {
		t.Fatal(err)
	}
	var named []string
	for _, c := range NewHelpPage(layout.Page{}).Columns {
		named = append(named, strings.Split(c.Term, ", ")...)
	}
	if got := strings.Join(named, ","); got != strings.TrimSpace(header.String()) {
		t.Errorf("explained are %s, the file has %s", got, header.String())
	}
}

// Every drawing that the page asks for is drawn.
func TestEveryPictureIsDrawn(t *testing.T) {
	for _, p := range NewHelpPage(layout.Page{}).Pictures {
		var drawn bytes.Buffer
		if err := p.drawing().Render(t.Context(), &drawn); err != nil {
			t.Fatal(err)
		}
		if p.Drawn != "" && strings.Contains(drawn.String(), `focusable="false"></svg>`) || len(p.Marks) > 0 && !strings.Contains(drawn.String(), "score-mark") {
			t.Errorf("%s: %s", p.Term, drawn.String())
		}
	}
}

// The help says how sure an expected value is, with the figures of the committed
// table.
func TestHelpSaysHowSureStrokesAre(t *testing.T) {
	said := ""
	for _, words := range NewHelpPage(layout.Page{}).Words {
		for _, e := range words.All {
			if words.ID == "sure" && e.Term == "Strokes to play" {
				said = e.Means
			}
		}
	}
	for _, at := range []struct {
		lie golf.Lie
		far float64
	}{{golf.Fairway, 150}, {golf.Rough, 20}, {golf.Bunker, 20}, {golf.Green, 20}} {
		u, known := golfer.UncertaintyAt(79, at.lie, at.far)
		if figure := fmt.Sprintf("%.2f", u.SD); !known || u.SD < .005 || !strings.Contains(said, figure) {
			t.Errorf("%s %g: no %s in %q", at.lie, at.far, figure, said)
		}
	}
}
