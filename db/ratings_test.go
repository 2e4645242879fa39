package db_test

import (
	"testing"

	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// The ratings of a round are those of the course it was begun on, or else of a course
// that the player added with the same name and tees. A stranger reads none.
func TestRatingsAreFound(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	a, b := newPlayer(t, s, "a@example.org"), newPlayer(t, s, "b@example.org")
	rating, slope, other := 71.2, 126.0, 74.0
	holes := threeHoles()
	holes[1].Index = 18
	named, err := s.SaveCourse(ctx, a, db.Course{Name: "HARROW FEN", Tee: "White", Rating: &rating, Slope: &slope, Holes: holes})
	if err != nil {
		t.Fatal(err)
	}
	begun, err := s.SaveCourse(ctx, a, db.Course{Name: "Harrow Fen", Tee: "white", Rating: &other})
	if err != nil {
		t.Fatal(err)
	}
	byName, byCourse, unknown := aRound(), aRound(), aRound()
	byCourse.CourseID, unknown.Tee = &begun, "blue"
	for _, r := range []db.Round{byName, byCourse, unknown} {
		if _, err := s.NewRound(ctx, a, r); err != nil {
			t.Fatal(err)
		}
	}
	all, err := s.Ratings(ctx, a, a)
	if err != nil || len(all) != 3 {
		t.Fatalf("%+v, %v", all, err)
	}
	for _, r := range all {
		switch {
		case r.Course == nil:
			if r.Rating != nil {
				t.Errorf("a rating without a course: %+v", r)
			}
		case *r.Course == named:
			if *r.Rating != rating || *r.Slope != slope || r.Size != 3 || len(r.Indexes) != 18 || r.Indexes[1] != 18 || r.Indexes[17] != 0 {
				t.Errorf("%+v", r)
			}
		case *r.Course == begun:
			if *r.Rating != other || r.Slope != nil {
				t.Errorf("%+v", r)
			}
		}
	}
	if err := s.RemoveCourse(ctx, a, begun); err != nil {
		t.Fatal(err)
	}
	all, err = s.Ratings(ctx, a, a)
	if err != nil || len(all) != 3 {
		t.Fatalf("%+v, %v", all, err)
	}
	for _, r := range all {
		if r.Rating != nil && *r.Rating == other && r.Course != nil {
			t.Errorf("a removed course keeps rating its rounds, and is no page to go to: %+v", r)
		}
	}
	if all, err := s.Ratings(ctx, b, b); err != nil || len(all) != 0 {
		t.Errorf("a stranger reads %+v, %v", all, err)
	}
}

// A course that a stranger adds, whatever its name, changes nobody else's handicap.
func TestAStrangersCourseRatesNobody(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	victim, stranger := newPlayer(t, s, "a@example.org"), newPlayer(t, s, "b@example.org")
	if _, err := s.NewRound(ctx, victim, aRound()); err != nil {
		t.Fatal(err)
	}
	rating, slope := 20.0, 155.0
	if _, err := s.SaveCourse(ctx, stranger, db.Course{Name: aRound().Course, Tee: aRound().Tee, Rating: &rating, Slope: &slope, Holes: threeHoles()}); err != nil {
		t.Fatal(err)
	}
	all, err := s.Ratings(ctx, victim, victim)
	if err != nil || len(all) != 1 || all[0].Rating != nil || all[0].Slope != nil || all[0].Course != nil || all[0].Size != 0 {
		t.Errorf("%+v, %v", all, err)
	}
	own := 71.2
	if _, err := s.SaveCourse(ctx, victim, db.Course{Name: aRound().Course, Tee: aRound().Tee, Rating: &own}); err != nil {
		t.Fatal(err)
	}
	if all, err = s.Ratings(ctx, victim, victim); err != nil || len(all) != 1 || all[0].Rating == nil || *all[0].Rating != own {
		t.Errorf("the player's own: %+v, %v", all, err)
	}
}
