package sample

import (
	"time"

	"strokeledger/analysis"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/web/coach"
	"strokeledger/web/figures"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// reportPages are a coach's report of a pupil, before a round and with a season.
func reportPages() []Page {
	here := signedIn(paths.Coaching)
	in := lessons(pupilsPages)
	empty := coach.ReportInput{Today: coachingDay, Span: golf.Span{Last: 10}, Months: figures.ComparisonInput{Name: Player, Target: 79, At: paths.Comparison{Whose: pupilsPages}}}
	refused := empty
	refused.Problem = "That is no span."
	full := coach.ReportInput{Today: coachingDay, Span: golf.Month(2026, 8), Notes: in.Notes, Assignments: in.Assignments,
		Months: figures.ComparisonInput{Months: reportMonths(), Name: Player, Target: 79, At: paths.Comparison{Whose: pupilsPages}, Units: form.StandardUnits}}
	return []Page{
		{"coach", "report", "empty", coach.NewReportPage(here, empty).View()},
		{"coach", "report", "refused", coach.NewReportPage(here, refused).View()},
		{"coach", "report", "full", coach.NewReportPage(here, full).View()},
	}
}

// reportMonths is July beside August, both of one round.
func reportMonths() analysis.Months {
	g := golfer.Committed()
	m := analysis.Months{Level: 79, Putter: g.Putter(1), Tour: g.Putter(0), Thin: golf.Enough(golf.ThinTrend, 2, compare.MinRounds), First: coachingDay.AddDays(-40), Last: coachingDay.AddDays(-2), Line: []compare.Point{{ID: 8, Day: coachingDay.AddDays(-40), Holes: 18, Score: 90}, {ID: 9, Day: coachingDay.AddDays(-2), Holes: 18, Score: 86}}}
	for i, month := range []time.Month{time.July, time.August} {
		level := 92 - 6*float64(i)
		c := compare.Column{Span: golf.Month(2026, month), Rounds: []*compare.Judged{{}}}
		c.Cells = append(c.Cells, cell(4-.8*float64(i))) // the parts add up to it
		for k := golf.TeeShots; k <= golf.Putting; k++ {
			c.Cells = append(c.Cells, cell(float64(k)*.4-.2*float64(i)))
			c.PlaysTo[k] = formOf(level, level).Now[golf.Putting]
		}
		m.Sheet.Columns = append(m.Sheet.Columns, c)
	}
	return m
}
