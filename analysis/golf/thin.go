package golf

// Thin is a note beside a number, or in its place, where there is too little
// to stand on: what is too few, how many there are and how many it takes. The
// zero value says that nothing is missing.
type Thin struct {
	Of   Measured // what is too few
	Have int      // how many there are
	Need int      // how many it takes, more than there are
}

// Measured is what a number is about of which there may be too little. The zero
// value is invalid.
type Measured uint8

// What may be too thin, with what is counted.
const (
	ThinLevel    Measured = iota + 1 // a level: rounds with a stroke in that part of the game
	ThinChange                       // how sure a change is: rounds on its smaller side
	ThinInterval                     // an interval: rounds
	ThinTrend                        // the mean of a season: rounds
	ThinIndex                        // a Handicap Index: scores on rated courses
	ThinSpread                       // how far scores spread: simulated rounds
	ThinPlan                         // what to practise: rounds with a hole whose strokes are known
)

// Enough returns no note when have reaches need, and otherwise the note.
func Enough(of Measured, have, need int) Thin {
	if have >= need {
		return Thin{}
	}
	return Thin{of, have, need}
}

// Any reports whether something is missing.
func (t Thin) Any() bool { return t != Thin{} }

// Missing is how many more it takes; 0 when nothing is missing.
func (t Thin) Missing() int { return t.Need - t.Have }
