package db_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// History reads the same holes as Round does, and none of a stranger's.
func TestHistoryIsTheRounds(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	a, b := newPlayer(t, s, "a@example.org"), newPlayer(t, s, "b@example.org")
	late, early := aRound(), aRound()
	late.Holes[0] = entered(0)
	late.Holes[0].Length = 384 * golf.Yard
	late.Holes[2].Line, late.Holes[2].Hole = "=6", golf.Hole{Number: 3, Par: 5, ScoreOnly: 6, Shots: []golf.Shot{{Lie: golf.Tee, Distance: 498 * golf.Yard}}}
	early.PlayedOn = early.PlayedOn.AddDate(0, 0, -1)
	early.Holes[0] = late.Holes[0]
	for _, r := range []db.Round{late, aRound(), early} { // one of them has no hole
		if _, err := s.NewRound(ctx, a, r); err != nil {
			t.Fatal(err)
		}
	}
	removed, err := s.NewRound(ctx, a, late)
	if err != nil {
		t.Fatal(err)
	}
	if err := s.RemoveRound(ctx, a, removed); err != nil {
		t.Fatal(err)
	}
	history, err := s.History(ctx, a, a)
	if err != nil || len(history) != 2 {
		t.Fatalf("%d rounds, %v", len(history), err)
	}
	for i, want := range []db.Round{early, late} {
		got := history[i]
		kept, err := s.Round(ctx, a, got.ID)
		if err != nil {
			t.Fatal(err)
		}
		played := kept.Played()
		for h := range played.Holes {
			for k := range played.Holes[h].Shots {
				shot := &played.Holes[h].Shots[k]
				*shot = golf.Shot{Lie: shot.Lie, Distance: shot.Distance, Penalty: shot.Penalty, ShortSided: shot.ShortSided, GreenToWork: shot.GreenToWork, GreenKnown: shot.GreenKnown}
			}
		}
		if diff := cmp.Diff(played, got.Round); diff != "" || !got.Round.Date.Time().Equal(want.PlayedOn) || got.Target != 79 || got.Par18 != 72 {
			t.Errorf("%+v %s", got, diff)
		}
	}
	if other, err := s.History(ctx, b, b); err != nil || len(other) != 0 {
		t.Errorf("a stranger reads %d rounds, %v", len(other), err)
	}
}

func TestMarksBelongToTheirPlayer(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	a, b := newPlayer(t, s, "a@example.org"), newPlayer(t, s, "b@example.org")
	may := golf.Date{Year: 2026, Month: 5, Day: 2}
	id, err := s.NewMark(ctx, a, may, "new driver")
	if err != nil {
		t.Fatal(err)
	}
	if err := s.RemoveMark(ctx, b, id); err != golf.ErrNotFound {
		t.Errorf("a stranger removes a mark: %v", err)
	}
	marks, err := s.Marks(ctx, a, a)
	if err != nil || len(marks) != 1 || marks[0].What != "new driver" || golf.DateOf(marks[0].MarkedOn) != may {
		t.Errorf("%+v, %v", marks, err)
	}
	if marks, err := s.Marks(ctx, b, b); err != nil || len(marks) != 0 {
		t.Errorf("a stranger reads %+v, %v", marks, err)
	}
	if err := s.RemoveMark(ctx, a, id); err != nil {
		t.Fatal(err)
	}
	if err := s.RemoveMark(ctx, a, id); err != golf.ErrNotFound {
		t.Errorf("removed twice: %v", err)
	}
}
