package figures

import (
	"strings"
	"testing"

	"strokeledger/analysis/account"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
	"strokeledger/web/form"
)

func TestLedeOfAChange(t *testing.T) {
	const none, clear, leaning, chance = compare.Word(0), compare.Clear, compare.Leaning, compare.Chance
	thin := compare.Change{Known: true, Mean: -5, Thin: golf.Enough(golf.ThinChange, 2, 3)}
	for _, c := range []struct {
		name    string
		changes changes
		want    string
	}{
		{"one part carries it", changes{change(-2.1, clear), change(0, chance), change(-1.9, clear), change(-.1, chance), change(-.1, chance)},
			"April against March: 2.1 strokes better a round of 18, almost all of it on the approach, and that is clear."},
		{"most of it", changes{change(1.5, clear), change(0, chance), change(1, leaning), change(.1, chance), change(.4, chance)},
			"April against March: 1.5 strokes worse a round of 18, most of it on the approach, and that is clear."},
		{"the largest part, and another", changes{change(-2, clear), change(-.8, leaning), change(-.5, leaning), change(-.4, chance), change(-.3, chance)},
			"April against March: 2 strokes better a round of 18, the largest part off the tee, and that is clear; approach is 0.5 better (leaning)."},
		{"parts against each other", changes{change(-.4, chance), change(-1.4, clear), change(0, chance), change(0, chance), change(1, leaning)},
			"April against March: 1.4 strokes better a round of 18 off the tee, and that is clear; putting is 1 worse (leaning)."},
		{"no part carries a third", changes{change(-1.2, clear), change(-.3, clear), change(-.3, chance), change(-.3, chance), change(-.3, chance)},
			"April against March: 1.2 strokes better a round of 18, and that is clear; tee is 0.3 better (clear)."},
		{"nothing clear", changes{change(1.5, leaning), change(0, chance), change(1, leaning), change(.1, chance), change(.4, chance)},
			"Nothing clear between March and April (8 rounds). Leaning, but not certain: everything together 1.5 worse and approach 1 worse."},
		{"more lean than are named", changes{change(-1, leaning), change(-.5, leaning), change(-.5, leaning), change(0, chance), change(0, chance)},
			"Nothing clear between March and April (8 rounds). Leaning, but not certain: everything together 1 better and tee 0.5 better."},
		{"chance alone", changes{change(.2, chance), change(.2, chance), change(0, chance), change(0, chance), change(0, chance)},
			"Nothing clear between March and April (8 rounds)."},
		{"too few rounds", changes{thin, thin, {}, {}, {}}, "Nothing clear between March (8 rounds) and April (8 rounds): it takes three rounds in each."},
		{"every round like every other", changes{change(-5, none), change(-5, none), {}, {}, {}}, "Nothing clear between March and April (8 rounds)."},
	} {
		in := spans(8, 8)
		moves(in, c.changes)
		if got := ComparisonLede(in); got != c.want {
			t.Errorf("%s: %q\nwant %q", c.name, got, c.want)
		}
	}
}

// A count that changed clearly is said as well, and only then are strokes named
// as what did not.
func TestLedeOfCounts(t *testing.T) {
	in := spans(8, 8)
	for i := range in.Sheet.Columns {
		in.Sheet.Columns[i].Measures = make([]compare.Cell, len(compare.Measures))
	}
	upAndDown, putts := compare.MeasureAt("up and down"), compare.MeasureAt("putts")
	set := func(column, measure int, mean float64, shots int, c compare.Change) {
		in.Sheet.Columns[column].Measures[measure] = compare.Cell{Figure: compare.Figure{Sample: stat.Sample{N: 8, Mean: mean}, Known: true}, Shots: shots, Change: c}
	}
	set(0, upAndDown, 13./45, 45, compare.Change{})
	set(1, upAndDown, 1./27, 27, change(1./27-13./45, compare.Clear))
	set(0, putts, 35.2, 0, compare.Change{})
	set(1, putts, 37.7, 0, change(2.5, compare.Leaning))
	if got, want := ComparisonLede(in), "Nothing clear in strokes between March and April (8 rounds). Up and down fell from 29% to 4%: that is clear."; got != want {
		t.Errorf("%q\nwant %q", got, want)
	}
	c := NewChanges(in)
	if len(c.Counts) != 2 || c.Rest != "" {
		t.Fatalf("%+v", c)
	}
	if r := c.Counts[0]; r.Name != "Up and down" || r.Note != "1 of 27, was 13 of 45" || r.Before != "29%" || r.Now != "4%" || r.Moved != "−25 points" || r.Word != "clear" || !strings.HasSuffix(r.NowOf.At, "in=2&measure=up+and+down") {
		t.Errorf("%+v", r)
	}
	if r := c.Counts[1]; r.Note != "for 18 holes" || r.Moved != "+2.5" || r.Word != "leaning" {
		t.Errorf("%+v", r)
	}
	set(1, putts, 37.7, 0, change(2.5, compare.Chance))
	if c := NewChanges(in); len(c.Counts) != 1 || c.Rest != "One other count was compared; it is not clear or leaning." {
		t.Errorf("%+v", c)
	}
}

