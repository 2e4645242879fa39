package analysis

import (
	"strokeledger/analysis/aim"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/parallel"
)

// RoundPlanInput is what a plan of a round is made of.
type RoundPlanInput struct {
	Card     []golf.CardHole
	Pictures map[int]aim.Picture // by number of the hole; each is one that Check finds no fault with
	As       PlaysAs
	Clubs    []aim.Club         // none stands for ClubsOf
	Notify   func(done, of int) // is told of progress; may be nil
}

// RoundPlan is a club and an aim for every hole.
type RoundPlan struct {
	Holes []HolePlan // in the order of the card
	Saved float64    // strokes a round, against the longest club down the middle and the flag
}

// HolePlan is the plan of one hole.
type HolePlan struct {
	Hole     golf.CardHole
	Drawn    bool          // there is a picture; without one there is no advice
	Advice   aim.Advice    // from the tee
	Approach *aim.Approach // from where the tee shot ends on average, or where a lay-up does; that of Advice on a par 3
	Saved    float64       // strokes, by the aim from the tee
	Taken    *TakenAim     // that the player took in place of the best; nil for none
	Safe     aim.Side      // that the player took in place of the safe sides of the approach; 0 for none
}

// Matters reports whether the aim is worth writing down.
func (h HolePlan) Matters() bool { return h.Saved >= aim.MattersFrom }

// Stands is the club and the aim that stand in the plan: the best, or what the player
// took in its place. On a par 3 there is no club.
func (h HolePlan) Stands() TakenAim {
	switch {
	case h.Taken != nil:
		return *h.Taken
	case h.Advice.Approach != nil:
		return TakenAim{Aim: h.Advice.Approach.Best}
	}
	best := h.Advice.Best()
	return TakenAim{best.Club.Name, best.Best}
}

// SafeSides are the sides of the green on which a miss costs least, the safest first, or
// what the player took in their place; none where it does not matter.
func (h HolePlan) SafeSides() []aim.Side {
	switch {
	case h.Safe != 0:
		return []aim.Side{h.Safe}
	case h.Approach != nil:
		return h.Approach.Safe
	case h.Advice.Approach != nil:
		return h.Advice.Approach.Safe
	}
	return nil
}

// RoundPlan answers "where should I aim on each hole, and where does it matter?".
// The hole is taken to be cut in the middle of each green.
func (e *Engine) RoundPlan(in RoundPlanInput) (RoundPlan, error) {
	plan := RoundPlan{Holes: make([]HolePlan, len(in.Card))}
	failed := make([]error, len(in.Card))
	parallel.DoTelling(len(in.Card), func(i int) {
		plan.Holes[i], failed[i] = e.holePlan(in, in.Card[i])
	}, func(done int) {
		if in.Notify != nil {
			in.Notify(done, len(in.Card))
		}
	})
	for i, err := range failed {
		if err != nil {
			return RoundPlan{}, err
		}
		plan.Saved += plan.Holes[i].Saved
	}
	return plan, nil
}

// layUp is how far from the hole an approach is shown from where the tee shot leaves
// more than one stroke reaches, in yards. Common practice.
const layUp = 100

// holePlan is the plan of one hole.
func (e *Engine) holePlan(in RoundPlanInput, hole golf.CardHole) (HolePlan, error) {
	plan := HolePlan{Hole: hole}
	picture, drawn := in.Pictures[hole.Number]
	if !drawn {
		return plan, nil
	}
	h, err := aim.NewHole(&e.golfer, in.As.player(), picture, picture.Green.Middle())
	if err != nil {
		return plan, err
	}
	plan.Drawn = true
	if picture.Par == golf.MinPar {
		plan.Approach = h.Approach(golf.Tee, aim.Point{}, aim.Pattern{})
		plan.Advice = aim.Advice{Approach: plan.Approach}
	} else {
		plan.Advice = h.TeeShots(shaped(in.Clubs, h, 0))
		plan.Approach = approachFrom(h, plan.Advice.Best().Best.Ends)
	}
	plan.Saved = plan.Advice.Saved()
	return plan, nil
}

// approachFrom is the shot at the green from where a tee shot ends on average, or from
// where a lay-up does.
func approachFrom(h *aim.Hole, ends aim.Point) *aim.Approach {
	if left := ends.Distance(h.Place()); left > h.Reach(golf.Fairway) || left <= golf.MaxShortSided.Yards() {
		ends = h.Short(layUp, 0)
	}
	return h.Approach(golf.Fairway, ends, aim.Pattern{})
}
