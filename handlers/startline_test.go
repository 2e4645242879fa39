package handlers

import (
	"net/http"
	"strings"
	"testing"
)

// Sessions of the drill say how straight putts start; putts that are asked about are
// worked out and not stored. The coach sees the same, and the player that it was seen.
func TestTheStartLine(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	pupil.mustSee(pupil.get("/players/1/start-line"), "No putts of the start line drill", "Work it out")
	today := pupil.get("/players/1/drills/start-line")
	_, day, _ := strings.Cut(today.body, `name="day" type="date" value="`)
	pupil.follows("/players/1/drills/start-line", "entered", "a-page", "day", day[:10], "feet", "6", "tries", strings.Repeat("mrrlmrsmrm", 6), "press", "save")
	for _, v := range []visitor{pupil, coach} {
		v.mustSee(v.get("/players/1/start-line"), "60 putts since", "to the right on average: clear", "A tour player", "By week")
	}
	pupil.mustSee(pupil.get("/coaching/looks"), "The start line")
	pupil.mustSee(pupil.get("/players/1/start-line?feet=8&tries=40&made=22&left=4&right=4"), "which are not saved", "Start line, 8 ft")
	pupil.mustSee(pupil.get("/players/1/start-line"), "60 putts since")
	if a := pupil.get("/players/1/start-line?feet=6&tries=40&made=41"); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, `value="41"`) {
		t.Errorf("%d", a.status)
	}
}
