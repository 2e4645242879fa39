package aim

import (
	"cmp"
	"math"
	"slices"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// How aims are searched, in yards.
const (
	farthest   = 60 // to either side of the middle that a ball is meant to end
	coarse     = 4  // between two aims of the first pass
	tied       = .002
	flatWithin = .01
)

// teeShots are the aims with each club from the tee, the cheapest first, and the
// place of the longest among them.
func teeShots(t *terrain, striker golfer.Striker, clubs []Club, adds float64) (shots []TeeShot, driver int) {
	s, swings, headings := onTee(t, striker, clubs, adds)
	for i, c := range clubs {
		cast := s.cast(swings[i])
		shots = append(shots, s.teeShot(c, &cast, headings[i]))
	}
	far := longest(clubs)
	slices.SortStableFunc(shots, func(a, b TeeShot) int { return cmp.Compare(a.Best.Cost, b.Best.Cost) })
	return shots, slices.IndexFunc(shots, func(s TeeShot) bool { return s.Club == far })
}

// longest is the club that goes farthest, with which "straight" is meant.
func longest(clubs []Club) Club {
	return slices.MaxFunc(clubs, func(a, b Club) int { return cmp.Compare(a.Length, b.Length) })
}

// onTee takes a stance on the tee for some clubs, with the swing of each and where it
// heads down the middle.
func onTee(t *terrain, striker golfer.Striker, clubs []Club, adds float64) (*stance, []swing, []float64) {
	tee := Point{}
	s := &stance{t: t, start: tee, lie: golf.Tee, yd: tee.Distance(t.hole), adds: adds}
	swings := make([]swing, len(clubs))
	headings := make([]float64, len(clubs))
	left, right := math.Inf(1), math.Inf(-1)
	for i, c := range clubs {
		swings[i] = newSwing(striker, golf.Tee, c.Length, c.Pattern)
		headings[i] = heading(tee, t.m.onLine(tee, c.Length))
		reach := farthest/c.Length + coarse/c.Length
		left, right = min(left, headings[i]-reach), max(right, headings[i]+reach)
	}
	s.cover(swings, fineStep, left, right, true)
	s.to = heading(tee, t.hole)
	return s, swings, headings
}

// teeShot searches the aims of one club.
func (s *stance) teeShot(club Club, c *cast, straight float64) TeeShot {
	costs := map[int]float64{}
	look := func(side int) float64 {
		cost, known := costs[side]
		if !known {
			cost = s.cost(c, straight+float64(side)/club.Length)
			costs[side] = cost
		}
		return cost
	}
	middle := -int(math.Round(club.Pattern.Side))
	look(0)
	best := middle
	for side := middle - farthest; side <= middle+farthest; side += coarse {
		if look(side) < look(best) {
			best = side
		}
	}
	for side := best - coarse; side <= best+coarse; side++ {
		look(side)
	}
	shot := TeeShot{Club: club, Curve: curve(costs)}
	side := shot.choose(club.Pattern.Side)
	shot.Best = s.aim(c, straight+side/club.Length)
	shot.Best.Side = side
	shot.Straight = s.aim(c, straight)
	return shot
}

// curve lists costs from left to right.
func curve(costs map[int]float64) []Cost {
	all := make([]Cost, 0, len(costs))
	for side, cost := range costs {
		all = append(all, Cost{float64(side), cost})
	}
	slices.SortFunc(all, func(a, b Cost) int { return cmp.Compare(a.Side, b.Side) })
	return all
}

// choose is the best aim of the curve: of those within tied of the cheapest, the
// one whose balls end nearest to the middle. It fills in how flat the curve is.
func (t *TeeShot) choose(bias float64) float64 {
	least := slices.MinFunc(t.Curve, func(a, b Cost) int { return cmp.Compare(a.Strokes, b.Strokes) })
	best := least.Side
	t.Flat = [2]float64{best, best}
	for _, c := range t.Curve {
		if c.Strokes <= least.Strokes+tied && math.Abs(c.Side+bias) < math.Abs(best+bias) {
			best = c.Side
		}
	}
	at := slices.Index(t.Curve, least)
	for i := at; i >= 0 && t.Curve[i].Strokes <= least.Strokes+flatWithin; i-- {
		t.Flat[0] = t.Curve[i].Side
	}
	for i := at; i < len(t.Curve) && t.Curve[i].Strokes <= least.Strokes+flatWithin; i++ {
		t.Flat[1] = t.Curve[i].Side
	}
	return best
}

// onLine is the place on the centre line that is so far from a place near it, on
// the way to the green.
func (m *Map) onLine(from Point, yd float64) Point {
	low := m.Position(from).Along
	high := low + yd
	for from.Distance(m.Point(Position{high, 0})) < yd && high < low+4*yd {
		high += yd / 4
	}
	for range 40 {
		middle := (low + high) / 2
		if from.Distance(m.Point(Position{middle, 0})) < yd {
			low = middle
		} else {
			high = middle
		}
	}
	return m.Point(Position{high, 0})
}
