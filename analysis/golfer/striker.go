package golfer

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
)

// Striker plays single strokes of one golfer, without solving what follows them.
// Its chances are exact: no random number, and no node on an edge.
type Striker struct{ skills *skills }

// Striker returns the golfer of a level, from 68 to 110.
func (p *Parameters) Striker(level float64) (Striker, error) {
	t, err := expect.SkillOf(level)
	if err != nil {
		return Striker{}, err
	}
	return Striker{p.at(t)}, nil
}

// Putter is the putting of the same golfer.
func (s Striker) Putter() Putter { return Putter(s) }

// Nodes from -1 to 1 of the integrals over direction and length, with weights
// that add up to 2: many where a circle cuts them off, few where nothing does.
var manyNodes, fewNodes = legendre(48), legendre(36)

func legendre(n int) rule {
	r := rule{make([]float64, n), make([]float64, n)}
	quad.Legendre{}.FixedLocations(r.z, r.w, -1, 1)
	return r
}

// Within returns the chance that a shot from lie at yd yards ends within radius
// yards of the hole, holed included.
func (s Striker) Within(lie golf.Lie, yd, radius float64) float64 {
	return s.disc(lie, yd, radius, func(float64) float64 { return 1 })
}

// OnGreenWithin returns the chance that a shot from lie at yd yards ends on the
// green and within radius yards of the hole, holed included.
func (s Striker) OnGreenWithin(lie golf.Lie, yd, radius float64) float64 {
	g := s.skills.ground
	return s.disc(lie, yd, radius, func(r float64) float64 { return logistic((g.greenRadius - r) / g.greenEdge) })
}

// disc is the chance that a shot ends within radius of the hole, counting a place
// r yards from it by counts.
func (s Striker) disc(lie golf.Lie, yd, radius float64, counts func(r float64) float64) float64 {
	f := s.skills.flight(lie, yd, 0)
	sum := 0.0
	for _, k := range f.parts {
		if k.share > 0 {
			sum += k.share * k.disc(yd, radius, counts)
		}
	}
	return (1 - f.stays) * (f.holed + (1-f.holed)*sum)
}

// disc is the same for one way to strike the ball: for every direction, the
// lengths that end in the circle.
func (k strike) disc(yd, radius float64, counts func(r float64) float64) float64 {
	widest := math.Pi
	if radius < yd {
		widest = math.Asin(radius / yd)
	}
	return k.over(manyNodes, widest, func(sin, cos float64) float64 {
		half := math.Sqrt(max(radius*radius-yd*yd*sin*sin, 0))
		return k.lengths(manyNodes, max(yd*cos-half, 0), yd*cos+half, func(length float64) float64 {
			return counts(math.Hypot(length*cos-yd, length*sin))
		})
	})
}

// over integrates what a direction gives over directions of at most widest
// radians to either side; both sides give the same.
func (k strike) over(nodes rule, widest float64, at func(sin, cos float64) float64) float64 {
	widest = min(widest, 6*k.angle)
	sum := 0.0
	for i, x := range nodes.z {
		angle := widest * (1 + x) / 2
		sin, cos := math.Sincos(angle)
		z := angle / k.angle
		sum += nodes.w[i] * widest * math.Exp(-z*z/2) / (k.angle * math.Sqrt(2*math.Pi)) * at(sin, cos)
	}
	return sum
}

// lengths integrates what a length gives over the lengths from low to high.
func (k strike) lengths(nodes rule, low, high float64, at func(length float64) float64) float64 {
	low, high = max(low, k.mean-6*k.sd), min(high, k.mean+6*k.sd)
	if low >= high {
		return 0
	}
	sum := 0.0
	for i, x := range nodes.z {
		length := low + (high-low)*(1+x)/2
		z := (length - k.mean) / k.sd
		sum += nodes.w[i] * (high - low) / 2 * math.Exp(-z*z/2) / (k.sd * math.Sqrt(2*math.Pi)) * at(length)
	}
	return sum
}

