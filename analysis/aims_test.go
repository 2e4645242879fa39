package analysis

import (
	"math"
	"testing"

	"strokeledger/analysis/aim"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// bounded is a par 4 with out of bounds on the left.
func bounded() aim.Picture {
	return aim.Picture{Par: 4, Length: 420, Fairway: []aim.Width{{At: 150, Left: 16, Right: 16}, {At: 400, Left: 16, Right: 16}},
		Zones: []aim.Zone{{Kind: aim.Out, From: 0, To: 460, Left: math.Inf(-1), Right: -25}}, Green: aim.Green{Front: 406, Width: 26, Depth: 28}}
}

// seasonOf is a golfer's rounds on the reference course.
func seasonOf(t *testing.T, levels golfer.Levels, rounds int) []golf.Played {
	t.Helper()
	parameters := golfer.Committed()
	played, err := golfer.Season{Player: "P", Card: expect.ReferenceCourse(), Levels: levels, First: golf.Date{Year: 2026, Month: 4, Day: 1},
		Days: 7, Rounds: rounds, Seed: 3}.Play(&parameters)
	if err != nil {
		t.Fatal(err)
	}
	var history []golf.Played
	for _, r := range played {
		history = append(history, golf.Played{ID: 1, Round: r, Target: 79, Par18: 72})
	}
	return history
}

func TestPlaysAsFindsThePlayer(t *testing.T) {
	e := NewEngine()
	as, err := e.PlaysAs(seasonOf(t, golfer.Levels{Tee: 80, Approach: 82, ShortGame: 82, Putting: 95}, 30), 79)
	if err != nil || as.Rounds != PlanRounds || as.Thin.Any() {
		t.Fatalf("%+v %v", as, err)
	}
	if as.Levels.Putting < as.Levels.Tee+3 || math.Abs(as.Overall-84) > 4 {
		t.Errorf("%+v", as)
	}
	few, err := e.PlaysAs(seasonOf(t, golfer.Even(95), 4), 79)
	if err != nil || few.Levels != golfer.Even(79) || few.Overall != 79 || few.Thin.Missing() != 1 {
		t.Errorf("%+v %v", few, err)
	}
	if _, err := e.PlaysAs(nil, 60); err == nil {
		t.Error("a target of 60")
	}
}

func TestAimGoesAwayFromTrouble(t *testing.T) {
	e := NewEngine()
	in := AimInput{Picture: bounded(), As: TargetsGolfer(84)}
	tee, err := e.Aim(in)
	if err != nil || len(tee.Clubs) != 4 || tee.Approach != nil || tee.Straight().Club.Name != "driver" {
		t.Fatalf("%+v %v", tee, err)
	}
	if tee.Straight().Best.Side <= 0 || tee.Saved() <= 0 {
		t.Errorf("%+v", tee.Straight().Best)
	}
	in.Shape = 10
	fade, err := e.Aim(in)
	if err != nil || math.Abs(fade.Straight().Best.Side+10-tee.Straight().Best.Side) > 2 {
		t.Errorf("a fade is aimed at %+.0f, a straight ball at %+.0f", fade.Straight().Best.Side, tee.Straight().Best.Side)
	}
	in.Clubs = []aim.Club{{Name: "5 wood", Length: 205, Own: true}}
	if own, err := e.Aim(in); err != nil || len(own.Clubs) != 1 || own.Best().Club.Name != "5 wood" {
		t.Errorf("%+v %v", own, err)
	}
	in.From = &AimFrom{Lie: golf.Rough, Distance: 150 * golf.Yard, Across: -12}
	flag := in.Picture.Green.At(aim.FlagPlace{Row: "middle", Side: "left"})
	in.Flag, in.Shape = &flag, 0
	approach, err := e.Aim(in)
	if err != nil || approach.Approach == nil || approach.Approach.Best.Side <= 0 || math.Abs(approach.Approach.From.Length-150) > .1 {
		t.Fatalf("%+v %v", approach, err)
	}
	for _, change := range []func(*AimInput){
		func(in *AimInput) { in.From.Lie = golf.Green }, func(in *AimInput) { in.From.Distance = 20 * golf.Yard },
		func(in *AimInput) { in.Flag = &aim.Flag{On: 99} }, func(in *AimInput) { in.As.Overall = 60 },
		func(in *AimInput) { in.As.Levels.Tee = 120 }, func(in *AimInput) { in.Picture.Par = 9 },
	} {
		wrong, from := in, *in.From
		wrong.From = &from
		change(&wrong)
		if _, err := e.Aim(wrong); err == nil {
			t.Errorf("%+v was answered", wrong)
		}
	}
}

func TestRoundPlanSavesStrokes(t *testing.T) {
	card := []golf.CardHole{{Number: 1, Par: 4, Length: 420 * golf.Yard}, {Number: 2, Par: 3, Length: 160 * golf.Yard}, {Number: 3, Par: 5, Length: 520 * golf.Yard}}
	three := aim.Picture{Par: 3, Length: 160, Zones: []aim.Zone{{Kind: aim.Water, From: 120, To: 149, Left: -60, Right: 60}}, Green: aim.Green{Front: 150, Width: 24, Depth: 20}}
	told := 0
	plan, err := NewEngine().RoundPlan(RoundPlanInput{Card: card, Pictures: map[int]aim.Picture{1: bounded(), 2: three}, As: TargetsGolfer(84),
		Notify: func(done, of int) {
			if told = done; of != 3 {
				t.Errorf("%d of %d", done, of)
			}
		}})
	if err != nil || len(plan.Holes) != 3 || told != 3 {
		t.Fatalf("%+v %v, told %d", plan, err, told)
	}
	if one := plan.Holes[0]; !one.Drawn || !one.Matters() || one.Approach == nil || len(one.Approach.Safe) == 0 || one.Approach.Safe[0] == aim.LeftSide {
		t.Errorf("%+v", one)
	}
	if two := plan.Holes[1]; two.Approach == nil || two.Approach.Best.Long <= 0 || two.Saved <= 0 {
		t.Errorf("%+v", two)
	}
	if last := plan.Holes[2]; last.Drawn || last.Saved != 0 || math.Abs(plan.Saved-plan.Holes[0].Saved-plan.Holes[1].Saved) > 1e-12 {
		t.Errorf("%+v of %g", last, plan.Saved)
	}
}

func TestPatternOfAPlayer(t *testing.T) {
	e := NewEngine()
	in := PatternInput{As: TargetsGolfer(84), Club: aim.Club{Name: "driver", Length: 225}, Tee: true}
	if p, err := e.Pattern(in); err != nil || p.Known() {
		t.Errorf("%+v %v", p, err)
	}
	for i := range 20 {
		in.Session = append(in.Session, aim.Ball{Side: 12 + float64(i%5-2)*9, Long: float64(i%4-2) * 8})
	}
	session, err := e.Pattern(in)
	if err != nil || session.Balls != 20 || math.Abs(session.Side-12) > 3 || session.SideIn.Low <= 0 {
		t.Errorf("%+v %v", session, err)
	}
	// Words of rounds in which some miss was noted; others say nothing.
	shot := func(side golf.Side) golf.Shot {
		return golf.Shot{Lie: golf.Tee, Distance: 400 * golf.Yard, Club: "Driver", Miss: golf.Miss{Side: side}}
	}
	round := func(side golf.Side) golf.Played {
		return golf.Played{Round: golf.Round{Holes: []golf.Hole{{Number: 1, Par: 4, Shots: []golf.Shot{shot(side), {Lie: golf.Green, Distance: 3 * golf.Foot}}}}}}
	}
	for range 30 {
		in.History = append(in.History, round(golf.Left), round(0))
	}
	both, err := e.Pattern(in)
	if err != nil || both.Shots != 30 || both.Side >= session.Side {
		t.Errorf("%+v %v", both, err)
	}
	in.Club.Length = 0
	if _, err := e.Pattern(in); err == nil {
		t.Error("a club without a length")
	}
}

// What the player took stands in the rounds with the plan's aims in place of the best
// aim, and in the change of the plan's aims; in straight rounds it changes nothing. It
// costs in simulated rounds what its price says, within what rounds on a picture are
// dearer than aims (.15, DEVELOPERS.md) and the noise of the rounds.
func TestChanceWithWhatWasTaken(t *testing.T) {
	card := expect.ReferenceCourse()[:1]
	card[0].Length = 420 * golf.Yard
	in := ChanceInput{History: seasonOf(t, golfer.Even(88), 8), Target: 85, Card: card, Pictures: map[int]aim.Picture{1: bounded()}, Rounds: 8000, Seed: 1}
	e := NewEngine()
	find := func(planned bool, taken map[int]OtherAim) Chance {
		t.Helper()
		ask := in
		ask.Planned, ask.Taken, ask.Only = planned, taken, true
		c, err := e.Chance(ask)
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	as, err := e.PlaysAs(in.History, in.Target)
	if err != nil {
		t.Fatal(err)
	}
	plan, err := e.RoundPlan(RoundPlanInput{Card: card, Pictures: in.Pictures, As: as})
	if err != nil {
		t.Fatal(err)
	}
	best := plan.Holes[0].Stands()
	far := OtherAim{Club: best.Club, Side: -15} // towards what is out of bounds
	price, err := e.Price(AimInput{Picture: bounded(), As: as}, far)
	if err != nil {
		t.Fatal(err)
	}
	dearer := price.Aim.Cost - best.Aim.Cost
	planned, taken := find(true, nil), find(true, map[int]OtherAim{1: far})
	got := taken.Mean - planned.Mean
	if dearer < .3 || math.Abs(got-dearer) > .15+.08 {
		t.Errorf("rounds are %.3f dearer, the price is %.3f dearer", got, dearer)
	}
	if same := find(true, map[int]OtherAim{1: {Club: best.Club, Side: best.Aim.Side}}); math.Abs(same.Mean-planned.Mean) > 1e-9 {
		t.Errorf("the best aim, taken: %.4f; as the plan has it %.4f", same.Mean, planned.Mean)
	}
	if straight, other := find(false, nil), find(false, map[int]OtherAim{1: far}); straight.Mean != other.Mean {
		t.Errorf("aimed straight: %.4f and %.4f", straight.Mean, other.Mean)
	}
	in.Taken = map[int]OtherAim{1: far}
	all, err := e.Chance(in)
	for _, w := range all.WhatIf {
		if w.Change.String() == "the plan's aims" && math.Abs(w.Strokes-(taken.Mean-find(false, nil).Mean)) > .05 {
			t.Errorf("the change is %.3f, the rounds are %.3f apart; %v", w.Strokes, taken.Mean-find(false, nil).Mean, err)
		}
	}
}

// Holes with a picture are played on it, and the plan's aims help.
func TestChanceOnPictures(t *testing.T) {
	card := expect.ReferenceCourse()[:3]
	card[0].Length = 420 * golf.Yard
	in := ChanceInput{History: seasonOf(t, golfer.Even(88), 8), Target: 85, Card: card, Pictures: map[int]aim.Picture{1: bounded(), 2: {Par: 4, Length: 405}}, Rounds: 4000, Seed: 1}
	open := in
	open.Pictures, open.Only = nil, true
	e := NewEngine()
	straight, err := e.Chance(in)
	if err != nil {
		t.Fatal(err)
	}
	bare, err := e.Chance(open)
	if err != nil || bare.WhatIf != nil || bare.Mean >= straight.Mean {
		t.Errorf("%+v %v after %+v", bare, err, straight)
	}
	in.Planned, in.Only = true, true
	planned, err := e.Chance(in)
	if err != nil || planned.Mean >= straight.Mean-.05 || planned.Chance < straight.Chance-.02 {
		t.Errorf("planned %.3f, %.3f; straight %.3f, %.3f; %v", planned.Mean, planned.Chance, straight.Mean, straight.Chance, err)
	}
	found := false
	for _, w := range straight.WhatIf {
		if w.Change.String() == "the plan's aims" {
			found = true
			if w.Strokes >= 0 || math.Abs(w.Strokes-(planned.Mean-straight.Mean)) > .1 {
				t.Errorf("%+v; planned %.3f, straight %.3f", w, planned.Mean, straight.Mean)
			}
		}
	}
	if !found {
		t.Errorf("no plan among %+v", straight.WhatIf)
	}
}
