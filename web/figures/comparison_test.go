package figures

import (
	"math"
	"strings"
	"testing"
	"time"

	"strokeledger/analysis"
	"strokeledger/analysis/account"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
	"strokeledger/web/form"
)

// changes are what everything and the four parts of the game changed by, each with
// how sure that is.
type changes [5]compare.Change

func change(mean float64, word compare.Word) compare.Change {
	return compare.Change{Known: true, Mean: mean, Word: word}
}

// spans are months from March 2026, each with some rounds that lost 2 strokes, one
// off the tee and one on the approach.
func spans(rounds ...int) ComparisonInput {
	in := ComparisonInput{Target: 79, Units: form.StandardUnits, Months: analysis.Months{Level: 79, Last: golf.Date{Year: 2026, Month: 8, Day: 30}}}
	in.Sheet.Rows = []compare.Row{{}}
	for _, part := range golf.Categories {
		in.Sheet.Rows = append(in.Sheet.Rows, compare.Row{Category: part})
	}
	for i, n := range rounds {
		c := compare.Column{Span: golf.Month(2026, time.March+time.Month(i)), Rounds: make([]*compare.Judged, n)}
		for _, lost := range []float64{2, 0, 1.5, .5, 0} {
			c.Cells = append(c.Cells, compare.Cell{Figure: compare.Figure{Sample: stat.Sample{N: n, Mean: lost}, Known: n > 0}})
		}
		in.Sheet.Columns = append(in.Sheet.Columns, c)
	}
	return in
}

func lastColumn(in ComparisonInput) *compare.Column {
	return &in.Sheet.Columns[len(in.Sheet.Columns)-1]
}

// moves lets the last span differ from the one before it.
func moves(in ComparisonInput, by changes) {
	for k, change := range by {
		cell := &lastColumn(in).Cells[k]
		cell.Change = change
		cell.Mean += change.Mean
	}
}

// Months have their year when a column, or the season, is of another.
func TestSpanNames(t *testing.T) {
	in := spans(8, 8)
	if got := SpanName(in, 1); got != "April" {
		t.Errorf("%q", got)
	}
	in.Sheet.Columns[1].Span = golf.Span{Last: 10} // of which there are eight
	for i := range in.Sheet.Columns[1].Rounds {
		in.Sheet.Columns[1].Rounds[i] = &compare.Judged{Played: golf.Played{Round: golf.Round{Date: golf.Date{Year: 2026, Month: 4, Day: 2 + i}}}}
	}
	if got := SpanName(in, 1); got != "the last eight rounds from 2 Apr to 9 Apr 2026" {
		t.Errorf("%q", got)
	}
	in.Sheet.Columns[1].Span = golf.Month(2026, 4)
	in.Sheet.Columns[0].Span = golf.Month(2025, 3)
	if got := SpanName(in, 1); got != "Apr 2026" {
		t.Errorf("%q", got)
	}
}

// Beside a bar a span has a short name.
func TestShortSpanNames(t *testing.T) {
	for text, want := range map[string][2]string{"2026-05": {"May", "May 26"}, "2026": {"2026", "2026"}, "last10": {"last 8", "last 8"}, "before10": {"8 before", "8 before"}, "2026-05-03..": {"from 3 May 2026", "from 3 May 2026"}} {
		span, err := golf.ParseSpan(text)
		if err != nil {
			t.Fatal(err)
		}
		in := spans(8, 8)
		in.Sheet.Columns[1].Span = span
		one := ShortSpanName(in, 1)
		in.Sheet.Columns[0].Span = golf.Month(2025, 3)
		if got := [2]string{one, ShortSpanName(in, 1)}; got != want {
			t.Errorf("%s: %q, want %q", text, got, want)
		}
	}
}

// What is printed adds up: the parts to all of them, the bands to their part.
func TestPrintedLossesAddUp(t *testing.T) {
	in := spans(8)
	for k, mean := range []float64{2.34, .24, 1.25, .5, .35} {
		in.Sheet.Columns[0].Cells[k].Mean = mean
	}
	for i, mean := range []float64{.44, .44, .37} {
		in.Sheet.Rows = append(in.Sheet.Rows, compare.Row{Category: golf.Approach, Band: account.Band{Category: golf.Approach, Low: golf.Yards.Of(float64(50 * i)), High: golf.Yards.Of(float64(50*i + 50))}})
		in.Sheet.Columns[0].Cells = append(in.Sheet.Columns[0].Cells, compare.Cell{Figure: compare.Figure{Sample: stat.Sample{Mean: mean}, Known: true}, Shots: 4})
	}
	sum := func(values ...float64) int {
		all := 0
		for _, v := range values {
			all += int(math.Round(v * 10))
		}
		return all
	}
	got := PrintedLosses(in.Sheet, 0)
	if sum(got[0]) != 23 || sum(got[1:5]...) != 23 || sum(got[5:]...) != sum(got[golf.Approach]) {
		t.Errorf("%v", got)
	}
	if none := PrintedLosses(spans(0).Sheet, 0); sum(none[1:]...) != 0 {
		t.Errorf("without rounds: %v", none)
	}
}

// holes lets a column stand on rounds of 18 holes, in the first of which one shot of
// a part was holed.
func holes(c *compare.Column, part golf.Category, expected float64) {
	c.Detail = 18 * float64(len(c.Rounds))
	for i := range c.Rounds {
		c.Rounds[i] = &compare.Judged{}
	}
	c.Rounds[0].Account.Holes = []account.Hole{{Shots: []account.Shot{{Band: account.Band{Category: part}, Expected: expected, Lost: 1 - expected}}}}
	c.Cells[part].Shots = 1
}

// Parts that changed clearly stand first, then those that probably did, and the
// changes add up as well.
func TestChanges(t *testing.T) {
	in := spans(3, 8)
	moves(in, changes{change(.6, compare.Chance), change(.1, compare.Chance), change(-.5, compare.Leaning), change(-.2, compare.Chance), change(1.2, compare.Clear)})
	holes(lastColumn(in), golf.Putting, 1.9)
	c := NewChanges(in)
	if c.Aside != "April (8 rounds) against March (3 rounds)." || c.Before != "March" || c.Now != "April" || c.Caption != "Strokes lost for 18 holes against a 79 golfer" {
		t.Errorf("%+v", c)
	}
	var got []string
	for _, r := range append(c.Parts, c.All) {
		got = append(got, strings.Join([]string{r.Name, r.Before, r.Now, r.Moved, r.Word}, " "))
	}
	want := "Putting 0.0 +1.2 +1.2 clear, Approach +1.5 +1.0 −0.5 leaning, Tee 0.0 +0.1 +0.1 , Short game +0.5 +0.3 −0.2 , All +2.0 +2.6 +0.6 "
	if strings.Join(got, ", ") != want {
		t.Errorf("%q\nwant %q", strings.Join(got, ", "), want)
	}
	r := c.Parts[0]
	if want := (Voucher{Name: "Putting, April", Span: "Apr", Working: "0.90 won back on 144 holes in 8 rounds: that is 0.1 for 18 holes; +1.2 here, so that the tenths add up", At: r.NowOf.At, What: "1 shot"}); r.NowOf != want || want.At == "" {
		t.Errorf("%+v", r.NowOf)
	}
	if r.BeforeOf != (Voucher{}) {
		t.Errorf("%+v", r.BeforeOf)
	}
	if one := NewChanges(spans(0, 8)); one.Known {
		t.Errorf("%+v", one)
	}
}
