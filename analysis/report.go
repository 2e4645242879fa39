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

// Choice says whom rounds are compared with. Make one with Target, Level or
// Tour; the zero value is not a choice.
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
// target of those holes, for a target of 18 holes from 68 to 110.
func Target(score float64) Choice { return Choice{byTarget, score} }

// Level compares with the golfer of one level on every course, 68 to 110.
func Level(level float64) Choice { return Choice{byLevel, level} }

// Tour compares with the published tour table. Errors and doubles are then
// judged by the golfer of the standard target, so that a double is the same
// double whatever it is priced by.
func Tour() Choice { return Choice{byTour, StandardTarget} }

// Kind names the choice as the analyse result does: target, level or tour.
func (c Choice) Kind() string { return [...]string{"", "target", "level", "tour"}[c.kind] }

// Value is the score or level of the choice; the tour has none.
func (c Choice) Value() (value float64, ok bool) { return c.value, c.kind != byTour }

// Analyst compares rounds with one choice. It may be shared between
// goroutines.
type Analyst struct {
	choice   Choice
	boundary golf.Distance
	fixed    *expect.Baseline
	lens     *expect.Baseline // nil when each course has its own
}

// NewAnalyst prepares a choice. boundary is where the short game ends, from 30
// to 100 yd.
func NewAnalyst(choice Choice, boundary golf.Distance) (*Analyst, error) {
	if !(boundary >= golf.MinBoundary && boundary <= golf.MaxBoundary) {
		return nil, fmt.Errorf("boundary %g yd; allowed: 30 to 100 yd", boundary.Yards())
	}
	fixed, err := expect.Level(choice.value)
	if err != nil {
		return nil, err
	}
	a := &Analyst{choice: choice, boundary: boundary, fixed: fixed}
	switch choice.kind {
	case byLevel:
		a.lens = fixed
	case byTour:
		a.lens = expect.Tour()
	}
	return a, nil
}

// Report is a round's account and whom it was compared with.
type Report struct {
	Round   golf.Round
	Account account.Account
}

// Report works out a legal round. par18 is the par of the 18 holes of its
// course, 0 where it is not known.
func (a *Analyst) Report(r golf.Round, par18 int) Report {
	terms := account.Terms{Lens: a.lens, Fixed: a.fixed, Boundary: a.boundary}
	if a.lens == nil {
		terms.Lens, terms.Course = expect.ForTarget(r.Card(), r.TargetOf(a.choice.value, par18))
	}
	return Report{Round: r, Account: account.Of(r, terms)}
}
