package coach

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/notes"
	"strokeledger/web/paths"
)

var (
	visit = time.Date(2026, 8, 25, 10, 0, 0, 0, time.UTC)
	mine  = paths.Whose{Player: 7, Own: true}
	bea   = paths.Whose{Player: 7}
)

// newness is what happened to a round that is new, and to one that is not.
var newness = map[bool]figures.Freshness{true: figures.Entered}

// played is a round of 18 holes that lost strokes on the approach alone.
func played(fresh bool, score, lost float64) figures.ListedRound {
	l := figures.ListedRound{ID: 9, Card: 18, Target: 79, New: newness[fresh], NewDay: today, Round: golf.Round{Date: today, Course: "Harrow Fen", Holes: make([]golf.Hole, 18)}}
	l.Account.Score, l.Account.Expected, l.Account.Lost.Total, l.Account.Lost.Approach, l.Account.Counts.Holes = score, score-lost, lost, lost, 18
	return l
}

// A coach is told what came since the previous visit, in a sentence.
func TestSinceTheLastVisit(t *testing.T) {
	corrected := played(false, 99, 20)
	corrected.New = figures.Corrected
	begun := figures.ListedRound{New: figures.Entered, Card: 18}
	for _, c := range []struct {
		visit  time.Time
		rounds []figures.ListedRound
		want   string
	}{
		{time.Time{}, nil, "Bea has not entered a round yet."},
		{time.Time{}, []figures.ListedRound{begun}, "Bea has not entered a round yet."},
		{time.Time{}, []figures.ListedRound{played(false, 77, -2)}, "Your first look. The last round, of 31 Aug 2026: two under Bea’s target of 79; no doubles."},
		{time.Time{}, []figures.ListedRound{played(false, 80, 1), played(false, 80, 1)}, "Your first look. The last two rounds, 31 Aug 2026: one over Bea’s target of 79 each, most of it on the approach; no doubles."},
		{visit, nil, "Bea has not entered a round yet."},
		{visit, []figures.ListedRound{played(false, 99, 20)}, "Since you last looked, on Tuesday 25 August, Bea entered no new rounds. The last round, of 31 Aug 2026: twenty over Bea’s target of 79, most of it on the approach; no doubles."},
		{visit, []figures.ListedRound{played(true, 79, .04)}, "Since you last looked, on Tuesday 25 August, Bea entered one round, 79. The last round, of 31 Aug 2026: level with Bea’s target of 79; no doubles."},
		{visit, []figures.ListedRound{played(true, 86, 7), played(true, 84, 5), corrected}, "Since you last looked, on Tuesday 25 August, Bea entered two rounds, 84 and 86, and corrected one. The last three rounds, 31 Aug 2026: eleven over Bea’s target of 79 each, most of it on the approach; no doubles."},
		{visit, []figures.ListedRound{corrected}, "Since you last looked, on Tuesday 25 August, Bea entered no new rounds, and corrected one. The last round, of 31 Aug 2026: twenty over Bea’s target of 79, most of it on the approach; no doubles."},
		{visit, []figures.ListedRound{played(true, 86, 7), played(true, 84, 5), played(true, 86, 7), played(true, 84, 5)}, "Since you last looked, on Tuesday 25 August, Bea entered four rounds or more. The last four rounds, 31 Aug 2026: six over Bea’s target of 79 each, most of it on the approach; no doubles."},
	} {
		l := NewLessonsPage(layout.Page{}, LessonsInput{Whose: bea, Name: "Bea", Target: 79, Today: today, Visit: c.visit, Rounds: c.rounds, Earlier: len(c.rounds) == 4})
		if l.Lede != c.want {
			t.Errorf("%q, want %q", l.Lede, c.want)
		}
	}
}

