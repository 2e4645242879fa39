package months

import (
	"slices"
	"testing"
	"time"

	"strokeledger/analysis"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/handicap"
	"strokeledger/analysis/stat"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// noRounds is the comparison of a player without rounds.
func noRounds() figures.ComparisonInput {
	return figures.ComparisonInput{At: paths.Comparison{Whose: paths.Whose{Player: 1, Own: true}}, Name: "Robin", Target: 84, Units: form.StandardUnits, Months: analysis.Months{Level: 84}}
}

func TestComparisonPageWithoutRounds(t *testing.T) {
	for _, c := range []struct {
		name        string
		change      func(*figures.ComparisonInput)
		lede, enter string
	}{
		{"the player's", func(*figures.ComparisonInput) {}, "No rounds to compare yet. Enter two to see them side by side here.", "/rounds/new"},
		{"a coach's", func(in *figures.ComparisonInput) { in.At.Own = false }, "Robin has not entered a round yet.", ""},
		{"all left out", func(in *figures.ComparisonInput) { in.At.Without = []golf.RoundID{1} }, "No rounds left to compare. Choose another course, or leave fewer rounds out.", "/rounds/new"},
	} {
		in := noRounds()
		c.change(&in)
		m := NewComparisonPage(layout.Page{}, in)
		if !m.Empty || m.At != "Robin." || m.Lede != c.lede || m.Enter != c.enter || m.Foot != "" || m.Presets != nil {
			t.Errorf("%s: %+v", c.name, m)
		}
		if m.CSV != in.At.MonthsCSV() || m.Lessons != "/players/1/lessons" || m.Record != "/players/1/handicap" {
			t.Errorf("%s: %+v", c.name, m)
		}
	}
}

func TestPresets(t *testing.T) {
	in := noRounds()
	in.First, in.Last = golf.Date{Year: 2025, Month: time.August, Day: 1}, golf.Date{Year: 2026, Month: time.June, Day: 30}
	in.Marks = []figures.MarkedDay{{ID: 1, Day: golf.Date{Year: 2026, Month: time.May, Day: 20}, What: "new driver"}}
	in.Sheet.Columns = []compare.Column{{Span: golf.Month(2026, 5)}, {Span: golf.Month(2026, 6)}}
	want := []components.Link{
		{Name: "two months", At: "/players/1/months?span=2026-05&span=2026-06", Here: true},
		{Name: "four", At: "/players/1/months?span=2026-03&span=2026-04&span=2026-05&span=2026-06"},
		{Name: "six", At: "/players/1/months?span=2026-01&span=2026-02&span=2026-03&span=2026-04&span=2026-05&span=2026-06"},
		{Name: "2025 and 2026", At: "/players/1/months?span=2025&span=2026"},
		{Name: "the last ten and the ten before", At: "/players/1/months?span=before10&span=last10"},
		{Name: "before and after new driver", At: "/players/1/months?span=..2026-05-19&span=2026-05-20.."},
	}
	if got := presets(in); !slices.Equal(got, want) {
		t.Errorf("%+v", got)
	}
	in.First = in.Last
	if got := presets(in); slices.ContainsFunc(got, func(l components.Link) bool { return l.Name == "2025 and 2026" }) {
		t.Errorf("a season without rounds is offered: %+v", got)
	}
}

func TestChooseSpans(t *testing.T) {
	in := noRounds()
	in.At.Versus, in.At.Course, in.At.Spans = golf.VersusLevel(82), "Harrow Fen", []golf.Span{golf.Month(2026, 5), golf.Month(2026, 6)}
	in.Choice = in.At.Comparison
	in.Courses = []string{"Harrow Fen", "Saltmarsh Links"}
	in.Sheet.Columns = []compare.Column{{Span: golf.Month(2026, 5)}, {Span: golf.Month(2026, 6)}}
	in.Rounds = []analysis.Listed{{ID: 4, Day: golf.Date{Year: 2026, Month: time.May, Day: 2}, Course: "Harrow Fen", Score: 88, Holes: 18}, {ID: 3, Day: golf.Date{Year: 2026, Month: time.May, Day: 1}, Course: "Harrow Fen", Out: true}}
	in.Marks = []figures.MarkedDay{{ID: 9, Day: golf.Date{Year: 2026, Month: time.May, Day: 20}, What: "new driver"}}
	c := chooseSpans(in)
	if c.At != "/players/1/months" || c.Open || len(c.Pairs) != golf.MaxSpans || c.Pairs[0].From.Value != "2026-05-01" || c.Pairs[1].To.Value != "2026-06-30" || c.Pairs[2].From.Value != "" || c.Pairs[1].To.Label != "Span 2, to" {
		t.Errorf("%+v", c)
	}
	if want := []components.Choice{{Value: "target", Name: "the target, 84"}, {Value: "level", Name: "a golfer at this level", Chosen: true}, {Value: "tour", Name: "a tour player"}}; !slices.Equal(c.Versus, want) || c.Level.Value != "82" {
		t.Errorf("%+v, level %q", c.Versus, c.Level.Value)
	}
	if len(c.Course) != 3 || !c.Course[1].Chosen || c.Course[0].Name != "every course" {
		t.Errorf("%+v", c.Course)
	}
	if want := []RoundChoice{{"4", "2 May 2026, Harrow Fen, 88", false}, {"3", "1 May 2026, Harrow Fen", true}}; !slices.Equal(c.Rounds, want) {
		t.Errorf("%+v", c.Rounds)
	}
	if want := []MarkLine{{"20 May 2026", "new driver", "/marks/9/remove"}}; !slices.Equal(c.Mark.Marks, want) || !c.Mark.Own {
		t.Errorf("%+v", c.Mark)
	}
	for name, want := range map[string][]string{"span": {"2026-05", "2026-06"}, "versus": {"82"}, "course": {"Harrow Fen"}, "without": {"3"}} {
		if got := c.kept(name); !slices.Equal(got, want) {
			t.Errorf("%s: %q", name, got)
		}
	}
	if got := chooseSpans(noRounds()).kept("versus"); got != nil {
		t.Errorf("%q is sent on", got)
	}
}

func TestChoicesThatCameBack(t *testing.T) {
	in := noRounds()
	in.Refused = form.Comparing{Spans: "The span ends before it begins.", Level: "Allowed: 68 to 110."}
	in.Mark = form.Mark{Day: form.Day{Text: "2026-13-01", Problem: "Not a day."}, What: form.TextOf("lesson")}
	c := chooseSpans(in)
	if !c.Open || c.Wrong.Heading != "This cannot be compared." || c.Wrong.Links[0].Text != "Span 1, from: The span ends before it begins." || c.LensSaid.Links[0].Text != "Level: Allowed: 68 to 110." {
		t.Errorf("%+v", c)
	}
	if m := c.Mark; m.Wrong.Heading != "Not marked yet." || m.Day.Value != "2026-13-01" || m.What.Value != "lesson" {
		t.Errorf("%+v", m)
	}
}

// oneCell is a comparison whose last span has one figure of a measure.
func oneCell(measure string, cell compare.Cell, rounds int) figures.ComparisonInput {
	in := moved(rounds, [5]float64{}, [5]compare.Word{})
	for i := range in.Sheet.Columns {
		in.Sheet.Columns[i].Measures = make([]compare.Cell, len(compare.Measures))
		in.Sheet.Columns[i].Measures[compare.MeasureAt(measure)], in.Sheet.Columns[i].Detail = cell, 18*float64(rounds)
	}
	return in
}

func TestCountRow(t *testing.T) {
	known := func(mean, low, high float64, shots int) compare.Cell {
		return compare.Cell{Figure: compare.Figure{Sample: stat.Sample{N: 8, Mean: mean}, Known: true}, Shots: shots, Interval: stat.Interval{Low: low, High: high}}
	}
	for _, c := range []struct {
		name, measure string
		cell          compare.Cell
		rounds        int
		figure, note  string
		none, opens   bool
	}{
		{"no rounds", "doubles", compare.Cell{}, 0, "no rounds", "", true, false},
		{"no chances", "fairways", compare.Cell{}, 3, "no chances", "", true, false},
		{"a count", "doubles", known(2.25, -.5, 4, 0), 8, "2.3", "0.0 to 4.0", false, true},
		{"none", "doubles", known(0, 0, 0, 0), 8, "0.0", "", false, false},
		{"a share", "fairways", known(.5, .3, 1.2, 13), 8, "50%", "30% to 100%, 13 chances", false, true},
		{"one chance", "fairways", known(1, 1, 1, 1), 8, "100%", "1 chance", false, true},
		{"strokes of compounding", "compounding", known(1.2, -.2, 2, 0), 8, "+1.2", "−0.2 to +2.0", false, true},
	} {
		in := oneCell(c.measure, c.cell, c.rounds)
		got := countRow(in, figures.Count{Measure: c.measure, Name: "Name"}, writtenOf(in)).Cells[1]
		if got.Figure != c.figure || got.Note != c.note || got.None != c.none || (got.At != "") != c.opens {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
}

// writtenOf are the measures of every column as they are written.
func writtenOf(in figures.ComparisonInput) [][]float64 {
	var all [][]float64
	for i := range in.Sheet.Columns {
		all = append(all, figures.PrintedMeasures(in.Sheet, i))
	}
	return all
}

// The change of a count is what is printed now, less what was printed before.
func TestCountsChange(t *testing.T) {
	in := oneCell("fairways", compare.Cell{Figure: compare.Figure{Known: true, Sample: stat.Sample{N: 8, Mean: .504}}, Shots: 20}, 8)
	k := compare.MeasureAt("fairways")
	in.Sheet.Columns[1].Measures[k].Mean = .616
	in.Sheet.Columns[1].Measures[k].Change = compare.Change{Known: true, Mean: .112, Word: compare.Leaning}
	if r := countRow(in, figures.Count{Measure: "fairways"}, writtenOf(in)); r.Moved != "+12 points" || r.Word != "leaning" {
		t.Errorf("%+v", r)
	}
	if got := counts(in)[1].Said; got != "fairways hit 50%, 62%" {
		t.Errorf("%q", got)
	}
}

func TestShortPuttRow(t *testing.T) {
	if got := shortPuttRow(moved(0, [5]float64{}, [5]compare.Word{})).Cells[0]; got.Figure != "no putts" || !got.None || got.At != "" {
		t.Errorf("%+v", got)
	}
}

func TestHandicapPage(t *testing.T) {
	course := golf.CourseID(3)
	eighteen, nine := make([]handicap.Hole, 18), make([]handicap.Hole, 9)
	day := golf.Date{Year: 2026, Month: time.May, Day: 2}
	entry := func(e handicap.Entry) handicap.Record {
		return handicap.Record{Entries: []handicap.Entry{e}, Thin: golf.Enough(golf.ThinIndex, 1, 3)}
	}
	score := func(holes []handicap.Hole) handicap.Score { return handicap.Score{Round: 7, Date: day, Holes: holes} }
	for _, c := range []struct {
		name       string
		own        bool
		record     handicap.Record
		lede, more string
		row        HandicapRow
	}{
		{"nothing", true, handicap.Record{Thin: golf.Enough(golf.ThinIndex, 0, 3)}, "Three more scores on a rated course make an estimate.", "", HandicapRow{}},
		{"one missing", true, handicap.Record{Thin: golf.Enough(golf.ThinIndex, 2, 3)}, "One more score on a rated course makes an estimate.", "", HandicapRow{}},
		{"an estimate below zero", true, handicap.Record{HasIndex: true, Index: -1.2}, "Your unofficial estimate is +1.2.", "", HandicapRow{}},
		{"capped, to a coach", false, handicap.Record{HasIndex: true, Index: 14.3, HasLow: true, Low: 10, Cap: handicap.SoftCap}, "The unofficial estimate for Robin is 14.3.",
			"Worked out from the rounds that are shared with you. Lowest estimate of the last 365 days: 10.0. The soft cap applies: anything over 3.0 above the lowest estimate counts half.", HandicapRow{}},
		{"hard cap", true, handicap.Record{HasIndex: true, Index: 15, Cap: handicap.HardCap}, "Your unofficial estimate is 15.0.", "The hard cap applies: the estimate cannot be more than 5.0 above the lowest estimate.", HandicapRow{}},
		{"a score that counts", true, entry(handicap.Entry{Score: score(eighteen), Adjusted: 92, Differential: 18.4, Used: true, Index: 16.4, HasIndex: true}), "Two more scores on a rated course make an estimate.", "",
			HandicapRow{At: "/rounds/7", CourseAt: "/courses/3", Adjusted: "92", Differential: "18.4", After: "16.4", Used: true}},
		{"exceptional, to a coach", false, entry(handicap.Entry{Score: score(eighteen), Adjusted: 75, Differential: -.5, Exceptional: 1}), "Two more scores on a rated course make an estimate.", "Worked out from the rounds that are shared with you.",
			HandicapRow{At: "/players/1/rounds/7", Adjusted: "75", Differential: "+0.5", Note: "exceptional score: the last twenty are reduced by 1"}},
		{"nine holes", true, entry(handicap.Entry{Score: score(nine), Adjusted: 45, Differential: 17}), "Two more scores on a rated course make an estimate.", "",
			HandicapRow{At: "/rounds/7", CourseAt: "/courses/3", Adjusted: "45", Differential: "17.0", Note: "nine holes; the other nine are estimated"}},
		{"nine holes first", true, entry(handicap.Entry{Score: score(nine), Note: handicap.NineFirst}), "Two more scores on a rated course make an estimate.", "",
			HandicapRow{At: "/rounds/7", CourseAt: "/courses/3", Note: "nine holes before there was an estimate: not counted"}},
		{"no rating", true, entry(handicap.Entry{Score: score(eighteen), Note: handicap.NoRating}), "Two more scores on a rated course make an estimate.", "",
			HandicapRow{At: "/rounds/7", CourseAt: "/courses/3", Note: "no course and slope rating: add them to the course"}},
		{"one hole", true, entry(handicap.Entry{Score: score(eighteen[:1]), Note: handicap.Holes}), "Two more scores on a rated course make an estimate.", "",
			HandicapRow{At: "/rounds/7", CourseAt: "/courses/3", Note: "1 hole: only 18 or nine holes count"}},
	} {
		h := NewHandicapPage(layout.Page{}, HandicapInput{Whose: paths.Whose{Player: 1, Own: c.own}, Name: "Robin", Record: c.record, Courses: map[golf.RoundID]RatedCourse{7: {"Harrow Fen", &course}}})
		if h.Lede != c.lede || h.More != c.more || h.Months != "/players/1/months" {
			t.Errorf("%s: %q, %q", c.name, h.Lede, h.More)
		}
		if len(c.record.Entries) == 1 {
			c.row.Day, c.row.Course = "2 May 2026", "Harrow Fen"
			if h.Rows[0] != c.row {
				t.Errorf("%s: %+v\nwant %+v", c.name, h.Rows[0], c.row)
			}
		} else if h.Rows != nil {
			t.Errorf("%s: %+v", c.name, h.Rows)
		}
	}
}
