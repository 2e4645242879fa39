package aim

import (
	"math"
	"slices"
	"testing"

	"strokeledger/analysis/golf"
)

// The cases whose answers are known without working anything out, each also by
// brute force: the aim that was chosen costs at most this much more, on a grid ten
// times finer, than the best there.
const allowed = .002

// bruteStep is the step of brute force, in spreads.
const bruteStep = .01

// raster is the brute force: a plain grid of a hundredth of a spread, each place of
// which is looked at for itself.
type raster struct {
	s              *stance
	rows, cols     int
	long, wide     float64
	low, left      float64
	strokes, again []float64
}

func newRaster(s *stance, swings []swing, leftmost, rightmost float64) *raster {
	var parts []part
	for _, sw := range swings {
		parts = append(append(parts, sw.well...), sw.bad...)
	}
	e := spanned(parts, bruteStep, leftmost, rightmost, false)
	r := &raster{s: s, rows: e.lengths.count(), cols: e.angles.count(), long: e.lengths.step, wide: e.angles.step, low: e.lengths.low, left: e.angles.low}
	r.strokes, r.again = make([]float64, r.rows*r.cols), make([]float64, r.rows*r.cols)
	for k := range r.cols {
		sin, cos := math.Sincos(s.heading + r.left + float64(k)*r.wide)
		for j := range r.rows {
			yd := r.low + float64(j)*r.long
			e := s.t.end(s.start, Point{s.start.X + yd*sin, s.start.Y + yd*cos}, &entry{})
			r.strokes[j*r.cols+k], r.again[j*r.cols+k] = e.strokes, e.again
		}
	}
	return r
}

// normal are the weights of a normal at the places of a row.
func normal(low, step, mean, sd float64, n int) []float64 {
	w, sum := make([]float64, n), 0.0
	for i := range w {
		if z := (low + float64(i)*step - mean) / sd; math.Abs(z) <= reachOfPattern {
			w[i] = math.Exp(-z * z / 2)
			sum += w[i]
		}
	}
	for i := range w {
		w[i] /= sum
	}
	return w
}

// costs works a swing out for many directions.
func (r *raster) costs(sw *swing, directions []float64) []float64 {
	type line struct {
		part           part
		strokes, again []float64
	}
	var lines []line
	for _, p := range append(append([]part{}, sw.well...), sw.bad...) {
		l := line{p, make([]float64, r.cols), make([]float64, r.cols)}
		for j, w := range normal(r.low, r.long, p.mean, p.sd, r.rows) {
			if w > 0 {
				for k := range r.cols {
					l.strokes[k] += w * r.strokes[j*r.cols+k]
					l.again[k] += w * r.again[j*r.cols+k]
				}
			}
		}
		lines = append(lines, l)
	}
	var all []float64
	for _, d := range directions {
		strokes, again := 0.0, 0.0
		for _, l := range lines {
			for k, w := range normal(r.left, r.wide, d+sw.bias, l.part.angle, r.cols) {
				strokes += l.part.share * w * l.strokes[k]
				again += l.part.share * w * l.again[k]
			}
		}
		clean := r.s.clean(sw, d+sw.bias)
		strokes, again = sw.stays*r.s.stayed(sw)+clean*strokes, clean*again
		all = append(all, (1+strokes+again)/(1-again)+r.s.adds)
	}
	return all
}

// checkTee compares the tee shot with one club with brute force.
func checkTee(t *testing.T, h *Hole, club Club) TeeShot {
	t.Helper()
	shot := h.TeeShots([]Club{club}).Clubs[0]
	sw := newSwing(h.tee, golf.Tee, club.Length, club.Pattern)
	s := &stance{t: h.fromTee, lie: golf.Tee, yd: Point{}.Distance(h.fromTee.hole), adds: h.adds(golf.Tee, golf.Yards.Of(h.fromTee.m.picture.Length))}
	s.to = heading(Point{}, h.fromTee.hole)
	straight := heading(Point{}, h.fromTee.m.onLine(Point{}, club.Length))
	reach := (farthest + math.Abs(club.Pattern.Side)) / club.Length
	r := newRaster(s, []swing{sw}, straight-reach, straight+reach)
	directions := []float64{straight + shot.Best.Side/club.Length}
	for side := -farthest; side <= farthest; side++ {
		directions = append(directions, straight+(float64(side)-math.Round(club.Pattern.Side))/club.Length)
	}
	costs := r.costs(&sw, directions)
	least := math.Inf(1)
	for _, c := range costs {
		least = min(least, c)
	}
	if costs[0] > least+allowed+tied || math.Abs(costs[0]-shot.Best.Cost) > allowed {
		t.Errorf("%v aim %+.0f costs %.4f by brute force (told: %.4f), the best there %.4f", h.fromTee.m.picture.Zones, shot.Best.Side, costs[0], shot.Best.Cost, least)
	}
	return shot
}

