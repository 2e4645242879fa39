package compare

import (
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
)

// Profile is what one round lost in each part of the game against every rung
// of the ladder of levels, so that many rounds can be asked at once which level
// they were played to.
type Profile struct {
	lost [golf.Putting + 1][]float64 // strokes, by category, at each rung
}

// Ladder is the levels that profiles are taken against, from 68 to 110, with the
// draws by which they are read. A program needs one; it may be shared between
// goroutines.
type Ladder struct {
	rungs []*expect.Baseline // from the best to the worst
	drawn *draws
}

// NewLadder returns the stored levels.
func NewLadder() Ladder { return Ladder{expect.Ladder(), &draws{}} }

// Profile works out a round against every rung. Holes known by their score
// alone count in no part of the game.
func (l Ladder) Profile(r golf.Round, boundary golf.Distance) Profile {
	var p Profile
	for _, c := range golf.Categories {
		p.lost[c] = make([]float64, len(l.rungs))
	}
	for _, h := range r.Holes {
		if h.Detailed() {
			l.hole(&p, h, boundary)
		}
	}
	return p
}

// hole adds what was lost on a hole, against every rung.
func (l Ladder) hole(p *Profile, h golf.Hole, boundary golf.Distance) {
	played := h.Played()
	for rung, b := range l.rungs {
		after := 0.0
		if h.PickedUp {
			after = b.Shot(h.Shots[len(played)])
		}
		for i := len(played) - 1; i >= 0; i-- {
			s := played[i]
			before := b.Shot(s)
			c := golf.CategoryOf(s.Lie, s.Distance, h.Par, boundary)
			p.lost[c][rung] += 1 + float64(s.Penalty) + after - before
			after = before
		}
	}
}
