package db_test

import (
	"fmt"
	"maps"
	"slices"
	"testing"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// removed lists the kinds of things that somebody can bring back, the latest first.
func (p pair) removed(who golf.PlayerID) []string {
	p.t.Helper()
	all, err := p.Removed(p.ctx, who)
	p.must(err)
	kinds := []string{}
	for _, r := range all {
		kinds = append(kinds, r.Kind)
	}
	return kinds
}

// Something removed is read nowhere, is listed only for those who can bring it back,
// and comes back as it was.
func TestRemovedThingsComeBack(t *testing.T) {
	p := newPair(t)
	note := p.write(p.coach, db.Note{Kind: db.KindNote, RoundID: &p.round, Body: "Safe side."})
	p.must(p.ReplyTo(p.ctx, p.pupil, p.pupil, note, "Which?"))
	p.must(p.Assign(p.ctx, p.coach, p.pupil, db.Assignment{What: "Start line", DueOn: time.Now()}))
	practice, err := p.Assignments(p.ctx, p.pupil, p.pupil, 0)
	p.must(err)
	p.must(p.RecordResult(p.ctx, p.pupil, practice[0].ID, db.Result{Day: time.Now(), Result: "7 of 10"}))
	practice, err = p.Assignments(p.ctx, p.pupil, p.pupil, 0)
	p.must(err)
	notes, _ := p.reads(p.pupil)
	reply, assignment, result := notes[note].Replies[0].ID, practice[0].ID, practice[0].Results[0].ID

	p.must(p.RemoveReply(p.ctx, p.pupil, p.pupil, reply))
	if got, _ := p.reads(p.coach); len(got[note].Replies) != 0 || got[note].Answered || got[note].Unread {
		t.Errorf("a removed reply is read: %+v", got[note])
	}
	p.must(p.RemoveResult(p.ctx, p.pupil, result))
	if got, err := p.Assignments(p.ctx, p.coach, p.pupil, 0); err != nil || len(got[0].Results) != 0 {
		t.Errorf("a removed result is read: %+v, %v", got, err)
	}
	if got := p.removed(p.pupil); !slices.Equal(got, []string{"result", "reply"}) {
		t.Errorf("the pupil can bring back %v", got)
	}
	p.must(p.RemoveAssignment(p.ctx, p.pupil, p.pupil, assignment))
	p.must(p.RemoveNote(p.ctx, p.coach, p.pupil, note))
	if pupils, err := p.Roster(p.ctx, p.coach, thisMonth()); err != nil || pupils[0].DueWhat != nil || pupils[0].Unread != 0 || pupils[0].Results != 0 {
		t.Errorf("the roster counts what is removed: %+v, %v", pupils, err)
	}
	for who, want := range map[golf.PlayerID][]string{p.pupil: {"assignment"}, p.coach: {"note", "assignment"}, p.other: {}, p.stranger: {}} {
		if got := p.removed(who); !slices.Equal(got, want) {
			t.Errorf("%d can bring back %v, want %v", who, got, want)
		}
	}
	p.refused(map[string]error{
		"a removed note is read":         second(p.Note(p.ctx, p.coach, p.pupil, note)),
		"a removed note is changed":      p.EditNote(p.ctx, p.coach, p.pupil, db.Note{ID: note, Body: "x"}),
		"a removed note is removed":      p.RemoveNote(p.ctx, p.coach, p.pupil, note),
		"a removed note is answered":     p.ReplyTo(p.ctx, p.pupil, p.pupil, note, "x"),
		"a removed practice is recorded": p.RecordResult(p.ctx, p.pupil, assignment, db.Result{Day: time.Now(), Result: "x"}),
		"a removed practice is done":     p.TickOff(p.ctx, p.pupil, assignment, true),
		"the pupil the coach's note":     p.RestoreNote(p.ctx, p.pupil, p.pupil, note),
		"the coach the pupil's answer":   p.RestoreReply(p.ctx, p.coach, p.pupil, reply),
		"another coach the practice":     p.RestoreAssignment(p.ctx, p.other, p.pupil, assignment),
		"a stranger the practice":        p.RestoreAssignment(p.ctx, p.stranger, p.pupil, assignment),
		"a stranger the result":          p.RestoreResult(p.ctx, p.stranger, result),
		"a stranger removes the result":  p.RemoveResult(p.ctx, p.stranger, result),
	})
	p.must(p.RestoreNote(p.ctx, p.coach, p.pupil, note))
	p.must(p.RestoreReply(p.ctx, p.pupil, p.pupil, reply))
	p.must(p.RestoreAssignment(p.ctx, p.coach, p.pupil, assignment))
	p.must(p.RestoreResult(p.ctx, p.pupil, result))
	got, _ := p.reads(p.pupil)
	practice, err = p.Assignments(p.ctx, p.pupil, p.pupil, 0)
	if err != nil || len(got[note].Replies) != 1 || len(practice) != 1 || len(practice[0].Results) != 1 || len(p.removed(p.pupil)) != 0 {
		t.Errorf("after all came back: %+v, %+v, %v", got, practice, err)
	}
	p.refused(map[string]error{"what is there is brought back": p.RestoreNote(p.ctx, p.coach, p.pupil, note)})
}

// After thirty days nothing comes back, and the daily sweep deletes it for good. A
// round that a coach wrote about stays, unseen, because of the coach's private note.
func TestThingsRemovedLongAgo(t *testing.T) {
	p := newPair(t)
	private := p.write(p.coach, db.Note{Kind: db.KindNote, RoundID: &p.round, Private: true, Body: "Grip."})
	lesson := p.write(p.pupil, db.Note{Kind: db.KindLesson, Day: time.Now(), Body: "Mine."})
	again, err := p.NewRound(p.ctx, p.pupil, aRound())
	p.must(err)
	third, err := p.NewRound(p.ctx, p.pupil, aRound())
	p.must(err)
	p.must(p.RemoveRound(p.ctx, p.pupil, p.round))
	p.must(p.RemoveRound(p.ctx, p.pupil, again))
	p.must(p.RemoveNote(p.ctx, p.pupil, p.pupil, lesson))
	for _, table := range []string{"rounds", "notes"} {
		dbtest.Exec(t, p.url, "update "+table+" set removed_at = now() - interval '31 days' where removed_at is not null")
	}
	p.refused(map[string]error{
		"a round": p.RestoreRound(p.ctx, p.pupil, again), "a note": p.RestoreNote(p.ctx, p.pupil, p.pupil, lesson),
	})
	if got := p.removed(p.pupil); len(got) != 0 {
		t.Errorf("listed after 31 days: %v", got)
	}
	p.must(p.RemoveRound(p.ctx, p.pupil, third))
	_, err = p.Sweep(p.ctx)
	p.must(err)
	if got := p.removed(p.pupil); !slices.Equal(got, []string{"round"}) {
		t.Errorf("%v", got)
	}
	if kept, err := p.PrivateNotes(p.ctx, p.coach, false); err != nil || len(kept) != 1 || kept[0].ID != private {
		t.Errorf("the coach keeps %+v, %v", kept, err)
	}
	// what is left is taken out of the bin: only what was deleted for good is missing
	dbtest.Exec(t, p.url, "update rounds set removed_at = null")
	dbtest.Exec(t, p.url, "update notes set removed_at = null")
	rounds, err := p.Rounds(p.ctx, p.pupil, p.pupil, db.Chosen{})
	p.must(err)
	ids := []golf.RoundID{}
	for _, r := range rounds {
		ids = append(ids, r.ID)
	}
	if notes, _ := p.reads(p.pupil); !slices.Equal(ids, []golf.RoundID{third, p.round}) || len(notes) != 0 {
		t.Errorf("still stored: rounds %v, %d notes", ids, len(notes))
	}
}

// A coach of several pupils can bring back what was removed of each, and nothing of one
// whose access has ended.
func TestWhatACoachOfSeveralRemoved(t *testing.T) {
	p := newPair(t)
	dbtest.Exec(t, p.url, fmt.Sprintf(`insert into coachings (player_id, coach_id, confirmed_at) values (%d, %d, now())`, p.other, p.coach))
	for _, who := range []golf.PlayerID{p.pupil, p.other} {
		dbtest.Exec(t, p.url, fmt.Sprintf(`
			insert into notes (player_id, author_id, kind, day, body, removed_at) values (%[1]d, %[2]d, 'lesson', '2026-05-02', 'Grip.', now());
			insert into assignments (player_id, author_id, what, amount, pass_mark, due_on, removed_at) values (%[1]d, %[2]d, 'Putts.', '', '', '2092-05-02', now());
			insert into lessons (player_id, coach_id, day, aim, removed_at) values (%[1]d, %[2]d, '2092-05-02', 'Chips.', now())`, who, p.coach))
	}
	count := func() map[string]int {
		n := map[string]int{}
		for _, kind := range p.removed(p.coach) {
			n[kind]++
		}
		return n
	}
	if got := count(); !maps.Equal(got, map[string]int{"note": 2, "assignment": 2, "lesson": 2}) {
		t.Errorf("of two pupils: %v", got)
	}
	dbtest.Exec(t, p.url, fmt.Sprintf(`delete from coachings where player_id = %d`, p.other))
	if got := count(); !maps.Equal(got, map[string]int{"note": 1, "assignment": 1, "lesson": 1}) {
		t.Errorf("of one pupil: %v", got)
	}
}
