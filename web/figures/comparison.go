package figures

import (
	"cmp"
	"fmt"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/web/form"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// ComparisonInput is what a comparison of spans is made of.
type ComparisonInput struct {
	analysis.Months                  // the spans side by side, the season, and what can be chosen
	At              paths.Comparison // what was chosen, and of whose rounds
	Name            string           // the player's
	Marks           []MarkedDay      // the days that the player marked, the earliest first
	Target          float64          // the player's, strokes over 18 holes
	Units           form.Units       // of who reads the page
	Refused         form.Comparing   // what is wrong with the form that chose spans
	Mark            form.Mark        // the form that marks a day, as it came back
}

// ComparisonFoot says what the figures of a comparison mean.
func ComparisonFoot(in ComparisonInput) string {
	return fmt.Sprintf("Fixed golfer: every round is compared with the same golfer, %s, so a longer course expects more strokes. The comparison knows a course’s length, but not its slope, wind or rough: leave out rounds played in unusual conditions. Losses are per 18 holes; holes entered as a score alone do not count. Doubles are judged by each round’s own target.", Against(in))
}

// Against names the golfer compared with.
func Against(in ComparisonInput) string {
	if in.Level == 0 {
		return "a tour player"
	}
	return words.A(in.Level) + " golfer"
}

// SpanName names the span of column i: its last rounds with how many they are and
// from when, since that is not what was asked for where there are fewer; months have their year when the columns
// are not all of one year.
func SpanName(in ComparisonInput, i int) string {
	c := in.Sheet.Columns[i]
	if n := len(c.Rounds); c.Span.Last > 0 && n > 0 {
		days := words.Days(c.Rounds[0].Round.Date, c.Rounds[n-1].Round.Date)
		c.Span.Last = n // fewer than were asked for, where the player has no more
		return words.Span(c.Span, false) + words.OneOrMany(n, " of ", " from ") + days
	}
	return words.Span(c.Span, severalYears(in))
}

// ShortSpanName names the span of column i beside a bar: Aug, Aug 25, last 10.
func ShortSpanName(in ComparisonInput, i int) string {
	rounds := len(in.Sheet.Columns[i].Rounds)
	switch s := in.Sheet.Columns[i].Span; {
	case s.Last > 0 && s.Before:
		return fmt.Sprintf("%d before", cmp.Or(rounds, s.Last))
	case s.Last > 0:
		return fmt.Sprintf("last %d", cmp.Or(rounds, s.Last))
	case s.IsMonth() && severalYears(in):
		return s.From.Time().Format("Jan 06")
	case s.IsMonth():
		return s.From.Time().Format("Jan")
	default:
		return SpanName(in, i)
	}
}

// severalYears reports whether the columns are not all of one year.
func severalYears(in ComparisonInput) bool {
	years := map[int]bool{in.Last.Year: true}
	for _, c := range in.Sheet.Columns {
		if c.Span.Last == 0 {
			years[c.Span.From.Year] = true
		}
	}
	return len(years) > 1
}

// MarkedDay is a day on which something changed for the player.
type MarkedDay struct {
	ID   int64     // of the mark, to remove it by
	Day  golf.Date // the first day after the change
	What string    // what happened, in the player’s words
}
