package coach

import (
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/figures"
	"strokeledger/web/layout"
	"strokeledger/web/notes"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

var today = golf.Date{Year: 2026, Month: time.August, Day: 31}

// aForm is a form whose putting plays to a level now and another before.
func aForm(now, before float64) compare.Form {
	f := compare.Form{Rounds: 10, Doubles: 2, Compound: .5}
	for _, c := range golf.Categories {
		f.Now[c], f.Told[c], f.Was[c] = compare.PlaysTo{Level: compare.Level{Value: 84}, Low: compare.Level{Value: 80}, High: compare.Level{Value: 88}}, true, true
		f.Before[c] = compare.Level{Value: 84}
	}
	f.Now[golf.Putting] = compare.PlaysTo{Level: compare.Level{Value: now}, Low: compare.Level{Value: now - 4}, High: compare.Level{Value: now + 4}}
	f.Before[golf.Putting] = compare.Level{Value: before}
	return f
}

func pupils() []RosterPupil {
	return []RosterPupil{
		{ID: 1, Name: "Abara", Target: 79, Last: today.AddDays(-9), Score: 84, Holes: 18, Form: aForm(84, 84)},
		{ID: 2, Name: "Bea", Target: 79, Last: today.AddDays(-2), Score: 86, Holes: 18, NewRounds: 1, Form: aForm(97, 84)},
		{ID: 3, Name: "Calder", Target: 79, Last: today.AddDays(-20), Score: 91, Holes: 18, Questions: 1, Form: aForm(80, 89)},
		{ID: 4, Name: "Dev", Target: 79, Last: today.AddDays(-1), Score: 80, Holes: 9, DueWhat: "Start line", Due: today.AddDays(-4), Form: aForm(82, 83)},
		{ID: 5, Name: "Esme", Target: 90},
	}
}

func names(r Roster) []string {
	var all []string
	for _, row := range r.Rows {
		all = append(all, row.Name)
	}
	return all
}

func TestRosterIsSortedByNeed(t *testing.T) {
	for sort, want := range map[string][]string{
		"": {"Calder", "Bea", "Dev", "Abara", "Esme"}, "round": {"Dev", "Bea", "Abara", "Calder", "Esme"}, "name": {"Abara", "Bea", "Calder", "Dev", "Esme"},
		"putting": {"Bea", "Abara", "Dev", "Calder", "Esme"}, "nonsense": {"Calder", "Bea", "Dev", "Abara", "Esme"},
	} {
		if diff := cmp.Diff(want, names(NewRoster(RosterInput{Pupils: pupils(), Today: today, At: paths.Roster{Sort: sort}}))); diff != "" {
			t.Errorf("by %q: %s", sort, diff)
		}
	}
}

func TestRosterIsNarrowed(t *testing.T) {
	for at, want := range map[paths.Roster][]string{
		{Show: "new", Sort: "name"}: {"Bea", "Calder"}, {Show: "late"}: {"Dev"}, {Show: "worse"}: {"Bea"}, {Name: "E", Show: "late"}: {"Dev"},
		{Name: " "}: nil, {Show: "target", Sort: "name"}: {"Abara", "Bea", "Calder", "Dev"},
	} {
		r := NewRoster(RosterInput{Pupils: pupils(), Today: today, At: at})
		if diff := cmp.Diff(want, names(r)); diff != "" {
			t.Errorf("%+v: %s", at, diff)
		}
		if (r.None != "") != (len(want) == 0) {
			t.Errorf("%+v says %q", at, r.None)
		}
	}
}

func TestRosterRows(t *testing.T) {
	r := NewRoster(RosterInput{Pupils: pupils(), Today: today, At: paths.Roster{Sort: "name"}})
	if !strings.HasPrefix(r.Lede, "One of five has played since you looked, and one is waiting for an answer. Bea’s putting has changed most: from an 84’s to a 97’s.") {
		t.Errorf("%q", r.Lede)
	}
	bea, dev, esme := r.Rows[1], r.Rows[3], r.Rows[4]
	if bea.Score != "86" || bea.Last != "29 Aug" || !slices.Equal(bea.New, []string{"1 round"}) || bea.Parts[3].Moved != "worse" || bea.Parts[3].Was != "was 84" || bea.Compound != "50% compound" {
		t.Errorf("%+v", bea)
	}
	if dev.Score != "80 on 9 holes" || dev.Late != "4 days late" {
		t.Errorf("%+v", dev)
	}
	if esme.Last != "no rounds yet" || esme.Parts[0].Now != "too few rounds" || esme.Due != "none set" || esme.Doubles != "" {
		t.Errorf("%+v", esme)
	}
}

func TestDueDays(t *testing.T) {
	for days, want := range map[int]string{0: "today", 1: "tomorrow", 3: "Thursday", 9: "9 Sep", 200: "19 Mar 2027"} {
		if got := words.DueDay(today.AddDays(days), today); got != want {
			t.Errorf("in %d days: %q, want %q", days, got, want)
		}
	}
}

// Text keeps its lines, lists and paragraphs.
func TestBlocks(t *testing.T) {
	want := []notes.Paragraph{{Lines: []string{"Two things:"}}, {List: true, Lines: []string{"one", "two"}}, {Lines: []string{"And a", "third."}}, {Lines: []string{"- "}}}
	want[3].Lines[0] = "-"
	if diff := cmp.Diff(want, notes.Paragraphs("Two things:\n- one\n- two\n\nAnd a\n third.\n\n\n - ")); diff != "" {
		t.Error(diff)
	}
	if got := notes.Paragraphs(" \n"); got != nil {
		t.Errorf("%+v", got)
	}
}

// The coach is told what came since the visit before, in a sentence.
func TestSinceTheLastVisit(t *testing.T) {
	visit := time.Date(2026, 8, 25, 10, 0, 0, 0, time.UTC)
	round := func(fresh bool, score, lost float64) figures.ListedRound {
		l := figures.ListedRound{New: fresh, Round: golf.Round{Holes: make([]golf.Hole, 18)}}
		l.Account.Score, l.Account.Lost.Total, l.Account.Lost.Approach = score, lost, lost
		return l
	}
	for _, c := range []struct {
		visit  time.Time
		rounds []figures.ListedRound
		want   string
	}{
		{visit, []figures.ListedRound{round(true, 86, 7), round(true, 84, 5), round(false, 99, 20)}, "Since you last looked, on Tuesday 25 August: two rounds, 84 and 86. 6 strokes for 18 holes over target, most on the approach; no double."},
		{visit, []figures.ListedRound{round(true, 86, 7), round(true, 84, 5), round(true, 86, 7), round(true, 84, 5)}, "Since you last looked, on Tuesday 25 August: four rounds or more. Over the last four: 6 strokes for 18 holes over target, most on the approach; no double."},
		{visit, []figures.ListedRound{round(false, 99, 20)}, "Since you last looked, on Tuesday 25 August: no round."},
		{time.Time{}, []figures.ListedRound{round(true, 77, -2)}, "Your first look. Over the last round: 2 strokes for 18 holes under target; no double."},
		{time.Time{}, nil, "No round has been entered yet."},
	} {
		l := NewLessonsPage(layout.Page{}, LessonsInput{Whose: paths.Whose{Player: 2}, Name: "Bea", Target: 79, Today: today, Visit: c.visit, Rounds: c.rounds, Earlier: len(c.rounds) == 4})
		if l.Lede != c.want {
			t.Errorf("%q, want %q", l.Lede, c.want)
		}
	}
}

// Who is not chosen or has not played is left out.
func TestSquadOfOne(t *testing.T) {
	lost := compare.PartsLost{Rounds: 3}
	for _, c := range golf.Categories {
		lost.Cells[c].Known = true
	}
	lost.Cells[golf.Approach].Mean = 3
	s := NewSquadPage(layout.Page{}, SquadInput{From: today.AddDays(-30), To: today, Members: []SquadMember{{ID: 1, Name: "Bea", Target: 79, Chosen: true, Lost: lost}, {ID: 2, Name: "Dev", Chosen: true}, {ID: 3, Name: "Ruth", Lost: lost}}})
	if s.Lede != "Together most is lost on the approach: 3 strokes a round over target." || len(s.Table.Rows) != 1 || len(s.Groups) != 1 {
		t.Errorf("%q, %+v", s.Lede, s.Groups)
	}
	if len(s.Pupils) != 3 {
		t.Errorf("%d pupils to choose from", len(s.Pupils))
	}
}

// A report holds what one page has room for, and says what it leaves out.
func TestReportFits(t *testing.T) {
	q := ReportInput{Months: figures.ComparisonInput{Name: "Bea", At: paths.Comparison{Whose: paths.Whose{Player: 2}}}, Span: compare.Month(2026, time.August), Today: today}
	for i := range 12 {
		q.Notes = append(q.Notes, notes.Note{ID: int64(i), Author: "Ines", Lesson: true, Day: today.AddDays(-i), Body: "x"})
	}
	q.Notes = append(q.Notes, notes.Note{Author: "Ines", Lesson: true, Day: today.AddDays(-60), Body: "before the span"}, notes.Note{Author: "Ines", Private: true, Day: today, Body: "private"})
	for range 6 {
		q.Assignments = append(q.Assignments, Assignment{What: "Start line", Due: today, Results: make([]AssignmentResult, 9)})
	}
	r := NewReportPage(layout.Page{}, q)
	if len(r.Written) != 6 || len(r.Practice) != 3 || r.More != "6 earlier notes and 3 more things to practise in lessons and practice." {
		t.Errorf("%d notes, %d things to practise, %q", len(r.Written), len(r.Practice), r.More)
	}
}
