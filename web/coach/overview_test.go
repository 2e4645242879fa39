package coach

import (
	"strings"
	"testing"
	"time"

	"strokeledger/analysis"
	"strokeledger/analysis/account"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/notes"
	"strokeledger/web/paths"
)

// cellOf is a figure of ten rounds whose change is that sure.
func cellOf(mean float64, word compare.Word) compare.Cell {
	c := compare.Cell{Figure: compare.Figure{Known: true}, Shots: 41, Change: compare.Change{Known: true, Mean: mean, Word: word}}
	c.Mean, c.N = mean, 10
	c.Interval.Low, c.Interval.High = mean-.5, mean+.5
	return c
}

// column is ten rounds with a figure for everything and every part.
func column(mean float64, word compare.Word) *compare.Column {
	c := &compare.Column{Rounds: make([]*compare.Judged, 10)}
	for i := range c.Rounds {
		c.Rounds[i] = &compare.Judged{Played: golf.Played{Round: golf.Round{Date: today.AddDays(-i)}}}
	}
	for range len(compare.Rows(golf.StandardBoundary)) {
		c.Cells = append(c.Cells, cellOf(mean, word))
	}
	c.Measures = make([]compare.Cell, len(compare.Measures))
	return c
}

func overviewOf(change compare.Word) OverviewInput {
	o := analysis.Overview{Latest: column(1, 0), Bands: 22, Lesson: analysis.Between{Day: today.AddDays(-20), Before: column(2, 0), Since: column(-1.2, change)}}
	o.Sheet.Rows = compare.Rows(golf.StandardBoundary)
	o.Sheet.Columns = []compare.Column{*o.Latest}
	o.Line = []compare.Point{{Day: today, Score: 86, HasMean: true, Mean: 86, Low: 84, High: 88}}
	o.Leaks = []analysis.Leak{{Row: o.Sheet.Rows[5], Cell: cellOf(1.2, 0), Sure: compare.Clear}, {Row: o.Sheet.Rows[6], Cell: cellOf(.6, 0), Sure: compare.Chance}}
	o.Doubles = analysis.DoublesTogether{Rounds: 10, All: 5, Kinds: map[account.Kind]int{account.Compound: 2, account.Single: 3}, Holes: map[int]int{4: 3, 11: 2}, OffGreen: 3, Clubs: []analysis.ClubCount{{Club: "driver", Count: 2}, {Club: "7i", Count: 1}}}
	o.Doubles.Began = [golf.Putting + 1]int{0, 2, 1, 0, 2}
	return OverviewInput{Whose: paths.Whose{Player: 7}, Name: "Bea", Target: 79, Units: form.StandardUnits, Today: today, Overview: o}
}