func TestDoublesInWords(t *testing.T) {
	for _, c := range []struct {
		doubles, compound int
		want              string
	}{
		{0, 0, "no doubles"}, {1, 0, "one double, not compound"}, {1, 1, "one compound double"},
		{3, 0, "three doubles, none compound"}, {3, 2, "three doubles, two compound"}, {3, 3, "three doubles, all compound"},
	} {
		r := played(true, 79, 0)
		r.Account.Doubles, r.Account.Counts.Compound = make([]account.Double, c.doubles), c.compound
		if got := doublesOf([]figures.ListedRound{r}); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// A coach who is let in from a later day is told so, and never that nothing was
// entered.
func TestACoachFromALaterDay(t *testing.T) {
	page := layout.Page{Since: today.AddDays(-3)}
	l := NewLessonsPage(page, LessonsInput{Whose: bea, Name: "Bea", Target: 79, Today: today})
	if l.Lede != "Bea has entered no round played on 28 Aug 2026 or later, the first day that you see." {
		t.Error(l.Lede)
	}
}

func TestOwnLede(t *testing.T) {
	fresh, read, open, done := notes.Note{Unread: true}, notes.Note{}, Assignment{Due: today}, Assignment{Done: true}
	for want, in := range map[string]LessonsInput{
		"No coach yet. Invite one, or set yourself something to practise.":  {},
		"Nothing new from a coach, and nothing to practise.":                {Coached: true, Notes: []notes.Note{read}, Assignments: []Assignment{done}},
		"Nothing new from a coach, and one thing to practise.":              {Assignments: []Assignment{open, done}},
		"One note has something new for you, and nothing to practise.":      {Coached: true, Notes: []notes.Note{fresh, read}},
		"Two notes have something new for you, and two things to practise.": {Coached: true, Notes: []notes.Note{fresh, fresh}, Assignments: []Assignment{open, open}},
	} {
		in.Whose, in.Today = mine, today
		if got := NewLessonsPage(layout.Page{}, in).Lede; got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

func TestLessonsPage(t *testing.T) {
	in := LessonsInput{Me: 2, Name: "Bea", Target: 79.5, Today: today, Rounds: []figures.ListedRound{played(true, 86, 7), played(false, 84, 5)},
		Notes:       []notes.Note{{ID: 1, Question: true}, {ID: 2, Question: true, Answered: true}, {ID: 3, Lesson: true, Day: today}},
		Assignments: []Assignment{{ID: 1, Due: today}, {ID: 2, Done: true}, {ID: 3, Due: today}},
		Proposals:   []Proposal{{CoachID: 2, Coach: "Ines", Target: 82}}}
	for name, c := range map[string]struct {
		whose              paths.Whose
		visit              time.Time
		title, heading, at string
		acts               []string
		isNew              []bool // of the rounds shown
	}{
		"own": {mine, visit, "Lessons and practice", "Lessons and practice", "", []string{"What to practise", "Log of practice", "Months side by side", "All rounds", "A report to print", "Handicap estimate (unofficial)"}, nil},
		"a coach's first visit": {bea, time.Time{}, "Bea", "Bea", "Monday 31 August 2026. Target 79.5.",
			[]string{"What to practise", "Log of practice", "Months side by side", "All rounds", "A report to print", "Handicap estimate (unofficial)", "Enter a round for Bea"}, []bool{false, false}},
		"a coach's next visit": {bea, visit, "Bea", "Bea", "Monday 31 August 2026. Target 79.5.",
			[]string{"Rounds from 31 Aug on, against those before", "What to practise", "Log of practice", "Months side by side", "All rounds", "A report to print", "Handicap estimate (unofficial)", "Enter a round for Bea"}, []bool{true, false}},
	} {
		in.Whose, in.Visit = c.whose, c.visit
		l := NewLessonsPage(layout.Page{}, in)
		if l.Title != c.title || l.Heading != c.heading || l.At != c.at || l.Own != c.whose.Own || l.Player != "7" || l.Coach != "2" || l.Here != layout.Here(c.whose, "/players/7/lessons") {
			t.Errorf("%s: %q %q %q %v %q %q %q", name, l.Title, l.Heading, l.At, l.Own, l.Player, l.Coach, l.Here)
		}
		var acts []string
		for _, a := range l.Acts {
			acts = append(acts, a.Name)
		}
		var isNew []bool
		for _, r := range l.Rounds {
			isNew = append(isNew, r.New != "")
		}
		if diff := cmp.Diff(c.acts, acts) + cmp.Diff(c.isNew, isNew); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
		if len(l.Questions) != 1 || l.Questions[0].ID != "note-1" || len(l.Notes) != 2 || len(l.Practice) != 2 || len(l.Done) != 1 || l.Done[0].ID != "practice-2" {
			t.Errorf("%s: %d questions, %d notes, %d and %d to practise", name, len(l.Questions), len(l.Notes), len(l.Practice), len(l.Done))
		}
		if diff := cmp.Diff([]ProposedTarget{{"2", "Ines", "82"}}, l.Target.Proposed); diff != "" || l.Target.Now != "79.5" || (l.Target.ProposeAt == "") != c.whose.Own {
			t.Errorf("%s: %s %+v", name, diff, l.Target)
		}
	}
	in.Whose, in.Visit = bea, visit
	want := paths.Comparison{Whose: bea}.With(golf.Span{To: today.AddDays(-1)}, golf.Span{From: today}).Months()
	if at := NewLessonsPage(layout.Page{}, in).Acts[0].At; at != want {
		t.Errorf("since the last visit is at %q", at)
	}
}

func TestLessonForms(t *testing.T) {
	for name, whose := range map[string]paths.Whose{"own": mine, "coach": bea} {
		l := NewLessonsPage(layout.Page{}, LessonsInput{Whose: whose, Today: today})
		want := LessonForm{At: "/players/7/notes", CanHide: name == "coach", Share: map[bool]string{true: "Share with ", false: "Save"}[name == "coach"],
			Day:  components.Field{Name: "day", ID: "lesson_day", Label: "Day of the lesson", Type: "date", Value: "2026-08-31"},
			Body: components.Area{Name: "body", ID: "lesson", Label: "Lesson", Hint: "Lines that begin with a hyphen become a list."}}
		if diff := cmp.Diff(want, l.Lesson); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
		if due := l.Assign.Fields[3]; due.Value != "2026-09-07" || l.Assign.Open {
			t.Errorf("%s: due %q", name, due.Value)
		}
	}
	day := form.Day{Text: "May", Problem: "No."}
	returned := func(back form.Returned) LessonsPage {
		return NewLessonsPage(layout.Page{}, LessonsInput{Whose: bea, Today: today, Returned: back})
	}
	lesson := returned(form.Returned{Lesson: &form.Note{Day: day, Body: form.Text{Text: "Grip."}}})
	assign := returned(form.Returned{Assignment: &form.Assignment{What: form.Text{Text: "Putts"}, Due: form.Day{Text: "soon", Problem: "No."}}})
	target := returned(form.Returned{Target: &form.Number{Text: "120", Problem: "No."}})
	if f := lesson.Lesson; !f.Open || f.Day.Value != "May" || f.Day.Problem != "No." || f.Body.Value != "Grip." || f.Wrong.Heading != "Not saved yet: one thing to fix." || lesson.Assign.Open {
		t.Errorf("%+v", f)
	}
	if f := assign.Assign; !f.Open || f.Fields[0].Value != "Putts" || f.Fields[3].Value != "soon" || f.Fields[3].Problem != "No." || len(f.Wrong.Links) != 1 || assign.Lesson.Open {
		t.Errorf("%+v", f)
	}
	if f := target.Target; f.Field.Value != "120" || f.Field.Problem != "No." || f.Wrong.Heading != "The target was not proposed." {
		t.Errorf("%+v", f)
	}
}
