package golf

import (
	"fmt"
	"strconv"
)

// Versus says whom many rounds are compared with: the golfer of the player's
// target, which is the zero value; a golfer of one level; or a tour player.
type Versus struct {
	level float64 // 0 for the other two
	tour  bool
}

// VersusTour compares with the published tour table.
var VersusTour = Versus{tour: true}

// VersusLevel compares with the golfer of a level from MinTarget to MaxTarget.
func VersusLevel(level float64) Versus { return Versus{level: level} }

// Level returns the level, if one was chosen.
func (v Versus) Level() (level float64, ok bool) { return v.level, v.level != 0 }

// IsTour reports whether the choice is a tour player.
func (v Versus) IsTour() bool { return v.tour }

// IsTarget reports whether the choice is the golfer of the player's target.
func (v Versus) IsTarget() bool { return v == Versus{} }

// ParseVersus reads target, tour, or a level as a plain number.
func ParseVersus(s string) (Versus, error) {
	switch s {
	case "target":
		return Versus{}, nil
	case "tour":
		return VersusTour, nil
	}
	level, err := strconv.ParseFloat(s, 64)
	if len(s) > longestSpan || err != nil || !(level >= MinTarget && level <= MaxTarget) {
		return Versus{}, fmt.Errorf("not a golfer to compare with; allowed: target, tour, or a level from %d to %d", MinTarget, MaxTarget)
	}
	return VersusLevel(level), nil
}

// String writes the choice as ParseVersus reads it.
func (v Versus) String() string {
	switch {
	case v.tour:
		return "tour"
	case v.level != 0:
		return strconv.FormatFloat(v.level, 'f', -1, 64)
	default:
		return "target"
	}
}
