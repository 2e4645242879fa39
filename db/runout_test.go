package db_test

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

func someTrials() []golf.Trial {
	return []golf.Trial{
		{Club: "pw", Lie: golf.Fairway, Speed: golf.MediumGreen, Carry: 12, Total: 21, Unit: golf.TrialYards},
		{Club: "pw", Lie: golf.Rough, Speed: golf.FastGreen, Carry: 13.5, Total: 23, Unit: golf.TrialPaces},
		{Club: "8i", Lie: golf.Fairway, Speed: golf.SlowGreen, Carry: 7, Total: 19, Unit: golf.TrialMetres},
	}
}

// What was typed comes back as it was, is stored once however often it is sent, and
// is read by the player and by coaches from the day that they may see.
func TestTrials(t *testing.T) {
	p := newPair(t)
	day := golf.Date{Year: 2026, Month: 5, Day: 2}
	for range 2 {
		p.must(p.NewTrials(p.ctx, p.pupil, day, "page-1", someTrials(), remake))
	}
	for _, who := range []golf.PlayerID{p.pupil, p.coach} {
		all, err := p.Trials(p.ctx, who, p.pupil)
		p.must(err)
		var got []golf.Trial
		for _, kept := range all {
			trial, err := kept.Trial()
			p.must(err)
			got = append(got, trial)
		}
		if !slices.Equal(got, someTrials()) || golf.DateOf(all[0].Day) != day {
			t.Errorf("%d reads %+v", who, all)
		}
	}
	if all, err := p.Trials(p.ctx, p.stranger, p.pupil); err != nil || len(all) != 0 {
		t.Errorf("a stranger reads %+v, %v", all, err)
	}
	later := newPlayer(t, p.Store, "later@example.org")
	p.let(later, golf.Date{Year: 2026, Month: 5, Day: 3})
	if all, err := p.Trials(p.ctx, later, p.pupil); err != nil || len(all) != 0 {
		t.Errorf("a coach reads what is before the first day: %+v, %v", all, err)
	}
}

func TestRemovedTrials(t *testing.T) {
	p := newPair(t)
	p.must(p.NewTrials(p.ctx, p.pupil, golf.Date{Year: 2026, Month: 5, Day: 2}, "page-1", someTrials(), remake))
	all, err := p.Trials(p.ctx, p.pupil, p.pupil)
	p.must(err)
	id := all[0].ID
	p.refused(map[string]error{"the coach removes it": p.RemoveTrial(p.ctx, p.coach, id, remake), "one that is there comes back": p.RestoreTrial(p.ctx, p.pupil, id, remake)})
	p.must(p.RemoveTrial(p.ctx, p.pupil, id, remake))
	if left, err := p.Trials(p.ctx, p.pupil, p.pupil); err != nil || len(left) != len(all)-1 || len(p.removed(p.coach)) != 0 {
		t.Errorf("%+v, %v", left, err)
	}
	if gone, err := p.Removed(p.ctx, p.pupil); err != nil || len(gone) != 1 || gone[0].Kind != db.RemovedTrial || gone[0].Text != "pw, 12 and 21 yd" {
		t.Errorf("%+v, %v", gone, err)
	}
	p.refused(map[string]error{"the coach brings it back": p.RestoreTrial(p.ctx, p.coach, id, remake), "it is removed again": p.RemoveTrial(p.ctx, p.pupil, id, remake)})
	p.must(p.RestoreTrial(p.ctx, p.pupil, id, remake))
	if back, err := p.Trials(p.ctx, p.pupil, p.pupil); err != nil || len(back) != len(all) || back[0].ID != id {
		t.Errorf("%+v, %v", back, err)
	}
}

// Of a file those balls are added that the book does not hold: two that are alike are
// two, and another player's or a removed one is not held.
func TestBallsOfAFile(t *testing.T) {
	p := newPair(t)
	day := golf.Date{Year: 2026, Month: 5, Day: 2}
	ball := func(day golf.Date, yd float64) db.Ball { return db.Ball{Day: day, Trial: fromRough(yd)} }
	p.must(p.NewTrials(p.ctx, p.stranger, day, "page", []golf.Trial{fromRough(9)}, remake))
	p.must(p.NewTrials(p.ctx, p.pupil, day, "page", []golf.Trial{fromRough(6), fromRough(7)}, remake))
	held, err := p.Trials(p.ctx, p.pupil, p.pupil)
	p.must(err)
	p.must(p.RemoveTrial(p.ctx, p.pupil, held[1].ID, remake))
	file := []db.Ball{ball(day, 6), ball(day, 6), ball(day, 7), ball(day.AddDays(1), 6), ball(day, 9)}
	for i := range 3 {
		p.must(p.TakeBalls(p.ctx, p.pupil, fmt.Sprint("file ", i), file, remake))
		kept, err := p.Trials(p.ctx, p.pupil, p.pupil)
		p.must(err)
		count := map[db.Ball]int{}
		for _, k := range kept {
			trial, err := k.Trial()
			p.must(err)
			count[db.Ball{Day: golf.DateOf(k.Day), Trial: trial}]++
		}
		if want := map[db.Ball]int{file[0]: 2, file[2]: 1, file[3]: 1, file[4]: 1}; !maps.Equal(count, want) {
			t.Errorf("time %d: %v", i, count)
		}
	}
	many := make([]db.Ball, golf.MaxTrials+1)
	for i := range many {
		many[i] = ball(day, 6)
	}
	if err := p.TakeBalls(p.ctx, p.pupil, "many", many, remake); !errors.Is(err, db.ErrFull) {
		t.Errorf("%v", err)
	}
}

func TestABookIsNeverTooLong(t *testing.T) {
	p := newPair(t)
	dbtest.Exec(t, p.url, `insert into runout_trials (player_id, entered_as, place, club, lie, green, carry, total, unit, day)
		select 1, 'many', n, 'pw', 'fairway', 'slow', 12, 20, 'yd', '2026-05-02' from generate_series(1, 1998) n`)
	if err := p.NewTrials(p.ctx, p.pupil, golf.Date{Year: 2026, Month: 5, Day: 2}, "page-1", someTrials(), remake); !errors.Is(err, db.ErrFull) {
		t.Errorf("%v", err)
	}
	for range 2 { // the page that filled the book, sent again, is stored already
		p.must(p.NewTrials(p.ctx, p.pupil, golf.Date{Year: 2026, Month: 5, Day: 2}, "page-1", someTrials()[:2], remake))
	}
}
