package handlers

import (
	"net/http"
	"strings"
	"testing"
)

// A coach types a round with the keys, as a golfer does the own: a hole a page, from where
// the round began to the last, and then the round is there to be sent.
func TestACoachHasTheKeys(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	first := coach.follows("/players/1/walked", "course", "1", "date", "2026-05-20", "first_hole", "2")
	coach.mustSee(first, "Hole 2", "robin’s shots after the tee", "For robin. No holes are saved yet.", `data-order="2 3 1"`, `href="/players/1/walked/1/holes/3"`, `data-echo="/players/1/walked/1/holes/2/echo"`)
	at := "/players/1/walked/1/holes/"
	coach.mustSee(coach.post(at+"2", "line", "g15", "version", "0", "press", "2"), `value="g152"`)
	if status, read, _ := coach.script(at+"2/echo", "line", "g15 2h"); status != http.StatusOK || !strings.Contains(read.HTML, "Holed in 3, par") {
		t.Errorf("%d %+v", status, read)
	}
	if a := coach.post(at+"2", "line", "f400 g3 2", "version", "0", "press", "save"); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "Save anyway") {
		t.Errorf("what is unlikely is not asked: %d", a.status)
	}
	coach.mustSee(coach.follows(at+"2", "line", "g15 2", "version", "0", "press", "save"), "Hole 3", "Saved: hole 2, 3 strokes.", "against robin’s target of ")
	if status, _, saved := coach.script(at+"3", "line", "f240 f90 g20 2", "version", "0", "press", "save"); status != http.StatusOK || saved.Next != at+"1" || saved.Version != 1 || saved.Score != "5" {
		t.Errorf("%d %+v", status, saved)
	}
	if status, _, saved := coach.script(at+"3", "line", "f240 f90 g20 2", "version", "0", "press", "save"); status != http.StatusOK || saved.Version != 1 {
		t.Errorf("the same save again: %d %+v", status, saved)
	}
	if a := coach.post(at+"3", "line", "=6", "version", "0", "press", "save"); a.status != http.StatusConflict || !strings.Contains(a.body, "Keep mine") {
		t.Errorf("another window: %d", a.status)
	}
	coach.mustSee(coach.get("/players/1/walked/1"), "Type hole 1 with the keys", `value="f240 f90 g20 2"`)
	coach.mustSee(coach.follows(at+"1", "line", "r150 g20 2", "version", "0", "press", "save"), "The last hole is saved.", "3 holes, 12 strokes.", "Send it to robin")
	for who, v := range map[string]visitor{"the pupil": pupil, "a stranger": s.member("gwen")} {
		if a := v.get(at + "1"); a.status != http.StatusNotFound {
			t.Errorf("%s reads it: %d", who, a.status)
		}
		if a := v.post(at+"1", "line", "=4", "version", "1", "press", "save"); a.status != http.StatusNotFound {
			t.Errorf("%s saves it: %d", who, a.status)
		}
	}
	coach.mustSee(coach.get("/coaching"), "not sent", "the round of 20 May that you entered", `href="/players/1/walked/1"`)
	coach.follows("/players/1/walked/1", "press", "send")
	if strings.Contains(coach.get("/coaching").body, "that you entered") {
		t.Error("a round that was sent waits for the coach")
	}
	if a := coach.get(at + "1"); a.status != http.StatusNotFound {
		t.Errorf("typed after it was sent: %d", a.status)
	}
	pupil.mustSee(pupil.follows("/players/1/walked/1/answer", "accept", "yes"), "Statement, Wednesday 20 May 2026", "Entered by ines")
	if kept, err := s.store.Round(t.Context(), 1, 2); err != nil || kept.Holes[2].Line != "f240 f90 g20 2" {
		t.Errorf("%+v, %v", kept.Holes, err)
	}
}

// A line that a coach typed when the session had ended is in its field after signing in.
func TestAWalkedHoleAfterTheSession(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	_, coach := s.coached()
	coach.follows("/players/1/walked", "course", "1", "date", "2026-05-20")
	at := "/players/1/walked/1/holes/2"
	coach.post("/sign-out")
	if status, _, _ := coach.script(at, "line", "g15 2", "version", "0", "press", "save"); status != http.StatusUnauthorized {
		t.Errorf("a script is told %d", status)
	}
	coach.post(at, "line", "g15 2", "version", "0", "press", "save")
	a := coach.post("/sign-in", "email", "ines@example.org", "password", password)
	if !strings.HasPrefix(a.location, at+"?") {
		t.Fatalf("%d %s", a.status, a.location)
	}
	coach.mustSee(coach.get(a.location), `value="g15 2"`)
}

// Lines that another window saved in the meantime stay; where both windows changed one,
// the coach reads the other before it is written over.
func TestLinesOfTwoWindows(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	_, coach := s.coached()
	coach.follows("/players/1/walked", "course", "1", "date", "2026-05-20")
	at := "/players/1/walked/1"
	coach.follows(at, "line-1", "r150 g20 2", "shown-1", "", "line-2", "g15 2", "shown-2", "", "press", "save")
	kept := func(want ...string) {
		t.Helper()
		page := coach.get(at).body
		for i, line := range want {
			if name := []string{"line-1", "line-2", "line-3"}[i]; !strings.Contains(page, `name="`+name+`" type="text" value="`+line+`"`) {
				t.Errorf("%s is not %q", name, line)
			}
		}
	}
	coach.follows(at, "line-1", "", "shown-1", "", "line-2", "", "shown-2", "", "line-3", "=5", "shown-3", "", "press", "save") // opened before the first save
	kept("r150 g20 2", "g15 2", "=5")
	a := coach.post(at, "line-1", "r150 g22 2", "shown-1", "", "line-2", "g15 2", "shown-2", "g15 2", "press", "send")
	if a.status != http.StatusConflict || !strings.Contains(a.body, "Another window has saved “r150 g20 2” here. Save again to keep yours.") || !strings.Contains(a.body, `name="shown-1" value="r150 g20 2"`) || !strings.Contains(a.body, `value="r150 g22 2"`) {
		t.Errorf("%d %s", a.status, a.body)
	}
	kept("r150 g20 2")
	coach.follows(at, "line-1", "r150 g22 2", "shown-1", "r150 g20 2", "line-2", "", "shown-2", "g15 2", "press", "save")
	kept("r150 g22 2", "", "=5")
	if a := coach.post(at, "line-2", "g9", "shown-2", "g15 2", "press", "save"); a.status != http.StatusConflict || !strings.Contains(a.body, "Another window has emptied this line.") {
		t.Errorf("%d", a.status)
	}
}
