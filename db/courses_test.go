package db_test

import (
	"errors"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

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
	want := []db.CourseLine{{ID: id, Name: "Harrow Fen Old", Tee: "white", Holes: 2, Size: 2, Par: 7, Yards: 542}}
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
