package db_test

import (
	"context"
	"errors"
	"os"
	"sync"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

func TestMain(m *testing.M) { os.Exit(dbtest.Run(m)) }

func newPlayer(t *testing.T, s *db.Store, email string) golf.PlayerID {
	t.Helper()
	p, err := s.NewPlayer(t.Context(), email, "Robin", "hash")
	if err != nil {
		t.Fatal(err)
	}
	return p.ID
}

func TestPlayers(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	who := newPlayer(t, s, "Robin@example.org")
	p, err := s.PlayerByEmail(ctx, "robin@EXAMPLE.org")
	if err != nil || p.ID != who || p.Target != 79 || p.BoundaryYd != 50 || p.FarUnit != "yd" || p.GreenUnit != "ft" || p.Steward {
		t.Errorf("%+v, %v", p, err)
	}
	if p.Greeted {
		t.Error("a new player counts as asked")
	}
	if err := s.Greet(ctx, who, 84, db.Units{Far: golf.Metres, Green: golf.Feet}, "Pacific/Auckland"); err != nil {
		t.Fatal(err)
	}
	if p, _ = s.PlayerByEmail(ctx, "robin@example.org"); !p.Greeted || p.Zone != "Pacific/Auckland" || p.Target != 84 || p.FarUnit != "m" || p.GreenUnit != "ft" {
		t.Errorf("%+v", p)
	}
	if err := s.SaveSettings(ctx, who, db.Settings{Name: "R. Calder", Units: db.Units{Far: golf.Metres, Green: golf.Metres}, Target: 84.5, BoundaryYd: 40, Zone: "Europe/London"}); err != nil {
		t.Fatal(err)
	}
	if p, _ = s.PlayerByEmail(ctx, "robin@example.org"); p.Name != "R. Calder" || p.Zone != "Europe/London" || p.Target != 84.5 || p.FarUnit != "m" {
		t.Errorf("%+v", p)
	}
	if _, err := s.PlayerByEmail(ctx, "nobody@example.org"); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("nobody: %v", err)
	}
	if err := s.SaveSettings(ctx, who+1000, db.Settings{Name: "x", Units: db.Units{Far: golf.Metres, Green: golf.Metres}, Target: 79, BoundaryYd: 50}); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("settings of nobody: %v", err)
	}
	if err := s.DeletePlayer(ctx, who); err != nil {
		t.Fatal(err)
	}
	if _, err := s.PlayerByEmail(ctx, "robin@example.org"); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("deleted: %v", err)
	}
}

func TestAddressIsTaken(t *testing.T) {
	s := dbtest.Tx(t)
	newPlayer(t, s, "a@example.org")
	if _, err := s.NewPlayer(t.Context(), "A@example.org", "Two", "hash"); !errors.Is(err, db.ErrTaken) {
		t.Errorf("%v", err)
	}
}

// Two who would be the first account race; one is.
func TestOneStewardOnly(t *testing.T) {
	s := dbtest.Open(t)
	var wait sync.WaitGroup
	results := make([]error, 8)
	for i := range results {
		wait.Go(func() {
			_, results[i] = s.FirstPlayer(context.Background(), string(rune('a'+i))+"@example.org", "First", "hash")
		})
	}
	wait.Wait()
	made := 0
	for _, err := range results {
		if err == nil {
			made++
		} else if !errors.Is(err, db.ErrTaken) {
			t.Error(err)
		}
	}
	if made != 1 {
		t.Errorf("%d stewards", made)
	}
}

func TestSessions(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	a, b := newPlayer(t, s, "a@example.org"), newPlayer(t, s, "b@example.org")
	for _, token := range []string{"one", "two", "three"} {
		if err := s.NewSession(ctx, a, []byte(token), "a phone"); err != nil {
			t.Fatal(err)
		}
	}
	if p, _, err := s.SignedIn(ctx, a, []byte("one")); err != nil || p.ID != a {
		t.Errorf("%+v, %v", p, err)
	}
	if _, _, err := s.SignedIn(ctx, b, []byte("one")); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("a stranger with the token: %v", err)
	}
	if err := s.EndSession(ctx, b, []byte("one")); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("a stranger signs out: %v", err)
	}
	if err := s.EndSession(ctx, a, []byte("one")); err != nil {
		t.Fatal(err)
	}
	if err := s.SavePassword(ctx, a, "other"); err != nil {
		t.Fatal(err)
	}
	devices, err := s.Sessions(ctx, a)
	if err != nil || len(devices) != 0 {
		t.Errorf("%d devices, %v", len(devices), err)
	}
}

func TestInvitationsWorkOnce(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	who := newPlayer(t, s, "a@example.org")
	if err := s.NewInvitation(ctx, who, []byte("t"), 7); err != nil {
		t.Fatal(err)
	}
	if err := s.NewInvitation(ctx, who, []byte("late"), -1); err != nil {
		t.Fatal(err)
	}
	if err := s.UseInvitation(ctx, []byte("t")); err != nil {
		t.Fatal(err)
	}
	for _, token := range []string{"t", "late", "never"} {
		if err := s.UseInvitation(ctx, []byte(token)); !errors.Is(err, golf.ErrNotFound) {
			t.Errorf("%s: %v", token, err)
		}
	}
}

func TestResets(t *testing.T) {
	s, ctx := dbtest.Open(t), t.Context()
	steward, err := s.FirstPlayer(ctx, "s@example.org", "Steward", "hash")
	if err != nil {
		t.Fatal(err)
	}
	player := newPlayer(t, s, "a@example.org")
	if err := s.NewReset(ctx, player, steward.ID, []byte("t"), 1); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("a player made a link for the steward: %v", err)
	}
	if all, err := s.Accounts(ctx, player); err != nil || len(all) != 0 {
		t.Errorf("a player sees %d accounts, %v", len(all), err)
	}
	if all, err := s.Accounts(ctx, steward.ID); err != nil || len(all) != 2 {
		t.Errorf("the steward sees %d accounts, %v", len(all), err)
	}
	if err := s.NewSession(ctx, player, []byte("x"), "a phone"); err != nil {
		t.Fatal(err)
	}
	if err := s.NewReset(ctx, steward.ID, player, []byte("t"), 1); err != nil {
		t.Fatal(err)
	}
	if err := s.UseReset(ctx, steward.ID, []byte("t"), "new"); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("the link worked for another account: %v", err)
	}
	if err := s.UseReset(ctx, player, []byte("t"), "new"); err != nil {
		t.Fatal(err)
	}
	if err := s.UseReset(ctx, player, []byte("t"), "newer"); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("the link worked twice: %v", err)
	}
	if p, err := s.PlayerByEmail(ctx, "a@example.org"); err != nil || p.PasswordHash != "new" {
		t.Errorf("%+v, %v", p, err)
	}
	if devices, err := s.Sessions(ctx, player); err != nil || len(devices) != 0 {
		t.Errorf("%d devices are still signed in, %v", len(devices), err)
	}
	for i, want := range []bool{true, false} {
		if notice, err := s.PopNotice(ctx, player); err != nil || (notice != "") != want {
			t.Errorf("notice %d: %q, %v", i, notice, err)
		}
	}
}
