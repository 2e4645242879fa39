package handlers

import (
	"net/http"
	"strings"
	"testing"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
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

// The rating of a nine-hole course is that of its nine holes; the ratings of
// each nine are for courses of eighteen.
func TestTheRatingOfANineHoleCourse(t *testing.T) {
	played := golf.Played{Target: 84}
	for n := 1; n <= 9; n++ {
		played.Round.Holes = append(played.Round.Holes, golf.Hole{Number: n, Par: 4, ScoreOnly: 5, Shots: []golf.Shot{{Lie: golf.Tee, Distance: 380 * golf.Yard}}})
	}
	s := analysis.NewEngine()
	of := func(x float64) *float64 { return &x }
	for _, c := range []struct {
		name          string
		course        db.Rated
		rating, slope float64
	}{
		{"nine holes", db.Rated{Size: 9, Rating: of(35.2), Slope: of(121)}, 35.2, 121},
		{"nine holes, typed under the front nine", db.Rated{Size: 9, FrontRating: of(35.2), FrontSlope: of(121)}, 35.2, 121},
		{"nine holes, a rating alone", db.Rated{Size: 9, Rating: of(35.2)}, 0, 0},
		{"nine of eighteen", db.Rated{Size: 18, Rating: of(71.2), Slope: of(126), FrontRating: of(35.7), FrontSlope: of(127)}, 35.7, 127},
		{"nine of eighteen, not rated by nines", db.Rated{Size: 18, Rating: of(71.2), Slope: of(126)}, 0, 0},
	} {
		c.course.Indexes = make([]int, 18)
		record, err := s.Handicap([]analysis.Rated{ratedOf(played, c.course)})
		if err != nil {
			t.Fatal(err)
		}
		if score := record.Entries[0].Score; score.Rating != c.rating || score.Slope != c.slope {
			t.Errorf("%s: %v %v", c.name, score.Rating, score.Slope)
		}
	}
}
