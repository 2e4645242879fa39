package analysis

import (
	"cmp"
	"errors"
	"slices"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/practice"
)

// PlanRounds is how many of the latest rounds a plan stands on.
const PlanRounds = 12

// mostDearest is how many example shots a candidate has.
const mostDearest = 3

// PlanInput is what a plan of practice is made of.
type PlanInput struct {
	History []golf.Played // all rounds, in the order of their days
	Target  float64       // the player's
	Minutes int           // a week, see practice.MinMinutes
	Span    golf.Span     // of which the latest rounds count; all rounds for the zero value
}

// Plan is what to practise.
type Plan struct {
	Game       practice.Game // zero without a hole whose strokes are known
	First      golf.Date     // of the rounds that the plan stands on
	Last       golf.Date
	Thin       golf.Thin // why it says little; no note when there are rounds enough
	Candidates []PlanCandidate
}

// PlanCandidate is something to practise, with what it cost most.
type PlanCandidate struct {
	practice.Candidate
	Dearest []DearShot // the dearest first
}

// DearShot is a shot that cost much.
type DearShot struct {
	Round      golf.RoundID
	Day        golf.Date
	Hole, Shot int
	Lost       float64 // strokes, to the golfer of the target
}

// Plan answers "what should I practise, and how good is good enough?", from the
// latest rounds with a hole whose strokes are known. A target outside
// golf.MinTarget to golf.MaxTarget is an error.
func (e *Engine) Plan(in PlanInput) (Plan, error) {
	game, chosen, err := gameOf(in)
	p := Plan{Game: game, Thin: golf.Enough(golf.ThinPlan, len(chosen), practice.MinRounds)}
	if err != nil || len(chosen) == 0 {
		return p, err
	}
	p.First, p.Last = chosen[0].Round.Date, chosen[len(chosen)-1].Round.Date
	candidates, err := game.Candidates(e.golfer, in.Minutes)
	if err != nil {
		return p, err
	}
	dear := dearShots(chosen, game.Accounts)
	for _, c := range candidates {
		p.Candidates = append(p.Candidates, PlanCandidate{c, dearestOf(c, dear)})
	}
	return p, nil
}

// gameOf looks at the rounds that a plan stands on; the game is zero without one.
func gameOf(in PlanInput) (game practice.Game, chosen []golf.Played, err error) {
	var spanned []golf.Played
	for i, r := range in.History {
		if in.Span == (golf.Span{}) || in.Span.Holds(i, len(in.History), r.Round.Date) {
			spanned = append(spanned, r)
		}
	}
	chosen = latestDetailed(spanned, PlanRounds)
	rounds := make([]golf.Round, len(chosen))
	for i, r := range chosen {
		rounds[i] = r.Round
	}
	game, err = practice.Committed().Look(rounds, in.Target)
	if errors.Is(err, practice.ErrNothing) {
		err = nil
	}
	return game, chosen, err
}

// latestDetailed are the latest rounds with a hole whose strokes are known, in the
// order of their days.
func latestDetailed(history []golf.Played, most int) []golf.Played {
	var chosen []golf.Played
	for _, r := range slices.Backward(history) {
		if len(chosen) < most && slices.ContainsFunc(r.Round.Holes, golf.Hole.Detailed) {
			chosen = append(chosen, r)
		}
	}
	slices.Reverse(chosen)
	return chosen
}

// pricedShot is a shot with what it cost and what it counts for.
type pricedShot struct {
	DearShot
	band  account.Band
	short bool // a putt of 6 ft or less, missed on the way to a double
	after bool // an error after the first of a chain
}

// dearShots are the shots of rounds with their accounts, the dearest first.
func dearShots(rounds []golf.Played, accounts []*account.Account) []pricedShot {
	var all []pricedShot
	for k, r := range rounds {
		a := accounts[k]
		doubles := map[int]account.Double{}
		for _, d := range a.Doubles {
			doubles[d.Hole] = d
		}
		for _, h := range a.Holes {
			d := doubles[h.Number]
			for i, s := range h.Shots {
				all = append(all, pricedShot{DearShot{r.ID, r.Round.Date, h.Number, i + 1, s.Lost}, s.Band,
					slices.Contains(d.Missed, i+1), len(d.Chain) > 1 && slices.Contains(d.Chain[1:], i+1)})
			}
		}
	}
	slices.SortStableFunc(all, func(x, y pricedShot) int { return cmp.Compare(y.Lost, x.Lost) })
	return all
}

// dearestOf are the dearest shots of a candidate.
func dearestOf(c practice.Candidate, all []pricedShot) []DearShot {
	counts := map[practice.Kind]func(pricedShot) bool{
		practice.OfPart:      func(s pricedShot) bool { return s.band == c.Band },
		practice.Compounding: func(s pricedShot) bool { return s.after },
		practice.ShortMisses: func(s pricedShot) bool { return s.short },
	}[c.Kind]
	var dearest []DearShot
	for _, s := range all {
		if len(dearest) < mostDearest && s.Lost > 0 && counts != nil && counts(s) {
			dearest = append(dearest, s.DearShot)
		}
	}
	return dearest
}
