package paths

import (
	"net/url"
	"strconv"

	"strokeledger/analysis/golf"
)

// Holes is where the holes of a round are typed, a page each: of a player's own round, or
// of one that a coach enters.
type Holes struct{ round string }

// HolesOf is where those of a player's own round are typed.
func HolesOf(id golf.RoundID) Holes { return Holes{Round(id)} }

// HolesOfWalked is where a coach types those of a round that the coach walked.
func (w Whose) HolesOfWalked(id int64) Holes { return Holes{w.Walked(id)} }

// Round is the page of the round as a whole.
func (h Holes) Round() string { return h.round }

// At is where a hole is typed.
func (h Holes) At(hole int) string { return h.round + "/holes/" + strconv.Itoa(hole) }

// Echo says how the line of a hole reads, without saving it.
func (h Holes) Echo(hole int) string { return h.At(hole) + "/echo" }

// Typed is the page of a hole at an address, with an unsaved line in its field.
func Typed(hole, line string) string { return hole + "?" + url.Values{"line": {line}}.Encode() }
