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

// ComparisonPage is spans of a player's rounds side by side. Its tables, the
// season and the putts are zero while it is empty.
type ComparisonPage struct {
	layout.Page
	At      string            // how many rounds on how many courses, and whose
	Lede    string            // what changed, in a sentence
	Empty   bool              // there is no round to compare
	Presets []components.Link // choices one click away; none without rounds
	Choose  ChooseSpans
	Changes figures.Changes // the two spans compared; not Known with one
	Season  figures.Season
	Parts   []figures.PartMonths // strokes lost in each part of the game, span by span
	Against string               // what those strokes are, and what the marks mean
	Levels  []figures.PartMonths // level that each part plays to, span by span
	Plays   string               // those levels in a line
	Counts  []CountFold
	Putts   figures.Putts
	Bands   figures.FigureTable // strokes lost by distance

	PractiseFor string            // says what Practise leads to
	Practise    []components.Link // from every part that lost strokes in the latest span to its place in the plan

	Enter   string // address that begins a round; empty where the page is not empty, and for a coach
	CSV     string // address of the table as a file
	Record  string // address of the handicap estimate
	Lessons string // address of lessons and practice
}

// NewComparisonPage makes the page.
func NewComparisonPage(page layout.Page, in figures.ComparisonInput) ComparisonPage {
	page.Title, page.Here, page.Explained, page.BodyClass = "Months side by side", layout.Here(in.At.Whose, paths.MyMonths), "sure", "months-page"
	m := ComparisonPage{Page: page, Presets: presets(in), Choose: chooseSpans(in), CSV: in.At.MonthsCSV(), Record: in.At.Handicap(), Lessons: in.At.Lessons()}
	m.At = fmt.Sprintf("%s, %s.", monthsAt(in), in.Name)
	if len(in.Line) == 0 {
		m.Empty, m.At = true, in.Name+"."
		if in.At.Own {
			m.Enter = paths.NewRound
		}
		m.Lede = "No rounds to compare yet. Enter two to see them side by side here."
		if !in.At.Own {
			m.Lede = words.NoRounds(in.Name, page.Since)
		}
		if in.At.Course != "" || len(in.At.Without) > 0 {
			m.Lede = "No rounds left to compare. Choose another course, or leave fewer rounds out."
		}
		return m
	}
	m.Lede = figures.ComparisonLede(in)
	m.show(in)
	return m
}

// show fills in the tables and pictures of a comparison that has rounds.
func (m *ComparisonPage) show(in figures.ComparisonInput) {
	m.Foot = figures.ComparisonFoot(in)
	m.Changes = figures.NewChanges(in)
	m.Season = figures.NewSeason(in)
	m.Parts = figures.NewPartMonths(in)
	m.Against = fmt.Sprintf("Strokes lost for 18 holes against %s. Whiskers: what luck alone could do; arrows go on.", figures.Against(in))
	m.Levels, m.Plays = figures.NewLevelMonths(in), figures.LevelsSaid(in)
	m.Counts = counts(in)
	m.Putts = figures.NewPutts(in)
	m.Bands = figures.NewBandTable(in)
	m.practise(in)
}

// practise leads from every part that lost strokes in the latest span with rounds to
// its place in the plan of that span.
func (m *ComparisonPage) practise(in figures.ComparisonInput) {
	pair := figures.NewPair(in)
	if pair.Now < 0 {
		return
	}
	m.PractiseFor = "What to practise, by the rounds of " + pair.NowName
	printed, span := figures.PrintedLosses(in.Sheet, pair.Now), in.Sheet.Columns[pair.Now].Span
	for _, part := range golf.Categories {
		if printed[part] > 0 {
			m.Practise = append(m.Practise, components.Link{Name: words.Capital(part.String()), At: in.At.PlanFor(part, span)})
		}
	}
}

// workings are those of the parts, for paper.
func (m *ComparisonPage) workings() []figures.Voucher {
	var all []figures.Voucher
	for _, part := range m.Parts {
		for _, month := range part.Months {
			all = append(all, month.Voucher)
		}
	}
	return all
}

// monthsAt counts the rounds of the spans, and their courses.
func monthsAt(in figures.ComparisonInput) string {
	rounds, courses := 0, map[string]bool{}
	seen := map[golf.RoundID]bool{}
	for _, c := range in.Sheet.Columns {
		for _, r := range c.Rounds {
			if !seen[r.ID] {
				seen[r.ID] = true
				rounds++
				courses[r.Round.Course] = true
			}
		}
	}
	return fmt.Sprintf("%s on %s", words.Plural(rounds, "round", "rounds"), words.SpelledPlural(len(courses), "course", "courses"))
}

// presets are the choices one click away: months, seasons, the last ten rounds,
// and before and after each marked day. The one that is shown says so.
func presets(in figures.ComparisonInput) []components.Link {
	if in.Last.IsZero() {
		return nil
	}
	last := in.Last.Time()
	months := func(n int) []golf.Span {
		var spans []golf.Span
		for i := n - 1; i >= 0; i-- {
			d := last.AddDate(0, 0, 1-last.Day()).AddDate(0, -i, 0)
			spans = append(spans, golf.Month(d.Year(), d.Month()))
		}
		return spans
	}
	all := []components.Link{
		{Name: "two months", At: in.At.With(months(2)...).Months()},
		{Name: "four", At: in.At.With(months(4)...).Months()},
		{Name: "six", At: in.At.With(months(6)...).Months()},
	}
	if y := in.Last.Year; in.First.Year < y {
		all = append(all, components.Link{Name: fmt.Sprintf("%d and %d", y-1, y), At: in.At.With(golf.Year(y-1), golf.Year(y)).Months()})
	}
	all = append(all, components.Link{Name: "the last ten and the ten before", At: in.At.With(golf.Span{Last: 10, Before: true}, golf.Span{Last: 10}).Months()})
	for _, m := range in.Marks {
		all = append(all, components.Link{Name: "before and after " + m.What, At: in.At.With(golf.Span{To: m.Day.AddDays(-1)}, golf.Span{From: m.Day}).Months()})
	}
	return markHere(in, all)
}

// markHere marks the choice that the page shows.
func markHere(in figures.ComparisonInput, all []components.Link) []components.Link {
	var spans []golf.Span
	for _, c := range in.Sheet.Columns {
		spans = append(spans, c.Span)
	}
	here := in.At.With(spans...).Months()
	for i := range all {
		all[i].Here = all[i].At == here
	}
	return all
}

// kept lists what a form sends on of the choices that it does not ask for.
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
