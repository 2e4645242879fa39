package golf

import (
	"fmt"
	"slices"
)

// Comparison is a choice of what to set side by side. Its zero value is the
// usual choice: the last months, on every course, against the player's target.
type Comparison struct {
	Spans   []Span // empty for the last calendar months
	Versus  Versus
	Course  string    // its name, empty for any
	Without []RoundID // rounds left out
}

// The ends of a comparison.
// Common practice: more columns are not read on a phone, and more rounds left
// out would not fit in an address.
const (
	MinSpans   = 2
	MaxSpans   = 6
	MaxWithout = 200
)

// The fields of a comparison, as its problems name them.
const (
	FieldSpans   = "span"
	FieldVersus  = "versus"
	FieldWithout = "without"
)

// LeaveOut leaves a round out, once.
func (c *Comparison) LeaveOut(id RoundID) {
	if !slices.Contains(c.Without, id) {
		c.Without = append(c.Without, id)
	}
}

// Check returns what is not allowed about the choice.
func (c Comparison) Check() Problems {
	var ps Problems
	if n := len(c.Spans); n != 0 && (n < MinSpans || n > MaxSpans) {
		ps = append(ps, Problem{Field: FieldSpans, What: "number of spans", Read: fmt.Sprint(n), Allowed: fmt.Sprintf("%d to %d", MinSpans, MaxSpans)})
	}
	if n := len(c.Without); n > MaxWithout {
		ps = append(ps, Problem{Field: FieldWithout, What: "number of rounds left out", Read: fmt.Sprint(n), Allowed: fmt.Sprintf("at most %d", MaxWithout)})
	}
	return ps
}
