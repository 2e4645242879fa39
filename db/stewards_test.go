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
		t.Errorf("a former steward sees %d accounts, %v", len(all), err)
	}
	if err := s.DeletePlayer(ctx, a); !errors.Is(err, db.ErrLastSteward) {
		t.Errorf("%v", err)
	}
	if err := errors.Join(s.DeletePlayer(ctx, first.ID), s.DeletePlayer(ctx, b), s.DeletePlayer(ctx, a)); err != nil {
		t.Errorf("a steward without others cannot leave: %v", err)
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

// Only a steward sees and cancels open invitations and reset links.
func TestStewardsCancelLinks(t *testing.T) {
	s, ctx := dbtest.Open(t), t.Context()
	first, err := s.FirstPlayer(ctx, "s@example.org", "Steward", "hash")
	if err != nil {
		t.Fatal(err)
	}
	a := newPlayer(t, s, "a@example.org")
	if err := errors.Join(s.NewInvitation(ctx, first.ID, []byte("i"), 7), s.NewInvitation(ctx, first.ID, []byte("late"), -1), s.NewReset(ctx, first.ID, a, []byte("r"), 24)); err != nil {
		t.Fatal(err)
	}
	open, err := s.Invitations(ctx, first.ID)
	if err != nil || len(open) != 1 || open[0].MadeBy != "Steward" || string(open[0].TokenHash) != "i" {
		t.Errorf("%v, %v", open, err)
	}
	if open, err := s.Invitations(ctx, a); err != nil || len(open) != 0 {
		t.Errorf("a player sees %v, %v", open, err)
	}
	for _, err := range []error{s.EndInvitation(ctx, a, []byte("i")), s.EndReset(ctx, a, a), s.EndReset(ctx, first.ID, first.ID), s.EndInvitation(ctx, first.ID, []byte("none"))} {
		if !errors.Is(err, golf.ErrNotFound) {
			t.Errorf("%v", err)
		}
	}
	pending := func() (links int) {
		all, err := s.Accounts(ctx, first.ID)
		if err != nil {
			t.Fatal(err)
		}
		for _, l := range all {
			if l.ResetEnds != nil {
				links++
			}
		}
		return links
	}
	if n := pending(); n != 1 {
		t.Errorf("%d links", n)
	}
	if err := errors.Join(s.EndInvitation(ctx, first.ID, []byte("i")), s.EndReset(ctx, first.ID, a)); err != nil {
		t.Fatal(err)
	}
	if n := pending(); n != 0 {
		t.Errorf("%d links", n)
	}
	if err := s.UseInvitation(ctx, []byte("i")); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("%v", err)
	}
	if err := s.UseReset(ctx, a, []byte("r"), "new"); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("%v", err)
	}
}
