package golf

import "slices"

// RunLine is how far a player's ball runs after it lands, with one club from one
// lie: Start and Slope times the carry. Lengths are in yards.
type RunLine struct {
	Club         string
	Lie          Lie // fairway or rough
	Start, Slope float64
	From, To     float64 // carries that the trials speak for
}

// Run is the run-out of a shot of d in all that is landed so as to stop there. ok is
// false where the trials say nothing of a carry of that length.
func (l RunLine) Run(d Distance) (run Distance, ok bool) {
	land := (d.Yards() - l.Start) / (1 + l.Slope)
	return d - Distance(land)*Yard, land > 0 && land >= l.From && land <= l.To
}

// RunBook is a player's run-out book as rounds are judged by it. Its zero value is
// the book of a player who has none.
type RunBook []RunLine

// Run is the player's run-out for a shot of d from a lie: that of the club which
// runs least, of those whose trials speak for such a shot. With too little green
// every ball that lands on it stops past the hole, and that club's the least far. A
// club that the shot was played with does not count, since the place is charged and
// not what was done from there. ok is false where no trial speaks for the shot.
func (b RunBook) Run(lie Lie, d Distance) (least Distance, ok bool) {
	for _, l := range b {
		if run, speaks := l.Run(d); l.Lie == lie && speaks && (!ok || run < least) {
			least, ok = run, true
		}
	}
	return least, ok
}

// Fill sets the player's own run-out of those shots that are judged by it, and
// clears it of all others.
func (b RunBook) Fill(shots []Shot) {
	for i := range shots {
		s := &shots[i]
		if s.OwnRun, s.OwnRunKnown = 0, false; s.AsksBook() {
			if run, ok := b.Run(s.Lie, s.Distance); ok {
				s.OwnRun, s.OwnRunKnown = run, true
			}
		}
	}
}

// AsksBook reports whether a run-out book can change how the shot is judged.
func (s Shot) AsksBook() bool { return s.ByRunOut() && slices.Contains(TrialLies, s.Lie) }
