package db_test

import (
	"context"
	"errors"
	"os"
	"sync"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

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
	if err := s.SaveSettings(ctx, who, db.Settings{Name: "R. Calder", FarUnit: "m", GreenUnit: "m", Target: 84.5, BoundaryYd: 40}); err != nil {
		t.Fatal(err)
	}
	if p, _ = s.PlayerByEmail(ctx, "robin@example.org"); p.Name != "R. Calder" || p.Target != 84.5 || p.FarUnit != "m" {
		t.Errorf("%+v", p)
	}
	if _, err := s.PlayerByEmail(ctx, "nobody@example.org"); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("nobody: %v", err)
	}
	if err := s.SaveSettings(ctx, who+1000, db.Settings{Name: "x", FarUnit: "m", GreenUnit: "m", Target: 79, BoundaryYd: 50}); !errors.Is(err, golf.ErrNotFound) {
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
	if p, err := s.SignedIn(ctx, a, []byte("one")); err != nil || p.ID != a {
		t.Errorf("%+v, %v", p, err)
	}
	if _, err := s.SignedIn(ctx, b, []byte("one")); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("a stranger with the token: %v", err)
	}
	if err := s.EndSession(ctx, b, []byte("one")); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("a stranger signs out: %v", err)
	}
	if err := s.EndSession(ctx, a, []byte("one")); err != nil {
		t.Fatal(err)
	}
	if err := s.SavePassword(ctx, a, "other", []byte("two")); err != nil {
		t.Fatal(err)
	}
	devices, err := s.Sessions(ctx, a)
	if err != nil || len(devices) != 1 || string(devices[0].TokenHash) != "two" {
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

func TestFailures(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	for range 3 {
		if err := s.NoteFailure(ctx, []byte("a")); err != nil {
			t.Fatal(err)
		}
	}
	if n, err := s.Failures(ctx, []byte("a")); err != nil || n != 3 {
		t.Errorf("%d, %v", n, err)
	}
	if n, err := s.Failures(ctx, []byte("b")); err != nil || n != 0 {
		t.Errorf("%d, %v", n, err)
	}
}

func threeHoles() []golf.CardHole {
	return []golf.CardHole{{Number: 1, Par: 4, Length: 384 * golf.Yard}, {Number: 2, Par: 3, Length: 158 * golf.Yard}, {Number: 3, Par: 5, Length: 498 * golf.Yard}}
}

func TestCourses(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	a, b := newPlayer(t, s, "a@example.org"), newPlayer(t, s, "b@example.org")
	slope := 127.0
	id, err := s.SaveCourse(ctx, a, db.Course{Name: "Harrow Fen", Tee: "white", Slope: &slope, Holes: threeHoles()})
	if err != nil {
		t.Fatal(err)
	}
	c, err := s.Course(ctx, id)
	if err != nil || *c.Owner != a || *c.Slope != 127 || c.Rating != nil {
		t.Errorf("%+v, %v", c, err)
	}
	if diff := cmp.Diff(threeHoles(), c.Holes); diff != "" {
		t.Error(diff)
	}
	c.Name, c.Holes = "Harrow Fen Old", c.Holes[:2]
	if _, err := s.SaveCourse(ctx, b, c); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("a stranger changes it: %v", err)
	}
	if _, err := s.SaveCourse(ctx, a, c); err != nil {
		t.Fatal(err)
	}
	list, err := s.Courses(ctx, b)
	want := []db.CourseLine{{ID: id, Name: "Harrow Fen Old", Tee: "white", Holes: 2, Par: 7, Yards: 542}}
	if diff := cmp.Diff(want, list); diff != "" || err != nil {
		t.Errorf("%v %s", err, diff)
	}
	if err := s.DeletePlayer(ctx, a); err != nil {
		t.Fatal(err)
	}
	if c, err := s.Course(ctx, id); err != nil || c.Owner != nil {
		t.Errorf("the shared course has gone with its maker: %+v, %v", c, err)
	}
}

// aRound is a round on three holes of which one has been entered.
func aRound() db.Round {
	r := db.Round{Name: "r1", PlayedOn: time.Date(2026, 5, 2, 0, 0, 0, 0, time.UTC), Course: "Harrow Fen", Tee: "white", Target: 79, BoundaryYd: 50, Par18: 72}
	for _, h := range threeHoles() {
		r.Holes = append(r.Holes, db.Hole{Hole: golf.Hole{Number: h.Number, Par: h.Par}, Length: h.Length})
	}
	return r
}

func entered(version int) db.Hole {
	return db.Hole{Line: "v195x r20s4/sw g2m-", Version: version, Hole: golf.Hole{Number: 1, Par: 4, PickedUp: true, Shots: []golf.Shot{
		{Lie: golf.Tee, Distance: 384 * golf.Yard},
		{Lie: golf.Recovery, Distance: 195 * golf.Yard, Penalty: 1, About: true},
		{Lie: golf.Recovery, Distance: 195 * golf.Yard, Miss: golf.Miss{Side: golf.Left, Depth: golf.Short}},
		{Lie: golf.Rough, Distance: 20 * golf.Yard, ShortSided: true, GreenKnown: true, GreenToWork: 4 * golf.Yard, Club: "sw", Word: "thin"},
		{Lie: golf.Green, Distance: 2 * golf.Metre, Unit: golf.Metres},
	}}}
}

