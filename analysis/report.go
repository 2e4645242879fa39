package analysis

import (
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
// long before.
type Report struct {
	Months // of the span before and the span
	Span   golf.Span
}

// Report works out a report. Targets outside golf.MinTarget to golf.MaxTarget
// are an error.
func (e *Engine) Report(in ReportInput) (Report, error) {
	before, ok := in.Span.Earlier()
	if !ok {
		before = beforeAll
	}
	m, err := e.Months(MonthsInput{History: in.History, Choice: golf.Comparison{Spans: []golf.Span{before, in.Span}}, Target: in.Target, Boundary: in.Boundary})
	return Report{m, in.Span}, err
}
