package golf

import (
	"fmt"
	"strconv"
	"strings"
	"time"
)

// Span is a stretch of a player's rounds: days, both included, or the last few
// rounds. A day that is zero sets no end.
type Span struct {
	From, To Date
	Last     int  // rounds counted from the latest; 0 for a span of days
	Before   bool // as many rounds again, before those
}

// mostLast is the most rounds that a span may count.
const mostLast = 100

// longestSpan is the most letters of a written span: two days and two dots.
const longestSpan = 22

// Month returns the span of a calendar month.
func Month(year int, month time.Month) Span {
	first := time.Date(year, month, 1, 0, 0, 0, 0, time.UTC)
	return Span{From: DateOf(first), To: DateOf(first.AddDate(0, 1, -1))}
}

// Year returns the span of a calendar year.
func Year(year int) Span {
	return Span{From: Date{Year: year, Month: time.January, Day: 1}, To: Date{Year: year, Month: time.December, Day: 31}}
}

// ParseSpan reads a span as an address writes it: 2026, 2026-05,
// 2026-05-03..2026-06-14 with either end left out, last10 or before10.
func ParseSpan(s string) (Span, error) {
	if len(s) > longestSpan { // it would stand in the error, and that on a page
		return Span{}, fmt.Errorf("not a span; allowed: at most %d characters", longestSpan)
	}
	for _, word := range []string{"last", "before"} {
		if count, found := strings.CutPrefix(s, word); found {
			n, err := strconv.Atoi(count)
			if err != nil || n < 1 || n > mostLast {
				return Span{}, fmt.Errorf("not a number of rounds %q; allowed: 1 to %d", count, mostLast)
			}
			return Span{Last: n, Before: word == "before"}, nil
		}
	}
	if from, to, found := strings.Cut(s, ".."); found {
		return days(from, to)
	}
	if t, err := time.Parse("2006-01", s); err == nil && t.Year() > 0 {
		return Month(t.Year(), t.Month()), nil
	}
	if t, err := time.Parse("2006", s); err == nil && t.Year() > 0 {
		return Year(t.Year()), nil
	}
	return Span{}, fmt.Errorf("not a span %q; allowed: a year, a month as 2026-05, two days as 2026-05-03..2026-06-14, last10 or before10", s)
}

func days(from, to string) (s Span, err error) {
	if from != "" {
		if s.From, err = ParseDate(from); err != nil {
			return Span{}, err
		}
	}
	if to != "" {
		if s.To, err = ParseDate(to); err != nil {
			return Span{}, err
		}
	}
	if !s.To.IsZero() && s.From.Compare(s.To) > 0 {
		return Span{}, fmt.Errorf("the first day %s is after the last %s", from, to)
	}
	return s, nil
}

// Earlier returns the span of as long before: the month before a month, the year
// before a year, as many days or rounds before others. A span without a first
// day has none, and one that would begin before the year 1.
func (s Span) Earlier() (Span, bool) {
	var earlier Span
	switch {
	case s.Last > 0:
		return Span{Last: s.Last, Before: true}, !s.Before
	case s.From.IsZero():
		return Span{}, false
	case s.IsYear():
		earlier = Year(s.From.Year - 1)
	case s.IsMonth():
		t := s.From.Time().AddDate(0, -1, 0)
		earlier = Month(t.Year(), t.Month())
	case s.To.IsZero():
		earlier = Span{To: s.From.AddDays(-1)}
		return earlier, earlier.To.Year > 0
	default:
		n := int((s.To.Time().Unix()-s.From.Time().Unix())/secondsOfDay) + 1 // a time.Duration holds 292 years
		earlier = Span{From: s.From.AddDays(-n), To: s.From.AddDays(-1)}
	}
	return earlier, earlier.From.Year > 0
}

const secondsOfDay = 24 * 60 * 60

// IsMonth reports whether the span is one calendar month.
func (s Span) IsMonth() bool { return s.Last == 0 && s == Month(s.From.Year, s.From.Month) }

// IsYear reports whether the span is one calendar year.
func (s Span) IsYear() bool { return s.Last == 0 && s == Year(s.From.Year) }

// String writes the span as ParseSpan reads it.
func (s Span) String() string {
	switch {
	case s.Last > 0 && s.Before:
		return fmt.Sprintf("before%d", s.Last)
	case s.Last > 0:
		return fmt.Sprintf("last%d", s.Last)
	case !s.From.IsZero() && s.IsMonth():
		return s.From.String()[:len("2006-01")]
	case !s.From.IsZero() && s.IsYear():
		return s.From.String()[:len("2006")]
	default:
		return s.From.String() + ".." + s.To.String()
	}
}

// Holds reports whether the span holds round i of n, which stand in the order
// of their days.
func (s Span) Holds(i, n int, day Date) bool {
	if s.Last > 0 {
		fromEnd := n - 1 - i
		if s.Before {
			fromEnd -= s.Last
		}
		return fromEnd >= 0 && fromEnd < s.Last
	}
	return day.Compare(s.From) >= 0 && (s.To.IsZero() || day.Compare(s.To) <= 0)
}

// usualMonths is how many months are compared unless others are chosen.
const usualMonths = 4

// Months returns the last calendar months up to that of the last day, at the
// most four and none before the month of the first day, but two at least.
func Months(first, last Date) []Span {
	month := time.Date(last.Year, last.Month, 1, 0, 0, 0, 0, time.UTC)
	spans := []Span{Month(month.Year(), month.Month())}
	for len(spans) < usualMonths {
		month = month.AddDate(0, -1, 0)
		earlier := Month(month.Year(), month.Month())
		if len(spans) >= MinSpans && earlier.To.Compare(first) < 0 {
			break
		}
		spans = append([]Span{earlier}, spans...)
	}
	return spans
}
