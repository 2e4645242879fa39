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
	What    string // what is wrong, without a full stop
	Read    string // what was read, empty when there was nothing
	Allowed string // what is allowed, such as "1 to 18"
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
	List []Fault // in the order in which they were found, at most MaxFaults
	More int     // that are not listed
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

// longestRead is how much of a cell a fault repeats, in bytes.
const longestRead = 60

// add notes a fault, or counts it once the list is full.
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

// any reports whether there is a fault.
func (f *Faults) any() bool { return len(f.List) > 0 }

// LimitError says that a file was refused because it is larger than the caller
// takes.
type LimitError struct {
	Most int64  // that the caller takes
	Unit string // what is counted: "bytes", "bytes in a line", "rows" or "rounds"
}

// Error names the limit.
func (e *LimitError) Error() string {
	return fmt.Sprintf("the file has more than %d %s, the most that is allowed", e.Most, e.Unit)
}
