package form

import "net/url"

// Days are the days between which rounds count. Either may be left open.
type Days struct{ From, To Day }

// ParseDays reads two days.
func ParseDays(v url.Values) Days {
	d := Days{optional(v.Get("from"), ParseDay), optional(v.Get("to"), ParseDay)}
	if d.Sound() && !d.To.Value.IsZero() && d.From.Value.Compare(d.To.Value) > 0 {
		d.To.Problem = "The last day is before the first."
	}
	return d
}

// Sound reports whether nothing is wrong with the days.
func (d Days) Sound() bool { return sound(d.From, d.To) }

// Open reports whether no day was chosen.
func (d Days) Open() bool { return d.From.Value.IsZero() && d.To.Value.IsZero() }

// Comparing is what is wrong with the form that chooses spans and the golfer to
// compare with: what it chose stands in the address.
type Comparing struct{ Spans, Level string }

// Sound reports whether nothing is wrong.
func (c Comparing) Sound() bool { return c == Comparing{} }
