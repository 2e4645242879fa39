package play

import (
	"testing"

	"strokeledger/analysis"
	"strokeledger/analysis/aim"
	"strokeledger/analysis/golf"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// plannedHoles are a hole where the plan is a fairway wood, and one where no aim
// matters.
func plannedHoles(played string) PlannedInput {
	card := []golf.CardHole{{Number: 1, Par: 4, Length: 384 * golf.Yard}, {Number: 2, Par: 4, Length: 400 * golf.Yard}}
	advice := func(driver float64) aim.Advice {
		return aim.Advice{Driver: 1, Clubs: []aim.TeeShot{{Club: aim.Club{Name: "fairway wood"}, Best: aim.Aim{Side: 9, Cost: 4.41}, Straight: aim.Aim{Cost: 4.46}}, {Club: aim.Club{Name: "driver"}, Straight: aim.Aim{Cost: driver}}}}
	}
	in := PlannedInput{ID: 7, Round: golf.Round{Date: golf.Date{Year: 2026, Month: 5, Day: 2}}}
	in.RoundInput = RoundInput{Whose: paths.Whose{Player: 1, Own: true}, Course: 3, Name: "Harrow Fen", Card: card, Target: 79, Unit: golf.Yards, Drawn: 2,
		Plans: map[int]analysis.HolePlan{1: {Hole: card[0], Drawn: true, Advice: advice(4.55)}, 2: {Hole: card[1], Drawn: true, Advice: advice(4.43)}}}
	for _, h := range card {
		in.Round.Holes = append(in.Round.Holes, golf.Hole{Number: h.Number, Par: h.Par, Shots: []golf.Shot{{Lie: golf.Tee, Distance: h.Length, Club: played, Miss: golf.Miss{Side: golf.Right, Depth: golf.Short}}, {Lie: golf.Green, Distance: golf.Foot}}})
	}
	return in
}

// Another club costs what it costs straight above the best aim of the plan: 4.55 less
// 4.41; a hole where no aim matters is left out.
func TestPlannedPage(t *testing.T) {
	for _, c := range []struct {
		club, lede, said, cost string
	}{
		{"d", "A different club from the plan’s was played on the 1st. On average that costs 0.14 strokes.", "Taken as the driver; finished short and right.", "0.14"},
		{"3w", "The plan’s club was played on the one hole where the plan matters and the club is known.", "The plan’s club; finished short and right.", ""},
		{"9i", "The plan matters on one hole of this round, but no club that it can be compared with was recorded off the tee.", "Not among the clubs for the tee, so its cost is not known; finished short and right.", ""},
		{"", "The plan matters on one hole of this round, but no club that it can be compared with was recorded off the tee.", "No club entered; finished short and right.", ""},
	} {
		p := NewPlannedPage(layout.Page{}, plannedHoles(c.club))
		if len(p.Rows) != 1 || p.Lede != c.lede || p.Rows[0].Said != c.said || p.Rows[0].Cost != c.cost || p.Cost != c.cost || p.Rows[0].Club+" "+p.Rows[0].Aim != "Fairway wood 9 yd right" {
			t.Errorf("%q: %q %+v", c.club, p.Lede, p.Rows)
		}
	}
	taken := plannedHoles("d") // what a coach proposed costs more than the driver that was played
	plan := taken.Plans[1]
	plan.Taken = &analysis.TakenAim{Club: "fairway wood", Aim: aim.Aim{Side: -20, Cost: 4.65}}
	taken.Plans[1] = plan
	if p, want := NewPlannedPage(layout.Page{}, taken), "A different club from the plan’s was played on the 1st. On average that saves 0.10 strokes."; p.Lede != want || p.Cost != "−0.10" {
		t.Errorf("%s %s", p.Lede, p.Cost)
	}
	changed, working, coach := plannedHoles("d"), plannedHoles("d"), plannedHoles("")
	changed.Round.Holes[0].Shots[0].Distance -= 20 * golf.Yard
	if p := NewPlannedPage(layout.Page{}, changed); len(p.Rows) != 0 || len(p.Asides) != 1 || p.Asides[0] != "One hole is left out: par or length has changed since." {
		t.Errorf("%+v", p)
	}
	delete(working.Plans, 2)
	if p := NewPlannedPage(layout.Page{}, working); p.Progress == "" || p.Lede != "The plan is being worked out, hole by hole." || len(p.Rows) != 1 {
		t.Errorf("%+v", p)
	}
	coach.Whose.Own = false
	if p := NewPlannedPage(layout.Page{}, coach); p.Rows[0].Enter.At != "" {
		t.Error("a coach is asked to enter a club")
	}
}
