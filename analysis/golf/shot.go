package golf

// Shot is one stroke made at the ball, described by where the ball lay before it.
type Shot struct {
	Lie      Lie
	Distance Distance // straight to the hole; from the tee the card's length

	// Penalty is the number of penalty strokes this shot cost, 0 to 9.
	Penalty int

	// ShortSided says that there was too little green for a standard chip.
	// It stands for green of half the usual run-out when GreenToWork is not
	// known, and is overruled by GreenToWork when that is.
	ShortSided bool

	// GreenToWork is the green between its edge and the hole on the line of
	// play; it counts only when GreenKnown.
	GreenToWork Distance
	GreenKnown  bool

	// OwnRun is how far the player's own chip runs out from here, as the run-out
	// book has it; see RunBook. It counts only when OwnRunKnown, and takes the
	// place of RunOut where the shot is ByRunOut. No line and no file holds it.
	OwnRun      Distance
	OwnRunKnown bool

	Unit  Unit   // as it was written; the zero value is the lie's own unit
	About bool   // the distance is not remembered well; it counts all the same
	Club  string // as the player calls it, may be empty
	Miss  Miss   // where the shot finished against its target
	Word  string // a word of the player on it, may be empty
}

// WrittenUnit returns the unit in which the distance was written.
func (s Shot) WrittenUnit() Unit {
	if s.Unit == 0 {
		return s.Lie.Unit()
	}
	return s.Unit
}

// RunOut is how far a standard chip rolls after it lands: from rough 2.5 yd
// and 0.30 yd more for each yard of the shot, at most 8.5 yd; from the fairway
// three quarters of that, from a bunker half. Common practice; there is no
// published source.
func RunOut(lie Lie, d Distance) Distance {
	rough := min(2.5*Yard+0.30*d, 8.5*Yard)
	switch lie {
	case Fairway, Tee:
		return 0.75 * rough
	case Bunker:
		return 0.5 * rough
	case Rough, Recovery:
		return rough
	default:
		return 0
	}
}

// ByRunOut reports whether the run-out alone says how much green is missing: the
// shot is short-sided, and the green was not measured.
func (s Shot) ByRunOut() bool {
	return s.ShortSided && !s.GreenKnown && s.Lie != Green && s.Distance <= MaxShortSided
}

// Run is the run-out that a shot which is ByRunOut is judged by: the player's own
// where it is known, otherwise that of a standard chip. It is negative when the
// player's ball comes back.
func (s Shot) Run() Distance {
	if s.OwnRunKnown {
		return s.OwnRun
	}
	return RunOut(s.Lie, s.Distance)
}

// Shortfall is how much green is missing for a chip: the run-out of a standard one
// less the green to work with or, where that was not measured, half the run-out.
// It is never negative, and 0 on the green, beyond 30 yd or when nothing was said
// of the green.
func (s Shot) Shortfall() Distance {
	switch {
	case s.ByRunOut():
		return max(0, s.Run()/2)
	case s.GreenKnown && s.Lie != Green && s.Distance <= MaxShortSided:
		return max(0, RunOut(s.Lie, s.Distance)-s.GreenToWork)
	default:
		return 0
	}
}
