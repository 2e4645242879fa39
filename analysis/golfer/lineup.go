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
	greens  []float64 // each hits in regulation there

	tourRound *Visits   // of the golfer at skill 0 over a course as long as the tour's
	levelSums []float64 // expected strokes of each with what the published table adds
}

// The skill coordinates of a lineup, and where some levels stand in it.
var lineupSkills = []float64{0, .25, .5, 1, 1.25, 1.5}

const (
	half    = 2 // about 78
	ninety  = 3 // 90 by the definition of the coordinate
	hundred = 4 // about 98
)

// tourLength is about how long the tour's courses are, in yards. Common practice; the
// sources do not say.
const tourLength = 7200

// newLineup solves the golfers on all cores.
func newLineup(p *Parameters) *lineup { return p.lineupOn(standard, nil) }

// lineupLike is a lineup on the grid of another and with its help: only the
// strokes that differ are worked out.
func (p *Parameters) lineupLike(other *lineup) *lineup { return p.lineupOn(other.tour().grid, other) }

func (p *Parameters) lineupOn(grid *grid, other *lineup) *lineup {
	n := len(lineupSkills)
	l := &lineup{golfers: make([]*Golfer, n), sums: make([]float64, n), seen: make([]*Visits, n), greens: make([]float64, n)}
	card := expect.ReferenceCourse()
	parallel.Do(n, func(i int) {
		if other == nil {
			l.golfers[i] = p.solveOn(grid, lineupSkills[i], nil)
		} else {
			l.golfers[i] = p.solveLike(other.golfers[i])
		}
		l.sums[i] = l.golfers[i].course(card)
		l.seen[i] = l.golfers[i].Visits(card)
		l.greens[i] = l.golfers[i].Greens(card)
	})
	l.tourRound = l.tour().Visits(expect.ScaledCourse(tourLength))
	for _, g := range l.golfers {
		sum := 0.0
		for _, h := range card {
			sum += l.shown(g, golf.Tee, h.Length)
		}
		l.levelSums = append(l.levelSums, sum)
	}
	return l
}

// shown is what the product shows as a golfer's expected strokes: with the share
// of the published tour table that his skill carries.
func (l *lineup) shown(g *Golfer, lie golf.Lie, d golf.Distance) float64 {
	low, high := expect.ResidualRange(lie)
	at := min(max(lie.Unit().In(d), low), high)
	rest := expect.Tabulated(lie, at) - l.tour().Strokes(lie, lie.Unit().Of(at))
	return g.Strokes(lie, d) + expect.ResidualShare(lie, g.T)*rest
}

// level is what the product shows as expected strokes of a level, apart from
// what putting levels in order changes.
func (l *lineup) level(level float64, lie golf.Lie, d golf.Distance) float64 {
	return read(l.levelSums, level, func(i int) float64 { return l.shown(l.golfers[i], lie, d) })
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
func (l *lineup) visits(g *Golfer) *Visits { return l.seen[l.place(g)] }

// place is which of the golfers it is.
func (l *lineup) place(g *Golfer) int {
	for i, other := range l.golfers {
		if other == g {
			return i
		}
	}
	panic("golfer: not in the lineup")
}

// at reads a figure at a level.
func (l *lineup) at(level float64, figure func(*Golfer) float64) float64 {
	return read(l.sums, level, func(i int) float64 { return figure(l.golfers[i]) })
}

// read reads a figure at a level between two golfers, whose levels are their sums,
// by the parabolas through three golfers around each of the two, blended so that the
// reading has no jump and no kink where one golfer gives way to the next: a search
// for the best numbers would stumble over it.
func read(sums []float64, level float64, figure func(int) float64) float64 {
	last := len(sums) - 2
	i := 0
	for i < last && level > sums[i+1] {
		i++
	}
	w := min(max((level-sums[i])/(sums[i+1]-sums[i]), 0), 1)
	switch i {
	case 0:
		return parabola(sums, level, 1, figure)
	case last:
		return parabola(sums, level, last, figure)
	default:
		return (1-w)*parabola(sums, level, i, figure) + w*parabola(sums, level, i+1, figure)
	}
}

// parabola reads a figure by the parabola through golfer i and its neighbours.
func parabola(sums []float64, level float64, i int, figure func(int) float64) float64 {
	x0, x1, x2 := sums[i-1], sums[i], sums[i+1]
	return figure(i-1)*(level-x1)*(level-x2)/((x0-x1)*(x0-x2)) +
		figure(i)*(level-x0)*(level-x2)/((x1-x0)*(x1-x2)) +
		figure(i+1)*(level-x0)*(level-x1)/((x2-x0)*(x2-x1))
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
