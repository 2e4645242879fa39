package golf

import (
	"fmt"
	"math"
	"strings"
)

// Distance is a length on the course. Like time.Duration it carries its unit:
// write 150*golf.Yard and read d.Feet(). Whole inches, feet and yards are held
// exactly.
type Distance float64

// The units a golfer uses. One yard is 0.9144 m exactly (international yard
// and pound agreement, 1959).
const (
	Foot  Distance = 12
	Yard  Distance = 36
	Metre Distance = 1 / 0.0254
)

// The longest distances the game's records may hold.
const (
	MaxDistance     = 700 * Yard // off the green
	MaxPutt         = 300 * Foot // on the green
	MaxShortSided   = 30 * Yard  // the farthest a shot may be called short-sided
	maxPenalty      = 9
	minPar, maxPar  = 3, 6
	maxHoleNumber   = 18
	maxScoreOnly    = 99
	holesInFullGame = 18
)

// StandardPar is the par of 18 holes where that of the course is not known.
const StandardPar = 72

// Yards returns the distance in yards.
func (d Distance) Yards() float64 { return float64(d / Yard) }

// Feet returns the distance in feet.
func (d Distance) Feet() float64 { return float64(d / Foot) }

// Metres returns the distance in metres.
func (d Distance) Metres() float64 { return float64(d) * 0.0254 }

// Unit is a unit of length as a player writes it. The zero value is invalid.
type Unit uint8

// The units a distance may be written in.
const (
	Yards Unit = iota + 1
	Metres
	Feet
)

// Units lists every unit, in the order in which they are offered.
var Units = []Unit{Yards, Metres, Feet}

// The units a player may have distances in, in the order in which they are
// offered.
var (
	FarUnits   = []Unit{Yards, Metres} // off the green
	GreenUnits = []Unit{Feet, Metres}  // on it
)

var unitNames = [...]string{"", "yd", "m", "ft"}

var unitLengths = [...]Distance{0, Yard, Metre, Foot}

// String returns "yd", "m" or "ft", and "" for the zero value.
func (u Unit) String() string {
	if int(u) < len(unitNames) {
		return unitNames[u]
	}
	return ""
}

// Of returns x of these units as a distance: Feet.Of(24) is 24 ft.
func (u Unit) Of(x float64) Distance { return Distance(x) * unitLengths[u] }

// In returns how many of these units the distance has, to a billionth, so that
// what was written with few decimals comes back as it was.
func (u Unit) In(d Distance) float64 { return math.Round(float64(d/unitLengths[u])*1e9) / 1e9 }

// ParseUnit reads "yd", "m" or "ft" in any letter case.
func ParseUnit(s string) (Unit, error) {
	for _, u := range Units {
		if strings.EqualFold(s, u.String()) {
			return u, nil
		}
	}
	return 0, fmt.Errorf("unknown unit %q; allowed: yd, m, ft", s)
}
