package db_test

import (
	"errors"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

func newCourse(t *testing.T, s *db.Store, who golf.PlayerID, name string) golf.CourseID {
	t.Helper()
	id, err := s.SaveCourse(t.Context(), who, db.Course{Name: name, Tee: "white", Holes: threeHoles()})
	if err != nil {
		t.Fatal(err)
	}
	return id
}

// A removed course cannot be found and can be brought back, and its rounds keep
// their cards. A stranger can neither remove nor restore it.
func TestRemovedCourses(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	steward, err := s.FirstPlayer(ctx, "s@example.org", "Steward", "hash")
	if err != nil {
		t.Fatal(err)
	}
	a, b := newPlayer(t, s, "a@example.org"), newPlayer(t, s, "b@example.org")
	id := newCourse(t, s, a, "Harrow Fen")
	round, err := s.NewRound(ctx, a, onCourse(id))
	if err != nil {
		t.Fatal(err)
	}
	if err := s.RemoveCourse(ctx, b, id); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("a stranger removes it: %v", err)
	}
	if err := s.RemoveCourse(ctx, a, id); err != nil {
		t.Fatal(err)
	}
	if _, err := s.Course(ctx, id); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("still found: %v", err)
	}
	if _, err := s.SaveCourse(ctx, a, db.Course{ID: id, Name: "x"}); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("still changed: %v", err)
	}
	if list, err := s.Courses(ctx, a); err != nil || len(list) != 0 {
		t.Errorf("still listed: %+v, %v", list, err)
	}
	if got, err := s.Round(ctx, a, round); err != nil || len(got.Holes) != 3 || got.Holes[0].Length != 384*golf.Yard {
		t.Errorf("the round has lost its card: %+v, %v", got, err)
	}
	if err := s.RestoreCourse(ctx, b, id); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("a stranger restores it: %v", err)
	}
	for _, c := range []struct {
		who  golf.PlayerID
		want int
	}{{a, 1}, {b, 0}, {steward.ID, 1}} {
		if removed, err := s.Removed(ctx, c.who); err != nil || len(removed) != c.want {
			t.Errorf("player %d: %+v, %v", c.who, removed, err)
		}
	}
	if err := s.RestoreCourse(ctx, steward.ID, id); err != nil {
		t.Fatal(err)
	}
	if list, err := s.Courses(ctx, a); err != nil || len(list) != 1 || list[0].Times != 1 {
		t.Errorf("%+v, %v", list, err)
	}
	if err := s.RemoveCourse(ctx, steward.ID, id); err != nil {
		t.Errorf("the steward removes it: %v", err)
	}
}

// After 30 days a course does not come back.
func TestACourseRemovedLongAgo(t *testing.T) {
	url := dbtest.Clone(t)
	s, err := db.Open(t.Context(), url)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(s.Close)
	a := newPlayer(t, s, "a@example.org")
	id := newCourse(t, s, a, "Harrow Fen")
	dbtest.Exec(t, url, "update courses set removed_at = now() - interval '31 days'")
	if removed, err := s.Removed(t.Context(), a); err != nil || len(removed) != 0 {
		t.Errorf("%+v, %v", removed, err)
	}
	if err := s.RestoreCourse(t.Context(), a, id); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("%v", err)
	}
}

// A steward merges two courses: everybody's rounds move to the one that stays.
func TestMergedCourses(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	steward, err := s.FirstPlayer(ctx, "s@example.org", "Steward", "hash")
	if err != nil {
		t.Fatal(err)
	}
	a, b := newPlayer(t, s, "a@example.org"), newPlayer(t, s, "b@example.org")
	kept, double := newCourse(t, s, a, "Harrow Fen"), newCourse(t, s, b, "Harow Fen")
	for _, who := range []golf.PlayerID{a, b} {
		if _, err := s.NewRound(ctx, who, onCourse(double)); err != nil {
			t.Fatal(err)
		}
	}
	for _, c := range []struct {
		who              golf.PlayerID
		duplicate, other golf.CourseID
	}{{a, double, kept}, {b, double, kept}, {steward.ID, double, double}, {steward.ID, double, double + 100}, {steward.ID, double + 100, kept}} {
		if err := s.MergeCourse(ctx, c.who, c.duplicate, c.other); !errors.Is(err, golf.ErrNotFound) {
			t.Errorf("%+v: %v", c, err)
		}
	}
	if err := s.MergeCourse(ctx, steward.ID, double, kept); err != nil {
		t.Fatal(err)
	}
	for _, who := range []golf.PlayerID{a, b} {
		if list, err := s.Courses(ctx, who); err != nil || len(list) != 1 || list[0].ID != kept || list[0].Times != 1 {
			t.Errorf("%+v, %v", list, err)
		}
	}
}

// A course whose holes are described while they are played knows how many it will
// have.
func TestACourseWithPlannedHoles(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	a := newPlayer(t, s, "a@example.org")
	id, err := s.SaveCourse(ctx, a, db.Course{Name: "Harrow Fen", Planned: 9, Holes: []golf.CardHole{{Number: 4, Par: 3, Length: 150 * golf.Yard}}})
	if err != nil {
		t.Fatal(err)
	}
	c, err := s.Course(ctx, id)
	if err != nil || c.Size() != 9 || len(c.Card()) != 9 {
		t.Fatalf("%+v, %v", c, err)
	}
	for i, h := range c.Card() {
		want := golf.CardHole{Number: i + 1, Par: 4}
		if h.Number == 4 {
			want = golf.CardHole{Number: 4, Par: 3, Length: 150 * golf.Yard}
		}
		if h != want {
			t.Errorf("%+v, want %+v", h, want)
		}
	}
	if list, err := s.Courses(ctx, a); err != nil || list[0].Holes != 1 || list[0].Size != 9 {
		t.Errorf("%+v, %v", list, err)
	}
	whole := db.Course{Holes: threeHoles()}
	if len(whole.Card()) != 3 || whole.Size() != 3 {
		t.Errorf("%+v", whole.Card())
	}
}
