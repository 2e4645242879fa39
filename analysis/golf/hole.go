package golf

// Hole is one hole as it was played.
type Hole struct {
	Number int // 1 to 18
	Par    int // 3 to 6

	// Shots are the strokes in playing order. The last was holed, unless
	// PickedUp says that the ball lay there and was lifted. A hole known by
	// its score alone has one, from the tee.
	Shots []Shot

	PickedUp  bool // the last shot was not played
	ScoreOnly int  // strokes of a hole known by its score alone, otherwise 0
}

// Length is the length of the hole: the distance of its first shot, and 0 when
// it has none.
func (h Hole) Length() Distance {
	if len(h.Shots) == 0 {
		return 0
	}
	return h.Shots[0].Distance
}

// Detailed reports whether the hole's strokes are known.
func (h Hole) Detailed() bool { return h.ScoreOnly == 0 }

// Played returns the shots that were struck, so without the one a picked-up
// ball was lifted from and with none on a hole known by its score alone.
func (h Hole) Played() []Shot {
	switch {
	case !h.Detailed() || len(h.Shots) == 0:
		return nil
	case h.PickedUp:
		return h.Shots[:len(h.Shots)-1]
	default:
		return h.Shots
	}
}

// Strokes returns the strokes taken, penalties included. On a picked-up hole
// they are the strokes before the ball was lifted, to which the strokes still
// to come must be added.
func (h Hole) Strokes() int {
	if !h.Detailed() {
		return h.ScoreOnly
	}
	played := h.Played()
	n := len(played)
	for _, s := range played {
		n += s.Penalty
	}
	return n
}

// FromTrouble reports whether shot i (from 0) was played from trouble: from a
// bunker or a blocked lie, short-sided, or as the stroke after a penalty.
func (h Hole) FromTrouble(i int) bool {
	s := h.Shots[i]
	return s.Lie == Bunker || s.Lie == Recovery || s.Shortfall() > 0 || i > 0 && h.Shots[i-1].Penalty > 0
}
