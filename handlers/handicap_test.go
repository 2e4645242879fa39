package handlers

import (
	"net/http"
	"strings"
	"testing"

	"strokeledger/db"
)

func TestHandicapFromTheRounds(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	if a := v.get("/players/1/handicap"); a.status != http.StatusOK || !strings.Contains(a.body, "Three more scores") || !strings.Contains(a.body, "Unofficial.") {
		t.Errorf("%d", a.status)
	}
	withSeason(t, s.store, 1, 84, "2026-06-02", 4, 6)
	if a := v.get("/players/1/handicap"); !strings.Contains(a.body, "Three more scores") || !strings.Contains(a.body, "no course and slope rating") {
		t.Errorf("rounds on a course that has no rating: %s", a.body)
	}
	rating, slope := 71.2, 126.0
	if _, err := s.store.SaveCourse(t.Context(), 1, db.Course{Name: "harrow fen", Tee: "White", Rating: &rating, Slope: &slope}); err != nil {
		t.Fatal(err)
	}
	if a := v.get("/players/1/handicap"); !strings.Contains(a.body, "Your unofficial estimate is ") || strings.Count(a.body, "yes") != 2 {
		t.Errorf("six rounds on a rated course: %s", a.body)
	}
}
