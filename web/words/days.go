package words

import (
	"math"
	"time"

	"strokeledger/analysis/golf"
)

// ShortDay writes a day as 2 May 2026.
func ShortDay(d golf.Date) string { return d.Time().Format("2 Jan 2006") }

// Moment writes when something was written.
func Moment(t time.Time) string { return t.Format("2 Jan 2006, 15:04") }

// DaysBetween is the number of days from a to b, negative when b is earlier.
func DaysBetween(a, b golf.Date) int { return int(math.Round(b.Time().Sub(a.Time()).Hours() / 24)) }

// NearDay writes a day, its year only when it is another than today's.
func NearDay(d, today golf.Date) string {
	if d.Year == today.Year {
		return d.Time().Format("2 Jan")
	}
	return ShortDay(d)
}

// DueDay writes a day to come as one says it.
func DueDay(d, today golf.Date) string {
	switch n := DaysBetween(today, d); {
	case n == 0:
		return "today"
	case n == 1:
		return "tomorrow"
	case n > 1 && n < 7:
		return d.Time().Format("Monday")
	default:
		return NearDay(d, today)
	}
}

// LongDay writes a day as Saturday 2 May 2026.
func LongDay(d golf.Date) string { return d.Time().Format("Monday 2 January 2006") }
