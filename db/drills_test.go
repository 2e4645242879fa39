package db_test

import (
	"errors"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/db"
)

// inNovember is a day of a month in which drills are done.
func inNovember(day int) time.Time { return golf.Date{Year: 2026, Month: 11, Day: day}.Time() }

// straight is a session of putts.
func straight(page string, day int) db.DrillSession {
	return db.DrillSession{EnteredAs: page, Drill: "start-line", Name: "Start line", Day: inNovember(day), Feet: 6, Tries: "mmlrm", Counted: []int{3}, Tried: []int{5}, Minutes: 20, Note: "left edge"}
}

// A session comes back as it was saved; sent twice, it is stored once.
func TestSessionsOfDrillsAreStoredOnce(t *testing.T) {
	p := newPair(t)
	late, early := straight("x", 9), db.DrillSession{EnteredAs: "y", Drill: "wedge-ladder", Name: "Wedge ladder", Day: inNovember(2), Counted: []int{5, 4, 3}, Tried: []int{9, 9, 9}}
	for range 2 {
		for _, d := range []db.DrillSession{late, early} {
			kept, err := p.SaveDrillSession(p.ctx, p.pupil, d)
			p.must(err)
			d.ID = kept.ID
			if diff := cmp.Diff(d, kept); diff != "" || kept.ID == 0 {
				t.Error(diff)
			}
		}
	}
	all, err := p.DrillSessions(p.ctx, p.pupil, p.pupil, "")
	p.must(err)
	if len(all) != 2 || all[0].Drill != "wedge-ladder" || all[1].Tries != "mmlrm" {
		t.Errorf("%+v", all)
	}
	of, err := p.DrillSessions(p.ctx, p.coach, p.pupil, "start-line")
	p.must(err)
	if diff := cmp.Diff(all[1:], of); diff != "" {
		t.Error(diff)
	}
}

// A page that was open in two windows does not overwrite what the other saved; the
// player may say so.
func TestASessionIsNotOverwritten(t *testing.T) {
	p := newPair(t)
	first, err := p.SaveDrillSession(p.ctx, p.pupil, straight("x", 9))
	p.must(err)
	longer := straight("x", 9)
	longer.Tries, longer.Counted, longer.Tried = "mmlrmm", []int{4}, []int{6}
	if kept, err := p.SaveDrillSession(p.ctx, p.pupil, longer); !errors.Is(err, golf.ErrConflict) || kept.Tries != "mmlrm" {
		t.Errorf("%+v, %v", kept, err)
	}
	p.must(p.RemoveDrillSession(p.ctx, p.pupil, first.ID))
	replaced, err := p.ReplaceDrillSession(p.ctx, p.pupil, longer)
	p.must(err)
	if got, err := p.DrillSession(p.ctx, p.pupil, p.pupil, first.ID); err != nil || got.Tries != "mmlrmm" || replaced.ID != first.ID {
		t.Errorf("%+v, %v", got, err)
	}
	if other, err := p.SaveDrillSession(p.ctx, p.coach, straight("x", 9)); err != nil || other.ID == 0 {
		t.Errorf("what another player's page was called: %v", err)
	}
}

// A coach reads the sessions from the day that the pupil shares, and changes none; a
// stranger reads none.
func TestWhoReadsSessionsOfDrills(t *testing.T) {
	p := newPair(t)
	p.must(p.EndCoaching(p.ctx, p.pupil, p.pupil, p.other))
	p.let(p.other, golf.Date{Year: 2026, Month: 11, Day: 5})
	early, err := p.SaveDrillSession(p.ctx, p.pupil, straight("x", 2))
	p.must(err)
	late, err := p.SaveDrillSession(p.ctx, p.pupil, straight("y", 9))
	p.must(err)
	for who, want := range map[golf.PlayerID]int{p.pupil: 2, p.coach: 2, p.other: 1, p.stranger: 0} {
		if all, err := p.DrillSessions(p.ctx, who, p.pupil, "start-line"); err != nil || len(all) != want {
			t.Errorf("%d reads %d sessions, want %d, %v", who, len(all), want, err)
		}
	}
	if _, err := p.DrillSession(p.ctx, p.other, p.pupil, late.ID); err != nil {
		t.Error(err)
	}
	p.refused(map[string]error{
		"a session from before":      second(p.DrillSession(p.ctx, p.other, p.pupil, early.ID)),
		"a stranger a session":       second(p.DrillSession(p.ctx, p.stranger, p.pupil, late.ID)),
		"the coach removes one":      p.RemoveDrillSession(p.ctx, p.coach, late.ID),
		"the coach restores one":     p.RestoreDrillSession(p.ctx, p.coach, late.ID),
		"nothing replaced":           second(p.ReplaceDrillSession(p.ctx, p.pupil, straight("z", 9))),
		"the coach replaces a pupil": second(p.ReplaceDrillSession(p.ctx, p.coach, straight("y", 9))),
	})
}

// A removed session is read nowhere, and comes back.
func TestRemovedSessionsComeBack(t *testing.T) {
	p := newPair(t)
	d, err := p.SaveDrillSession(p.ctx, p.pupil, straight("x", 9))
	p.must(err)
	p.must(p.RemoveDrillSession(p.ctx, p.pupil, d.ID))
	p.refused(map[string]error{"a removed session": second(p.DrillSession(p.ctx, p.pupil, p.pupil, d.ID))})
	if all, err := p.DrillSessions(p.ctx, p.coach, p.pupil, ""); err != nil || len(all) != 0 {
		t.Errorf("%+v, %v", all, err)
	}
	list, err := p.Removed(p.ctx, p.pupil)
	p.must(err)
	if len(list) != 1 || list[0].Removal != (db.Removal{Kind: db.RemovedSession, PlayerID: p.pupil, ID: d.ID}) || list[0].Text != "Start line" {
		t.Errorf("%+v", list)
	}
	if got := p.removed(p.coach); len(got) != 0 {
		t.Errorf("the coach can bring back %v", got)
	}
	p.must(p.RestoreDrillSession(p.ctx, p.pupil, d.ID))
	if all, err := p.DrillSessions(p.ctx, p.pupil, p.pupil, ""); err != nil || len(all) != 1 {
		t.Errorf("%+v, %v", all, err)
	}
}

// The coach hears on the roster of a session since the last visit, as of any other
// result of practice, and no more of it once it was removed.
func TestSessionsOfDrillsAreResultsForTheCoach(t *testing.T) {
	p := newPair(t)
	results := func() int {
		t.Helper()
		pupils, err := p.Roster(p.ctx, p.coach, golf.Date{Year: 2026, Month: 11, Day: 1})
		p.must(err)
		return pupils[0].Results
	}
	before := results()
	kept, err := p.SaveDrillSession(p.ctx, p.pupil, straight("x", 9))
	p.must(err)
	if got := results(); got != before+1 {
		t.Errorf("%d results, %d before the session", got, before)
	}
	p.must(p.RemoveDrillSession(p.ctx, p.pupil, kept.ID))
	if got := results(); got != before {
		t.Errorf("%d results after it was removed", got)
	}
}
