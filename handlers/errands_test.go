package handlers

import (
	"strings"
	"sync"
	"testing"
	"time"

	"strokeledger/analysis/golf"
)

// Practice that was not done is told of once to player and coach, when its day has
// passed where the player is, and keeps that day whatever comes after. Nobody is told
// of what was done, removed, set by the player or by a coach who no longer has access.
// Source: IANA tz database: NZST is 12 hours ahead of UTC.
func TestLatePracticeIsToldOnce(t *testing.T) {
	at := time.Date(2026, 6, 5, 11, 30, 0, 0, time.UTC)
	s := newSite(t, Options{SignUp: SignUpOpen, Clock: func() time.Time { return at }})
	pupil, coach := s.coached()
	pupil.in("Pacific/Auckland")
	for _, what := range []string{"Start line", "Ladder", "Clock"} {
		coach.follows("/players/1/assignments", "what", what, "due", "2026-06-05")
	}
	pupil.follows("/players/1/assignments", "what", "My own", "due", "2026-06-05")
	pupil.follows("/players/1/assignments/2/done", "done", "yes")
	coach.follows("/players/1/assignments/3/remove")
	pupil.get("/notices")
	coach.get("/notices")
	errands := NewErrands(s.store, s.server.options)
	errands.once(t.Context())
	if a := pupil.get("/notices"); strings.Contains(a.body, "has passed") {
		t.Errorf("told on the day itself: %s", a.body)
	}
	at = at.Add(time.Hour)
	var several sync.WaitGroup
	for range 4 {
		several.Go(func() { errands.once(t.Context()) })
	}
	several.Wait()
	pupil.mustSee(pupil.get("/account"), "Notices <b>1</b>")
	pupil.mustSee(pupil.get("/notices"), "set “Start line” to be done by 5 Jun 2026. That day has passed.", "/players/1/lessons#practice-1", "6 Jun 2026, 00:00 NZST")
	told := coach.get("/notices")
	coach.mustSee(told, "robin", "did not finish “Start line” by 5 Jun 2026.", "/players/1/lessons#practice-1")
	for _, what := range []string{"Ladder", "Clock", "My own"} {
		if strings.Contains(told.body, "finish “"+what) {
			t.Errorf("told of %s", what)
		}
	}
	at = at.AddDate(0, 0, 3)
	pupil.follows("/players/1/assignments/1/done", "done", "yes")
	pupil.follows("/players/1/assignments/1/done")
	errands.once(t.Context())
	for name, a := range map[string]answer{"pupil": pupil.get("/notices"), "coach": coach.get("/notices")} {
		if n := strings.Count(a.body, "by 5 Jun 2026."); n != 1 {
			t.Errorf("the %s was told %d times", name, n)
		}
	}
	coach.follows("/players/1/assignments", "what", "Too late", "due", "2026-06-09")
	pupil.follows("/coaching/end", "player", "1", "coach", "2", "sure", "yes")
	at = at.AddDate(0, 0, 2)
	errands.once(t.Context())
	if a := coach.get("/notices"); strings.Contains(a.body, "Too late") {
		t.Error("a coach without access was told")
	}
}

// A session of a drill that a coach set is told to that coach, once; one of another
// drill, and one before the day from which the coach sees, are not.
func TestSessionsAreToldToWhoSetTheDrill(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	session := func(entered, day, due string) {
		if due != "" {
			coach.follows("/players/1/assignments", "what", "Gates", "set_up", "Two tees a head apart.", "tries", "10", "mark", "7", "due", due)
		}
		pupil.follows("/players/1/drills/own-1", "entered", entered, "press", "save", "day", day, "tries", "mmmmmmmxxx")
	}
	coach.get("/notices")
	session("a-page-of-gates", "2026-05-03", "2030-01-01")
	session("a-page-of-gates", "2026-05-03", "")
	told := coach.get("/notices")
	if n := strings.Count(told.body, "has recorded a practice: Gates, 7 of 10."); n != 1 {
		t.Errorf("told %d times: %s", n, told.body)
	}
	pupil.follows("/coaching/day", "coach", "2", "from", "2026-05-04")
	session("another-page-of-gates", "2026-05-02", "")
	if a := coach.get("/notices"); strings.Count(a.body, "has recorded a practice") != 1 {
		t.Error("told of a day that the coach does not see")
	}
}

// A drill with the longest name that a form takes is told of as well.
func TestSessionsOfDrillsWithLongNamesAreTold(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	name := strings.Repeat("Gates ", golf.MaxPractice/6) + "ab"
	coach.follows("/players/1/assignments", "what", name, "set_up", "Two tees a head apart.", "tries", "10", "mark", "7", "due", "2030-01-01")
	pupil.follows("/players/1/drills/own-1", "entered", "a-page-of-gates", "press", "save", "day", "2026-05-03", "tries", "mmmmmmmxxx")
	coach.mustSee(coach.get("/notices"), "has recorded a practice: Gates Gates", "…, 7 of 10.")
}

// What a coach takes away, and an account that goes, are told to the other side.
func TestWhatGoesIsTold(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	other := s.member("tam")
	other.letIn(pupil, 1, 3, "")
	coach.follows("/players/1/assignments", "what", "Start line", "due", "2030-01-01")
	coach.follows("/players/1/assignments/1/remove")
	pupil.mustSee(pupil.get("/notices"), "has removed the practice “Start line”.")
	coach.post("/account/delete", "confirm", password)
	pupil.mustSee(pupil.get("/notices"), "ines", "has deleted the account, and no longer sees your pages.")
	pupil.post("/account/delete", "confirm", password)
	other.mustSee(other.get("/notices"), "robin", "has deleted the account. Any private notes of yours are kept.", "/coaching/kept")
}