// The sentence names the spans that its figures are from: the last that has
// rounds and the one before it that has rounds.
func TestLedeOfSpansWithoutRounds(t *testing.T) {
	for _, c := range []struct {
		name   string
		rounds []int
		want   string
	}{
		{"none at all", []int{0, 0}, "No rounds in April."},
		{"none in the last", []int{8, 0}, "No rounds in April. March: 2 strokes lost a round of 18, most of it on the approach. No other span has rounds to compare it with."},
		{"none in the last of three", []int{8, 8, 0}, "No rounds in May. Nothing clear between March and April (8 rounds)."},
		{"none before", []int{0, 8}, "April: 2 strokes lost a round of 18, most of it on the approach. No other span has rounds to compare it with."},
		{"a single span", []int{8}, "March: 2 strokes lost a round of 18, most of it on the approach. No other span has rounds to compare it with."},
		{"the one before", []int{8, 8, 8}, "Nothing clear between April and May (8 rounds)."},
		{"the one before is empty", []int{8, 8, 0, 8}, "Nothing clear between April and June (8 rounds)."},
	} {
		in := spans(c.rounds...)
		if got := ComparisonLede(in); got != c.want {
			t.Errorf("%s: %q\nwant %q", c.name, got, c.want)
		}
	}
	in := spans(8)
	lastColumn(in).Cells[0].Mean = -.5
	if got, want := ComparisonLede(in), "March: nothing lost to a 79 golfer. No other span has rounds to compare it with."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// A band is named when it carries most of what its part of the game moved.
func TestLedeNamesTheBand(t *testing.T) {
	inMetres := form.Units{Far: golf.Metres, Green: golf.Metres}
	for _, c := range []struct {
		name  string
		band  account.Band
		moved float64 // of the 2 strokes that the part moved
		units form.Units
		want  string
	}{
		{"par fours", account.Band{Category: golf.TeeShots, Par: 4}, -2, form.StandardUnits, "off the tee of the par fours"},
		{"less than most of it", account.Band{Category: golf.TeeShots, Par: 4}, -1, form.StandardUnits, "off the tee"},
		{"a range", account.Band{Category: golf.Approach, Low: 100 * golf.Yard, High: 150 * golf.Yard}, -1.5, form.StandardUnits, "on the approach from 100 to 150 yd"},
		{"without an end, in metres", account.Band{Category: golf.Approach, Low: 200 * golf.Metre}, -1.5, inMetres, "on the approach from over 200 m"},
		{"a lie", account.Band{Category: golf.ShortGame, Lie: golf.Bunker, High: 10 * golf.Yard}, -2, form.StandardUnits, "in the short game from 0 to 10 yd in bunkers"},
		{"putts, in feet", account.Band{Category: golf.Putting, Low: 3 * golf.Foot, High: 6 * golf.Foot}, -2, form.StandardUnits, "putting from 3 to 6 ft"},
	} {
		in := spans(8, 8)
		in.Units = c.units
		in.Sheet.Rows = append(in.Sheet.Rows, compare.Row{Category: c.band.Category, Band: c.band})
		last := lastColumn(in)
		in.Sheet.Columns[0].Cells = append(in.Sheet.Columns[0].Cells, compare.Cell{})
		last.Cells = append(last.Cells, compare.Cell{Change: change(c.moved, compare.Clear)})
		by := changes{change(-2, compare.Clear)}
		by[c.band.Category] = change(-2, compare.Clear)
		moves(in, by)
		if got, want := ComparisonLede(in), "April against March: 2 strokes better a round of 18, almost all of it "+c.want+", and that is clear."; got != want {
			t.Errorf("%s: %q\nwant %q", c.name, got, want)
		}
	}
}
