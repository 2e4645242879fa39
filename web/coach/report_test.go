package coach

import (
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
	"strokeledger/web/chart"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/layout"
	"strokeledger/web/notes"
	"strokeledger/web/paths"
)

// reported is a report of August, which lost 3 strokes on the approach, after a
// July without a round.
func reported(whose paths.Whose) ReportInput {
	july, august := compare.Column{Span: golf.Month(2026, time.July), Cells: make([]compare.Cell, 5)}, compare.Column{Span: golf.Month(2026, time.August), Cells: make([]compare.Cell, 5)}
	august.Rounds = []*compare.Judged{{Played: golf.Played{Round: golf.Round{Date: today.AddDays(-20)}}}}
	for i := range august.Cells {
		august.Cells[i].Known = true
	}
	august.Cells[golf.Approach].Mean, august.Cells[0].Mean = 3, 3
	august.Cells[golf.Approach].N, august.Cells[golf.Approach].Interval = 10, stat.Interval{Low: -1, High: 7}
	august.PlaysTo[golf.Approach] = compare.PlaysTo{Rounds: 10, Level: compare.Level{Value: 90}, Low: compare.Level{Value: 85}, High: compare.Level{Value: 95}}
	return ReportInput{Span: august.Span, Today: today, Months: figures.ComparisonInput{Name: "Bea", Target: 79, At: paths.Comparison{Whose: whose}, Months: analysis.Months{Level: 79, Sheet: compare.Sheet{Columns: []compare.Column{july, august}}}}}
}

// A player without a round has a report that says so, with notes and practice.
func TestReportWithoutARound(t *testing.T) {
	in := reported(bea)
	in.Problem = "Not a span."
	r := NewReportPage(layout.Page{}, in)
	if r.Title != "Report for Bea" || r.Name != "Bea" || r.At != "Aug 2026. Monday 31 August 2026." || r.Lede != "Bea has not entered a round yet." || !r.Empty || r.Lost != nil || r.Levels != nil || r.Here != "/coaching" || r.BodyClass != "report-page" {
		t.Errorf("%+v", r)
	}
	if r.From.Value != "2026-08-01" || r.To.Value != "2026-08-31" || r.From.Problem != "Not a span." || r.Wrong.Heading != "These dates cannot be used." || r.Back != "/players/7/lessons" || r.SpanAt != "/players/7/report" {
		t.Errorf("%+v", r)
	}
}

func TestReportSpans(t *testing.T) {
	in := reported(bea)
	in.Today = golf.Date{Year: 2026, Month: time.March, Day: 31}
	in.Span = golf.Span{Last: 10}
	r := NewReportPage(layout.Page{}, in)
	want := []components.Link{{Name: "the last ten rounds", At: "/players/7/report?span=last10", Here: true}, {Name: "March", At: "/players/7/report?span=2026-03"},
		{Name: "February", At: "/players/7/report?span=2026-02"}, {Name: "2026", At: "/players/7/report?span=2026"}}
	if diff := cmp.Diff(want, r.Presets); diff != "" || r.At != "The last ten rounds. Tuesday 31 March 2026." {
		t.Errorf("%q %s", r.At, diff)
	}
}

