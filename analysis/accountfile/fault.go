package accountfile

import (
	"encoding/json"
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// Fault is the first thing in a file that is not allowed.
type Fault struct {
	Place string // such as `round 3 "Open day"`; empty for the whole file
	What  string // what is wrong and what is allowed, beginning with the hole, shot or field
}

// Error writes the fault as one line, the place first.
func (f *Fault) Error() string {
	if f.Place == "" {
		return f.What
	}
	return f.Place + ": " + f.What
}

// faulty makes a fault whose place is still to be added.
func faulty(format string, args ...any) error { return &Fault{What: fmt.Sprintf(format, args...)} }

// inside puts a place before a fault; other errors, and none, stay as they are.
func inside(place string, err error) error {
	var fault *Fault
	if errors.As(err, &fault) {
		return &Fault{Place: place, What: fault.Error()}
	}
	return err
}

// described says what a piece is, for a fault.
func described(t json.Token) string {
	switch t := t.(type) {
	case nil:
		return "nothing"
	case string:
		return "a text"
	case json.Number:
		return "a number"
	case bool:
		return strconv.FormatBool(t)
	}
	return "a list or an object"
}

// plain writes a number with as many digits as it has, without an exponent.
func plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// shortened is as much of a text as a fault repeats, whole letters only.
func shortened(text string) string {
	const most = 40 // bytes
	if len(text) > most {
		return strings.ToValidUTF8(text[:most], "") + "…"
	}
	return text
}
