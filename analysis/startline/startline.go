// Package startline reads from straight putts of one length how well a player
// starts the ball on the intended line.
//
// The line on which a putt starts is normal about the player's bias, with the
// player's spread. Off the window that the hole leaves the putt misses on that
// side; on it the speed decides whether it is holed, short or long. The speed is
// that of the golfer at the player's putting level. The spread's prior is that
// golfer's spread, .5 wide in its logarithm; the bias has a prior of 1° about
// straight (both our own choice, tested by coverage). On a straight putt there
// is nothing to read, so the spread found flatters.
//
// It answers "how straight do you start a putt?" and refuses to know slope,
// grain and aim apart from stroke.
package startline

import (
	"fmt"

	"strokeledger/analysis/golf"
)

// Putts of MinFeet to MaxFeet, of which at most MaxTries, can be read. Nearer the
// hole takes nearly every line, and farther the slope of the green matters.
const (
	MinFeet  = 3
	MaxFeet  = 10
	MaxTries = 2000
)

// Tries are straight putts of one length. Where sides were written down, Left,
// Right, Short and Long say how the putts that missed did; where they were not,
// Sides is false and only Holed is read.
type Tries struct {
	Feet                     float64
	Made, Of                 int
	Sides                    bool
	Left, Right, Short, Long int
}

// Check tells what is wrong with the tries.
func (t Tries) Check() golf.Problems {
	var p golf.Problems
	add := func(field string, read any, allowed string) {
		p = append(p, golf.Problem{Field: field, What: "not possible", Read: fmt.Sprint(read), Allowed: allowed})
	}
	if !(t.Feet >= MinFeet && t.Feet <= MaxFeet) {
		add("feet", t.Feet, fmt.Sprintf("%d to %d", MinFeet, MaxFeet))
	}
	if t.Of < 1 || t.Of > MaxTries {
		add("tries", t.Of, fmt.Sprintf("1 to %d", MaxTries))
	}
	if t.Made < 0 || t.Made > t.Of {
		add("made", t.Made, "0 to the number of tries")
	}
	if missed := t.Left + t.Right + t.Short + t.Long; t.Sides && (min(t.Left, t.Right, t.Short, t.Long) < 0 || missed != t.Of-t.Made) {
		add("left, right, short, long", missed, "as many as were not made")
	}
	return p
}
