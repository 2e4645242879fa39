package handlers

import (
	"strings"
	"testing"
)

// What a coach was writing when the pupil ended the access is kept as the coach's own
// private note; somebody who never looked at the pupil's pages leaves nothing.
func TestWhatACoachWasWritingIsKept(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	stranger := s.member("bea")
	coach.get("/players/1/rounds/1")
	coach.follows("/players/1/notes", "round", "1", "on", "1.1", "body", "Aim at the left half.")
	pupil.post("/coaching/end", "player", "1", "coach", "2", "sure", "yes")
	for path, body := range map[string]string{"/players/1/notes": "The grip again.", "/players/1/notes/1/replies": "One more thing.", "/players/1/notes/1": "Aim at the right half."} {
		a := coach.post(path, "round", "1", "on", "1.1", "body", body)
		if a.status != 303 || a.location != "/coaching/kept?saved=kept" {
			t.Errorf("%s: %d %s", path, a.status, a.location)
		}
		coach.mustSee(coach.get(a.location), "Your access to the pupil has ended.", body)
		if a := stranger.post(path, "round", "1", "body", "Mine"); a.status != 404 {
			t.Errorf("a stranger: %d", a.status)
		}
	}
	if a := coach.post("/players/1/notes", "round", "1", "body", " "); a.status != 404 {
		t.Errorf("nothing was written: %d", a.status)
	}
	for _, path := range []string{"/players/1/lessons", "/rounds/1", "/export/everything.json"} {
		if a := pupil.get(path); strings.Contains(a.body, "The grip again.") || strings.Contains(a.body, "One more thing.") {
			t.Errorf("%s tells the pupil", path)
		}
	}
	pupil.mustSee(pupil.get("/rounds/1"), "Aim at the left half.")
}

// A save keeps the place: the hole that the note is about, with its form open, and
// the round on which practice was set.
func TestASaveKeepsThePlace(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	a := coach.post("/players/1/notes", "round", "1", "on", "1.1", "body", "See https://harrowfen.example/grip.", "private", "yes")
	if a.status != 303 || a.location != "/players/1/rounds/1?on=1.1&saved=written#h1" {
		t.Fatalf("%d %s", a.status, a.location)
	}
	page := coach.get("/players/1/rounds/1?on=1.1&saved=written")
	coach.mustSee(page, `<details class="fold-line" id="write-1" open`, `<a href="https://harrowfen.example/grip" rel="noopener noreferrer">`, "private: only you can read it", "Share with robin", "Keep to myself")
	if strings.Contains(pupil.get("/rounds/1").body, "harrowfen.example/grip") {
		t.Error("the pupil reads a private note")
	}
	if a := coach.post("/players/1/assignments", "round", "1", "what", "Start line", "due", "2030-01-02"); a.location != "/players/1/rounds/1?saved=practice#afterwards" {
		t.Errorf("%d %s", a.status, a.location)
	}
	if a := coach.post("/players/1/notes", "round", "1", "on", "1.1", "body", ""); a.status != 422 || !strings.Contains(a.body, `<details class="fold-line" id="write-1" open`) || strings.Count(a.body, "fault-summary") != 1 {
		t.Errorf("%d: the form of the hole does not come back", a.status)
	}
}
