package handlers

import (
	"net/http"
	"regexp"
	"testing"
)

// A picked-up hole has one score wherever it stands. Three feet from the hole a
// golfer at 79 takes a little over one stroke, so the four strokes before make it a
// five.
func TestAPickedUpHoleHasOneScore(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	status, _, done := pupil.script("/rounds/1/holes/1", "line", "r150 g20 6 3-", "version", "1", "press", "save")
	if status != http.StatusOK || done.Score != "(5)" {
		t.Errorf("saved: %d %+v", status, done)
	}
	pupil.mustSee(pupil.get("/rounds/1/holes/2"), "(5)", "5 strokes")
	statement := pupil.get("/rounds/1")
	pupil.mustSee(statement, "(5)", "counts as 5")
	if regexp.MustCompile(`counts as 5\.\d`).MatchString(statement.body) {
		t.Error("a score with decimals")
	}
	pupil.mustSee(pupil.get("/rounds"), "(5)", "for 1 hole")
	coach.mustSee(coach.get("/coaching"), ">(5)<")
	coach.mustSee(coach.get("/players/1/lessons"), "(5)")
	pupil.mustSee(pupil.get("/export/shots.csv"), "yes") // the file has the place where the ball was lifted, not a score
}
