package pages

import (
	"fmt"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// Months is spans of a player's rounds side by side.
type Months struct {
	layout.Page
	At      string // what is compared, and whose it is
	Lede    string
	Empty   bool // the player has no rounds, or the course has none
	Presets []Preset
	Choose  ChooseSpans
	Against string // the golfer compared with
	Since   string // heading of the last column's change from the first; empty for two spans
	Parts   MonthTable
	Plays   MonthTable
	Counts  []MonthTable
	Season  Season
	Putts   Putts
	Enter   string // address at which a round begins, while there is none
	CSV     string // address of the table as a file
	Record  string // address of the handicap estimate
	Lessons string
}

// Preset is a choice of spans that is one click away.
type Preset struct {
	Name, At string
	Here     bool
}

// AskedMonths is what a comparison is made of.
type AskedMonths struct {
	At       paths.Comparison
	Name     string // the player's
	Sheet    compare.Sheet
	Line     []compare.Point // the season, on the course where the lens takes its level
	Marks    []MarkedDay
	Courses  []string
	Rounds   []RoundOf
	Target   float64       // the player's
	Level    float64       // of the golfer compared with; 0 for the tour
	Putter   golfer.Putter // of the target
	TourPutt golfer.Putter
	Units    form.Units
	First    golf.Date // of all rounds
	Last     golf.Date
	Problems map[string]string // what was wrong with a form, by field
	Marking  [2]string         // the day and what happened, as they were typed
}

// NewMonths makes the page.
func NewMonths(page layout.Page, q AskedMonths) Months {
	page.Title, page.Here = "Months side by side", here(q.At.Whose, paths.MyMonths)
	m := Months{Page: page, Presets: presets(q), Choose: chooseSpans(q), CSV: q.At.MonthsCSV(), Record: q.At.Handicap(), Lessons: q.At.Lessons(), Against: againstWhom(q)}
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
	m.Lede = monthsLede(q)
	if n := len(q.Sheet.Columns); n > compare.MinSpans {
		m.Since = fmt.Sprintf("%s against %s", capital(spanName(q, n-1)), spanName(q, firstPlayed(q.Sheet)))
	}
	m.Foot = monthsFoot(q)
	m.Parts = m.parts(q)
	m.Plays = m.plays(q)
	m.Counts = m.counts(q)
	m.Season = season(q)
	m.Putts = putts(q)
	return m
}

// monthsFoot says what the figures mean.
func monthsFoot(q AskedMonths) string {
	return fmt.Sprintf("Fixed golfer. Every round is compared with the same golfer, %s, so that a longer course expects more strokes. He knows a course's length, not its slope, wind or rough: leave out rounds that were not alike. Losses are for 18 holes; holes known by their score alone count in none. Doubles are judged by the target that each round was played for.", againstWhom(q))
}

// againstWhom names the golfer compared with.
func againstWhom(q AskedMonths) string {
	if q.Level == 0 {
		return "a tour player"
	}
	return "a " + plain(q.Level) + " golfer"
}

func monthsAt(q AskedMonths) string {
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
	return fmt.Sprintf("%s on %s %s", plural(rounds, "round", "rounds"), spelled(len(courses)), word(len(courses), "course", "courses"))
}

// firstPlayed is the first column that has rounds.
func firstPlayed(s compare.Sheet) int {
	for i, c := range s.Columns {
		if len(c.Rounds) > 0 {
			return i
		}
	}
	return 0
}

// spanName names a span as a column heads it.
func spanName(q AskedMonths, i int) string {
	years := map[int]bool{q.Last.Year: true}
	for _, c := range q.Sheet.Columns {
		if c.Span.Last == 0 {
			years[c.Span.From.Year] = true
		}
	}
	return spanIn(q.Sheet.Columns[i].Span, len(years) > 1)
}

// spanIn names a span, its years told where they differ.
func spanIn(s compare.Span, years bool) string {
	switch {
	case s.Last > 0 && s.Before:
		return "the " + spelled(s.Last) + " before"
	case s.Last > 0:
		return "the last " + spelled(s.Last)
	case s.From.IsZero() && s.To.IsZero():
		return "all rounds"
	case s.From.IsZero():
		return "up to " + shortDay(s.To)
	case s.To.IsZero():
		return "from " + shortDay(s.From)
	case s.IsYear():
		return fmt.Sprint(s.From.Year)
	case s.IsMonth() && !years:
		return s.From.Month.String()
	case s.IsMonth():
		return s.From.Time().Format("Jan 2006")
	default:
		return shortDay(s.From) + " to " + shortDay(s.To)
	}
}

func shortDay(d golf.Date) string { return d.Time().Format("2 Jan 2006") }

// presets are the choices one click away: months, seasons, the last ten rounds,
// and before and after each marked day.
func presets(q AskedMonths) []Preset {
	if q.Last.IsZero() {
		return nil
	}
	last := q.Last.Time()
	months := func(n int) []string {
		var spans []string
		for i := n - 1; i >= 0; i-- {
			d := last.AddDate(0, 0, 1-last.Day()).AddDate(0, -i, 0)
			spans = append(spans, compare.Month(d.Year(), d.Month()).String())
		}
		return spans
	}
	all := []Preset{
		{Name: "two months", At: q.At.With(months(2)...).Months()},
		{Name: "four months", At: q.At.With(months(4)...).Months()},
		{Name: "six months", At: q.At.With(months(6)...).Months()},
	}
	if y := q.Last.Year; q.First.Year < y {
		all = append(all, Preset{Name: fmt.Sprintf("%d and %d", y-1, y), At: q.At.With(fmt.Sprint(y-1), fmt.Sprint(y)).Months()})
	}
	all = append(all, Preset{Name: "the last ten rounds and the ten before", At: q.At.With("before10", "last10").Months()})
	for _, m := range q.Marks {
		all = append(all, Preset{Name: "before and after " + m.What, At: q.At.With(".."+m.Day.AddDays(-1).String(), m.Day.String()+"..").Months()})
	}
	var spans []string
	for _, c := range q.Sheet.Columns {
		spans = append(spans, c.Span.String())
	}
	here := q.At.With(spans...).Months()
	for i := range all {
		all[i].Here = all[i].At == here
	}
	return all
}

// MarkedDay is a day that the player marked.
type MarkedDay struct {
	ID   int64
	Day  golf.Date
	What string
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
