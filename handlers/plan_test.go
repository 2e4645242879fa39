package handlers

import (
	"net/http"
	"testing"
)

// The plan and its drills are the player's and the coach's; a coach's look at them
// is told.
func TestPlanAndDrills(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.member("robin"), s.member("ines")
	pupil.mustSee(pupil.get("/players/1/plan"), "Enter a round shot by shot")
	pupil.withRound()
	coach.letIn(pupil, 1, 2, "")
	for _, v := range []visitor{pupil, coach} {
		v.mustSee(v.get("/players/1/plan"), "is worth most", "Dearest:", "Pass mark")
		v.mustSee(v.get("/players/1/drills/ladder"), "Pass mark", "10 ft")
	}
	if a := pupil.get("/players/1/drills/moon"); a.status != http.StatusNotFound {
		t.Errorf("a drill that is not there: %d", a.status)
	}
	pupil.mustSee(pupil.get("/coaching/looks"), "practice plan")
}
