package db_test

import (
	"errors"
	"fmt"
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
		t.Errorf("the shared course was deleted with the account that added it: %+v, %v", c, err)
	}
}

// A player can add so many courses a day, and so many in total. Changing and removing
// them has no limit.
func TestTheNumberOfCoursesIsLimited(t *testing.T) {
	p := newPair(t)
	add := func() (golf.CourseID, error) {
		return p.SaveCourse(p.ctx, p.pupil, db.Course{Name: "Harrow Fen", Tee: "white"})
	}
	var last golf.CourseID
	for range db.CoursesOfADay {
		var err error
		last, err = add()
		p.must(err)
	}
	if _, err := add(); !errors.Is(err, db.ErrCoursesOfADay) {
		t.Errorf("one more today: %v", err)
	}
	second(p.SaveCourse(p.ctx, p.coach, db.Course{Name: "Harrow Fen", Tee: "white"}))
	if _, err := p.SaveCourse(p.ctx, p.pupil, db.Course{ID: last, Name: "Harrow Fen Old"}); err != nil {
		t.Errorf("one is changed: %v", err)
	}
	p.must(p.RemoveCourse(p.ctx, p.pupil, last))
	if _, err := add(); !errors.Is(err, db.ErrCoursesOfADay) {
		t.Errorf("adding and removing goes on all day: %v", err)
	}
	dbtest.Exec(t, p.url, fmt.Sprintf(`insert into courses (owner_id, name, tee) select %d, 'Fen', '' from generate_series(1, %d)`, p.pupil, db.CoursesInAll-db.CoursesOfADay+1))
	dbtest.Exec(t, p.url, `update courses set created_at = now() - interval '2 days'`)
	if _, err := add(); !errors.Is(err, db.ErrCoursesInAll) {
		t.Errorf("one more in all: %v", err)
	}
	dbtest.Exec(t, p.url, `update courses set removed_at = now() where name = 'Fen'`)
	if _, err := add(); err != nil {
		t.Errorf("after some were removed: %v", err)
	}
}
