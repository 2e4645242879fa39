package months

import (
	"fmt"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// ComparisonPage is spans of a player's rounds side by side.
type ComparisonPage struct {
	layout.Page
	At      string // what is compared, and whose it is
	Lede    string
	Empty   bool // the player has no rounds, or the course has none
	Presets []components.Link
	Choose  ChooseSpans
	Against string // the golfer compared with
	Since   string // heading of the last column's change from the first; empty for two spans
	Parts   figures.SpanTable
	Plays   figures.SpanTable
	Counts  []figures.SpanTable
	Season  figures.Season
	Putts   figures.Putts
	Enter   string // address at which a round begins, while there is none
	CSV     string // address of the table as a file
	Record  string // address of the handicap estimate
	Lessons string
}

// NewComparisonPage makes the page.
func NewComparisonPage(page layout.Page, q figures.ComparisonInput) ComparisonPage {
	page.Title, page.Here = "Months side by side", layout.Here(q.At.Whose, paths.MyMonths)
	m := ComparisonPage{Page: page, Presets: presets(q), Choose: chooseSpans(q), CSV: q.At.MonthsCSV(), Record: q.At.Handicap(), Lessons: q.At.Lessons(), Against: figures.Against(q)}
	m.At = fmt.Sprintf("%s, %s.", monthsAt(q), q.Name)
	if len(q.Line) == 0 {
		m.Empty, m.At = true, q.Name+"."
		if q.At.Own {
			m.Enter = paths.NewRound
		}
		m.Lede = "No rounds to compare yet. Enter two, and they stand side by side here."
		if q.At.Course != "" || len(q.At.Without) > 0 {
			m.Lede = "No round is left to compare. Choose another course, or leave fewer rounds out."
		}
		return m
	}
	m.Lede = figures.ComparisonLede(q)
	if n := len(q.Sheet.Columns); n > golf.MinSpans {
		m.Since = fmt.Sprintf("%s against %s", words.Capital(figures.SpanName(q, n-1)), figures.SpanName(q, figures.FirstPlayed(q.Sheet)))
	}
	m.Foot = figures.ComparisonFoot(q)
	m.Parts = m.parts(q)
	m.Plays = m.plays(q)
	m.Counts = m.counts(q)
	m.Season = figures.NewSeason(q)
	m.Putts = figures.NewPutts(q)
	return m
}

func monthsAt(q figures.ComparisonInput) string {
	rounds, courses := 0, map[string]bool{}
	seen := map[golf.RoundID]bool{}
	for _, c := range q.Sheet.Columns {
		for _, r := range c.Rounds {
			if !seen[r.ID] {
				seen[r.ID] = true
				rounds++
				courses[r.Round.Course] = true
			}
		}
	}
	return fmt.Sprintf("%s on %s %s", words.Plural(rounds, "round", "rounds"), words.Spelled(len(courses)), words.OneOrMany(len(courses), "course", "courses"))
}

// presets are the choices one click away: months, seasons, the last ten rounds,
// and before and after each marked day.
func presets(q figures.ComparisonInput) []components.Link {
	if q.Last.IsZero() {
		return nil
	}
	last := q.Last.Time()
	months := func(n int) []golf.Span {
		var spans []golf.Span
		for i := n - 1; i >= 0; i-- {
			d := last.AddDate(0, 0, 1-last.Day()).AddDate(0, -i, 0)
			spans = append(spans, golf.Month(d.Year(), d.Month()))
		}
		return spans
	}
	all := []components.Link{
		{Name: "two months", At: q.At.With(months(2)...).Months()},
		{Name: "four months", At: q.At.With(months(4)...).Months()},
		{Name: "six months", At: q.At.With(months(6)...).Months()},
	}
	if y := q.Last.Year; q.First.Year < y {
		all = append(all, components.Link{Name: fmt.Sprintf("%d and %d", y-1, y), At: q.At.With(golf.Year(y-1), golf.Year(y)).Months()})
	}
	all = append(all, components.Link{Name: "the last ten rounds and the ten before", At: q.At.With(golf.Span{Last: 10, Before: true}, golf.Span{Last: 10}).Months()})
	for _, m := range q.Marks {
		all = append(all, components.Link{Name: "before and after " + m.What, At: q.At.With(golf.Span{To: m.Day.AddDays(-1)}, golf.Span{From: m.Day}).Months()})
	}
	var spans []golf.Span
	for _, c := range q.Sheet.Columns {
		spans = append(spans, c.Span)
	}
	here := q.At.With(spans...).Months()
	for i := range all {
		all[i].Here = all[i].At == here
	}
	return all
}

// kept is what a form must send on of another's choice.
func (c ChooseSpans) kept(name string) []string {
	switch name {
	case "span":
		return c.Spans
	case "versus":
		return nonEmpty(c.KeepLens)
	case "course":
		return nonEmpty(c.KeepAt)
	default:
		var out []string
		for _, r := range c.Rounds {
			if r.Out {
				out = append(out, r.ID)
			}
		}
		return out
	}
}

func nonEmpty(s string) []string {
	if s == "" {
		return nil
	}
	return []string{s}
}
