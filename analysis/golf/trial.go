package golf

import "fmt"

// The limits of a trial of the run-out book. Common practice: wide enough for every
// chip that is played at a hole.
const (
	MaxCarry     = 60 * Yard  // flight of a chip
	MaxChip      = 100 * Yard // flight and run of a chip
	MaxChipAhead = 60 * Yard  // a chip that is to be played
	MaxTrials    = 2000       // balls in a book
)

// Trial is a chip that was measured for the run-out book.
type Trial struct {
	Club  string     // as the player calls it
	Lie   Lie        // fairway or rough
	Speed GreenSpeed // of the green that it was played to
	Carry float64    // from the ball to where it landed, in units
	Total float64    // from the ball to where it stopped, in units
	Unit  TrialUnit
}

// Yards are the carry and the total in yards.
func (t Trial) Yards() (carry, total float64) {
	return t.Unit.Of(t.Carry).Yards(), t.Unit.Of(t.Total).Yards()
}

// Allowed tells what is wrong with the lengths, empty for nothing.
func (t Trial) Allowed() string {
	switch {
	case !(t.Carry > 0 && t.Unit.Of(t.Carry) <= MaxCarry):
		return fmt.Sprintf("the carry is over 0 and at most %.0f %s", t.Unit.In(MaxCarry), t.Unit)
	case !(t.Total > 0 && t.Unit.Of(t.Total) <= MaxChip):
		return fmt.Sprintf("the total is over 0 and at most %.0f %s", t.Unit.In(MaxChip), t.Unit)
	default:
		return ""
	}
}

// TrialLies are the lies that a trial may be played from.
var TrialLies = []Lie{Fairway, Rough}

// GreenSpeed is how fast a green is, as the player calls it. The zero value is
// invalid.
type GreenSpeed uint8

// The speeds there are.
const (
	SlowGreen GreenSpeed = iota + 1
	MediumGreen
	FastGreen
)

// GreenSpeeds lists them in the order in which they are offered.
var GreenSpeeds = []GreenSpeed{SlowGreen, MediumGreen, FastGreen}

// String returns "slow", "medium" or "fast"; "" for the zero value.
func (s GreenSpeed) String() string {
	if int(s) > len(GreenSpeeds) {
		return ""
	}
	return [...]string{"", "slow", "medium", "fast"}[s]
}

// ParseGreenSpeed reads a speed by its name.
func ParseGreenSpeed(name string) (GreenSpeed, error) {
	return parseNamed(name, GreenSpeeds, "green speed")
}

// GreenSlope is how a green lies between the landing spot and the hole. The zero
// value is invalid.
type GreenSlope uint8

// The slopes there are.
const (
	Uphill GreenSlope = iota + 1
	LevelGround
	Downhill
)

// GreenSlopes lists them in the order in which they are offered.
var GreenSlopes = []GreenSlope{Uphill, LevelGround, Downhill}

// String returns "uphill", "level" or "downhill"; "" for the zero value.
func (s GreenSlope) String() string {
	if int(s) > len(GreenSlopes) {
		return ""
	}
	return [...]string{"", "uphill", "level", "downhill"}[s]
}

// ParseGreenSlope reads a slope by its name.
func ParseGreenSlope(name string) (GreenSlope, error) {
	return parseNamed(name, GreenSlopes, "slope")
}

// TrialUnit is a unit that trials are measured in. The zero value is invalid.
type TrialUnit uint8

// The units of trials. A pace is a yard, as in the line of a hole.
const (
	TrialYards TrialUnit = iota + 1
	TrialMetres
	TrialPaces
)

// TrialUnits lists them in the order in which they are offered.
var TrialUnits = []TrialUnit{TrialYards, TrialPaces, TrialMetres}

// String returns "yd", "m" or "paces"; "" for the zero value.
func (u TrialUnit) String() string {
	if int(u) > len(TrialUnits) {
		return ""
	}
	return [...]string{"", "yd", "m", "paces"}[u]
}

// Of returns x of these units as a distance.
func (u TrialUnit) Of(x float64) Distance {
	if u == TrialMetres {
		return Distance(x) * Metre
	}
	return Distance(x) * Yard
}

// In returns how many of these units a distance has.
func (u TrialUnit) In(d Distance) float64 {
	if u == TrialMetres {
		return d.Metres()
	}
	return d.Yards()
}

// ParseTrialUnit reads a unit by its name.
func ParseTrialUnit(name string) (TrialUnit, error) {
	return parseNamed(name, TrialUnits, "unit")
}

// parseNamed reads one of a few values by its name.
func parseNamed[T fmt.Stringer](name string, all []T, what string) (none T, err error) {
	allowed := ""
	for i, one := range all {
		if one.String() == name {
			return one, nil
		}
		if i > 0 {
			allowed += ", "
		}
		allowed += one.String()
	}
	return none, fmt.Errorf("unknown %s %q; allowed: %s", what, name, allowed)
}

// ChipAhead is a chip to be played now.
type ChipAhead struct {
	Lie      Lie      // fairway or rough
	Distance Distance // from the ball to the hole
	Green    Distance // from the edge of the green to the hole, on the line
	Speed    GreenSpeed
	Slope    GreenSlope
}
