package runout

import (
	"fmt"
	"math"
	"slices"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// Slope is how the green lies between the landing spot and the hole. The zero
// value is invalid.
type Slope uint8

// The slopes there are, and how much farther or less far a ball runs on them.
// Common practice; there is no published source.
const (
	Uphill Slope = iota + 1
	Level
	Downhill
)

var slopeFactors = [...]float64{Uphill: .75, Level: 1, Downhill: 1.35}

// Slopes lists them in the order in which they are offered.
var Slopes = []Slope{Uphill, Level, Downhill}

var slopeNames = [...]string{Uphill: "uphill", Level: "level", Downhill: "downhill"}

// String returns "uphill", "level" or "downhill"; "" for the zero value.
func (s Slope) String() string {
	if s >= Uphill && s <= Downhill {
		return slopeNames[s]
	}
	return ""
}

// ParseSlope reads a slope by its name.
func ParseSlope(name string) (Slope, error) {
	for _, s := range Slopes {
		if s.String() == name {
			return s, nil
		}
	}
	return 0, fmt.Errorf("unknown slope %q; allowed: uphill, level, downhill", name)
}

// Shot is a chip to be played now. Lengths are in yards.
type Shot struct {
	Lie      golf.Lie // fairway or rough
	Distance float64  // from the ball to the hole
	Green    float64  // from the edge of the green to the hole, on the line
	Slope    Slope
}

// The longest chip that the book is for, in yards.
const MaxDistance = 60

// Check tells what is wrong with the shot.
func (s Shot) Check() golf.Problems {
	var p golf.Problems
	if s.Lie != golf.Fairway && s.Lie != golf.Rough {
		p = append(p, golf.Problem{Field: "lie", What: "not possible", Read: s.Lie.String(), Allowed: "fairway or rough"})
	}
	if !(s.Distance > 0 && s.Distance <= MaxDistance) {
		p = append(p, golf.Problem{Field: "distance", What: "not possible", Read: fmt.Sprint(s.Distance), Allowed: fmt.Sprintf("over 0, at most %d yd", MaxDistance)})
	}
	if !(s.Green > 0 && s.Green < s.Distance) {
		p = append(p, golf.Problem{Field: "green", What: "not possible", Read: fmt.Sprint(s.Green), Allowed: "over 0, less than the distance"})
	}
	if s.Slope.String() == "" {
		p = append(p, golf.Problem{Field: "slope", What: "not possible", Allowed: "uphill, level or downhill"})
	}
	return p
}

// Club is a club with its page of the book for the lie and the green of a shot.
type Club struct {
	Name string
	Page Page
}

// Choice is what a club would do with a shot. Lengths are in yards.
type Choice struct {
	Club     string
	Land     float64 // from the ball to where it should land
	Run      float64 // from there to the hole
	Possible bool    // it lands on the green with room to spare
	Strokes  float64 // expected until the ball is holed, this shot included; NaN where it is not possible
}

// The landing spot is so far on the green at least, and the green is taken to end
// so far behind the hole: about the golfer's green. Common practice.
const (
	roomToLand = 2
	behindHole = 13
)

// Land is how far from the ball a shot must land to run to the hole.
func (s Shot) Land(p Page) float64 {
	k := slopeFactors[s.Slope]
	return (s.Distance - k*p.Start) / (1 + k*p.Slope)
}

// Choose says what every club would do, the fewest strokes first and what is not
// possible last. Mistakes and spread are those of the striker; after says how many
// strokes are expected from a lie so many yards from the hole.
func (s Shot) Choose(clubs []Club, by golfer.Striker, after func(lie golf.Lie, yd float64) float64) []Choice {
	all := make([]Choice, len(clubs))
	for i, c := range clubs {
		land := s.Land(c.Page)
		all[i] = Choice{Club: c.Name, Land: land, Run: s.Distance - land, Possible: land >= s.Distance-s.Green+roomToLand, Strokes: math.NaN()}
		if all[i].Possible {
			all[i].Strokes = 1 + s.left(c.Page, by.Strikes(s.Lie, land), after)
		}
	}
	slices.SortStableFunc(all, func(a, b Choice) int {
		switch {
		case a.Possible != b.Possible:
			return order(a.Possible)
		case a.Strokes < b.Strokes:
			return -1
		case a.Strokes > b.Strokes:
			return 1
		}
		return 0
	})
	return all
}

func order(first bool) int {
	if first {
		return -1
	}
	return 1
}

// nodes of the three spreads: direction, length and run-out.
const angleNodes, lengthNodes, runNodes = 13, 41, 9

// left is how many strokes are expected after the shot.
func (s Shot) left(p Page, strikes []golfer.Strike, after func(golf.Lie, float64) float64) float64 {
	k := slopeFactors[s.Slope]
	sum, moved := 0.0, 0.0
	for _, strike := range strikes {
		moved += strike.Share
		normal(angleNodes, func(za, wa float64) {
			sin, cos := math.Sincos(za * strike.Angle)
			normal(lengthNodes, func(zl, wl float64) {
				carry := max(strike.Mean+zl*strike.SD, 0)
				normal(runNodes, func(zr, wr float64) {
					total := carry
					if carry*cos >= s.Distance-s.Green {
						total += max(k*(p.Run(carry)+zr*p.SD), 0)
					}
					sum += strike.Share * wa * wl * wr * s.strokes(total*cos, total*sin, after)
				})
			})
		})
	}
	return sum + (1-moved)*after(s.Lie, s.Distance)
}

// strokes are those expected of a ball that went along yards towards the hole and
// side yards off the line.
func (s Shot) strokes(along, side float64, after func(golf.Lie, float64) float64) float64 {
	r := math.Hypot(along-s.Distance, side)
	if along < s.Distance-s.Green || along > s.Distance+behindHole {
		return after(golf.Rough, max(r, 1))
	}
	return after(golf.Green, r)
}

// normal calls use with equally spaced nodes of a standard normal and their
// weights, which add up to 1.
func normal(n int, use func(z, w float64)) {
	total := 0.0
	weight := func(i int) (z, w float64) {
		z = 3.9 * (2*float64(i)/float64(n-1) - 1)
		return z, math.Exp(-z * z / 2)
	}
	for i := range n {
		_, w := weight(i)
		total += w
	}
	for i := range n {
		z, w := weight(i)
		use(z, w/total)
	}
}