func TestOverviewLede(t *testing.T) {
	asks := overviewOf(compare.Leaning)
	asks.Pupil.Asked = make([]Question, 1)
	none := overviewOf(compare.Chance)
	none.Overview.Line, none.Overview.Leaks = nil, nil
	even := overviewOf(compare.Chance)
	even.Overview.Leaks = nil
	for want, in := range map[string]OverviewInput{
		"A question waits. Since the lesson of 11 Aug Bea has lost 1.2 fewer a round, which is leaning.": asks,
		"Bea loses most here: tee, par 4, 1.2 strokes a round.":                                          overviewOf(compare.Chance),
		"Bea has not entered a round yet.":                                                               none,
		"Bea loses nothing to the target.":                                                               even,
	} {
		if got := NewOverviewPage(layout.Page{}, in).Lede; got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

func TestOverviewFigures(t *testing.T) {
	p := NewOverviewPage(layout.Page{}, overviewOf(compare.Clear))
	first, second := p.Leaks.Rows[0], p.Leaks.Rows[1]
	if first.Name != "Tee, par 4" || first.Figure != "+1.2" || first.Between != "+0.7 to +1.7" || first.Sure != "clear" || second.Sure != "could be chance" || first.Shots != "41 shots" {
		t.Errorf("%+v %+v", first, second)
	}
	if !strings.HasPrefix(first.At, "/players/7/months/behind?in=2&row=tee") || !strings.HasSuffix(first.At, "&span=before10&span=last10") {
		t.Error(first.At)
	}
	if p.Leaks.Aside != "The last ten rounds. Chosen from 22 bands as the costliest, so each is likely a little less." || !p.Changes.Known {
		t.Errorf("%q %v", p.Leaks.Aside, p.Changes.Known)
	}
	d := p.Doubles
	if d.Say != "5 doubles in ten rounds: 2 compound, 3 single." || d.Began[0] != (BeganRow{"Tee", "100%", "2"}) || d.Began[2].Bar != "50%" || d.Nines[0][3].Count != "3" || d.Nines[1][1].Count != "2" || d.Nines[0][0].Count != "" {
		t.Errorf("%+v", d)
	}
	if d.Clubs != "Club in hand, of the 3 that began off the green: driver 2, 7i 1." {
		t.Error(d.Clubs)
	}
	without := overviewOf(compare.Clear)
	without.Overview.Lesson = analysis.Between{}
	if p := NewOverviewPage(layout.Page{}, without); p.Changes.Known || !strings.HasPrefix(p.Lesson, "No lesson has been written up yet.") {
		t.Errorf("%q", p.Lesson)
	}
	without.Overview.Lesson.Day = today
	if p := NewOverviewPage(layout.Page{}, without); p.Lesson != "There are not yet rounds both before the lesson of 31 Aug 2026 and since." {
		t.Errorf("%q", p.Lesson)
	}
	without.Overview.Doubles = analysis.DoublesTogether{Rounds: 1}
	if p := NewOverviewPage(layout.Page{}, without); p.Doubles.Say != "No doubles in one round." {
		t.Errorf("%q", p.Doubles.Say)
	}
}

// Practice has its figure before it was set and since, where there are rounds of both.
func TestOverviewPractice(t *testing.T) {
	in := overviewOf(compare.Chance)
	in.Assignments = []Assignment{
		{ID: 1, What: "Start line", Amount: "40 putts", Due: today.AddDays(-1), Figure: "putting", Results: []AssignmentResult{{Day: today.AddDays(-2), Result: "33 of 40", Passed: true}}},
		{ID: 2, What: "Wedges", Due: today.AddDays(3), Figure: "approach"}, {ID: 3, What: "Bunkers", Due: today, Figure: "gone"}, {ID: 4, What: "Old", Done: true, Figure: "putting"},
	}
	if n := len(Figured(in.Assignments)); n != 3 {
		t.Fatalf("%d have a figure", n)
	}
	in.Overview.Practice = []analysis.Between{{Before: column(.8, 0), Since: column(-.1, compare.Leaning), Row: 4}, {Row: 2}, {Row: -1}}
	lines := NewOverviewPage(layout.Page{}, in).Practice
	if len(lines) != 3 {
		t.Fatalf("%+v", lines)
	}
	if l := lines[0]; l.Late != "1 day late" || l.Due != "" || l.Says != "40 putts; 1 of 1 passed; last on 29 Aug: 33 of 40." || l.Figure != "Putting" || l.Before != "+0.8" || l.Since != "−0.1" || l.Sure != "leaning" || l.At != "/players/7/lessons#practice-1" {
		t.Errorf("%+v", l)
	}
	if l := lines[1]; l.Due != "by Thursday" || l.Says != "No result yet." || l.Figure != "Approach" || l.Before != "" || l.Sure != "no rounds since to compare" {
		t.Errorf("%+v", l)
	}
	if l := lines[2]; l.Figure != "" {
		t.Errorf("%+v", l)
	}
}

func TestOverviewVisit(t *testing.T) {
	in := overviewOf(compare.Chance)
	said := func() string { return NewOverviewPage(layout.Page{}, in).Visit }
	if got := said(); got != "Your first visit." {
		t.Error(got)
	}
	in.Visit = time.Date(2026, 8, 18, 9, 0, 0, 0, time.UTC)
	if got := said(); got != "You last looked on 18 August; nothing is new since." {
		t.Error(got)
	}
	in.Pupil.NewRounds, in.Pupil.Results = 2, 1
	if got := said(); got != "You last looked on 18 August; since then: 2 new rounds and 1 practice result." {
		t.Error(got)
	}
}

// Questions come first, then the latest notes, and the groups as they are or came
// back.
func TestOverviewNotesAndGroups(t *testing.T) {
	in := overviewOf(compare.Chance)
	in.Pupil.Groups = []string{"Juniors", "Tuesday six"}
	in.Notes = []notes.Note{{ID: 1, Lesson: true, Day: today.AddDays(-3)}, {ID: 2, Question: true, Round: 4}, {ID: 3, Lesson: true, Day: today.AddDays(-9)}, {ID: 4}, {ID: 5}}
	p := NewOverviewPage(layout.Page{}, in)
	if len(p.Questions) != 1 || p.Questions[0].ID != "note-2" || len(p.Latest) != 3 || p.Groups.Value != "Juniors, Tuesday six" || p.Away || p.Arrange {
		t.Errorf("%+v %+v %q", p.Questions, p.Latest, p.Groups.Value)
	}
	if day := LastLesson(in.Notes); day != today.AddDays(-3) {
		t.Error(day)
	}
	refused := form.ParseGroups(strings.Repeat("x", 99))
	in.Returned = form.Returned{Groups: &refused}
	if p := NewOverviewPage(layout.Page{}, in); !p.Arrange || p.Groups.Problem == "" || p.Wrong.Heading == "" {
		t.Errorf("%+v", p.Groups)
	}
}
