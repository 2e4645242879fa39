package golf

import (
	"fmt"
	"strings"
)

// Miss is where a shot finished against its target: to one side, short or
// long, or one of each. The zero value says nothing was noted.
type Miss struct {
	Side  Side  // left or right of the target
	Depth Depth // short of the target or past it
}

// Side is the side of the target a shot finished on; the zero value says none.
type Side uint8

// The two sides, as the player faces the target.
const (
	Left Side = iota + 1
	Right
)

// Depth is whether a shot finished short of its target or past it; the zero
// value says neither.
type Depth uint8

// The two depths.
const (
	Short Depth = iota + 1
	Long
)

var sideNames = [...]string{"", "left", "right"}

var depthNames = [...]string{"", "short", "long"}

// String writes the miss as ParseMiss reads it: "left", "short-right", and ""
// for the zero value.
func (m Miss) String() string {
	depth, side := depthNames[m.Depth], sideNames[m.Side]
	if depth != "" && side != "" {
		return depth + "-" + side
	}
	return depth + side
}

// ParseMiss reads left, right, short or long, or a side and a depth joined
// with a hyphen in either order, in any letter case. The empty text is the
// zero Miss.
func ParseMiss(s string) (Miss, error) {
	var m Miss
	if s == "" {
		return m, nil
	}
	for word := range strings.SplitSeq(strings.ToLower(s), "-") {
		switch {
		case word == "left" && m.Side == 0:
			m.Side = Left
		case word == "right" && m.Side == 0:
			m.Side = Right
		case word == "short" && m.Depth == 0:
			m.Depth = Short
		case word == "long" && m.Depth == 0:
			m.Depth = Long
		default:
			return Miss{}, fmt.Errorf("unknown miss %q; allowed: left, right, short, long, or a side and a depth joined with a hyphen", s)
		}
	}
	return m, nil
}
