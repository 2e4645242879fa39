package aim

import (
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// greenSide is what a picture adds to the strokes from places more than 30 yd from
// its green, by the distance to the hole: what the best aim costs there less what
// the golfer takes anywhere. It is worked out on the centre line, from fairway and
// from rough; sand and trees are as the rough.
type greenSide struct {
	low, step float64 // yd of the first distance, and from one to the next
	known     int     // distances worked out so far, nearest first
	added     [2][sideDistances]float64
	aims      [2][sideDistances][2]float64 // side and long of the best, in yards by the flag
}

// sideDistances is at how many distances the green side is worked out.
const sideDistances = 8

// adds reads what a picture adds between the distances. It grows from nothing at 30
// yd, and stays the same beyond the last distance.
func (g *greenSide) adds(lie golf.Lie, yd float64) float64 {
	if g == nil || g.known == 0 {
		return 0
	}
	row := &g.added[rowOf(lie)]
	within := golf.MaxShortSided.Yards()
	if yd <= g.low {
		return row[0] * max(yd-within, 0) / (g.low - within)
	}
	i, x := g.locate(yd)
	if i < 0 {
		return row[0]
	}
	return row[i] + x*(row[i+1]-row[i])
}

// rowOf is where what is known from a lie stands.
func rowOf(lie golf.Lie) int {
	if lie == golf.Fairway || lie == golf.Tee {
		return 0
	}
	return 1
}

// locate finds the distance below one that is not below the first, and the share of
// the way to the next; -1 while only one is known.
func (g *greenSide) locate(yd float64) (i int, share float64) {
	x := min((yd-g.low)/g.step, float64(g.known-1))
	i = min(int(x), g.known-2)
	return i, x - float64(i)
}

// aim is the best aim from a distance, side and long in yards by the flag.
func (g *greenSide) aim(lie golf.Lie, yd float64) [2]float64 {
	if g == nil {
		return [2]float64{}
	}
	row := &g.aims[rowOf(lie)]
	i, x := g.locate(max(yd, g.low))
	a, b := row[i], row[i+1]
	return [2]float64{a[0] + x*(b[0]-a[0]), a[1] + x*(b[1]-a[1])}
}

// addGreenSide works out a hole's green side, from the green outwards, so that a lay-up
// sees what follows it.
func (t *terrain) addGreenSide(striker golfer.Striker) {
	if t.m.green == nil && len(t.m.picture.Zones) == 0 && len(t.m.picture.Fairway) == 0 {
		return
	}
	last := max(t.along-130, nearGreen+70)
	t.side = &greenSide{low: nearGreen, step: (last - nearGreen) / (sideDistances - 1)}
	for i := range sideDistances {
		yd := t.side.low + float64(i)*t.side.step
		start := t.m.Point(Position{t.along - yd, 0})
		fairway := newPlane(t, striker, golf.Fairway, start, Pattern{})
		rough := newPlane(t, striker, golf.Rough, start, Pattern{})
		cover(roughStep, false, fairway, rough)
		far := golf.Yards.Of(start.Distance(t.hole))
		for row, p := range []*plane{fairway, rough} {
			side, long := p.seek()
			t.side.aims[row][i] = [2]float64{float64(side), float64(long)}
			t.side.added[row][i] = p.look(side, long) - t.worth.Strokes(p.lie, far)
		}
		t.side.known = i + 1
	}
}
