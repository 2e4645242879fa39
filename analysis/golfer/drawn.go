package golfer

import (
	"math"

	"strokeledger/analysis/golf"
)

// Place is a place on a hole, in yards: X right of the tee, Y beyond it.
type Place struct{ X, Y float64 }

// away is how far another place is, in yards.
func (p Place) away(q Place) float64 { return math.Hypot(q.X-p.X, q.Y-p.Y) }

// Drawn is a hole whose ground somebody drew, with the aims that are taken on it.
// The tee is at the origin. It must be safe for several goroutines.
type Drawn interface {
	// Cut is where the hole is.
	Cut() Place

	// Aim is where a stroke that does not begin on the green is aimed: its heading in
	// radians, clockwise from up, and how far it tries to go. usual is how far the
	// golfer would try to go at the hole, reach the longest that goes from there.
	Aim(from Place, lie golf.Lie, usual, reach float64) (heading, target float64)

	// End is what becomes of a ball that came down at a place.
	End(from, to Place) End

	// GreenToWork is the green between its edge and the hole on the line from a place
	// off the green; ok is false where no green is drawn.
	GreenToWork(from Place) (yd float64, ok bool)

	// Has reports whether a green and a fairway are drawn, so that there are no others.
	Has() (green, fairway bool)
}

// End is what becomes of a ball on a drawn hole.
type End struct {
	At      Place    // where the next stroke is played, after a drop too
	Lie     golf.Lie // 0 where nothing is drawn: the golfer's own ground decides
	Penalty int      // strokes
	Again   bool     // the stroke is played again from where it was

	// Of a place where nothing is drawn: how far it is short of the hole along the
	// line of play, and off that line.
	Short, Across float64
}

// drawnHole plays a hole on its drawing until the ball is in.
func (r *roundInPlay) drawnHole(h golf.CardHole, d Drawn) {
	at, lie, cut := Place{}, golf.Tee, d.Cut()
	for strokes, again := 1, 0; ; strokes++ {
		yd := at.away(cut)
		shot := golf.Shot{Lie: lie, Distance: golf.Yards.Of(max(yd, 1))}
		switch lie {
		case golf.Tee:
			shot.Distance = h.Length
		case golf.Green:
			shot.Distance = golf.Yards.Of(yd)
		default:
			if toWork, ok := d.GreenToWork(at); ok && shot.Distance <= golf.MaxShortSided {
				shot.GreenKnown, shot.GreenToWork = true, golf.Yards.Of(min(toWork, yd))
			}
		}
		if lie == golf.Green {
			r.putts(shot)
			return
		}
		s := r.skills[golf.CategoryOf(lie, shot.Distance, h.Par, r.player.boundary)]
		from := at
		holed := r.drawnStroke(s, d, &shot, &at, &lie)
		r.shots = append(r.shots, shot)
		if holed {
			return
		}
		if again++; at != from {
			again = 0
		}
		switch {
		case lie == golf.Green:
		case strokes >= mostStrokes:
			at, lie = putOnGreen(at, cut), golf.Green
		case again == MostAgain:
			at, lie = Dropped(at, cut)
			again = 0
		}
	}
}

// putts plays from the green until the ball is in, with the first putt begun.
func (r *roundInPlay) putts(shot golf.Shot) {
	b := ball{golf.Green, shot.Distance.Feet()}
	for holed := false; !holed; {
		shot := golf.Shot{Lie: golf.Green, Distance: golf.Feet.Of(b.far)}
		holed = r.putt(r.skills[golf.Putting], &b)
		r.shots = append(r.shots, shot)
	}
}

// drawnStroke plays a stroke off the green on a drawn hole and moves the ball.
func (r *roundInPlay) drawnStroke(s *skills, d Drawn, shot *golf.Shot, at *Place, lie *golf.Lie) (holed bool) {
	cut := d.Cut()
	yd := max(at.away(cut), 1)
	heading, target := d.Aim(*at, *lie, s.target(*lie, yd), s.reach[*lie])
	f := s.flightOf(*lie, target, shot.Shortfall().Yards())
	off := math.Remainder(math.Atan2(cut.X-at.X, cut.Y-at.Y)-heading, 2*math.Pi)
	for _, p := range f.parts {
		f.holed += p.share * p.holes(yd, off)
	}
	if f.stays > 0 && r.rng.Float64() < f.stays {
		*at = Place{cut.X + f.left*(at.X-cut.X), cut.Y + f.left*(at.Y-cut.Y)}
		return false
	}
	if r.rng.Float64() < f.holed {
		return true
	}
	k := f.pick(r.rng.Float64())
	sin, cos := math.Sincos(heading + r.rng.NormFloat64()*k.angle)
	length := k.mean + r.rng.NormFloat64()*k.sd
	end := d.End(*at, Place{at.X + length*sin, at.Y + length*cos})
	if end.Lie == 0 && !end.Again {
		r.undrawn(s, d, &end)
	}
	shot.Penalty = end.Penalty
	if !end.Again {
		*at, *lie = end.At, end.Lie
	}
	return false
}

// undrawn decides by the golfer's own ground what becomes of a ball where nothing is
// drawn.
func (r *roundInPlay) undrawn(s *skills, d Drawn, end *End) {
	green, fairway := d.Has()
	c := Striker{s}.Country(green, fairway)
	var l landing
	c.ground.at(end.Short, end.Across, end.At.away(d.Cut()), &l)
	lie, penalty := l.pick(r.rng.Float64())
	end.Lie = lie
	if penalty {
		end.Penalty = 1
		end.Again = r.rng.Float64() < StrokeAndDistance
	}
}
