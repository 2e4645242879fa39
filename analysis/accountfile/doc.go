// Package accountfile reads and writes the account file, version 1: a player's
// settings and all rounds as one JSON object, so that the same account comes
// back from it on another server.
//
// It answers "which rounds and settings does this file hold, or what is wrong
// with it, and where?". It reads one round at a time and stops at the first
// fault; nothing that a file can hold makes it keep more than one round. Fields
// that it does not know are passed over, and so are notes and practice: they are
// there to be read, since another server has not the accounts that wrote them.
package accountfile

import (
	"fmt"

	"strokeledger/analysis/golf"
)

// The most that a file may have. A round of 18 holes is about 8 kB, so that
// 2,000 rounds are about as many as 16 MiB hold.
const (
	MaxBytes  = 16 << 20
	MaxRounds = 2000
	MaxShots  = 60 // on a hole

	longestPiece = 1 << 16 // bytes of a text or number
	deepest      = 32      // lists and objects inside each other
)

// Settings are those of an account.
type Settings struct {
	Name       string  `json:"name"`
	Far        string  `json:"far_unit"`   // "yd" or "m"
	Green      string  `json:"green_unit"` // "ft" or "m"
	Target     float64 `json:"target"`     // score of 18 holes
	BoundaryYd float64 `json:"boundary_yd"`
	Clubs      string  `json:"clubs"`
}

// Units are the units in which the player writes distances, off the green and on
// it. Settings that were read have them.
func (s Settings) Units() (far, green golf.Unit) {
	far, _ = golf.ParseUnit(s.Far)
	green, _ = golf.ParseUnit(s.Green)
	return far, green
}

// Round is a round as an account keeps it.
type Round struct {
	Name       string
	Day        golf.Date
	Course     string
	Tee        string
	Target     float64 // it was played for
	BoundaryYd float64
	Par18      int // par of the whole course
	Note       string
	CardOut    int // what the card says of the front nine, 0 where it says nothing
	CardIn     int
	FirstHole  int // where it began
	Holes      []Hole
}

// Hole is a hole of a round. One that was not played has no line and no shots.
type Hole struct {
	golf.Hole
	Length golf.Distance // on the card, 0 where it is not known
	Index  int           // stroke index, 0 where it is not known
	Line   string        // as it was typed
	Far    golf.Unit     // units of the line's numbers, off the green
	Green  golf.Unit     // and on it
}

// Fault is the first thing in a file that is not allowed.
type Fault struct {
	Place string // as `round 3 "Open day", hole 4`; empty for the whole file
	What  string
}

// Error writes the fault as one line.
func (f *Fault) Error() string {
	if f.Place == "" {
		return f.What
	}
	return f.Place + ": " + f.What
}

func faulty(format string, args ...any) error { return &Fault{What: fmt.Sprintf(format, args...)} }
