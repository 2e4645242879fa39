package db_test

import (
	"errors"
	"fmt"
	"sync"
	"testing"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// counted counts a try and compares the counts that the store returns.
func counted(t *testing.T, s *db.Store, try db.Try, own, all int) {
	t.Helper()
	n, err := s.CountTry(t.Context(), try, 2)
	if err != nil || n.Own != own || n.All != all || n.Wait > 15*time.Minute || n.Wait < 14*time.Minute {
		t.Errorf("%s from %s: %+v, %v, want %d and %d", try.Account, try.Client, n, err, own, all)
	}
}

func TestTriesAreCountedByAccountAndClient(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	here, there := db.Try{Account: []byte("a"), Client: []byte("here")}, db.Try{Account: []byte("a"), Client: []byte("there")}
	own, other := db.Try{Account: []byte("a"), Client: []byte("own"), Known: true}, db.Try{Account: []byte("b"), Client: []byte("here")}
	counted(t, s, here, 1, 1)
	counted(t, s, here, 2, 2)
	counted(t, s, here, 3, 0) // refused, so it does not make the account slower
	counted(t, s, there, 1, 3)
	counted(t, s, own, 1, 0)
	counted(t, s, other, 1, 1)
	if err := errors.Join(s.TryPassed(ctx, there), s.TryPassed(ctx, own)); err != nil {
		t.Fatal(err)
	}
	counted(t, s, there, 1, 3)
	counted(t, s, own, 1, 0)
	if err := s.ForgetTries(ctx, []byte("a")); err != nil {
		t.Fatal(err)
	}
	counted(t, s, here, 1, 1)
	counted(t, s, other, 2, 2)
}

func TestTriesCountForAQuarterOfAnHour(t *testing.T) {
	s := dbtest.Tx(t)
	here := db.Try{Account: []byte("a"), Client: []byte("here")}
	counted(t, s, here, 1, 1)
	for minutes, want := range map[string]int{"14": 2, "16": 1} {
		if err := db.Change(t.Context(), s, `delete from tries`, nil); err != nil {
			t.Fatal(err)
		}
		if err := db.Change(t.Context(), s, `insert into tries (account, client, n, began_at) values ('a', 'here', 1, now() - interval '`+minutes+` minutes'), ('a', '', 1, now() - interval '`+minutes+` minutes')`, nil); err != nil {
			t.Fatal(err)
		}
		if n, err := s.CountTry(t.Context(), here, 10); err != nil || n.Own != want || n.All != want {
			t.Errorf("after %s minutes: %+v, %v", minutes, n, err)
		}
	}
}

// Tries at the same moment are counted one after the other.
func TestTriesAtTheSameMoment(t *testing.T) {
	s := dbtest.Open(t)
	var mu sync.Mutex
	seen := map[int]int{}
	var all sync.WaitGroup
	for range 40 {
		all.Go(func() {
			n, err := s.CountTry(t.Context(), db.Try{Account: []byte("a"), Client: []byte("here")}, 10)
			if err != nil {
				t.Error(err)
			}
			mu.Lock()
			defer mu.Unlock()
			seen[n.Own]++
		})
	}
	all.Wait()
	for n := 1; n <= 40; n++ {
		if seen[n] != 1 {
			t.Errorf("%d tries are number %d", seen[n], n)
		}
	}
}

func TestDevices(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	a, b := newPlayer(t, s, "a@example.org"), newPlayer(t, s, "b@example.org")
	for range 2 {
		if err := s.KnowDevice(ctx, a, []byte("phone")); err != nil {
			t.Fatal(err)
		}
	}
	knows := func(want string) {
		t.Helper()
		got := ""
		for _, c := range []struct {
			who   golf.PlayerID
			token string
		}{{a, "phone"}, {a, "other"}, {b, "phone"}} {
			known, err := s.KnowsDevice(ctx, c.who, []byte(c.token))
			if err != nil {
				t.Fatal(err)
			}
			got += fmt.Sprintf("%t ", known)
		}
		if got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
	knows("true false false ")
	if err := s.SavePassword(ctx, a, "other"); err != nil {
		t.Fatal(err)
	}
	knows("false false false ")
	if err := s.KnowDevice(ctx, a, []byte("phone")); err != nil {
		t.Fatal(err)
	}
	if err := db.Change(ctx, s, `update devices set seen_at = now() - interval '367 days'`, nil); err != nil {
		t.Fatal(err)
	}
	knows("false false false ")
}

func TestAChangedPasswordEndsPendingResets(t *testing.T) {
	s, ctx := dbtest.Open(t), t.Context()
	steward, err := s.FirstPlayer(ctx, "s@example.org", "Steward", "hash")
	if err != nil {
		t.Fatal(err)
	}
	player := newPlayer(t, s, "a@example.org")
	if err := s.NewReset(ctx, steward.ID, player, []byte("t"), 1); err != nil {
		t.Fatal(err)
	}
	if p, err := s.Resetting(ctx, player, []byte("t")); err != nil || p.ID != player {
		t.Errorf("%v, %v", p, err)
	}
	if _, err := s.Resetting(ctx, steward.ID, []byte("t")); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("another account: %v", err)
	}
	if err := s.SavePassword(ctx, player, "new"); err != nil {
		t.Fatal(err)
	}
	if err := s.UseReset(ctx, player, []byte("t"), "newer"); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("%v", err)
	}
}

func TestAHashIsRenewedUnlessThePasswordChanged(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	a := newPlayer(t, s, "a@example.org")
	p, err := s.PlayerByEmail(ctx, "a@example.org")
	if err != nil {
		t.Fatal(err)
	}
	for _, step := range []struct{ old, renewed, want string }{{p.PasswordHash, "renewed", "renewed"}, {"stale", "too late", "renewed"}} {
		if err := s.RenewHash(ctx, a, step.old, step.renewed); err != nil {
			t.Fatal(err)
		}
		if p, err := s.PlayerByEmail(ctx, "a@example.org"); err != nil || p.PasswordHash != step.want {
			t.Errorf("%+v, %v", p, err)
		}
	}
}
