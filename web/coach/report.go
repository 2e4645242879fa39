package coach

import (
	"fmt"
	"slices"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/web/chart"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/notes"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// ReportPage is a page to take away: a span of a player's rounds in a sentence, an
// account, three pictures, what was written, and what is to be practised.
type ReportPage struct {
	layout.Page
	Name     string
	At       string // the span, and the day it was made
	Lede     string
	Empty    bool // the player has no rounds
	Season   figures.Season
	Putts    figures.Putts
	Against  string
	Axis     components.Axis
	Account  []ReportLine
	Levels   []RosterPart
	Written  []notes.Card
	More     string // notes and practice that the page has no room for
	Practice []AssignmentCard
	Presets  []components.Link
	SpanAt   string // where another span is chosen
	From, To components.Field
	Wrong    components.Summary
	Back     string
}

// ReportLine is what a part of the game lost for 18 holes in the span, and how it
// changed from the span before.
type ReportLine struct {
	Name, Figure, Interval string
	Bar                    chart.Bar
	Whisker                chart.Whisker
	Change                 figures.ChangeWords
	All                    bool
}

// ReportInput is what a report is made of.
type ReportInput struct {
	Months      figures.ComparisonInput // of the span before and the span
	Span        golf.Span
	Notes       []notes.Note
	Assignments []Assignment
	Today       golf.Date
	Problem     string
}

// NewReportPage makes the page.
func NewReportPage(page layout.Page, q ReportInput) ReportPage {
	whose := q.Months.At.Whose
	page.Title, page.Here, page.BodyClass = "Report for "+q.Months.Name, layout.Here(whose, paths.Coaching), "report-page"
	r := ReportPage{Page: page, Name: q.Months.Name, Back: whose.Lessons(), SpanAt: whose.Report(), Empty: len(q.Months.Line) == 0, Lede: "No round yet."}
	name := words.Span(q.Span, true)
	if q.Span.Last > 0 {
		name += " rounds"
	}
	r.At = fmt.Sprintf("%s. %s.", words.Capital(name), words.LongDay(q.Today))
	today := q.Today.Time()
	previous := today.AddDate(0, 0, -today.Day()) // last day of the month before
	for _, p := range []struct {
		name string
		span golf.Span
	}{{"the last ten rounds", golf.Span{Last: 10}}, {today.Format("January"), golf.Month(today.Year(), today.Month())},
		{previous.Format("January"), golf.Month(previous.Year(), previous.Month())}, {today.Format("2006"), golf.Year(today.Year())}} {
		r.Presets = append(r.Presets, components.Link{Name: p.name, At: whose.ReportOf(p.span), Here: p.span == q.Span})
	}
	r.From = components.Field{Name: "from", Label: "From", Type: "date", Value: q.Span.From.String(), Problem: q.Problem}
	r.Wrong = components.Summed(r.From).Saying("These days cannot be shown.")
	r.To = components.Field{Name: "to", Label: "To", Type: "date", Value: q.Span.To.String()}
	if !r.Empty {
		r.Foot = figures.ComparisonFoot(q.Months)
		r.Lede, r.Season, r.Putts = figures.ComparisonLede(q.Months), figures.NewSeason(q.Months), figures.NewPutts(q.Months)
		r.account(q)
	}
	first, last := spanDays(q)
	for _, n := range q.Notes {
		if n.Private || n.Day.Compare(first) < 0 || n.Day.Compare(last) > 0 {
			continue
		}
		card := notes.NewCard(n, whose, false, form.Returned{})
		card.Who, card.New, card.Read = n.Author, false, ""
		r.Written = append(r.Written, card)
	}
	for _, a := range q.Assignments {
		r.Practice = append(r.Practice, assignmentCard(a, LessonsInput{Whose: whose, Today: q.Today}))
	}
	r.fit()
	return r
}

// account fills in what each part lost in the span, and what it plays to.
func (r *ReportPage) account(q ReportInput) {
	now := q.Months.Now()
	r.Against = "Strokes lost for 18 holes against " + figures.Against(q.Months)
	scale := figures.SpanScale(q.Months.Sheet)
	r.Axis = components.NewAxis(scale, words.Tick)
	for _, c := range append(slices.Clone(golf.Categories), 0) {
		line := ReportLine{Name: "All", Bar: figures.EmptyBar, Figure: "no round", All: c == 0}
		cell := now.Cells[c]
		if c != 0 {
			line.Name = words.Capital(c.String())
		}
		if cell.Known {
			line.Figure, line.Change = words.Signed(cell.Mean, 1), figures.NewChangeWords(cell.Change, words.OneDecimal)
			if c != 0 {
				line.Bar = scale.Bar(cell.Mean)
			}
		}
		if cell.HasInterval() {
			line.Interval = words.Signed(cell.Interval.Low, 1) + " to " + words.Signed(cell.Interval.High, 1)
			if c != 0 {
				line.Whisker = scale.Whisker(cell.Mean, cell.Interval.Low, cell.Interval.High)
			}
		}
		r.Account = append(r.Account, line)
	}
	pupil := []RosterPupil{{Target: q.Months.Target, RosterRow: analysis.RosterRow{Form: q.Months.Form()}}}
	levels := rosterScale(pupil)
	for _, c := range golf.Categories {
		r.Levels = append(r.Levels, pupil[0].part(c, levels))
	}
}

// What fits on the page: lines of notes and of practice, of so many letters
// each, and the latest results of an assignment.
const (
	reportLines   = 18
	reportLetters = 56
	reportResults = 2
)

// fitting is how many things of so many lines fit: the first always does.
func fitting(n int, lines func(i int) int) int {
	sum := 0
	for i := range n {
		if sum += lines(i); sum > reportLines && i > 0 {
			return i
		}
	}
	return n
}

// fit leaves out what one page has no room for, and says so. The latest note is
// always there.
func (r *ReportPage) fit() {
	var left []string
	room := fitting(len(r.Written), func(i int) int { return r.Written[i].Lines(reportLetters) })
	if n := len(r.Written) - room; n > 0 {
		r.Written, left = r.Written[:room], append(left, words.Plural(n, "earlier note", "earlier notes"))
	}
	for i := range r.Practice {
		a := &r.Practice[i]
		a.Results = a.Results[max(0, len(a.Results)-reportResults):]
	}
	room = fitting(len(r.Practice), func(i int) int { return notes.HeadLines + 1 + len(r.Practice[i].Results) })
	if n := len(r.Practice) - room; n > 0 {
		r.Practice, left = r.Practice[:room], append(left, words.Plural(n, "more thing to practise", "more things to practise"))
	}
	if len(left) > 0 {
		r.More = words.Capital(words.List(left)) + " in lessons and practice."
	}
}

// spanDays are the days for which notes stand on a report: those of the span, or
// of its rounds up to today.
func spanDays(q ReportInput) (first, last golf.Date) {
	first, last = q.Span.From, q.Span.To
	if c := q.Months.Sheet.Columns; q.Span.Last > 0 && len(c) > 0 && len(c[len(c)-1].Rounds) > 0 {
		first = c[len(c)-1].Rounds[0].Round.Date
	}
	if last.IsZero() {
		last = q.Today
	}
	return first, last
}
