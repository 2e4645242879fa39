package shotsfile

import (
	"fmt"
	"strings"
)

// MaxFaults is how many faults of a file are listed.
const MaxFaults = 100

// Fault is one thing in a file that is not allowed.
type Fault struct {
	Line    int    // in the file, from 1
	Column  string // name of the column, empty when it is the whole row
	What    string // what is wrong
	Read    string // what was read, may be empty
	Allowed string // what is allowed
}

// String writes the fault as one line.
func (f Fault) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "line %d", f.Line)
	if f.Column != "" {
		fmt.Fprintf(&b, ", column %s", f.Column)
	}
	fmt.Fprintf(&b, ": %s", f.What)
	if f.Read != "" {
		fmt.Fprintf(&b, ", read %q", f.Read)
	}
	fmt.Fprintf(&b, ", allowed: %s", f.Allowed)
	return b.String()
}

// Faults are what is wrong with a file: the first hundred, and how many more
// there were.
type Faults struct {
	List []Fault
	More int
}

// Error writes the faults one a line.
func (f *Faults) Error() string {
	lines := make([]string, 0, len(f.List)+1)
	for _, fault := range f.List {
		lines = append(lines, fault.String())
	}
	if f.More > 0 {
		lines = append(lines, fmt.Sprintf("and %d more", f.More))
	}
	return strings.Join(lines, "\n")
}

// longestRead is how much of a cell a fault repeats.
const longestRead = 60

func (f *Faults) add(line int, column, what, read, allowed string) {
	if len(f.List) == MaxFaults {
		f.More++
		return
	}
	if len(read) > longestRead {
		read = read[:longestRead] + "..."
	}
	f.List = append(f.List, Fault{line, column, what, strings.ToValidUTF8(read, "?"), allowed})
}

func (f *Faults) any() bool { return len(f.List) > 0 }

// LimitError says that a file was refused because it is larger than the caller
// takes.
type LimitError struct {
	Most int64
	Unit string // "bytes" or "rows"
}

// Error names the limit.
func (e *LimitError) Error() string {
	return fmt.Sprintf("the file has more than %d %s, the most that is taken", e.Most, e.Unit)
}
