package handlers

import (
	"strings"
	"testing"
)

// What coach and pupil wrote outlives the account of either: what was shared is the
// pupil's, with the coach's name, and what was private is the coach's. Both stand in
// the file of who has it, and in no other.
func TestWhatWasWrittenOutlivesAnAccount(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	coach.follows("/players/1/notes", "round", "1", "on", "1.1", "body", "Aim at the left half.")
	coach.follows("/players/1/notes", "round", "1", "body", "Nerves on the first tee.", "private", "yes")
	coach.follows("/players/1/assignments", "what", "Start line", "due", "2092-09-01")
	pupil.follows("/players/1/notes", "round", "1", "body", "Which club?")
	coach.follows("/players/1/notes/3/replies", "body", "The seven.")
	coach.follows("/account/delete", "confirm", password)
	for _, path := range []string{"/rounds/1", "/players/1/lessons", "/export/everything.json"} {
		page := pupil.get(path)
		pupil.mustSee(page, "Aim at the left half.", "The seven.", "ines")
		if strings.Contains(page.body, "Nerves on the first tee.") {
			t.Errorf("%s has what was private", path)
		}
	}
	pupil.follows("/players/1/notes/1/replies", "body", "I did.") // there is nobody to tell
	pupil.follows("/players/1/assignments/1/results", "day", "2026-08-01", "result", "7 of 10")
	pupil.follows("/players/1/assignments/1/done", "done", "yes")
}

// A coach keeps the private notes about a pupil whose account has gone, can remove
// one, and take that back.
func TestACoachKeepsNotesOnAPupilWhoHasGone(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	coach.follows("/players/1/notes", "round", "1", "body", "Aim at the left half.")
	coach.follows("/players/1/notes", "round", "1", "on", "1.1", "body", "Nerves on the first tee.", "private", "yes")
	pupil.follows("/account/delete", "confirm", password)
	for _, path := range []string{"/coaching/kept", "/export/everything.json"} {
		page := coach.get(path)
		coach.mustSee(page, "Nerves on the first tee.", "robin")
		if strings.Contains(page.body, "Aim at the left half.") {
			t.Errorf("%s has a shared note of an account that is gone", path)
		}
	}
	page := coach.follows("/coaching/kept", "player", "2", "note", "1")
	coach.mustSee(page, "Removed: note of 2 May 2026, “Nerves on the first tee.”.")
	if strings.Contains(coach.get("/coaching/kept").body, "private-note") {
		t.Error("it is still there")
	}
	coach.mustSee(coach.get("/removed"), "Private notes on former pupils")
	coach.mustSee(coach.undone(page), "Restored.", "Nerves on the first tee.")
	if a := s.member("bea").post("/coaching/kept", "player", "2", "note", "1"); a.status != 404 {
		t.Errorf("a stranger removes it: %d", a.status)
	}
}
