package coach

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

func TestAssignmentCard(t *testing.T) {
	own, pupil := LessonsInput{Whose: paths.Whose{Player: 7, Own: true}, Today: today}, LessonsInput{Whose: paths.Whose{Player: 7}, Today: today}
	results := []AssignmentResult{{ID: 4, Day: today.AddDays(-3), Result: "30 of 40"}, {ID: 5, Day: today, Result: "33 of 40", Passed: true}}
	record := RecordForm{At: "/players/7/assignments/3/results", Passed: "passed-practice-3",
		Day:    components.Field{Name: "day", ID: "day-practice-3", Label: "Day", Type: "date", Value: "2026-08-31"},
		Result: components.Field{Name: "result", ID: "result-practice-3", Label: "Result", Hint: "For example, 33 of 40."}}
	const at = "/players/7/assignments/3/"
	for name, c := range map[string]struct {
		a    Assignment
		in   LessonsInput
		want AssignmentCard
	}{
		"to a coach, by another, with nothing but what to do": {Assignment{ID: 3, What: "Start line", Due: today}, pupil,
			AssignmentCard{ID: "practice-3", What: "Start line", Due: "by today"}},
		"to the coach who set it, with results": {Assignment{ID: 3, What: "Start line", Amount: "40 putts", PassMark: "32 of 40", By: "Ines", Mine: true, Due: today.AddDays(1), Results: results}, pupil,
			AssignmentCard{ID: "practice-3", What: "Start line", Facts: []string{"40 putts", "pass mark 32 of 40", "set by Ines"}, Due: "by tomorrow", Passed: "1 of 2 passed", Remove: at + "remove",
				Results: []ResultRow{{Day: "28 Aug 2026", Result: "30 of 40", Passed: "not passed"}, {Day: "31 Aug 2026", Result: "33 of 40", Passed: "passed"}}}},
		"to the player, late": {Assignment{ID: 3, What: "Start line", Due: today.AddDays(-1), Results: results[1:]}, own,
			AssignmentCard{ID: "practice-3", What: "Start line", Late: "1 day late", Passed: "1 of 1 passed", Remove: at + "remove", DoneAt: at + "done", DoneText: "Mark as done", DoneTo: "yes", Record: &record,
				Results: []ResultRow{{Day: "31 Aug 2026", Result: "33 of 40", Passed: "passed", Remove: at + "results/5/remove"}}}},
		"to the player, done": {Assignment{ID: 3, What: "Start line", Due: today.AddDays(-9), Done: true}, own,
			AssignmentCard{ID: "practice-3", What: "Start line", Due: "done", Remove: at + "remove", DoneAt: at + "done", DoneText: "Mark as not done"}},
	} {
		if diff := cmp.Diff(c.want, newAssignmentCard(c.a, c.in)); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

// A result that came back keeps what was typed, on its own card only.
func TestRefusedResult(t *testing.T) {
	in := LessonsInput{Whose: paths.Whose{Player: 7, Own: true}, Today: today,
		Returned: form.Returned{Of: 3, Result: &form.Result{Day: form.Day{Text: "May", Problem: "Not a day."}, Result: form.Text{Text: "x"}}}}
	refused, other := newAssignmentCard(Assignment{ID: 3, Due: today}, in).Record, newAssignmentCard(Assignment{ID: 4, Due: today}, in).Record
	if !refused.Open || refused.Day.Value != "May" || refused.Day.Problem != "Not a day." || refused.Result.Value != "x" || len(refused.Wrong.Links) != 1 {
		t.Errorf("%+v", refused)
	}
	if other.Open || other.Day.Value != "2026-08-31" || other.Result.Value != "" || other.Wrong.Heading != "" {
		t.Errorf("%+v", other)
	}
}
