package compare

import "strokeledger/analysis/golf"

// Span is a stretch of a player's rounds.
type Span = golf.Span

// The fewest and the most spans that stand side by side.
const (
	MinSpans = golf.MinSpans
	MaxSpans = golf.MaxSpans
)

// The ways to make one.
var (
	Month     = golf.Month
	ParseSpan = golf.ParseSpan
	Months    = golf.Months
)
