package db_test

import (
	"errors"
	"testing"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// A walked round is the coach's until it is sent, then the pupil's to accept; nobody else
// reads it, and only who removed it brings it back.
func TestWalkedRounds(t *testing.T) {
	p := newPair(t)
	dbtest.Exec(t, p.url, "update players set name = 'Ines' where email = 'b@example.org'")
	w := db.Walked{PlayedOn: time.Date(2026, 5, 20, 0, 0, 0, 0, time.UTC), Course: "Harrow Fen", Tee: "white", Par18: 72, FarUnit: "m", GreenUnit: "ft",
		Holes: []db.WalkedHole{{Number: 1, Par: 4, Length: 384 * 36, Index: 3}}}
	id, err := p.BeginWalked(p.ctx, p.coach, p.pupil, w)
	p.must(err)
	typed := []db.WalkedHole{{Number: 1, Par: 4, Length: 384 * 36, Index: 3, Line: "f150 g20 2"}}
	_, own := p.BeginWalked(p.ctx, p.pupil, p.pupil, w)
	_, byStranger := p.BeginWalked(p.ctx, p.stranger, p.pupil, w)
	_, unsentYet := p.Walked(p.ctx, p.pupil, p.pupil, id)
	_, toOther := p.Walked(p.ctx, p.other, p.pupil, id)
	_, early := p.AcceptWalked(p.ctx, p.pupil, id, db.Round{})
	p.refused(map[string]error{"the pupil begins one": own, "a stranger begins one": byStranger, "the pupil reads it unsent": unsentYet, "another coach reads it": toOther, "accepted unsent": early,
		"another coach saves it": p.SaveWalked(p.ctx, p.other, p.pupil, id, typed, false), "another coach removes it": p.RemoveWalked(p.ctx, p.other, p.pupil, id), "the pupil removes it unsent": p.RemoveWalked(p.ctx, p.pupil, p.pupil, id)})
	p.must(p.SaveWalked(p.ctx, p.coach, p.pupil, id, typed, false))
	if err := p.SaveWalked(p.ctx, p.coach, p.pupil, id, []db.WalkedHole{{Number: 1, Line: "=9"}}, true); !errors.Is(err, golf.ErrConflict) {
		t.Errorf("saved over what another window saved: %v", err)
	}
	p.refused(map[string]error{"a hole that is not on the card": p.SaveWalked(p.ctx, p.coach, p.pupil, id, []db.WalkedHole{{Number: 2, Line: "=9"}}, true)})
	typed[0].Version = 1
	unsent := func(coach golf.PlayerID) int {
		t.Helper()
		w, err := p.Waiting(p.ctx, coach, golf.Date{}, golf.Date{})
		p.must(err)
		return len(w.Unsent)
	}
	if a, b, c := unsent(p.coach), unsent(p.other), unsent(p.pupil); a != 1 || b+c != 0 {
		t.Errorf("waits %d times for the coach, %d for another, %d for the pupil", a, b, c)
	}
	p.must(p.SaveWalked(p.ctx, p.coach, p.pupil, id, nil, true))
	if n := unsent(p.coach); n != 0 {
		t.Errorf("sent, it waits %d times", n)
	}
	p.refused(map[string]error{"changed once it is sent": p.SaveWalked(p.ctx, p.coach, p.pupil, id, typed, false)})
	for asker, n := range map[golf.PlayerID]int{p.pupil: 1, p.coach: 1, p.other: 0, p.stranger: 0} {
		all, err := p.WalkedRounds(p.ctx, asker, p.pupil)
		if p.must(err); len(all) != n || n > 0 && (all[0].Coach != "Ines" || all[0].Holes[0] != typed[0] || all[0].SentAt == nil || all[0].Units().Far != golf.Metres || all[0].FirstHole != 1) {
			t.Errorf("%d reads %+v", asker, all)
		}
	}
	p.must(p.RemoveWalked(p.ctx, p.pupil, p.pupil, id))
	p.refused(map[string]error{"the coach brings back what was declined": p.RestoreWalked(p.ctx, p.coach, p.pupil, id)})
	if gone, err := p.Removed(p.ctx, p.pupil); err != nil || len(gone) != 1 || gone[0].Kind != db.RemovedWalked {
		t.Errorf("%+v, %v", gone, err)
	}
	p.must(p.RestoreWalked(p.ctx, p.pupil, p.pupil, id))
	round := aRound()
	round.EnteredBy = "Ines"
	kept, err := p.AcceptWalked(p.ctx, p.pupil, id, round)
	p.must(err)
	if got, err := p.Round(p.ctx, p.pupil, kept); err != nil || got.EnteredBy != "Ines" {
		t.Errorf("%+v, %v", got, err)
	}
	_, twice := p.AcceptWalked(p.ctx, p.pupil, id, round)
	p.refused(map[string]error{"accepted twice": twice})
}

// What was sent stays with the pupil when the coach's account goes, and what was not goes.
func TestWalkedRoundsStay(t *testing.T) {
	p := newPair(t)
	dbtest.Exec(t, p.url, "update players set name = 'Ines' where email = 'b@example.org'")
	w := db.Walked{PlayedOn: time.Date(2026, 5, 20, 0, 0, 0, 0, time.UTC), Course: "Harrow Fen", Par18: 72, FarUnit: "yd", GreenUnit: "ft", Holes: []db.WalkedHole{{Number: 1, Par: 4}}}
	sent, err := p.BeginWalked(p.ctx, p.coach, p.pupil, w)
	p.must(err)
	p.must(p.SaveWalked(p.ctx, p.coach, p.pupil, sent, w.Holes, true))
	_, err = p.BeginWalked(p.ctx, p.coach, p.pupil, w)
	p.must(err)
	p.must(p.DeletePlayer(p.ctx, p.coach))
	if all, err := p.WalkedRounds(p.ctx, p.pupil, p.pupil); err != nil || len(all) != 1 || all[0].ID != sent || all[0].Coach != "Ines" || all[0].CoachID != 0 {
		t.Errorf("%+v, %v", all, err)
	}
	p.must(p.RemoveWalked(p.ctx, p.pupil, p.pupil, sent))
	dbtest.Exec(t, p.url, "update walked_rounds set removed_at = now() - interval '40 days'")
	swept, err := p.Sweep(p.ctx)
	if p.must(err); swept["removed walked rounds"] != 1 {
		t.Errorf("%+v", swept)
	}
	_, err = p.BeginWalked(p.ctx, p.other, p.pupil, w)
	p.must(err)
	p.must(p.DeletePlayer(p.ctx, p.pupil))
}
