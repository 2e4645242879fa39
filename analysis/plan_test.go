package analysis

import (
	"errors"
	"testing"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// weakPutter is fifteen rounds of a golfer who putts worse than he plays.
func weakPutter(t *testing.T) []golf.Played {
	t.Helper()
	p := golfer.Committed()
	rounds, err := golfer.Season{Player: "Bea", Course: "Harrow Fen", Tee: "white", Card: expect.ReferenceCourse(),
		Levels: golfer.Levels{Tee: 82, Approach: 82, ShortGame: 82, Putting: 98}, First: golf.Date{Year: 2026, Month: 4, Day: 5}, Days: 5, Rounds: 15, Seed: 7}.Play(&p)
	if err != nil {
		t.Fatal(err)
	}
	var history []golf.Played
	for i, r := range rounds {
		history = append(history, golf.Played{ID: golf.RoundID(i + 1), Round: r, Target: 79})
	}
	return history
}

// A plan stands on the latest twelve rounds with a hole whose strokes are known,
// and its examples are shots of those rounds, the dearest first.
func TestPlan(t *testing.T) {
	history := weakPutter(t)
	scores := history[14]
	scores.ID, scores.Round.Holes = 99, []golf.Hole{{Number: 1, Par: 4, ScoreOnly: 5, Shots: history[14].Round.Holes[0].Shots[:1]}}
	engine := NewEngine()
	plan, err := engine.Plan(PlanInput{History: append(history, scores), Target: 79, Minutes: 180})
	if err != nil {
		t.Fatal(err)
	}
	if plan.Game.Rounds != PlanRounds || plan.First != history[3].Round.Date || plan.Last != history[14].Round.Date || plan.Thin.Any() || len(plan.Candidates) < 3 || plan.Candidates[0].Part != golf.Putting {
		t.Errorf("%+v", plan)
	}
	for _, c := range plan.Candidates {
		for i, s := range c.Dearest {
			if s.Round < 4 || s.Round > 15 || s.Lost <= 0 || i > 0 && s.Lost > c.Dearest[i-1].Lost {
				t.Errorf("%+v", c.Dearest)
			}
		}
	}
	if thin, err := engine.Plan(PlanInput{History: history[:2], Target: 79, Minutes: 180}); err != nil || !thin.Thin.Any() || thin.Thin.Missing() != 3 {
		t.Errorf("two rounds: %+v, %v", thin.Thin, err)
	}
	if none, err := engine.Plan(PlanInput{History: []golf.Played{scores}, Target: 79, Minutes: 180}); err != nil || len(none.Candidates) != 0 {
		t.Errorf("no shots: %+v, %v", none, err)
	}
	if _, err := engine.Plan(PlanInput{History: history, Target: 60, Minutes: 180}); err == nil {
		t.Error("a target of 60")
	}
	drill, err := engine.Drill("start-line", DrillInput{PlanInput: PlanInput{History: history, Target: 79, Minutes: 180}})
	if err != nil || !drill.Known || drill.Today < 90 || drill.OfToday >= drill.Of || drill.Mark.Pass == 0 {
		t.Errorf("%+v, %v", drill, err)
	}
	if _, err := engine.Drill("moon", DrillInput{PlanInput: PlanInput{Target: 79}}); !errors.Is(err, ErrNoDrill) {
		t.Errorf("%v", err)
	}
}
