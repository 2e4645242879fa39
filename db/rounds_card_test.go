package db_test

import (
	"errors"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// The card of a hole is set once, in the round and in the course that the player
// added. The course of somebody else stays as it is, and a stranger sets nothing.
func TestSetHoleCard(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	owner, other := newPlayer(t, s, "a@example.org"), newPlayer(t, s, "b@example.org")
	course, err := s.SaveCourse(ctx, owner, db.Course{Name: "Harrow Fen", Tee: "white", Planned: 3})
	if err != nil {
		t.Fatal(err)
	}
	card := golf.CardHole{Number: 2, Par: 3, Length: 158 * golf.Yard, Index: 7}
	for _, c := range []struct {
		who   golf.PlayerID
		holes int // that the course has afterwards
	}{{other, 0}, {owner, 1}} {
		r := db.Round{Name: "r", PlayedOn: aRound().PlayedOn, Course: "Harrow Fen", Tee: "white", Target: 79, BoundaryYd: 50, Par18: 72, CourseID: &course,
			Holes: []db.Hole{{Hole: golf.Hole{Number: 2, Par: 4}}}}
		id, err := s.NewRound(ctx, c.who, r)
		if err != nil {
			t.Fatal(err)
		}
		if err := s.SetHoleCard(ctx, owner+other-c.who, id, card); !errors.Is(err, golf.ErrNotFound) {
			t.Errorf("a stranger sets the card: %v", err)
		}
		if err := s.SetHoleCard(ctx, c.who, id, card); err != nil {
			t.Fatal(err)
		}
		if err := s.SetHoleCard(ctx, c.who, id, card); !errors.Is(err, golf.ErrNotFound) {
			t.Errorf("the card is set again: %v", err)
		}
		got, err := s.Round(ctx, c.who, id)
		if err != nil || got.Holes[0].Card() != card {
			t.Errorf("%+v, %v", got.Holes, err)
		}
		if of, err := s.Course(ctx, course); err != nil || len(of.Holes) != c.holes {
			t.Errorf("the course has %+v, %v", of.Holes, err)
		}
	}
}

func TestSaveScorecard(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	who, stranger := newPlayer(t, s, "a@example.org"), newPlayer(t, s, "b@example.org")
	id, err := s.NewRound(ctx, who, aRound())
	if err != nil {
		t.Fatal(err)
	}
	if err := s.SaveScorecard(ctx, stranger, id, db.Scorecard{"rain", 1, 1}); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("a stranger: %v", err)
	}
	if err := s.SaveScorecard(ctx, who, id, db.Scorecard{"wind, fast greens", 41, 43}); err != nil {
		t.Fatal(err)
	}
	if r, err := s.Round(ctx, who, id); err != nil || r.Conditions != "wind, fast greens" || r.CardOut != 41 || r.CardIn != 43 {
		t.Errorf("%+v, %v", r, err)
	}
}