func TestReportLine(t *testing.T) {
	scale := chart.Scale{Low: -5, High: 5, Step: 5}
	lost := compare.Cell{Figure: compare.Figure{Known: true}, Interval: stat.Interval{Low: -1, High: 5}, Change: compare.Change{Known: true, Mean: -.5, Word: compare.Leaning}}
	lost.Mean, lost.N = 2, 10
	alone := compare.Cell{Figure: compare.Figure{Known: true}}
	for name, c := range map[string]struct {
		part golf.Category
		cell compare.Cell
		want ReportLine
	}{
		"no round":     {golf.Putting, compare.Cell{}, ReportLine{Name: "Putting", Figure: "no round", Bar: figures.EmptyBar}},
		"one round":    {golf.ShortGame, alone, ReportLine{Name: "Short game", Figure: "0.0", Bar: scale.Bar(0)}},
		"many":         {golf.Approach, lost, ReportLine{Name: "Approach", Figure: "+2.0", Interval: "−1.0 to +5.0", Bar: scale.Bar(2), Whisker: scale.Whisker(2, -1, 5), Change: figures.ChangeWords{Figure: "−0.5", Word: "leaning"}}},
		"all the game": {0, lost, ReportLine{Name: "All", Figure: "+2.0", Interval: "−1.0 to +5.0", Bar: figures.EmptyBar, All: true, Change: figures.ChangeWords{Figure: "−0.5", Word: "leaning"}}},
	} {
		if diff := cmp.Diff(c.want, newReportLine(c.part, c.cell, c.cell.Mean, scale)); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

func TestReportOfASpan(t *testing.T) {
	var r ReportPage
	r.lost(reported(bea))
	if len(r.Lost) != 5 || r.Lost[1].Figure != "+3.0" || !r.Lost[4].All || r.Caption != "Strokes lost for 18 holes against a 79 golfer, with a 95% interval" || len(r.Ruler.Ticks) != 4 {
		t.Errorf("%q %+v", r.Caption, r.Lost)
	}
	in := reported(bea)
	in.Months.Sheet.Columns[0].Rounds = in.Months.Sheet.Columns[1].Rounds
	for i := range in.Months.Sheet.Columns[1].Cells {
		in.Months.Sheet.Columns[0].Cells[i].Known = true
		in.Months.Sheet.Columns[1].Cells[i].Change = compare.Change{Known: true, Mean: -1, Word: compare.Clear}
	}
	r = ReportPage{}
	if r.lost(in); r.Lost[1].Change.Figure != "+3.0" || r.Caption != "Strokes lost for 18 holes against a 79 golfer, with a 95% interval, and the change from Jul 2026; without a word it could be chance" {
		t.Errorf("%q %+v", r.Caption, r.Lost[1])
	}
	in.Months.Sheet.Columns[0].PlaysTo[golf.Approach] = compare.PlaysTo{Rounds: 10, Level: compare.Level{Value: 99}}
	levels := reportLevels(in)
	if l := levels[1]; l.Name != "Approach" || l.Now != "90" || l.Interval != "85 to 95" || l.Was != "was 99" || l.Moved != "better, clear" {
		t.Errorf("%+v", l)
	}
	if l := levels[0]; l.Now != "five more rounds until a level is shown" || l.Dumbbell.Known {
		t.Errorf("%+v", l)
	}
}

// The report holds the shared notes of its span, and calls everybody by name.
func TestReportNotes(t *testing.T) {
	in := reported(mine)
	note := func(id int64, days int) notes.Note {
		return notes.Note{ID: id, Author: "Bea", Mine: true, Lesson: true, Day: today.AddDays(-days), Body: "x"}
	}
	in.Notes = []notes.Note{note(1, -1), note(2, 0), note(3, 25), note(4, 30), note(5, 31)}
	in.Notes = append(in.Notes, notes.Note{ID: 6, Author: "Ines", Private: true, Day: today})
	in.Assignments = []Assignment{{ID: 3, What: "Start line", Due: today.AddDays(1)}}
	written := func(in ReportInput) string {
		var ids []string
		for _, c := range NewReportPage(layout.Page{}, in).Written {
			ids = append(ids, c.ID+" by "+c.Who)
		}
		return strings.Join(ids, ", ")
	}
	if got := written(in); got != "note-2 by Bea, note-3 by Bea, note-4 by Bea" {
		t.Errorf("of August: %s", got)
	}
	in.Span = golf.Span{Last: 10} // its first round was 20 days ago
	if got := written(in); got != "note-2 by Bea" {
		t.Errorf("of ten rounds: %s", got)
	}
	if p := NewReportPage(layout.Page{}, in).Practice; len(p) != 1 || p[0].What != "Start line" || p[0].Due != "by tomorrow" {
		t.Errorf("%+v", p)
	}
}

// A report holds what fits on one page, and says what it leaves out.
func TestReportFits(t *testing.T) {
	for _, c := range []struct {
		notes, practice int
		long            bool
		shown, tasks    int
		more            string
	}{
		{0, 0, false, 0, 0, ""},
		{5, 3, false, 5, 3, ""},
		{12, 6, false, 5, 3, "Not shown here: 7 earlier notes and 3 more things to practise. See Lessons and practice."},
		{6, 3, false, 5, 3, "Not shown here: 1 earlier note. See Lessons and practice."},
		{2, 4, true, 1, 3, "Not shown here: 1 earlier note and 1 more thing to practise. See Lessons and practice."},
	} {
		in := reported(bea)
		body := "x"
		if c.long {
			body = strings.Repeat("x", 2000)
		}
		for i := range c.notes {
			in.Notes = append(in.Notes, notes.Note{ID: int64(i), Author: "Ines", Lesson: true, Day: today.AddDays(-i), Body: body})
		}
		for range c.practice {
			in.Assignments = append(in.Assignments, Assignment{What: "Start line", Due: today, Results: make([]AssignmentResult, 9)})
		}
		r := NewReportPage(layout.Page{}, in)
		if len(r.Written) != c.shown || len(r.Practice) != c.tasks || r.More != c.more {
			t.Errorf("of %d and %d: %d notes, %d things to practise, %q", c.notes, c.practice, len(r.Written), len(r.Practice), r.More)
		}
		for _, a := range r.Practice {
			if len(a.Results) != 2 || a.Passed != "0 of 9 passed" {
				t.Errorf("%d results, %q", len(a.Results), a.Passed)
			}
		}
	}
}
