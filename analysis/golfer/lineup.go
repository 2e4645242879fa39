package golfer

import (
	"math"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/parallel"
)

// lineup is the family at a few skill coordinates, solved, with what the
// targets ask of it.
type lineup struct {
	golfers []*Golfer // one at each of lineupSkills
	sums    []float64 // expected strokes of each on the reference course
	seen    []*Visits // of each over that course
}

// The skill coordinates of a lineup, and where some levels stand in it.
var lineupSkills = []float64{0, .25, .5, 1, 1.25, 1.5}

const (
	half    = 2 // about 79
	ninety  = 3 // 90 by the definition of the coordinate
	hundred = 5 // about 103
)

// newLineup solves the golfers on all cores.
func newLineup(p *Parameters) *lineup {
	n := len(lineupSkills)
	l := &lineup{make([]*Golfer, n), make([]float64, n), make([]*Visits, n)}
	card := expect.ReferenceCourse()
	parallel.Do(n, func(i int) {
		l.golfers[i] = p.Solve(lineupSkills[i])
		l.sums[i] = l.golfers[i].course(card)
		l.seen[i] = l.golfers[i].Visits(card)
	})
	return l
}

// course is the expected strokes over the holes of a card.
func (g *Golfer) course(card []golf.CardHole) float64 {
	sum := 0.0
	for _, h := range card {
		sum += g.Strokes(golf.Tee, h.Length)
	}
	return sum
}

// tour is the golfer at coordinate 0.
func (l *lineup) tour() *Golfer { return l.golfers[0] }

// visits are those of one of the golfers.
func (l *lineup) visits(g *Golfer) *Visits {
	for i, other := range l.golfers {
		if other == g {
			return l.seen[i]
		}
	}
	panic("golfer: not in the lineup")
}

// at reads a figure at a level by the parabola through the three golfers
// around it.
func (l *lineup) at(level float64, figure func(*Golfer) float64) float64 {
	i := 1
	for i < len(l.sums)-2 && level > (l.sums[i]+l.sums[i+1])/2 {
		i++
	}
	x0, x1, x2 := l.sums[i-1], l.sums[i], l.sums[i+1]
	return figure(l.golfers[i-1])*(level-x1)*(level-x2)/((x0-x1)*(x0-x2)) +
		figure(l.golfers[i])*(level-x0)*(level-x2)/((x1-x0)*(x1-x2)) +
		figure(l.golfers[i+1])*(level-x0)*(level-x1)/((x2-x0)*(x2-x1))
}

// strokes are the expected strokes of a level from a lie.
func (l *lineup) strokes(level float64, lie golf.Lie, d golf.Distance) float64 {
	return l.at(level, func(g *Golfer) float64 { return g.Strokes(lie, d) })
}

// perThousandYards is what a course longer by 1,000 yd costs, around 6,500 yd.
func (l *lineup) perThousandYards(level float64) float64 {
	short, long := expect.ScaledCourse(6000), expect.ScaledCourse(7000)
	return l.at(level, func(g *Golfer) float64 { return g.course(long) - g.course(short) })
}

// gapShare is the share of the gap between two golfers that the worse one
// loses by the shots played from where.
func (l *lineup) gapShare(better, worse int, where func(From) bool) float64 {
	return l.seen[worse].Lost(l.golfers[better], where) / (l.sums[worse] - l.sums[better])
}

// meanDrive is the mean length of a tee shot on a hole of full reach, in yards.
func (g *Golfer) meanDrive() float64 {
	sum := 0.0
	for _, k := range g.skills.flight(golf.Tee, longHole, 0).parts {
		sum += k.share * k.mean
	}
	return sum
}

// driveDirection is the spread of direction of such tee shots, in degrees.
func (g *Golfer) driveDirection() float64 {
	sum := 0.0
	for _, k := range g.skills.flight(golf.Tee, longHole, 0).parts {
		sum += k.share * k.angle * k.angle
	}
	return math.Sqrt(sum) * 180 / math.Pi
}

// longHole is a hole, in yards, that no golfer of the family reaches: the tee shot
// has its full length.
const longHole = 450
