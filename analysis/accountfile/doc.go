// Package accountfile reads and writes the account file, version 1: a player's
// settings, all rounds and what else is the player's own as one JSON object, so that
// the same account comes back from it on another server.
//
// It answers "what does this file hold, or what is wrong with it, and where?". It
// reads one round at a time and stops at the first fault; nothing that a file can
// hold makes it keep more than one round, and of the account's own things more than
// the file is large. Fields that it does not know are passed over, and so are notes
// and what was set to practise: they are for people to read, since another server
// does not have the accounts of those who wrote them.
package accountfile

import "strokeledger/analysis/golf"

// The most that a file may have. A round of 18 holes is about 8 kB, so that
// 2,000 rounds are about as many as 16 MiB hold.
const (
	MaxBytes  = 16 << 20 // 16 MiB
	MaxRounds = 2000
	MaxShots  = 60 // on a hole, far more than anybody plays

	longestPiece = 1 << 16 // bytes of a text or number
	deepest      = 32      // lists and objects inside each other; the format needs 7
)

// Settings are those of an account.
type Settings struct {
	Name       string  `json:"name"`           // of the player; never empty once read
	Far        string  `json:"far_unit"`       // off the green: "yd" or "m"
	Green      string  `json:"green_unit"`     // on the green: "ft" or "m"
	Target     float64 `json:"target"`         // score of 18 holes, golf.MinTarget to golf.MaxTarget
	BoundaryYd float64 `json:"boundary_yd"`    // yards within which the short game begins
	Clubs      string  `json:"clubs"`          // as typed in the settings; empty for none
	Zone       string  `json:"zone,omitempty"` // name of a time zone; empty for the server's
}

// Units are the units in which the player writes distances, off the green and on
// it. They are valid in settings that were read; a unit that is not one is 0.
func (s Settings) Units() (far, green golf.Unit) {
	far, _ = golf.ParseUnit(s.Far)
	green, _ = golf.ParseUnit(s.Green)
	return far, green
}

// Round is a round as an account keeps it: what was typed as well as what it
// meant, and what the card said.
type Round struct {
	Name       string    // distinct among the rounds of a file
	Day        golf.Date // on which it was played
	Course     string    // empty where it is not known
	Tee        string    // empty where it is not known
	Target     float64   // score of 18 holes that it was played for
	BoundaryYd float64   // yards within which its short game began
	Par18      int       // par of the whole course
	Conditions string    // the round's conditions, such as the weather; may be empty
	EnteredBy  string    // name of the coach who entered it; empty for the account
	CardOut    int       // what the card says of the front nine, 0 where it says nothing
	CardIn     int       // and of the back nine
	FirstHole  int       // hole that was played first, 1 to 18
	Holes      []Hole    // each number once, at most 18
}

// Hole is a hole of a round. One that was not played has no line and no shots.
type Hole struct {
	golf.Hole
	Length golf.Distance // on the card, 0 where it is not known
	Index  int           // stroke index, 0 where it is not known
	Line   string        // as it was typed
	Far    golf.Unit     // unit of the line's numbers off the green; 0 without a line
	Green  golf.Unit     // and on the green
}