func TestRoundsComeBackAsTheyWere(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	a, b := newPlayer(t, s, "a@example.org"), newPlayer(t, s, "b@example.org")
	id, err := s.NewRound(ctx, a, aRound())
	if err != nil {
		t.Fatal(err)
	}
	if err := s.SaveHole(ctx, a, id, entered(0)); err != nil {
		t.Fatal(err)
	}
	r, err := s.Round(ctx, a, id)
	if err != nil || len(r.Holes) != 3 || len(r.Played().Holes) != 1 {
		t.Fatalf("%+v, %v", r, err)
	}
	want := entered(1)
	want.Length = 384 * golf.Yard
	if diff := cmp.Diff(want, r.Holes[0]); diff != "" {
		t.Error(diff)
	}
	all, err := s.Rounds(ctx, a, db.Chosen{Most: 10})
	if diff := cmp.Diff([]db.Round{r}, all); diff != "" || err != nil {
		t.Errorf("%v %s", err, diff)
	}
	for what, err := range map[string]error{
		"reads":    second(s.Round(ctx, b, id)),
		"saves":    s.SaveHole(ctx, b, id, entered(1)),
		"removes":  s.RemoveRound(ctx, b, id),
		"restores": s.RestoreRound(ctx, b, id),
	} {
		if !errors.Is(err, golf.ErrNotFound) {
			t.Errorf("a stranger %s: %v", what, err)
		}
	}
	if all, err := s.Rounds(ctx, b, db.Chosen{}); err != nil || len(all) != 0 {
		t.Errorf("a stranger lists %d, %v", len(all), err)
	}
}

func second[T any](_ T, err error) error { return err }

func TestSavingAHoleThatChanged(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	a := newPlayer(t, s, "a@example.org")
	id, err := s.NewRound(ctx, a, aRound())
	if err != nil {
		t.Fatal(err)
	}
	if err := s.SaveHole(ctx, a, id, entered(0)); err != nil {
		t.Fatal(err)
	}
	late := entered(0)
	late.Line = "r150 g3"
	if err := s.SaveHole(ctx, a, id, late); !errors.Is(err, golf.ErrConflict) {
		t.Errorf("%v", err)
	}
	r, err := s.Round(ctx, a, id)
	if err != nil || r.Holes[0].Line != entered(0).Line {
		t.Errorf("the first save is lost: %q, %v", r.Holes[0].Line, err)
	}
	other := entered(0)
	other.Number = 18
	if err := s.SaveHole(ctx, a, id, other); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("a hole that is not on the card: %v", err)
	}
}

func TestRemovedRoundsComeBack(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	a := newPlayer(t, s, "a@example.org")
	r := aRound()
	r.Holes[0] = entered(0)
	r.Holes[0].Length = 384 * golf.Yard
	id, err := s.NewRound(ctx, a, r)
	if err != nil {
		t.Fatal(err)
	}
	if err := s.RemoveRound(ctx, a, id); err != nil {
		t.Fatal(err)
	}
	if _, err := s.Round(ctx, a, id); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("removed: %v", err)
	}
	if err := s.SaveHole(ctx, a, id, entered(1)); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("a hole of a removed round is saved: %v", err)
	}
	if err := s.RestoreRound(ctx, a, id); err != nil {
		t.Fatal(err)
	}
	if back, err := s.Round(ctx, a, id); err != nil || len(back.Holes[0].Shots) != 5 {
		t.Errorf("%+v, %v", back, err)
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
		if notice, err := s.TakeNotice(ctx, player); err != nil || (notice != "") != want {
			t.Errorf("notice %d: %q, %v", i, notice, err)
		}
	}
}

func TestRoundsAreChosen(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	a := newPlayer(t, s, "a@example.org")
	for _, played := range []struct{ course, day string }{{"Fen", "2026-05-01"}, {"Moor", "2026-05-02"}, {"Fen", "2026-06-01"}} {
		r := aRound()
		date, err := golf.ParseDate(played.day)
		if err != nil {
			t.Fatal(err)
		}
		r.Course, r.Name, r.PlayedOn = played.course, played.day, date.Time()
		if _, err := s.NewRound(ctx, a, r); err != nil {
			t.Fatal(err)
		}
	}
	may := golf.Date{Year: 2026, Month: 5, Day: 2}
	for _, c := range []struct {
		chosen db.Chosen
		want   []string
	}{
		{db.Chosen{}, []string{"2026-06-01", "2026-05-02", "2026-05-01"}},
		{db.Chosen{Most: 1}, []string{"2026-06-01"}},
		{db.Chosen{Course: "Fen"}, []string{"2026-06-01", "2026-05-01"}},
		{db.Chosen{From: may}, []string{"2026-06-01", "2026-05-02"}},
		{db.Chosen{To: may}, []string{"2026-05-02", "2026-05-01"}},
		{db.Chosen{From: may, To: may, Course: "Fen"}, nil},
	} {
		rounds, err := s.Rounds(ctx, a, c.chosen)
		var got []string
		for _, r := range rounds {
			got = append(got, r.Name)
		}
		if diff := cmp.Diff(c.want, got); diff != "" || err != nil {
			t.Errorf("%+v: %v %s", c.chosen, err, diff)
		}
	}
	if names, err := s.RoundCourses(ctx, a); err != nil || len(names) != 2 || names[0] != "Fen" {
		t.Errorf("%v, %v", names, err)
	}
}