// corridor is a straight par 4 with a drawn fairway and trouble on one side or both.
func corridor(zones ...Zone) Picture {
	return Picture{Par: 4, Length: 420, Fairway: []Width{{150, 16, 16}, {400, 16, 16}}, Zones: zones}
}

func driverOf(h *Hole) Club { return h.Clubs()[0] }

func TestMirroredTroubleIsAimedDownTheMiddle(t *testing.T) {
	for _, k := range []Kind{Out, Water, Bunker} {
		h := laidOut(t, 84, corridor(Zone{k, -inf, inf, -inf, -25}, Zone{k, -inf, inf, 25, inf}))
		if shot := checkTee(t, h, driverOf(h)); math.Abs(shot.Best.Side) > 1 {
			t.Errorf("%v on both sides: %+.0f", k, shot.Best.Side)
		}
	}
}

func TestDrawAndFadeAreAimedAsMirrored(t *testing.T) {
	h := laidOut(t, 84, corridor(Zone{Out, -inf, inf, -inf, -25}, Zone{Out, -inf, inf, 25, inf}))
	club := driverOf(h)
	club.Pattern = Pattern{Side: -12}
	draw := checkTee(t, h, club)
	club.Pattern = Pattern{Side: 12}
	fade := checkTee(t, h, club)
	if draw.Best.Side != -fade.Best.Side || math.Abs(draw.Best.Side-12) > 2 || math.Abs(draw.Best.Cost-fade.Best.Cost) > 1e-3 {
		t.Errorf("draw %+.0f for %.4f, fade %+.0f for %.4f", draw.Best.Side, draw.Best.Cost, fade.Best.Side, fade.Best.Cost)
	}
	if draw.Straight.Cost < draw.Best.Cost+.02 {
		t.Errorf("a draw aimed straight costs %.4f, at its best %.4f", draw.Straight.Cost, draw.Best.Cost)
	}
}

// A wilder player never aims nearer to trouble that is on one side.
func TestWiderPatternsStayFartherFromTrouble(t *testing.T) {
	for _, k := range []Kind{Out, Water} {
		for _, level := range []float64{75, 90} {
			h := laidOut(t, level, corridor(Zone{k, -inf, inf, -inf, -25}))
			club, last := driverOf(h), math.Inf(-1)
			for _, wide := range []float64{.5, .7, 1, 1.4, 2} {
				club.Pattern = Pattern{Wide: wide, Deep: wide}
				shot := h.TeeShots([]Club{club}).Clubs[0]
				if level == 90 && wide == 2 {
					checkTee(t, h, club)
				}
				if shot.Best.Side < last-1 || shot.Best.Side < 0 {
					t.Errorf("level %g, %v on the left, spread times %g: %+.0f after %+.0f", level, k, wide, shot.Best.Side, last)
				}
				last = max(last, shot.Best.Side)
			}
		}
	}
}

func TestTroubleMovedAwayBringsTheAimBack(t *testing.T) {
	last := inf
	for _, off := range []float64{20, 30, 45, 65, 110} {
		h := laidOut(t, 84, corridor(Zone{Out, -inf, inf, -inf, -off}))
		side := 0.0
		if off == 30 || off == 110 {
			side = checkTee(t, h, driverOf(h)).Best.Side
		} else {
			side = h.TeeShots([]Club{driverOf(h)}).Clubs[0].Best.Side
		}
		if side > last+1 {
			t.Errorf("out of bounds %g yd off: %+.0f, nearer it was %+.0f", off, side, last)
		}
		last = side
	}
	if math.Abs(last) > 1 {
		t.Errorf("out of bounds 110 yd off: %+.0f", last)
	}
}

// checkApproach compares an approach with brute force.
func checkApproach(t *testing.T, h *Hole, lie golf.Lie, start Point) *Approach {
	t.Helper()
	a := h.Approach(lie, start, Pattern{})
	p := newPlane(h.toGreen, h.approach, lie, start, Pattern{})
	cover(roughStep, false, p)
	p.adds = h.adds(lie, golf.Yards.Of(p.yd))
	ends := []swing{p.swing(-p.search.short), p.swing(0), p.swing(p.search.long)}
	reach := float64(p.search.side) / ends[0].target
	r := newRaster(&p.stance, ends, -reach, reach)
	least, chosen := inf, inf
	for long := -p.search.short; long <= p.search.long; long++ {
		sw := p.swing(long)
		var directions []float64
		for side := -p.search.side; side <= p.search.side; side++ {
			directions = append(directions, direction(side, sw.target))
		}
		for i, cost := range r.costs(&sw, directions) {
			least = min(least, cost)
			side := float64(i - p.search.side)
			deep := sw.target*math.Cos(direction(i-p.search.side, sw.target)) - p.target
			if side == a.Best.Side && math.Abs(deep-a.Best.Long) < 1e-9 {
				chosen = cost
			}
		}
	}
	if chosen > least+allowed+tied || math.Abs(chosen-a.Best.Cost) > allowed {
		t.Errorf("from %s %.0f yd, %+.0f and %+.1f costs %.4f by brute force (told: %.4f), the best there %.4f",
			lie, p.yd, a.Best.Side, a.Best.Long, chosen, a.Best.Cost, least)
	}
	return a
}

