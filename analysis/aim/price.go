package aim

import (
	"math"

	"strokeledger/analysis/golf"
)

// TeeAim is what the aim with the club at place i costs, so many yards right of the
// middle. It is worked out as TeeShots works out those of the same clubs.
func (h *Hole) TeeAim(clubs []Club, i int, side float64) Aim {
	adds := h.adds(golf.Tee, golf.Yards.Of(h.fromTee.m.picture.Length))
	s, swings, headings := onTee(h.fromTee, h.tee, clubs, adds)
	cast := s.cast(swings[i])
	a := s.aim(&cast, headings[i]+side/clubs[i].Length)
	a.Side = side
	return a
}

// FlagAim is what an aim at the green costs, so many yards right of the flag and
// beyond it, to the yard. It is worked out as Approach works out those it looks at.
func (h *Hole) FlagAim(lie golf.Lie, start Point, pattern Pattern, side, long float64) Aim {
	across, beyond := int(math.Round(side)), int(math.Round(long))
	p := newPlane(h.toGreen, h.approach, lie, start, pattern)
	p.search.side = max(p.search.side, across, -across)
	p.search.short, p.search.long = max(p.search.short, -beyond), max(p.search.long, beyond)
	cover(fineStep, true, p)
	p.adds = h.adds(lie, golf.Yards.Of(p.yd))
	p.look(across, beyond)
	return p.aimAt(across, beyond)
}
