package aim

import "strokeledger/analysis/stat"

// Pattern is how a player's shots with a club differ from those of the golfer of
// the level. The zero value is that golfer's own pattern.
type Pattern struct {
	Side float64 // yd right of the aim that the well-struck ball ends on average, at the club's length
	Long float64 // yd beyond it
	Wide float64 // spread across, as a multiple of the golfer's; 0 stands for 1
	Deep float64 // spread along, likewise
	Bad  float64 // share of balls that are struck badly, as a multiple of the golfer's; 0 stands for 1

	Balls int // of a range session that it stands on
	Shots int // of rounds that it stands on

	// Where the first four lie with 95 %. The side is known from a session or from
	// rounds, the others from a session only; both ends are 0 where nothing is known.
	SideIn, LongIn, WideIn, DeepIn stat.Interval
}

// Known reports whether anything is known of the player's own pattern.
func (p Pattern) Known() bool { return p.Balls > 0 || p.Shots > 0 }

// Shaped returns the pattern with a shape laid on: a draw that moves 8 yd is -8.
func (p Pattern) Shaped(yd float64) Pattern {
	p.Side += yd
	return p
}

// Ball is one ball of a range session, against its one aim.
type Ball struct {
	Side float64 // yd right of the aim, left is negative
	Long float64 // yd beyond it, short is negative
}

// MinBalls is the fewest balls of a session.
const MinBalls = 10
