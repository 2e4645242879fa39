package golf

import (
	"fmt"
	"strings"
)

// Problem is one thing about a written round that is not allowed.
type Problem struct {
	Hole    int    // the hole's number, 0 when it is the round's own
	Shot    int    // the shot's place on the hole from 1, 0 when it is the hole's own
	Field   string // the field at fault, named as the column of a shots file
	What    string // what is wrong
	Read    string // what was read, may be empty
	Allowed string // what is allowed
}

// String writes the problem as one line.
func (p Problem) String() string {
	var b strings.Builder
	if p.Hole > 0 {
		fmt.Fprintf(&b, "hole %d, ", p.Hole)
	}
	if p.Shot > 0 {
		fmt.Fprintf(&b, "shot %d, ", p.Shot)
	}
	fmt.Fprintf(&b, "%s: %s", p.Field, p.What)
	if p.Read != "" {
		fmt.Fprintf(&b, ", read %q", p.Read)
	}
	fmt.Fprintf(&b, ", allowed: %s", p.Allowed)
	return b.String()
}

// Problems are all that is wrong with something a person wrote. As an error it
// is one line a problem.
type Problems []Problem

// Error joins the problems with line ends.
func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.String()
	}
	return strings.Join(lines, "\n")
}

// Err returns the problems as an error, and nil when there are none.
func (ps Problems) Err() error {
	if len(ps) == 0 {
		return nil
	}
	return ps
}
