package aim

import (
	"strokeledger/analysis/golf"
)

// Advice is where to aim: from the tee of a par 4 or longer with each club, and
// otherwise the one approach.
type Advice struct {
	Clubs    []TeeShot // the cheapest first; none for an approach
	Driver   int       // place in Clubs of the longest club, with which "straight" is meant
	Approach *Approach // nil from the tee of a par 4 or longer
}

// Best is the tee shot that costs least.
func (a Advice) Best() TeeShot { return a.Clubs[0] }

// Straight is the longest club down the middle.
func (a Advice) Straight() TeeShot { return a.Clubs[a.Driver] }

// Saved is what the best aim saves in strokes against the longest club down the
// middle, or against the flag.
func (a Advice) Saved() float64 {
	if a.Approach != nil {
		return a.Approach.Saved()
	}
	return a.Straight().Straight.Cost - a.Best().Best.Cost
}

// MattersFrom is the gain, in strokes, under which an aim is said not to matter.
// This program's choice: a round has about 36 aims, and 36 of them come to one stroke.
const MattersFrom = .03

// TeeShot is what aims with one club cost.
type TeeShot struct {
	Club     Club
	Best     Aim
	Straight Aim        // down the middle
	Curve    []Cost     // from left to right: 4 yd apart, and a yard apart about the best
	Flat     [2]float64 // from where to where an aim costs at most .01 more than the best
}

// Saved is what the best aim with this club saves against the middle.
func (t TeeShot) Saved() float64 { return t.Straight.Cost - t.Best.Cost }

// Cost is what an aim costs.
type Cost struct {
	Side    float64 // yd right of the middle
	Strokes float64 // to hole out, on average, this one included
}

// Approach is what aims at the green cost.
type Approach struct {
	From   From
	Best   Aim
	Flag   Aim      // straight at the hole
	Plane  []Aimed  // aims that were looked at, for a map of costs
	Safe   []Side   // where a miss costs least, the safest first; none where it does not matter
	Misses []Missed // what a miss on each side costs, the cheapest first
}

// Saved is what the best aim saves against the flag.
func (a Approach) Saved() float64 { return a.Flag.Cost - a.Best.Cost }

// Aimed is the cost of an aim by the flag.
type Aimed struct {
	Side, Long float64 // yd right of the flag, and beyond it
	Strokes    float64
}

// Side is a side of the green. The zero value is none.
type Side uint8

// The four sides, as the player stands.
const (
	LeftSide Side = iota + 1
	RightSide
	ShortSide
	LongSide
)

var sideNames = [...]string{"", "left", "right", "short", "long"}

// String returns "left", "right", "short" or "long".
func (s Side) String() string { return sideNames[s] }

// Sides lists the four.
var Sides = []Side{LeftSide, RightSide, ShortSide, LongSide}

// ParseSide reads the name of a side; false for what is none.
func ParseSide(name string) (Side, bool) {
	for _, s := range Sides {
		if s.String() == name {
			return s, true
		}
	}
	return 0, false
}

// Missed is what a ball costs that ends one to two spreads to a side of the flag.
type Missed struct {
	Side    Side
	Strokes float64 // to hole out from there on average, penalties included
}

// From is where an approach is played from.
type From struct {
	Lie    golf.Lie
	Place  Point
	Length float64 // yd to the hole
}

// Aim is an aim with what follows.
type Aim struct {
	Side   float64 // yd right of the middle of the hole's line, or of the flag; left is negative
	Long   float64 // yd beyond the flag; 0 from the tee of a par 4 or longer
	Target Point   // where that is
	Ends   Point   // where the well-struck ball ends on average: moved by the player's bias
	SideSD float64 // yd of spread of that ball across the line of flight
	LongSD float64 // yd of spread along it
	Cost   float64 // strokes to hole out, on average, this one included
	Shares Shares
}

// Shares are how often a shot ends where, 0 to 1. All but ShortSided add up to 1.
type Shares struct {
	Green, Fairway, Rough, Bunker, Trees, Water, Out float64
	Penalty                                          float64 // where nothing is drawn, lost or unplayable
	ShortSided                                       float64 // of them, within 30 yd of the hole with too little green
}
