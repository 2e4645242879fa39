package db_test

import (
	"errors"
	"sync"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

func TestOneStewardRemains(t *testing.T) {
	s, ctx := dbtest.Open(t), t.Context()
	first, err := s.FirstPlayer(ctx, "s@example.org", "Steward", "hash")
	if err != nil {
		t.Fatal(err)
	}
	a, b := newPlayer(t, s, "a@example.org"), newPlayer(t, s, "b@example.org")
	for what, err := range map[string]error{"delete": s.DeletePlayer(ctx, first.ID), "leave": s.LeaveStewards(ctx, first.ID)} {
		if !errors.Is(err, db.ErrLastSteward) {
			t.Errorf("the last steward may %s: %v", what, err)
		}
	}
	for what, err := range map[string]error{"by a player": s.MakeSteward(ctx, a, b), "of a steward": s.MakeSteward(ctx, first.ID, first.ID), "leave": s.LeaveStewards(ctx, a)} {
		if !errors.Is(err, golf.ErrNotFound) {
			t.Errorf("%s: %v", what, err)
		}
	}
	if err := errors.Join(s.MakeSteward(ctx, first.ID, a), s.LeaveStewards(ctx, first.ID)); err != nil {
		t.Fatal(err)
	}
	if all, err := s.Accounts(ctx, first.ID); err != nil || len(all) != 0 {
		t.Errorf("a steward no more, who sees %d accounts, %v", len(all), err)
	}
	if err := s.DeletePlayer(ctx, a); !errors.Is(err, db.ErrLastSteward) {
		t.Errorf("%v", err)
	}
	if err := errors.Join(s.DeletePlayer(ctx, first.ID), s.DeletePlayer(ctx, b), s.DeletePlayer(ctx, a)); err != nil {
		t.Errorf("alone, a steward may go: %v", err)
	}
}

// Two stewards who leave at the same moment do not leave the server without one.
func TestStewardsWhoLeaveAtTheSameMoment(t *testing.T) {
	s, ctx := dbtest.Open(t), t.Context()
	first, err := s.FirstPlayer(ctx, "s@example.org", "Steward", "hash")
	if err != nil {
		t.Fatal(err)
	}
	second := newPlayer(t, s, "a@example.org")
	newPlayer(t, s, "b@example.org")
	for range 10 {
		for _, who := range []golf.PlayerID{first.ID, second} {
			if err := db.Change(ctx, s, `update players set steward = true where id = @who`, map[string]any{"who": who}); err != nil {
				t.Fatal(err)
			}
		}
		var all sync.WaitGroup
		left := make([]error, 2)
		for i, who := range []golf.PlayerID{first.ID, second} {
			all.Go(func() { left[i] = s.LeaveStewards(ctx, who) })
		}
		all.Wait()
		if (left[0] == nil) == (left[1] == nil) {
			t.Fatalf("%v", left)
		}
	}
}
