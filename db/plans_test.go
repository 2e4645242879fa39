package db_test

import (
	"slices"
	"sync"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/db"
)

// aPlan is a plan that stands on rounds of October.
func aPlan() db.TakenPlan {
	return db.TakenPlan{Day: inNovember(2), FirstDay: inNovember(2).AddDate(0, -1, 0), LastDay: inNovember(1), Rounds: 12, Target: 79, Minutes: 180, Engine: "2 x 50", Figures: []byte(`{"version": 1}`)}
}

func items() []db.Assignment {
	return []db.Assignment{{What: "Start line", Amount: "60 minutes a week", PassMark: "12 of 20", DueOn: inNovember(30), Drill: "start-line", Feet: 6},
		{What: "Lag putts", DueOn: inNovember(30), Drill: "lag"}}
}

// A plan comes back as it was taken, and what it sets stands in the one list of what
// there is to practise.
func TestATakenPlanIsKeptAsMade(t *testing.T) {
	p := newPair(t)
	id, err := p.TakePlan(p.ctx, p.pupil, aPlan(), items())
	p.must(err)
	kept, err := p.TakenPlan(p.ctx, p.coach, p.pupil, id)
	p.must(err)
	if kept.Rounds != 12 || kept.Target != 79 || kept.Engine != "2 x 50" || string(kept.Figures) != `{"version": 1}` || !kept.LastDay.Equal(inNovember(1)) {
		t.Errorf("%+v", kept)
	}
	list, err := p.Assignments(p.ctx, p.pupil, p.pupil, 0)
	p.must(err)
	if len(list) != 2 || *list[0].PlanID != id || list[0].Drill != "start-line" || list[0].Feet != 6 || *list[0].AuthorID != p.pupil {
		t.Errorf("%+v", list)
	}
	if all, err := p.TakenPlans(p.ctx, p.pupil, p.pupil); err != nil || len(all) != 1 {
		t.Errorf("%+v, %v", all, err)
	}
	one, err := p.Assignment(p.ctx, p.coach, p.pupil, list[1].ID)
	if err != nil || one.Drill != "lag" {
		t.Errorf("%+v, %v", one, err)
	}
	p.must(p.EndCoaching(p.ctx, p.pupil, p.pupil, p.other))
	p.let(p.other, golf.Date{Year: 2026, Month: 11, Day: 1})
	if all, err := p.TakenPlans(p.ctx, p.other, p.pupil); err != nil || len(all) != 0 {
		t.Errorf("a coach reads of rounds from before: %+v, %v", all, err)
	}
	p.refused(map[string]error{
		"a stranger the plan":      second(p.TakenPlan(p.ctx, p.stranger, p.pupil, id)),
		"a stranger the practice":  second(p.Assignment(p.ctx, p.stranger, p.pupil, list[0].ID)),
		"the plan of before":       second(p.TakenPlan(p.ctx, p.other, p.pupil, id)),
		"the coach removes a plan": p.RemovePlan(p.ctx, p.coach, id),
	})
}

// A plan that is taken twice at once is stored once, with what it sets.
func TestAPlanIsTakenOnce(t *testing.T) {
	p := newPair(t)
	var taken sync.WaitGroup
	ids := make([]int64, 4)
	for i := range ids {
		taken.Go(func() {
			id, err := p.TakePlan(p.ctx, p.pupil, aPlan(), items())
			if err != nil {
				t.Error(err)
			}
			ids[i] = id
		})
	}
	taken.Wait()
	if slices.Max(ids) != slices.Min(ids) {
		t.Errorf("the plan has the numbers %v", ids)
	}
	if set, err := p.Assignments(p.ctx, p.pupil, p.pupil, 0); err != nil || len(set) != len(items()) {
		t.Errorf("%d things to practise, %v", len(set), err)
	}
	other := aPlan()
	other.Minutes++
	if id, err := p.TakePlan(p.ctx, p.pupil, other, nil); err != nil || id == ids[0] {
		t.Errorf("a plan of other minutes is number %d, %v", id, err)
	}
}

// A removed plan takes along what it set, and brings back that and no more.
func TestARemovedPlanComesBack(t *testing.T) {
	p := newPair(t)
	id, err := p.TakePlan(p.ctx, p.pupil, aPlan(), items())
	p.must(err)
	list, err := p.Assignments(p.ctx, p.pupil, p.pupil, 0)
	p.must(err)
	p.must(p.RemoveAssignment(p.ctx, p.pupil, p.pupil, list[1].ID))
	p.must(p.RemovePlan(p.ctx, p.pupil, id))
	if left, err := p.Assignments(p.ctx, p.pupil, p.pupil, 0); err != nil || len(left) != 0 {
		t.Errorf("%+v, %v", left, err)
	}
	if got := p.removed(p.pupil); !slices.Equal(got, []string{"plan", "assignment"}) {
		t.Errorf("the pupil can bring back %v", got)
	}
	p.must(p.RestorePlan(p.ctx, p.pupil, id))
	if left, err := p.Assignments(p.ctx, p.pupil, p.pupil, 0); err != nil || len(left) != 1 || left[0].ID != list[0].ID {
		t.Errorf("%+v, %v", left, err)
	}
	if got := p.removed(p.pupil); !slices.Equal(got, []string{"assignment"}) {
		t.Errorf("the pupil can bring back %v", got)
	}
}

func TestMinutesOfPractice(t *testing.T) {
	p := newPair(t)
	to := db.Settings{Name: "R", Units: db.Units{Far: golf.Yards, Green: golf.Feet}, Target: 79, BoundaryYd: 50}
	for _, c := range []struct{ set, want int }{{0, 180}, {240, 240}, {0, 240}} {
		to.Minutes = c.set
		p.must(p.SaveSettings(p.ctx, p.pupil, to))
		if got, err := p.Seen(p.ctx, p.pupil, p.pupil); err != nil || got.Minutes != c.want {
			t.Errorf("%d, want %d, %v", got.Minutes, c.want, err)
		}
	}
}
