package figures

import (
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

func TestLedeOfAChange(t *testing.T) {
	const none, clear, leaning, chance = compare.Word(0), compare.Clear, compare.Leaning, compare.Chance
	for _, c := range []struct {
		name    string
		changes changes
		want    string
	}{
		{"one part carries it", changes{change(-2.1, clear), change(0, chance), change(-1.9, clear), change(-.1, chance), change(-.1, chance)},
			"2.1 strokes better a round, almost all of it on the approach, and that is clear; the rest could be chance."},
		{"most of it", changes{change(1.5, leaning), change(0, chance), change(1, leaning), change(.1, chance), change(.4, chance)},
			"1.5 strokes worse a round, most of it on the approach, which is leaning but not certain; the rest could be chance."},
		{"the largest part", changes{change(-2, clear), change(-.8, leaning), change(-.5, chance), change(-.4, chance), change(-.3, chance)},
			"2 strokes better a round, the largest part off the tee, which is leaning but not certain; the rest could be chance."},
		{"parts against each other", changes{change(-.4, chance), change(-1.4, clear), change(0, chance), change(0, chance), change(1, leaning)},
			"0.4 strokes better a round, more than that off the tee, and that is clear; putting is 1 worse (leaning)."},
		{"no part carries a third", changes{change(-1.2, clear), change(-.3, clear), change(-.3, chance), change(-.3, chance), change(-.3, chance)},
			"1.2 strokes better a round, and that is clear; tee is 0.3 better (clear)."},
		{"hardly anything", changes{change(.2, chance), change(.2, chance), change(0, chance), change(0, chance), change(0, chance)},
			"0.2 strokes worse a round, which could be chance."},
		{"nothing", changes{change(.04, chance), change(0, chance), change(0, chance), change(0, chance), change(0, chance)},
			"no better and no worse, which could be chance."},
		{"too few rounds", changes{{Known: true, Mean: -5, Thin: golf.Enough(golf.ThinChange, 2, 3)}, change(-5, none)},
			"5 strokes better a round; it takes three rounds in each to say how sure that is."},
		{"every round like every other", changes{change(-5, none), change(-5, none)},
			"5 strokes better a round."},
	} {
		in := spans(8, 8)
		for k, change := range c.changes {
			lastColumn(in).Cells[k].Change = change
		}
		if got, want := ComparisonLede(in), "April against March: "+c.want; got != want {
			t.Errorf("%s: %q\nwant %q", c.name, got, want)
		}
	}
}

// The sentence names the span that its figures are from: the one before, or the
// first that has rounds.
func TestLedeOfSpansWithoutRounds(t *testing.T) {
	for _, c := range []struct {
		name   string
		rounds []int
		want   string
	}{
		{"none in the last", []int{8, 0}, "No rounds in April."},
		{"none before", []int{0, 8}, "April: 2 strokes lost a round, most of it on the approach. No other span has rounds to compare it with."},
		{"a single span", []int{8}, "March: 2 strokes lost a round, most of it on the approach. No other span has rounds to compare it with."},
		{"the one before", []int{8, 8, 8}, "May against April: 1 stroke better a round, and that is clear."},
		{"the first, since the one before is empty", []int{8, 8, 0, 8}, "June against March: 3 strokes worse a round, which could be chance."},
		{"the first that has rounds", []int{0, 8, 0, 8}, "June against April: 3 strokes worse a round, which could be chance."},
	} {
		in := spans(c.rounds...)
		all := &lastColumn(in).Cells[0]
		all.Change, all.Since = change(-1, compare.Clear), change(3, compare.Chance)
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
		last.Cells = append(last.Cells, compare.Cell{Change: change(c.moved, compare.Clear)})
		last.Cells[0].Change, last.Cells[c.band.Category].Change = change(-2, compare.Clear), change(-2, compare.Clear)
		if got, want := ComparisonLede(in), "April against March: 2 strokes better a round, almost all of it "+c.want+", and that is clear; the rest could be chance."; got != want {
			t.Errorf("%s: %q\nwant %q", c.name, got, want)
		}
	}
}

// Months have their year when a column, or the season, is of another.
func TestSpanNames(t *testing.T) {
	in := spans(8, 8)
	if got := SpanName(in, 1); got != "April" {
		t.Errorf("%q", got)
	}
	in.Sheet.Columns[0].Span = golf.Month(2025, 3)
	if got := SpanName(in, 1); got != "Apr 2026" {
		t.Errorf("%q", got)
	}
}

func TestFirstSpanWithRounds(t *testing.T) {
	for _, c := range []struct {
		rounds []int
		want   int
	}{{[]int{8, 8}, 0}, {[]int{0, 0, 3, 8}, 2}, {[]int{0, 0}, 0}} {
		if got := FirstPlayed(spans(c.rounds...).Sheet); got != c.want {
			t.Errorf("%v: %d, want %d", c.rounds, got, c.want)
		}
	}
}
