package golf

import (
	"cmp"
	"fmt"
	"time"
)

// Date is a day in the calendar, the day on which a round was played. It has
// no time of day and no zone. The zero value is no day at all.
type Date struct {
	Year  int
	Month time.Month
	Day   int
}

const dateLayout = "2006-01-02"

// ParseDate reads YYYY-MM-DD and refuses days that do not exist.
func ParseDate(s string) (Date, error) {
	t, err := time.Parse(dateLayout, s)
	if err != nil || t.Year() < 1 {
		return Date{}, fmt.Errorf("not a day %q; allowed: YYYY-MM-DD", s)
	}
	return DateOf(t), nil
}

// DateOf returns the day of t in t's own zone.
func DateOf(t time.Time) Date {
	year, month, day := t.Date()
	return Date{year, month, day}
}

// Time returns midnight UTC at the start of the day.
func (d Date) Time() time.Time {
	return time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, time.UTC)
}

// AddDays returns the day n days later, or earlier when n is negative.
func (d Date) AddDays(n int) Date { return DateOf(d.Time().AddDate(0, 0, n)) }

// IsZero reports whether d is no day at all.
func (d Date) IsZero() bool { return d == Date{} }

// Compare returns -1, 0 or +1 as d is before, on or after e.
func (d Date) Compare(e Date) int {
	return cmp.Or(cmp.Compare(d.Year, e.Year), cmp.Compare(d.Month, e.Month), cmp.Compare(d.Day, e.Day))
}

// String writes the day as YYYY-MM-DD, and "" for the zero value.
func (d Date) String() string {
	if d.IsZero() {
		return ""
	}
	return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Day)
}
