package analysis

import (
	"slices"
	"time"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
)

// UsualReport is the span of a report unless another is chosen: as many rounds as
// a player's form is taken over.
func UsualReport() golf.Span { return golf.Span{Last: compare.FormRounds} }

// beforeAll stands for the span before one that has none: no round is in it.
var beforeAll = golf.Month(1, time.January)

// ReportInput is what a report on a player is made of.
type ReportInput struct {
	History  []golf.Played // all rounds, in the order of their days
	Span     golf.Span
	Target   float64       // the player's
	Boundary golf.Distance // the player's
}

// Report answers "how did this player play in a span?", beside the span of as
// long before. Up to a day, that is the form on that day: as many rounds as a form is
// taken over, beside as many before those.
type Report struct {
	Months // of the span before and the span
	Span   golf.Span
}

// Report works out a report. Targets outside golf.MinTarget to golf.MaxTarget
// are an error.
func (e *Engine) Report(in ReportInput) (Report, error) {
	span, before := in.spans()
	m, err := e.Months(MonthsInput{History: in.History, Choice: golf.Comparison{Spans: []golf.Span{before, span}}, Target: in.Target, Boundary: in.Boundary})
	return Report{m, span}, err
}

// spans are the span of the report, and the one before it.
func (in ReportInput) spans() (span, before golf.Span) {
	if in.Span.Last == 0 && in.Span.From.IsZero() && !in.Span.To.IsZero() {
		return in.upTo(in.Span.To)
	}
	before, ok := in.Span.Earlier()
	if !ok {
		before = beforeAll
	}
	return in.Span, before
}

// upTo are the days of the form on a day, and of the form before that. The form
// before takes whole days, so that no round is in both.
func (in ReportInput) upTo(day golf.Date) (span, before golf.Span) {
	played := in.before(day.AddDays(1))
	if len(played) == 0 {
		return golf.Span{To: day}, beforeAll
	}
	span = golf.Span{From: firstOf(played), To: day}
	if earlier := in.before(span.From); len(earlier) > 0 {
		return span, golf.Span{From: firstOf(earlier), To: span.From.AddDays(-1)}
	}
	return span, beforeAll
}

// before are the rounds before a day, in the order of their days.
func (in ReportInput) before(day golf.Date) []golf.Played {
	n, _ := slices.BinarySearchFunc(in.History, day, func(p golf.Played, d golf.Date) int { return p.Round.Date.Compare(d) })
	return in.History[:n]
}

// firstOf is the first day of the latest rounds, of as many as a form is taken over.
func firstOf(played []golf.Played) golf.Date {
	return played[max(0, len(played)-compare.FormRounds)].Round.Date
}
