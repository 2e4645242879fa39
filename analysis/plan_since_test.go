package analysis

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/practice"
)

// A plan comes back as it was made.
func TestAPlanIsKeptAsMade(t *testing.T) {
	plan, err := engine.Plan(PlanInput{History: weakPutter(t), Target: 79, Minutes: 180})
	if err != nil {
		t.Fatal(err)
	}
	data, err := plan.Kept()
	if err != nil {
		t.Fatal(err)
	}
	if _, err := CleanKept(data); err != nil {
		t.Errorf("a plan that was made is refused from a file: %v", err)
	}
	kept, err := ReadKept(data)
	if err != nil || len(kept.Items) != len(plan.Candidates) || kept.Level != plan.Game.Level {
		t.Fatalf("%+v, %v", kept, err)
	}
	for i, k := range kept.Items {
		c := plan.Candidates[i]
		mark := c.Mark
		mark.Tells = k.Mark.Tells // it follows from the chances
		want := KeptItem{Kind: c.Kind, Part: c.Part, Band: c.Band, WinBack: c.WinBack, Interval: c.Interval, Sure: c.Sure, Mark: mark, Today: c.Today, Minutes: c.Minutes, Again: c.Again}
		k.Drill = practice.Drill{}
		if diff := cmp.Diff(want, k, cmp.AllowUnexported(practice.Station{})); diff != "" {
			t.Errorf("%d: %s", i, diff)
		}
	}
	for _, wrong := range []string{``, `{"version": 9}`, `{"version": 1, "items": [{"kind": 77}]}`} {
		if _, err := ReadKept([]byte(wrong)); err == nil {
			t.Errorf("%q is read", wrong)
		}
	}
}

// What came since is the mean of the rounds before less that of the rounds since, as
// the months say it, and adds up over the parts of the game.
func TestWhatCameSince(t *testing.T) {
	history := weakPutter(t)
	last := history[5].Round.Date
	since, err := engine.Since(SinceInput{History: history, First: history[0].Round.Date, Last: last, Target: 79})
	if err != nil {
		t.Fatal(err)
	}
	months, err := engine.Months(MonthsInput{History: history, Target: 79, Boundary: golf.StandardBoundary,
		Choice: golf.Comparison{Spans: []golf.Span{{From: history[0].Round.Date, To: last}, {From: last.AddDays(1)}}}})
	if err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	for _, c := range golf.Categories {
		s, before, now := since.Parts[c], months.Before().Cells[c], months.Now().Cells[c]
		if want := before.Mean - now.Mean; math.Abs(s.Won-want) > 1e-9 || !s.Known || !s.Sure || s.Word != now.Change.Word || !(s.Interval.Low < s.Won && s.Won < s.Interval.High) {
			t.Errorf("%v: %+v, want %g", c, s, want)
		}
		sum += s.Won
	}
	if math.Abs(sum-since.Parts[0].Won) > 1e-9 || since.Rounds == 0 {
		t.Errorf("the parts come to %g, all to %g", sum, since.Parts[0].Won)
	}
	none, err := engine.Since(SinceInput{History: history, First: history[0].Round.Date, Last: history[len(history)-1].Round.Date, Target: 79})
	if err != nil || none.Rounds != 0 || none.Parts[golf.Putting].Known {
		t.Errorf("%+v, %v", none, err)
	}
}
