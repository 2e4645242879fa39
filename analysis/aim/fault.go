package aim

import (
	"fmt"
	"strconv"
	"strings"
)

// Fault is one thing in a picture that is not allowed.
type Fault struct {
	Part string // of the picture: "bends", "fairway", "zones", "green"; empty for the whole
	Row  int    // of the part, counted from 1; 0 for the part itself
	Line int    // of the text that was read, counted from 1; 0 where there was none
	What string // what is wrong and what is allowed
}

// String writes the fault as one line, its place first.
func (f Fault) String() string {
	switch {
	case f.Line > 0:
		return fmt.Sprintf("line %d: %s", f.Line, f.What)
	case f.Row > 0:
		return fmt.Sprintf("%s, row %d: %s", f.Part, f.Row, f.What)
	case f.Part != "":
		return f.Part + ": " + f.What
	default:
		return f.What
	}
}

// Faults are all that is wrong with a picture. As an error they are one line a
// fault.
type Faults []Fault

// Error joins the faults with line ends.
func (fs Faults) Error() string {
	lines := make([]string, len(fs))
	for i, f := range fs {
		lines[i] = f.String()
	}
	return strings.Join(lines, "\n")
}

// Err returns the faults as an error, and nil when there are none.
func (fs Faults) Err() error {
	if len(fs) == 0 {
		return nil
	}
	return fs
}

// plain writes a number with as many digits as it has, without an exponent.
func plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// shortened is as much of a text as a fault repeats, whole letters only.
func shortened(text string) string {
	const most = 40 // bytes
	if len(text) > most {
		return strings.ToValidUTF8(text[:most], "") + "…"
	}
	return strings.ToValidUTF8(text, "")
}
