package form

import (
	"net/url"
	"strings"
	"testing"

	"strokeledger/analysis/golf"
)

func answersOf(pairs ...string) url.Values {
	v := url.Values{"do": {DrawPicture}}
	for i := 0; i < len(pairs); i += 2 {
		v.Set(pairs[i], pairs[i+1])
	}
	return v
}

var parFour = golf.CardHole{Number: 6, Par: 4, Length: 417 * golf.Yard}

// Eleven answers become rows, in the plan's own coordinates.
func TestAnswersBecomeRows(t *testing.T) {
	for name, c := range map[string]struct {
		hole    golf.CardHole
		answers url.Values
		want    string
	}{
		"a whole hole": {parFour, answersOf("bend", "little-right", "fairway", "33", "left", "out", "left_far", "16", "right", "bunker", "right_far", "13",
			"width", "26", "depth", "29", "short", "water", "green_left", "bunker", "green_right", "trees"),
			"bend 230: 10 right\nfairway 165: 16 left, 17 right\nfairway 230: 16 left, 17 right\nfairway 395: 16 left, 17 right\nout 0 to 462, across open to -16\nbunker 216 to 244, across 13 to 27\ngreen 403: 26 wide, 29 deep\nwater 383 to 399\nbunker 407 to 425, across -24 to -14\ntrees 373 to 452, across 21 to open"},
		"nothing but width and green": {parFour, answersOf("fairway", "30", "width", "20", "depth", "20"),
			"fairway 165: 15 left, 15 right\nfairway 230: 15 left, 15 right\nfairway 399: 15 left, 15 right\ngreen 407: 20 wide, 20 deep"},
		"a par 3 has no fairway": {golf.CardHole{Number: 3, Par: 3, Length: 158 * golf.Yard}, answersOf("fairway", "30", "left", "out", "left_far", "20", "width", "24", "depth", "28", "green_right", "water"),
			"green 144: 24 wide, 28 deep\nwater 129 to 182, across 16 to open"},
		"metres": {parFour, answersOf("fairway", "30m", "width", "20 m", "depth", "20m"),
			"fairway 165: 16 left, 17 right\nfairway 230: 16 left, 17 right\nfairway 398: 16 left, 17 right\ngreen 406: 22 wide, 22 deep"},
	} {
		f := ParsePicture(c.answers, c.hole, golf.Yards)
		if got := f.Sketch(); got != c.want || !f.Sound() || !f.MakesRows() {
			t.Errorf("%s: %+v\n%s\nwant\n%s", name, f, got, c.want)
		}
	}
}

// Every answer that is not allowed is told beside its field; rows that are there are
// saved without any.
func TestAnswersAreChecked(t *testing.T) {
	f := ParsePicture(answersOf("bend", "sharply", "fairway", "3", "left", "lava", "right", "trees", "width", "x", "short", "sea"), parFour, golf.Yards)
	for name, problem := range map[string]string{"bend": f.Bend.Problem, "fairway": f.Fairway.Problem, "left": f.LeftIs.Problem, "right": f.Right.Problem, "width": f.Width.Problem, "depth": f.Depth.Problem, "short": f.ShortIs.Problem} {
		if problem == "" {
			t.Errorf("%s is allowed", name)
		}
	}
	if f.Sound() || f.Left.Problem != "" {
		t.Errorf("%+v", f)
	}
	kept := ParsePicture(url.Values{"do": {SavePicture}, "rows": {"green 400: 20 wide, 20 deep"}, "width": {"x"}}, parFour, golf.Yards)
	if !kept.Sound() || kept.MakesRows() {
		t.Errorf("%+v", kept)
	}
	long := ParsePicture(url.Values{"do": {SavePicture}, "rows": {strings.Repeat("x", MaxPictureRows+1)}}, parFour, golf.Yards)
	if long.Sound() || len(long.Rows.Text) != MaxPictureRows {
		t.Errorf("%d letters: %+v", len(long.Rows.Text), long.Rows.Problem)
	}
	if f := ParsePicture(url.Values{"do": {SavePicture}}, parFour, golf.Yards); f.Sound() || !f.MakesRows() {
		t.Errorf("nothing at all is saved: %+v", f)
	}
}
