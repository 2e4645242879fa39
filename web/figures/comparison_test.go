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

func TestLedeOfAChange(t *testing.T) {
	const none, clear, leaning, chance = compare.Word(0), compare.Clear, compare.Leaning, compare.Chance
	thin := compare.Change{Known: true, Mean: -5, Thin: golf.Enough(golf.ThinChange, 2, 3)}
	for _, c := range []struct {
		name    string
		changes changes
		want    string
	}{
		{"one part carries it", changes{change(-2.1, clear), change(0, chance), change(-1.9, clear), change(-.1, chance), change(-.1, chance)},
			"April against March: 2.1 strokes better a round, almost all of it on the approach, and that is clear."},
		{"most of it", changes{change(1.5, clear), change(0, chance), change(1, leaning), change(.1, chance), change(.4, chance)},
			"April against March: 1.5 strokes worse a round, most of it on the approach, and that is clear."},
		{"the largest part, and another", changes{change(-2, clear), change(-.8, leaning), change(-.5, leaning), change(-.4, chance), change(-.3, chance)},
			"April against March: 2 strokes better a round, the largest part off the tee, and that is clear; approach is 0.5 better (leaning)."},
		{"parts against each other", changes{change(-.4, chance), change(-1.4, clear), change(0, chance), change(0, chance), change(1, leaning)},
			"April against March: 1.4 strokes better a round off the tee, and that is clear; putting is 1 worse (leaning)."},
		{"no part carries a third", changes{change(-1.2, clear), change(-.3, clear), change(-.3, chance), change(-.3, chance), change(-.3, chance)},
			"April against March: 1.2 strokes better a round, and that is clear; tee is 0.3 better (clear)."},
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
	if r := c.Counts[0]; r.Name != "Up and down" || r.Note != "1 of 27, was 13 of 45" || r.Before != "29%" || r.Now != "4%" || r.Moved != "−25 points" || r.Word != "clear" || !strings.HasSuffix(r.NowAt, "in=2&measure=up+and+down") {
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
		{"none in the last", []int{8, 0}, "No rounds in April. March: 2 strokes lost a round, most of it on the approach. No other span has rounds to compare it with."},
		{"none in the last of three", []int{8, 8, 0}, "No rounds in May. Nothing clear between March and April (8 rounds)."},
		{"none before", []int{0, 8}, "April: 2 strokes lost a round, most of it on the approach. No other span has rounds to compare it with."},
		{"a single span", []int{8}, "March: 2 strokes lost a round, most of it on the approach. No other span has rounds to compare it with."},
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
		if got, want := ComparisonLede(in), "April against March: 2 strokes better a round, almost all of it "+c.want+", and that is clear."; got != want {
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

// Beside a bar a span has a short name.
func TestShortSpanNames(t *testing.T) {
	for text, want := range map[string][2]string{"2026-05": {"May", "May 26"}, "2026": {"2026", "2026"}, "last10": {"last 10", "last 10"}, "before10": {"10 before", "10 before"}, "2026-05-03..": {"from 3 May 2026", "from 3 May 2026"}} {
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

// Parts that changed clearly stand first, then those that probably did, and the
// changes add up as well.
func TestChanges(t *testing.T) {
	in := spans(3, 8)
	moves(in, changes{change(.6, compare.Chance), change(.1, compare.Chance), change(-.5, compare.Leaning), change(-.2, compare.Chance), change(1.2, compare.Clear)})
	lastColumn(in).Cells[golf.Putting].Shots = 30
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
	if r := c.Parts[0]; r.NowAt == "" || r.BeforeAt != "" {
		t.Errorf("%+v", r)
	}
	if one := NewChanges(spans(0, 8)); one.Known {
		t.Errorf("%+v", one)
	}
}

// Bars and intervals end at the ends of the fixed axis: a longer bar is cut, a
// longer interval ends in an arrow.
func TestMonthBar(t *testing.T) {
	cell := func(n int, low, high float64) compare.Cell {
		return compare.Cell{Figure: compare.Figure{Sample: stat.Sample{N: n}}, Interval: stat.Interval{Low: low, High: high}}
	}
	for _, c := range []struct {
		name       string
		printed    float64
		cell       compare.Cell
		cut        bool
		less, more bool
		drawn      float64
	}{
		{"on the axis", 2, cell(5, -1, 4), false, false, false, 2},
		{"one round", 2, cell(1, 0, 0), false, false, false, 2},
		{"too long", 9.5, cell(5, 7, 12), true, false, true, 8},
		{"too much won", -4, cell(5, -6, -2), true, true, false, -3},
		{"wide", 1, cell(2, -9, 9), false, true, true, 1},
	} {
		m := NewMonthBar(c.printed, c.cell)
		if (m.CutAt != "") != c.cut || m.Less != c.less || m.More != c.more || m.Bar != monthScale.Bar(c.drawn) || m.Whisker.Known != c.cell.HasInterval() {
			t.Errorf("%s: %+v", c.name, m)
		}
	}
	var ticks []string
	for _, tick := range MonthAxis().Ticks {
		ticks = append(ticks, tick.Text)
	}
	if got := strings.Join(ticks, " "); got != "−2 0 +2 +4 +6" {
		t.Error(got)
	}
}

func TestPartMonths(t *testing.T) {
	in := spans(8, 0, 3, 8)
	moves(in, changes{change(-1, compare.Leaning), change(0, compare.Chance), change(-1, compare.Leaning), {}, {}})
	lastColumn(in).Cells[golf.Approach].Shots = 30
	lastColumn(in).Cells[golf.Approach].Interval = stat.Interval{Low: -.5, High: 2}
	all := NewPartMonths(in)
	if len(all) != 5 || all[4].Name != "All" || !all[4].All || all[4].Moved != "−1.0" || all[4].Word != "leaning" {
		t.Fatalf("%+v", all)
	}
	approach := all[1]
	if approach.Name != "Approach" || approach.Against != "Jun against May" || approach.Moved != "−1.0" || approach.Word != "leaning" || all[0].Word != "" {
		t.Errorf("%+v", approach)
	}
	if m := approach.Months[3]; m.Name != "Jun" || m.Head != "June, 8 rounds" || m.Figure != "+0.5" || m.Interval != "−0.5 to +2.0" || !m.Now || m.Older || !strings.HasSuffix(m.At, "in=4&row=approach") {
		t.Errorf("%+v", m)
	}
	if m := approach.Months[1]; m.Figure != "no rounds" || !m.None || !m.Older || m.At != "" || !m.Bar.Bar.Empty {
		t.Errorf("%+v", m)
	}
	if one := NewPartMonths(spans(8)); one[0].Moved != "" || one[0].Against != "" {
		t.Errorf("%+v", one[0])
	}
}

func TestLevelMonths(t *testing.T) {
	in := spans(8, 3)
	in.Sheet.Columns[0].PlaysTo[golf.Putting] = compare.PlaysTo{Rounds: 8, Level: compare.Level{Value: 86}, Low: compare.Level{Value: 80}, High: compare.Level{Value: 110, Past: compare.Worse}}
	for _, part := range golf.Categories {
		lastColumn(in).PlaysTo[part].Rounds = 3
	}
	putting := NewLevelMonths(in)[3]
	if m := putting.Months[0]; m.Figure != "86" || m.Interval != "80 to above 110" || !m.Reach.Known || m.None {
		t.Errorf("%+v", m)
	}
	if m := putting.Months[1]; m.Figure != "–" || !m.None || m.Reach.Known {
		t.Errorf("%+v", m)
	}
	if got, want := LevelsSaid(in), "putting 86 in March; April: two more rounds until a level is shown"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got, want := LevelsSaid(spans(0, 4)), "April: five more rounds until a level is shown"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got := len(LevelAxis().Ticks); got != 4 {
		t.Errorf("%d ticks", got)
	}
}

func TestBandTable(t *testing.T) {
	in := spans(8, 8)
	band := account.Band{Category: golf.Putting, Low: 3 * golf.Foot, High: 6 * golf.Foot}
	in.Sheet.Rows = append(in.Sheet.Rows, compare.Row{Category: golf.Putting, Band: band})
	for i := range in.Sheet.Columns {
		c := &in.Sheet.Columns[i]
		c.Cells = append(c.Cells, compare.Cell{Figure: compare.Figure{Known: true}})
		c.Cells[golf.Putting].Shots = 30
	}
	lastColumn(in).Cells[5].Shots, lastColumn(in).Cells[5].Change = 9, change(0, compare.Leaning)
	table := NewBandTable(in)
	if len(table.Rows) != 2 || table.Moved != "Apr against Mar" || table.Heads[1] != (SpanHead{Name: "Apr", Rounds: "8 rounds"}) {
		t.Fatalf("%+v", table)
	}
	if r := table.Rows[1]; r.Name != "3 to 6 ft" || !r.Detail || r.Word != "leaning" || r.Moved != "0.0" || !r.Cells[0].None || r.Cells[1].Figure != "0.0" || r.Cells[1].Note != "9 shots" {
		t.Errorf("%+v", r)
	}
	if got := table.BandsSaid(); got != "one group of shots, one clear or leaning" {
		t.Error(got)
	}
}
