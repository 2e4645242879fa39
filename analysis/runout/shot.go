package runout

import (
	"fmt"
	"math"
	"slices"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/parallel"
	"strokeledger/analysis/stat"
)

// How much farther or less far a ball runs on a slope. Common practice; there is no
// published source.
var slopeFactors = [...]float64{golf.Uphill: .75, golf.LevelGround: 1, golf.Downhill: 1.35}

// Shot is a chip to be played now. Lengths are in yards.
type Shot struct {
	Lie      golf.Lie // fairway or rough
	Distance float64  // from the ball to the hole
	Green    float64  // from the edge of the green to the hole, on the line
	Slope    golf.GreenSlope
}

// The longest chip that the book is for, in yards.
const MaxDistance = float64(golf.MaxChipAhead / golf.Yard)

// Check tells what is wrong with the shot.
func (s Shot) Check() golf.Problems {
	var p golf.Problems
	if s.Lie != golf.Fairway && s.Lie != golf.Rough {
		p = append(p, golf.Problem{Field: "lie", What: "not possible", Read: s.Lie.String(), Allowed: "fairway or rough"})
	}
	if !(s.Distance > 0 && s.Distance <= MaxDistance) {
		p = append(p, golf.Problem{Field: "distance", What: "not possible", Read: fmt.Sprint(s.Distance), Allowed: fmt.Sprintf("over 0, at most %g yd", MaxDistance)})
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
	Land     float64       // from the ball to where it should land
	Run      float64       // from there to the hole
	Trials   int           // that the book has of the club
	Possible bool          // it lands on the green with room to spare
	Tried    bool          // the book has trials near that carry
	Strokes  float64       // expected until the ball is holed, this shot included; NaN where it is not possible
	Ends     stat.Interval // from the ball to where it ends, eight balls in ten; zero where it is not possible
}

// The landing spot is so far on the green at least, and the green is taken to end
// so far behind the hole: about the golfer's green. Common practice.
const (
	RoomToLand = 2 // yards
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
	parallel.Do(len(clubs), func(i int) { all[i] = s.with(clubs[i], by, after) })
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

// with is what one club would do.
func (s Shot) with(c Club, by golfer.Striker, after func(golf.Lie, float64) float64) Choice {
	land := s.Land(c.Page)
	choice := Choice{Club: c.Name, Trials: c.Page.Trials, Land: land, Run: s.Distance - land, Possible: land > 0 && land >= s.Distance-s.Green+RoomToLand, Tried: c.Page.Near(land), Strokes: math.NaN()}
	if !choice.Possible {
		return choice
	}
	var ends [endBins]float64
	left := 0.0
	s.play(c.Page, by.Strikes(s.Lie, land), func(along, side, share float64) {
		left += share * s.strokes(along, side, after)
		ends[min(max(int(along/endBin), 0), endBins-1)] += share
	})
	choice.Strokes, choice.Ends = 1+left, stat.Interval{Low: endAt(&ends, .1), High: endAt(&ends, .9)}
	return choice
}

// Where balls end is counted in pieces of so many yards.
const endBin, endBins = .25, 800

// endAt is the length that a share of the balls stays short of.
func endAt(ends *[endBins]float64, share float64) float64 {
	sum := 0.0
	for i, x := range ends {
		if sum+x >= share {
			return endBin * (float64(i) + (share-sum)/x)
		}
		sum += x
	}
	return endBin * endBins
}

func order(first bool) int {
	if first {
		return -1
	}
	return 1
}

// nodes of the three spreads: direction, length and run-out.
const angleNodes, lengthNodes, runNodes = 13, 41, 9

// play calls use with where the balls of a shot end, along the line and off it in
// yards, and the share of them that end there. The shares add up to 1.
func (s Shot) play(p Page, strikes []golfer.Strike, use func(along, side, share float64)) {
	k, moved := slopeFactors[s.Slope], 0.0
	for _, strike := range strikes {
		moved += strike.Share
		normal(angleNodes, func(za, wa float64) {
			sin, cos := math.Sincos(za * strike.Angle)
			normal(lengthNodes, func(zl, wl float64) {
				carry := max(strike.Mean+zl*strike.SD, 0)
				if carry*cos < s.Distance-s.Green {
					use(carry*cos, carry*sin, strike.Share*wa*wl)
					return
				}
				normal(runNodes, func(zr, wr float64) {
					total := carry + max(k*(p.Run(carry)+zr*p.SD), 0)
					use(total*cos, total*sin, strike.Share*wa*wl*wr)
				})
			})
		})
	}
	use(0, 0, 1-moved)
}

// strokes are those expected of a ball that went along yards towards the hole and
// side yards off the line.
func (s Shot) strokes(along, side float64, after func(golf.Lie, float64) float64) float64 {
	if along == 0 {
		return after(s.Lie, s.Distance) // it hardly moved
	}
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
