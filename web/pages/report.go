package pages

import (
	"fmt"
	"time"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/paths"

	"strokeledger/web/layout"
)

// Report is a page to take away: a span of a player's rounds in a sentence, an
// account, three pictures, what was written, and what is to be practised.
type Report struct {
	Months
	Name     string
	Written  []NoteCard
	Practice []AssignmentCard
	Presets  []Preset
	SpanAt   string // where another span is chosen
	From, To components.Field
	Problem  string
	Back     string
}

// AskedReport is what a report is made of.
type AskedReport struct {
	Months      AskedMonths // of the span before and the span
	Span        compare.Span
	Notes       []Note
	Assignments []Assignment
	Today       golf.Date
	Problem     string
}

// NewReport makes the page.
func NewReport(page layout.Page, q AskedReport) Report {
	whose := q.Months.At.Whose
	r := Report{Months: NewMonths(page, q.Months), Name: q.Months.Name, Back: whose.Lessons(), SpanAt: whose.Report(""), Problem: q.Problem}
	r.Title, r.Here = "Report for "+q.Months.Name, here(whose, paths.Coaching)
	name := spanIn(q.Span, true)
	if q.Span.Last > 0 {
		name += " rounds"
	}
	r.At = fmt.Sprintf("%s. %s.", capital(name), day(q.Today))
	r.Months.Choose, r.Months.Presets = ChooseSpans{}, nil
	today := q.Today.Time()
	for _, p := range []struct{ name, span string }{{"the last ten rounds", "last10"}, {today.Format("January"), compare.Month(today.Year(), today.Month()).String()},
		{monthBefore(today).Format("January"), compare.Month(monthBefore(today).Year(), monthBefore(today).Month()).String()}, {today.Format("2006"), today.Format("2006")}} {
		r.Presets = append(r.Presets, Preset{p.name, whose.Report(p.span), p.span == q.Span.String()})
	}
	r.From = components.Field{Name: "from", Label: "From", Type: "date", Value: q.Span.From.String(), Problem: q.Problem}
	r.To = components.Field{Name: "to", Label: "To", Type: "date", Value: q.Span.To.String()}
	first, last := spanDays(q)
	for _, n := range q.Notes {
		if n.Private || n.Day.Compare(first) < 0 || n.Day.Compare(last) > 0 {
			continue
		}
		card := noteCard(n, whose, false, Typed{})
		card.Who, card.New, card.Read = n.Author, false, ""
		r.Written = append(r.Written, card)
	}
	for _, a := range q.Assignments {
		r.Practice = append(r.Practice, assignmentCard(a, AskedLessons{Whose: whose, Today: q.Today}))
	}
	return r
}

func monthBefore(t time.Time) time.Time { return t.AddDate(0, 0, 1-t.Day()).AddDate(0, -1, 0) }

// spanDays are the days for which notes stand on a report: those of the span, or
// of its rounds up to today.
func spanDays(q AskedReport) (first, last golf.Date) {
	first, last = q.Span.From, q.Span.To
	if c := q.Months.Sheet.Columns; q.Span.Last > 0 && len(c) > 0 && len(c[len(c)-1].Rounds) > 0 {
		first = c[len(c)-1].Rounds[0].Round.Date
	}
	if last.IsZero() {
		last = q.Today
	}
	return first, last
}
