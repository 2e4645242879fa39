package analysis

import (
	"fmt"

	"strokeledger/analysis/account"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
)

// StandardTarget is the score of 18 holes that a player chases unless another
// is chosen: the first that breaks 80.
const StandardTarget = 79

// Choice says whom a round is compared with. Make one with Target, Level, Tour
// or Against; the zero value is not a choice.
type Choice struct {
	kind  choiceKind
	value float64
}

type choiceKind uint8

const (
	byTarget choiceKind = iota + 1
	byLevel
	byTour
)

// Target compares with the golfer whose mean over the holes played is the
// target of those holes, for a target of 18 holes from golf.MinTarget to
// golf.MaxTarget.
func Target(score float64) Choice { return Choice{byTarget, score} }

// Level compares with the golfer of one level on every course, from
// golf.MinTarget to golf.MaxTarget.
func Level(level float64) Choice { return Choice{byLevel, level} }

// Tour compares with the published tour table. Errors and doubles are then
// judged by the golfer of the standard target, so that a double is the same
// double whatever it is priced by.
func Tour() Choice { return Choice{byTour, StandardTarget} }

// Against is the choice of a player who is after a target.
func Against(v golf.Versus, target float64) Choice {
	if level, ok := v.Level(); ok {
		return Level(level)
	}
	if v.IsTour() {
		return Tour()
	}
	return Target(target)
}

// Kind names the choice as the analyse result does: target, level or tour.
func (c Choice) Kind() string { return [...]string{"", "target", "level", "tour"}[c.kind] }

// Value is the score or level of the choice; the tour has none.
func (c Choice) Value() (value float64, ok bool) { return c.value, c.kind != byTour }

// fixed is the one golfer whom every round of a comparison is charged against,
// whatever its course: for a target the golfer of that level.
func (c Choice) fixed() (*expect.Baseline, error) {
	if c.kind == byTour {
		return expect.Tour(), nil
	}
	return expect.Level(c.value)
}

// Analyst answers "what was lost in this round, and to whom?" for one choice.
// It may be shared between goroutines.
type Analyst struct {
	choice   Choice
	boundary golf.Distance
	fixed    *expect.Baseline
	lens     *expect.Baseline // nil when each course has its own
}

// NewAnalyst prepares a choice. boundary is where the short game ends, from
// golf.MinBoundary to golf.MaxBoundary.
func NewAnalyst(choice Choice, boundary golf.Distance) (*Analyst, error) {
	if !(boundary >= golf.MinBoundary && boundary <= golf.MaxBoundary) {
		return nil, fmt.Errorf("boundary %g yd; allowed: %g to %g yd", boundary.Yards(), golf.MinBoundary.Yards(), golf.MaxBoundary.Yards())
	}
	fixed, err := expect.Level(choice.value)
	if err != nil {
		return nil, err
	}
	a := &Analyst{choice: choice, boundary: boundary, fixed: fixed}
	if choice.kind != byTarget {
		a.lens, err = choice.fixed()
	}
	return a, err
}

// Statement is a round with its account.
type Statement struct {
	Round   golf.Round
	Account account.Account
	Level   float64 // of the golfer compared with; 0 for the tour
}

// Statement works out a legal round. par18 is the par of the 18 holes of its
// course, 0 where it is not known.
func (a *Analyst) Statement(r golf.Round, par18 int) Statement {
	return a.over(r, r.Card(), par18)
}

// over is the statement of a round whose target counts over the holes of a card,
// which may be more than those played.
func (a *Analyst) over(r golf.Round, card []golf.CardHole, par18 int) Statement {
	terms := account.Terms{Lens: a.lens, Fixed: a.fixed, Boundary: a.boundary}
	if a.lens == nil {
		terms.Lens, terms.Course = expect.ForTarget(card, golf.TargetOver(card, a.choice.value, par18))
	}
	return Statement{Round: r, Account: account.Of(r, terms), Level: terms.Lens.Level()}
}

// StatementOf answers what was lost in a stored round against the golfer of its
// own target. card is the holes over which that golfer averages the target; nil
// for those of the round. Picked-up holes count whole strokes, as pages show them.
// Without a hole the statement is empty.
func StatementOf(r golf.Played, card []golf.CardHole, boundary golf.Distance) (Statement, error) {
	if len(r.Round.Holes) == 0 {
		return Statement{Round: r.Round}, nil
	}
	a, err := NewAnalyst(Target(r.Target), boundary)
	if err != nil {
		return Statement{}, err
	}
	if card == nil {
		card = r.Round.Card()
	}
	s := a.over(r.Round, card, r.Par18)
	s.Account = s.Account.InWholeStrokes()
	return s, nil
}
