package db_test

import (
	"errors"
	"fmt"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// aRound is a round on three holes, one of which has been entered.
func aRound() db.Round {
	r := db.Round{Name: "r1", PlayedOn: time.Date(2026, 5, 2, 0, 0, 0, 0, time.UTC), Course: "Harrow Fen", Tee: "white", Target: 79, BoundaryYd: 50, Par18: 72}
	for _, h := range threeHoles() {
		r.Holes = append(r.Holes, db.Hole{Hole: golf.Hole{Number: h.Number, Par: h.Par}, Length: h.Length})
	}
	return r
}

func entered(version int) db.Hole {
	return db.Hole{Line: "v195x r20s4/sw g2m-", Units: db.Units{Far: golf.Yards, Green: golf.Feet}, Version: version, Hole: golf.Hole{Number: 1, Par: 4, PickedUp: true, Shots: []golf.Shot{
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
	all, err := s.Rounds(ctx, a, a, db.Chosen{Most: 10})
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
	if all, err := s.Rounds(ctx, b, b, db.Chosen{}); err != nil || len(all) != 0 {
		t.Errorf("a stranger lists %d, %v", len(all), err)
	}
}

// A line keeps the units it was typed in; without any it is in yards and feet.
func TestUnitsOfALine(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	a := newPlayer(t, s, "a@example.org")
	r := aRound()
	r.Holes[0] = entered(0)
	r.Holes[0].Length, r.Holes[0].Units = 384*golf.Yard, db.Units{Far: golf.Metres, Green: golf.Metres}
	id, err := s.NewRound(ctx, a, r)
	if err != nil {
		t.Fatal(err)
	}
	for version, units := range []db.Units{{Far: golf.Metres, Green: golf.Metres}, {Far: golf.Yards, Green: golf.Metres}, {Far: golf.Metres, Green: golf.Feet}, {}} {
		h := entered(version)
		if h.Units = units; version > 0 {
			if err := s.SaveHole(ctx, a, id, h); err != nil {
				t.Fatal(err)
			}
		}
		if units == (db.Units{}) {
			units = db.Units{Far: golf.Yards, Green: golf.Feet}
		}
		if back, err := s.Round(ctx, a, id); err != nil || back.Holes[0].Units != units || back.Holes[0].Line != h.Line {
			t.Errorf("%v came back as %v, %v", units, back.Holes[0].Units, err)
		}
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
		rounds, err := s.Rounds(ctx, a, a, c.chosen)
		var got []string
		for _, r := range rounds {
			got = append(got, r.Name)
		}
		if diff := cmp.Diff(c.want, got); diff != "" || err != nil {
			t.Errorf("%+v: %v %s", c.chosen, err, diff)
		}
	}
	months, err := s.RoundMonths(ctx, a, a, "Fen")
	var got []string
	for _, m := range months {
		got = append(got, fmt.Sprintf("%s %d %d", m.Month.Format("2006-01"), m.Rounds, m.Chosen))
	}
	if diff := cmp.Diff([]string{"2026-06 1 1", "2026-05 2 1"}, got); diff != "" || err != nil {
		t.Errorf("%v %s", err, diff)
	}
	if names, err := s.RoundCourses(ctx, a, a); err != nil || len(names) != 2 || names[0] != "Fen" {
		t.Errorf("%v, %v", names, err)
	}
}

// A round goes on with the next hole in the order of play, and after the end of
// the card with its beginning.
func TestTheOrderOfPlay(t *testing.T) {
	r := db.Round{FirstHole: 14}
	for n := 10; n <= 18; n++ {
		r.Holes = append(r.Holes, db.Hole{Hole: golf.Hole{Number: n}})
	}
	order := []int{}
	for _, h := range r.InOrder() {
		order = append(order, h.Number)
	}
	if diff := cmp.Diff([]int{14, 15, 16, 17, 18, 10, 11, 12, 13}, order); diff != "" {
		t.Error(diff)
	}
	r.Holes[1].Line = "=4" // hole 11
	for from, want := range map[int]int{14: 15, 18: 10, 10: 12} {
		if next, ok := r.NextAfter(from); !ok || next != want {
			t.Errorf("after %d comes %d, want %d", from, next, want)
		}
	}
	for i := range r.Holes {
		r.Holes[i].Line = "=4"
	}
	r.Holes[4].Line = ""
	if next, ok := r.NextAfter(14); ok {
		t.Errorf("after the last that is open comes %d", next)
	}
}
