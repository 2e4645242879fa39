package entry

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
)

func TestOpenRound(t *testing.T) {
	day := golf.Date{Year: 2026, Month: 5, Day: 2}
	for _, c := range []struct {
		hole, left int
		want       OpenRound
	}{
		{7, 12, OpenRound{"/rounds/3/holes/7", "2 May 2026, Harrow Fen: continue at hole 7, 12 holes to go"}},
		{9, 1, OpenRound{"/rounds/3/holes/9", "2 May 2026, Harrow Fen: continue at hole 9, 1 hole to go"}},
	} {
		if got := NewOpenRound(3, day, "Harrow Fen", c.hole, c.left); got != c.want {
			t.Errorf("%+v, want %+v", got, c.want)
		}
	}
}

// The page offers the same fields for a course of the list and for a new one,
// each under an id of its own.
func TestBeginPage(t *testing.T) {
	courses := []components.Choice{{Value: "1", Name: "Harrow Fen"}}
	open := []OpenRound{{"/rounds/3/holes/7", "2 May 2026, Harrow Fen: continue at hole 7, 12 holes to go"}}
	page := NewBeginPage(layout.Page{}, form.RoundStart{Date: form.ParseDay("2026-05-02"), First: form.WholeOf(1), Part: form.ChoiceOf(form.FrontNine)}, courses, open)
	if page.Title != "Enter a round" || page.Course != "/courses/new" || len(page.Open) != 1 || len(page.Courses) != 1 {
		t.Errorf("%+v", page)
	}
	for ids, fields := range map[string]BeginFields{"": page.Begin, "new_": page.Fresh} {
		want := BeginFields{
			Date:       components.Field{Name: "date", ID: ids + "date", Label: "Date played", Type: "date", Value: "2026-05-02"},
			First:      components.Field{Name: "first_hole", ID: ids + "first_hole", Label: "First hole", Mode: "numeric", Value: "1", Hint: "Where you started; the rest follow in order. Leave it at 1 to start a back nine at 10."},
			Conditions: components.Field{Name: "conditions", ID: ids + "conditions", Label: "Conditions", Hint: "Weather and greens, in one line. Optional."},
			Part: components.Radios{Name: "part", ID: ids + "part", Label: "Holes",
				All: []components.Choice{{Value: "", Name: "all"}, {Value: "front", Name: "front nine", Chosen: true}, {Value: "back", Name: "back nine"}}},
		}
		if diff := cmp.Diff(want, fields); diff != "" {
			t.Error(diff)
		}
	}
	var labels []string
	for _, f := range page.New {
		labels = append(labels, f.Label)
	}
	if diff := cmp.Diff([]string{"Course", "Tees", "Holes"}, labels); diff != "" {
		t.Error(diff)
	}
	if page.BeginWrong.Heading != "" || page.FreshWrong.Heading != "" {
		t.Errorf("%+v, %+v", page.BeginWrong, page.FreshWrong)
	}
}

// Problems belong to the form that was sent.
func TestBeginPageProblems(t *testing.T) {
	date := form.Day{Problem: "That is no date."}
	listed := NewBeginPage(layout.Page{}, form.RoundStart{Date: date, Course: form.Course{Problem: "Choose a course."}}, nil, nil)
	want := components.Summary{Heading: "The round was not started.", Links: []components.SummaryLink{
		{At: "#course", Text: "Course: Choose a course."}, {At: "#date", Text: "Date played: That is no date."}}}
	if diff := cmp.Diff(want, listed.BeginWrong); diff != "" {
		t.Error(diff)
	}
	if listed.FreshWrong.Heading != "" || listed.Fresh.Date.Problem != "" {
		t.Errorf("%+v", listed.FreshWrong)
	}
	fresh := NewBeginPage(layout.Page{}, form.RoundStart{Fresh: true, Date: date, NewName: form.Text{Problem: "Give it a name."}}, nil, nil)
	want = components.Summary{Heading: "The round was not started.", Links: []components.SummaryLink{
		{At: "#new_course", Text: "Course: Give it a name."}, {At: "#new_date", Text: "Date played: That is no date."}}}
	if diff := cmp.Diff(want, fresh.FreshWrong); diff != "" {
		t.Error(diff)
	}
	if fresh.BeginWrong.Heading != "" || fresh.Begin.Date.Problem != "" {
		t.Errorf("%+v", fresh.BeginWrong)
	}
}
