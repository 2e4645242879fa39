package pages

import (
	"fmt"
	"slices"
	"time"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/chart"
	"strokeledger/web/components"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// Report is a page to take away: a span of a player's rounds in a sentence, an
// account, three pictures, what was written, and what is to be practised.
type Report struct {
	layout.Page
	Name     string
	At       string // the span, and the day it was made
	Lede     string
	Empty    bool // the player has no rounds
	Season   Season
	Putts    Putts
	Against  string
	Axis     components.Axis
	Account  []ReportLine
	Levels   []RosterPart
	Written  []NoteCard
	More     string // notes and practice that the page has no room for
	Practice []AssignmentCard
	Presets  []Preset
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
	Change                 ChangeWords
	All                    bool
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
	page.Title, page.Here, page.Kind = "Report for "+q.Months.Name, here(whose, paths.Coaching), "report"
	r := Report{Page: page, Name: q.Months.Name, Back: whose.Lessons(), SpanAt: whose.Report(""), Empty: len(q.Months.Line) == 0, Lede: "No round yet."}
	name := spanIn(q.Span, true)
	if q.Span.Last > 0 {
		name += " rounds"
	}
	r.At = fmt.Sprintf("%s. %s.", capital(name), day(q.Today))
	today := q.Today.Time()
	for _, p := range []struct{ name, span string }{{"the last ten rounds", "last10"}, {today.Format("January"), compare.Month(today.Year(), today.Month()).String()},
		{monthBefore(today).Format("January"), compare.Month(monthBefore(today).Year(), monthBefore(today).Month()).String()}, {today.Format("2006"), today.Format("2006")}} {
		r.Presets = append(r.Presets, Preset{p.name, whose.Report(p.span), p.span == q.Span.String()})
	}
	r.From = components.Field{Name: "from", Label: "From", Type: "date", Value: q.Span.From.String(), Problem: q.Problem}
	r.Wrong = components.Summed(r.From).Saying("These days cannot be shown.")
	r.To = components.Field{Name: "to", Label: "To", Type: "date", Value: q.Span.To.String()}
	if !r.Empty {
		r.Foot = monthsFoot(q.Months)
		r.Lede, r.Season, r.Putts = monthsLede(q.Months), season(q.Months), putts(q.Months)
		r.account(q)
	}
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
	r.fit()
	return r
}

// account fills in what each part lost in the span, and what it plays to.
func (r *Report) account(q AskedReport) {
	columns := q.Months.Sheet.Columns
	now, before := columns[len(columns)-1], columns[len(columns)-2]
	r.Against = "Strokes lost for 18 holes against " + againstWhom(q.Months)
	scale := monthScale(q.Months.Sheet)
	r.Axis = components.NewAxis(scale, tick)
	for _, c := range append(slices.Clone(golf.Categories), 0) {
		line := ReportLine{Name: "All", Bar: emptyBar, Figure: "no round", All: c == 0}
		cell := now.Cells[c]
		if c != 0 {
			line.Name = capital(c.String())
		}
		if cell.Known {
			line.Figure, line.Change = signed(cell.Mean, 1), changeWords(cell.Change, oneDecimal)
			if c != 0 {
				line.Bar = scale.Bar(cell.Mean)
			}
		}
		if cell.HasInterval {
			line.Interval = signed(cell.Interval.Low, 1) + " to " + signed(cell.Interval.High, 1)
			if c != 0 {
				line.Whisker = scale.Whisker(cell.Mean, cell.Interval.Low, cell.Interval.High)
			}
		}
		r.Account = append(r.Account, line)
	}
	var form compare.Form
	form.Now, form.Told, form.Was = now.PlaysTo, now.Plays, before.Plays
	for _, c := range golf.Categories {
		form.Before[c] = before.PlaysTo[c].Level
	}
	pupil := []RosterPupil{{Target: q.Months.Target, Form: form}}
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

// headLines is how many lines say who wrote a note, or what to practise.
const headLines = 2

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

// lines is how many lines a note takes on the page.
func (c NoteCard) lines() int {
	n := headLines
	count := func(all []Paragraph) {
		for _, p := range all {
			for _, l := range p.Lines {
				n += 1 + len(l)/reportLetters
			}
		}
	}
	count(c.Body)
	for _, r := range c.Replies {
		n++
		count(r.Body)
	}
	return n
}

// fit leaves out what one page has no room for, and says so. The latest note is
// always there.
func (r *Report) fit() {
	var left []string
	room := fitting(len(r.Written), func(i int) int { return r.Written[i].lines() })
	if n := len(r.Written) - room; n > 0 {
		r.Written, left = r.Written[:room], append(left, plural(n, "earlier note", "earlier notes"))
	}
	for i := range r.Practice {
		a := &r.Practice[i]
		a.Results = a.Results[max(0, len(a.Results)-reportResults):]
	}
	room = fitting(len(r.Practice), func(i int) int { return headLines + 1 + len(r.Practice[i].Results) })
	if n := len(r.Practice) - room; n > 0 {
		r.Practice, left = r.Practice[:room], append(left, plural(n, "more thing to practise", "more things to practise"))
	}
	if len(left) > 0 {
		r.More = capital(listed(left)) + " in lessons and practice."
	}
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
