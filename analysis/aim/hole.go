package aim

import (
	"fmt"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// Player is who aims.
type Player struct {
	Levels  golfer.Levels // of the parts of the game, each 68 to 110
	Overall float64       // whose expected strokes a place is worth
}

// Hole is a picture laid out for a player: the place to ask for aims. It may be
// shared between goroutines.
type Hole struct {
	player        Player
	tee, approach golfer.Striker
	level, model  *expect.Baseline
	fromTee       *terrain // on which tee shots land
	toGreen       *terrain // on which approaches land
}

// NewHole lays a picture out. The flag must be on the green; it is not read where
// no green is drawn. A level out of range, a picture with faults and a flag off the
// green are errors.
func NewHole(of *golfer.Parameters, p Player, picture Picture, flag Flag) (*Hole, error) {
	if err := picture.Check().Err(); err != nil {
		return nil, err
	}
	if picture.Green.Drawn() && !picture.Green.Holds(flag) {
		return nil, fmt.Errorf("the hole is not on the green: %s yd on, %s yd to the right; the green is %s wide and %s deep",
			plain(flag.On), plain(flag.Side), plain(picture.Green.Width), plain(picture.Green.Depth))
	}
	h := &Hole{player: p}
	var overall golfer.Striker
	var err error
	for _, s := range []struct {
		level float64
		to    *golfer.Striker
	}{{p.Levels.Tee, &h.tee}, {p.Levels.Approach, &h.approach}, {p.Overall, &overall}} {
		if *s.to, err = of.Striker(s.level); err != nil {
			return nil, err
		}
	}
	if h.level, err = expect.Level(p.Overall); err != nil {
		return nil, err
	}
	if h.model, err = expect.Model(p.Overall); err != nil {
		return nil, err
	}
	m := picture.Map()
	hole := m.Hole(flag)
	h.toGreen = newTerrain(m, hole, overall, h.model)
	h.toGreen.addGreenSide(overall)
	h.fromTee = newTerrain(m, hole, h.tee, h.model)
	h.fromTee.side = h.toGreen.side
	side := h.toGreen.side
	h.toGreen = newTerrain(m, hole, h.approach, h.model)
	h.toGreen.side = side
	return h, nil
}

// Map is the picture made ready.
func (h *Hole) Map() *Map { return h.fromTee.m }

// Place is where the hole is.
func (h *Hole) Place() Point { return h.fromTee.hole }

// Short is the place so many yards from the hole on the centre line, and so many
// yards right of the line there.
func (h *Hole) Short(yd, across float64) Point {
	m, hole := h.fromTee.m, h.fromTee.hole
	low, high := h.fromTee.along-2*yd, h.fromTee.along
	for range 50 {
		middle := (low + high) / 2
		if m.Point(Position{middle, across}).Distance(hole) > yd {
			low = middle
		} else {
			high = middle
		}
	}
	return m.Point(Position{low, across})
}

// Reach is how far the player's longest sound shot from a lie goes, in yards.
func (h *Hole) Reach(lie golf.Lie) float64 { return h.approach.Reach(lie) }

// adds is what the published table adds to the golfer's strokes from a place.
func (h *Hole) adds(lie golf.Lie, d golf.Distance) float64 {
	return h.level.Strokes(lie, d) - h.model.Strokes(lie, d)
}

// TeeShots are the aims from the tee with each club, one or more.
func (h *Hole) TeeShots(clubs []Club) Advice {
	adds := h.adds(golf.Tee, golf.Yards.Of(h.fromTee.m.picture.Length))
	shots, longest := teeShots(h.fromTee, h.tee, clubs, adds)
	return Advice{Clubs: shots, Driver: longest}
}

// Approach are the aims of a shot at the green, or towards it.
func (h *Hole) Approach(lie golf.Lie, start Point, pattern Pattern) *Approach {
	p := newPlane(h.toGreen, h.approach, lie, start, pattern)
	cover(fineStep, true, p)
	p.adds = h.adds(lie, golf.Yards.Of(p.yd))
	return p.approach(From{lie, start, p.yd})
}

// Clubs are the clubs that are thought of on the tee of the hole, with the lengths
// of the level; none goes farther than the golfer would hit the ball at the hole.
func (h *Hole) Clubs() []Club {
	clubs := TeeClubs(h.tee)
	for i := range clubs {
		clubs[i].Length = min(clubs[i].Length, h.tee.Target(golf.Tee, h.fromTee.m.picture.Length))
	}
	return clubs
}

// TeeClubs are the clubs of a golfer for the tee, with the lengths of the level.
func TeeClubs(s golfer.Striker) []Club {
	driver := s.Reach(golf.Tee)
	var all []Club
	for _, c := range teeClubs {
		all = append(all, Club{Name: c.name, Length: driver * c.share})
	}
	return all
}
