package words

import (
	"fmt"
	"math"
	"strings"
	"time"

	"strokeledger/analysis/golf"
)

// ShortDay writes a day as 2 May 2026.
func ShortDay(d golf.Date) string { return d.Time().Format("2 Jan 2006") }

// Moment writes a day and its time as 2 May 2026, 15:04 BST.
func Moment(t time.Time) string { return t.Format("2 Jan 2006, ") + Clock(t) }

// LongMoment writes a day and its time as Saturday 2 May 2026, 15:04 BST.
func LongMoment(t time.Time) string { return t.Format("Monday 2 January 2006, ") + Clock(t) }

// Clock writes a time with its zone: 15:04 BST, or 15:04 UTC−3 where the zone has
// no letters of its own.
func Clock(t time.Time) string {
	zone, offset := t.Zone()
	if !strings.ContainsAny(zone, "+-") {
		return t.Format("15:04 ") + zone
	}
	sign := "+"
	if offset < 0 {
		sign, offset = Minus, -offset
	}
	zone = fmt.Sprintf("UTC%s%d", sign, offset/3600)
	if minutes := offset / 60 % 60; minutes > 0 {
		zone += fmt.Sprintf(":%02d", minutes)
	}
	return t.Format("15:04 ") + zone
}

// DaysBetween is the number of days from a to b, negative when b is earlier.
func DaysBetween(a, b golf.Date) int { return int(math.Round(b.Time().Sub(a.Time()).Hours() / 24)) }

// NearDay writes a day as 2 May, with its year where that is not this year.
func NearDay(d, today golf.Date) string {
	if d.Year == today.Year {
		return d.Time().Format("2 Jan")
	}
	return ShortDay(d)
}

// DueDay writes the day by which something is due: today, tomorrow, a weekday of
// the coming week, or the day of the month. A day that has passed is written as
// the day of the month.
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

// Days writes the days from a to b: 3 Mar to 14 Jun 2026, or one day.
func Days(a, b golf.Date) string {
	switch {
	case a == b:
		return ShortDay(a)
	case a.Year == b.Year:
		return a.Time().Format("2 Jan") + " to " + ShortDay(b)
	default:
		return ShortDay(a) + " to " + ShortDay(b)
	}
}

// NoRounds says that there is no round of a player’s, who is the reader where the
// name is empty; since is the first day that a coach sees, zero for everything.
func NoRounds(name string, since golf.Date) string {
	switch {
	case name == "":
		return "No rounds yet."
	case since.IsZero():
		return name + " has not entered a round yet."
	default:
		return fmt.Sprintf("%s has entered no round played on %s or later, the first day that you see.", name, ShortDay(since))
	}
}