// openGreen is a round green with nothing around it but open ground.
func openGreen() Picture {
	return Picture{Par: 4, Length: 420, Zones: []Zone{{Rough, -inf, inf, -inf, inf}}, Green: Green{406, 28, 28, 0}}
}

func TestOpenGreenIsAimedAtTheFlag(t *testing.T) {
	for _, level := range []float64{75, 84, 95} {
		h := laidOut(t, level, openGreen())
		for i, share := range []float64{.3, .45, .6, .75} {
			start := h.Short(share*h.Reach(golf.Fairway), 0)
			var a *Approach
			if level == 84 && i%2 == 0 {
				a = checkApproach(t, h, golf.Fairway, start)
			} else {
				a = h.Approach(golf.Fairway, start, Pattern{})
			}
			if math.Abs(a.Best.Side) > 1 || a.Saved() > .01 {
				t.Errorf("level %g, %.2f of the reach: %+.0f and %+.1f, saves %.4f", level, share, a.Best.Side, a.Best.Long, a.Saved())
			}
		}
	}
}

func TestTuckedFlagIsAimedInsideOf(t *testing.T) {
	p := openGreen()
	p.Zones = []Zone{{Bunker, 380, 460, -40, 0}}
	for _, place := range []FlagPlace{{"middle", "left"}, {"back", "left"}} {
		h, err := NewHole(&committed, even(84), p, p.Green.At(place))
		if err != nil {
			t.Fatal(err)
		}
		a := checkApproach(t, h, golf.Fairway, h.Short(150, 0))
		if a.Best.Side < 1 || a.Best.Shares.ShortSided >= a.Flag.Shares.ShortSided {
			t.Errorf("%v: %+.0f, short-sided %.3f and %.3f", place, a.Best.Side, a.Best.Shares.ShortSided, a.Flag.Shares.ShortSided)
		}
		if !slices.Contains(a.Safe, RightSide) || slices.Contains(a.Safe, LeftSide) {
			t.Errorf("%v: safe %v of %v", place, a.Safe, a.Misses)
		}
	}
}

func TestWaterShortOfTheGreenIsCounted(t *testing.T) {
	p := openGreen()
	dry := laidOut(t, 84, p)
	p.Zones = append(p.Zones, Zone{Water, 385, 402, -inf, inf})
	wet := laidOut(t, 84, p)
	// The tee shot does not reach the water, but what follows it does.
	if a, b := dry.TeeShots(dry.Clubs()[:1]).Best().Best, wet.TeeShots(wet.Clubs()[:1]).Best().Best; b.Cost < a.Cost+.1 || b.Shares.Water > .001 {
		t.Errorf("%.3f without water, %.3f with it, %.4f in it", a.Cost, b.Cost, b.Shares.Water)
	}
	a := checkApproach(t, wet, golf.Fairway, wet.Short(150, 0))
	if a.Best.Long < 1 || a.Best.Shares.Water >= a.Flag.Shares.Water {
		t.Errorf("%+.1f, in the water %.3f and %.3f", a.Best.Long, a.Best.Shares.Water, a.Flag.Shares.Water)
	}
}

// Shares add up, whatever is drawn.
func TestSharesAddUp(t *testing.T) {
	h := laidOut(t, 90, dogleg())
	var all []Shares
	for _, shot := range h.TeeShots(h.Clubs()).Clubs {
		all = append(all, shot.Best.Shares, shot.Straight.Shares)
	}
	for _, lie := range []golf.Lie{golf.Fairway, golf.Rough, golf.Bunker, golf.Recovery, golf.Tee} {
		a := h.Approach(lie, h.Short(120, 5), Pattern{Side: 4})
		all = append(all, a.Best.Shares, a.Flag.Shares)
	}
	for i, s := range all {
		if sum := s.Green + s.Fairway + s.Rough + s.Bunker + s.Trees + s.Water + s.Out + s.Penalty; math.Abs(sum-1) > 1e-6 {
			t.Errorf("%d: %v add up to %.8f", i, s, sum)
		}
	}
}
