package analysis

import (
	"testing"

	"strokeledger/analysis/golf"
)

func TestReportStandsBesideTheSpanBefore(t *testing.T) {
	for _, c := range []struct {
		name        string
		rounds      int
		span        golf.Span
		now, before int
		shown       string
	}{
		{"none", 0, UsualReport(), 0, 0, "last10"},
		{"one", 1, UsualReport(), 1, 0, "last10"},
		{"many", 23, UsualReport(), 10, 10, "last10"},
		{"a month", 23, golf.Month(2026, 5), 11, 10, "2026-05"},
		{"everything, before which there is nothing", 23, golf.Span{}, 23, 0, ".."},
		{"up to a day: the form on it", 23, golf.Span{To: golf.Date{Year: 2026, Month: 5, Day: 31}}, 10, 10, ""},
		{"up to a day before all", 23, golf.Span{To: golf.Date{Year: 2020, Month: 5, Day: 31}}, 0, 0, "..2020-05-31"},
		{"the ten before, of which there are no earlier", 23, golf.Span{Last: 10, Before: true}, 10, 0, "before10"},
	} {
		r, err := engine.Report(ReportInput{History: played(t, 84, c.rounds), Span: c.span, Target: 79, Boundary: golf.StandardBoundary})
		if err != nil {
			t.Fatal(err)
		}
		if now, before := len(r.Now().Rounds), len(r.Before().Rounds); now != c.now || before != c.before || c.shown != "" && r.Span.String() != c.shown {
			t.Errorf("%s: %d rounds in %s, %d before", c.name, now, r.Span, before)
		}
	}
	if _, err := engine.Report(ReportInput{Target: 60, Boundary: golf.StandardBoundary}); err == nil {
		t.Error("a target of 60 was taken")
	}
}