// Corridor returns the chance that a full drive ends inside a corridor of width
// yards about the line and goes at least share of the golfer's own sound drive.
func (s Striker) Corridor(width, share float64) float64 {
	f := s.skills.flight(golf.Tee, longHole, 0)
	least := share * s.skills.reach[golf.Tee]
	sum := 0.0
	for _, k := range f.parts {
		if k.share > 0 {
			sum += k.share * k.over(manyNodes, math.Pi/2, func(sin, cos float64) float64 {
				low, high := least/cos, width/2/max(sin, 1e-9)
				if low >= high {
					return 0
				}
				return stat.NormalCDF((high-k.mean)/k.sd) - stat.NormalCDF((low-k.mean)/k.sd)
			})
		}
	}
	return sum
}

// InTwo returns the chance of holing out in two strokes from lie at yd yards.
func (s Striker) InTwo(lie golf.Lie, yd float64) float64 {
	f, next := s.skills.flight(lie, yd, 0), s.chipIns()
	sum := 0.0
	var l landing
	for _, k := range f.parts {
		if k.share == 0 {
			continue
		}
		sum += k.share * k.over(fewNodes, math.Pi/2, func(sin, cos float64) float64 {
			at := func(length float64) float64 {
				short, y := yd-length*cos, length*sin
				r := math.Hypot(short, y)
				s.skills.ground.at(short, y, r, &l)
				return l.lie[golf.Green]*s.skills.putt(3*r).made() + next.at(&l, r)
			}
			nearest := yd * cos // where the chance of the putt has its peak
			return k.lengths(fewNodes, 0, nearest, at) + k.lengths(fewNodes, nearest, math.Inf(1), at)
		})
	}
	return f.stays*s.skills.chipIn(lie, yd*f.left) + (1-f.stays)*(f.holed+(1-f.holed)*sum)
}

// chipIns are the chances of holing a shot from off the green, by lie and by the
// logarithm of the distance in half steps: 1, 1.4, 2 yd and so on.
type chipIns [golf.Green][16]float64

func (s Striker) chipIns() *chipIns {
	c := &chipIns{}
	for _, lie := range []golf.Lie{golf.Fairway, golf.Rough, golf.Bunker, golf.Recovery} {
		for i := range c[lie] {
			c[lie][i] = s.skills.chipIn(lie, math.Exp2(float64(i)/2))
		}
	}
	return c
}

// at is the chance that a ball off the green, r yards from the hole, is holed
// with the next shot.
func (c *chipIns) at(l *landing, r float64) float64 {
	u := min(max(2*math.Log2(r), 0), float64(len(c[0])-1)-1e-9)
	i := int(u)
	sum := 0.0
	for lie := golf.Fairway; lie < golf.Green; lie++ {
		sum += l.lie[lie] * (c[lie][i] + (u-float64(i))*(c[lie][i+1]-c[lie][i]))
	}
	return sum
}

// chipIn is the chance that a shot from lie at yd yards is holed.
func (s *skills) chipIn(lie golf.Lie, yd float64) float64 {
	f := s.flight(lie, yd, 0)
	return (1 - f.stays) * f.holed
}

// LagWithin returns the chance that a putt of ft feet ends within radius feet of
// the hole, holed included.
func (p Putter) LagWithin(ft, radius float64) float64 {
	q := p.skills.putt(ft)
	return strike{1, ft + puttPast, q.sd, q.angle}.disc(ft, radius, func(float64) float64 { return 1 })
}

// Strike is one way to strike the ball: the share of all shots that are struck so,
// the mean and the spread of the length in yards, and the spread of the direction
// in radians.
type Strike struct{ Share, Mean, SD, Angle float64 }

// Strikes are the ways in which a shot from lie at a target yd yards away is
// struck. Their shares add up to the chance that it leaves the lie at all.
func (s Striker) Strikes(lie golf.Lie, yd float64) []Strike {
	var all []Strike
	f := s.skills.flight(lie, yd, 0)
	for _, k := range f.parts {
		if k.share > 0 {
			all = append(all, Strike{(1 - f.stays) * k.share, k.mean, k.sd, k.angle})
		}
	}
	return all
}
