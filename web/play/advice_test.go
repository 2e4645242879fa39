package play

import (
	"cmp"
	"slices"
	"strings"
	"testing"

	"strokeledger/analysis"
	"strokeledger/analysis/aim"
	"strokeledger/analysis/forecast"
	"strokeledger/analysis/golf"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// planCosting is a plan of a par 4 whose best aim and straight driver cost so much.
func planCosting(hole int, best, straight float64) analysis.HolePlan {
	return analysis.HolePlan{Hole: golf.CardHole{Number: hole, Par: 4, Length: 400 * golf.Yard}, Drawn: true, Advice: aim.Advice{Clubs: []aim.TeeShot{
		{Club: aim.Club{Name: "driver", Length: 230}, Best: aim.Aim{Side: 5, Cost: best}, Straight: aim.Aim{Cost: straight}}}}}
}

// A proposal stands beside the best aim with the difference of what is printed.
func TestAProposalIsSetBesideTheBestAim(t *testing.T) {
	for cost, want := range map[float64]string{4.456: "It costs 4.46 strokes on average, the best aim 4.40: 0.06 more.", 4.404: "It costs 4.40 strokes on average, the best aim 4.40: the same.", 4.389: "It costs 4.39 strokes on average, the best aim 4.40: 0.01 less."} {
		a := Advised{Proposes: true, Club: "hybrid", Price: &analysis.TakenAim{Club: "hybrid", Aim: aim.Aim{Cost: cost}}}
		if got := a.cost(planCosting(1, 4.404, 4.5), true); got != want {
			t.Errorf("%g: %s", cost, got)
		}
	}
}

// What a player took stands in the plan, on the card, and in what is saved, even where
// that is less than nothing; the sum of the page follows.
func TestATakenProposalStandsInThePlan(t *testing.T) {
	in := RoundInput{Whose: paths.Whose{Player: 1, Own: true}, Course: 3, Unit: golf.Yards, Drawn: 2, Plans: map[int]analysis.HolePlan{1: planCosting(1, 4.40, 4.50), 2: planCosting(2, 4.40, 4.41)}}
	for _, n := range []int{1, 2} {
		in.Card = append(in.Card, in.Plans[n].Hole)
	}
	page := NewRoundPage(layout.Page{}, in)
	if l := page.Nines[0].Lines[1]; l.Matters || l.Saved != "0.00" || page.Saved != "0.10" || page.Taken != "" {
		t.Errorf("%+v", page.Nines[0])
	}
	plan := in.Plans[2]
	plan.Taken = &analysis.TakenAim{Club: "hybrid", Aim: aim.Aim{Side: -8, Cost: 4.45}}
	in.Plans[2] = plan
	page = NewRoundPage(layout.Page{}, in)
	if l := page.Nines[0].Lines[1]; !l.Matters || l.Club != "Hybrid" || l.Aim != "8 yd left" || l.Saved != "−0.04" || l.Bar != "" {
		t.Errorf("%+v", l)
	}
	if page.Saved != "0.06" || page.Nines[0].Saved != "0.06" || page.Lede != "The plan saves 0.1 strokes a round. Half of it or more comes from the 1st." {
		t.Errorf("%s %s", page.Saved, page.Lede)
	}
	if l := page.Card.Nines[0].Lines[1]; l.Club != "hybrid" || l.Arrow != "← 8" || !l.Matters {
		t.Errorf("%+v", l)
	}
	if want := "On the 2nd the proposal of a coach stands. Together the best aims there would cost 0.05 less."; page.Taken != want {
		t.Errorf("%s", page.Taken)
	}
	delete(in.Plans, 1)
	if page = NewRoundPage(layout.Page{}, in); !strings.HasPrefix(page.Lede, "With what a coach proposes, the plan costs") {
		t.Errorf("%s", page.Lede)
	}
}

// The page of the chance says on which holes the plan is a coach's proposal, whether
// that is played or not; one without says nothing of coaches.
func TestTheChanceSaysWhatWasTaken(t *testing.T) {
	in := ChanceInput{Card: []golf.CardHole{{Number: 1, Par: 4}}, Drawn: 2, Chance: forecast.Chance{Played: 12}}
	for _, planned := range []bool{false, true} {
		in.Planned, in.Taken = planned, map[int]analysis.OtherAim{12: {Club: "hybrid"}, 3: {}}
		if at, want := in.at(), "The plan’s aim on the 3rd and the 12th is the one that a coach proposed, not the best."; !strings.HasSuffix(at, " "+want) {
			t.Errorf("%s", at)
		}
		if in.Taken = nil; strings.Contains(in.at(), "coach") {
			t.Errorf("%s", in.at())
		}
	}
}

// The page of a hole begins with what stands in the plan.
func TestTheHoleBeginsWithWhatStands(t *testing.T) {
	plan := planCosting(6, 4.40, 4.50)
	plan.Taken = &analysis.TakenAim{Club: "hybrid", Aim: aim.Aim{Side: -8, Cost: 4.45}}
	in := HoleInput{Unit: golf.Yards, Plan: plan, Advice: []Advised{{Coach: "Another Coach", Proposes: true, Declined: true}, {Coach: "Ines Moreno", Proposes: true, Club: "hybrid", Side: -8, Taken: true, Price: plan.Taken}}}
	if got, want := in.stands(measure{golf.Yards}), "In the plan, as Ines Moreno proposes: the hybrid, aim 8 yd left of the middle, 4.45 strokes."; got != want {
		t.Errorf("%s", got)
	}
	in.Plan.Taken = nil
	if got := in.stands(measure{golf.Yards}); got != "" {
		t.Errorf("%s", got)
	}
}

// missing is an approach with what a miss on each side leaves.
func missing(left, right, short, long float64, safe ...aim.Side) *aim.Approach {
	a := &aim.Approach{Safe: safe, Misses: []aim.Missed{{Side: aim.LeftSide, Strokes: left}, {Side: aim.RightSide, Strokes: right}, {Side: aim.ShortSide, Strokes: short}, {Side: aim.LongSide, Strokes: long}}}
	slices.SortStableFunc(a.Misses, func(x, y aim.Missed) int { return cmp.Compare(x.Strokes, y.Strokes) })
	return a
}

// A proposed safe side is set beside the cheapest, as both are printed, at the flag that
// the page shows; taken it stands in the plan and on the card in place of what is worked
// out, also where that is nothing.
func TestAProposedSafeSide(t *testing.T) {
	plan := planCosting(6, 4.40, 4.50)
	plan.Approach = missing(2.914, 3.301, 2.986, 3.4, aim.LeftSide, aim.ShortSide)
	in := HoleInput{Unit: golf.Yards, Drawn: true, Plan: plan, Whose: paths.Whose{Player: 1, Own: true}}
	for side, want := range map[aim.Side]string{aim.ShortSide: "A miss short leaves 2.99 on average, one left 2.91: 0.08 more.", aim.LeftSide: "A miss left leaves 2.91 on average, and no side leaves less."} {
		if got := (Advised{Safe: side}).missed(in); got != want {
			t.Errorf("%s", got)
		}
	}
	in.Flag, in.Approach = "back-left", missing(3.2, 2.9, 3, 3)
	if got, want := (Advised{Safe: aim.LeftSide}).missed(in), "At this flag a miss left leaves 3.20 on average, one right 2.90: 0.30 more."; got != want {
		t.Errorf("%s", got)
	}
	card := newAdviceCard(measure{golf.Yards}, in, Advised{ID: 3, Safe: aim.LongSide})
	if card.Proposal != "Proposes long as the safe side of the green." || card.Take == "" || card.Decline != "Keep the plan’s safe side" {
		t.Errorf("%+v", card)
	}
	if card := newAdviceCard(measure{golf.Yards}, HoleInput{Whose: in.Whose}, Advised{Safe: aim.LongSide}); card.Take != "" || card.Cost != "" {
		t.Errorf("not drawn: %+v", card)
	}
	round := RoundInput{Unit: golf.Yards, Drawn: 1, Card: []golf.CardHole{plan.Hole}, Plans: map[int]analysis.HolePlan{6: plan}}
	round.Card[0].Number = 6
	if l := NewRoundPage(layout.Page{}, round).Nines[0].Lines[0]; l.Safe != "left and short" {
		t.Errorf("%+v", l)
	}
	plan.Safe = aim.LongSide
	round.Plans[6] = plan
	page := NewRoundPage(layout.Page{}, round)
	if page.Nines[0].Lines[0].Safe != "long" || page.Card.Nines[0].Lines[0].Safe != "long" || page.Taken != "The safe side of the green on the 6th is the one that a coach proposed." {
		t.Errorf("%+v %s", page.Nines[0].Lines, page.Taken)
	}
}
