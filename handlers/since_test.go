package handlers

import (
	"fmt"
	"strings"
	"testing"

	"strokeledger/db/dbtest"
)

// A coach who is let in from a later day is told from which on every page of the
// pupil, and never that nothing was entered.
func TestACoachFromALaterDayIsTold(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.member("robin"), s.member("ines")
	pupil.withRound() // on 2 May 2026
	coach.letIn(pupil, 1, 2, "2026-05-03")
	for _, path := range []string{"/lessons", "/months", "/rounds", "/report", "/handicap", "/rounds/2026/book"} {
		a := coach.get("/players/1" + path)
		coach.mustSee(a, "79, shared from 3 May 2026")
		if strings.Contains(a.body, "has not entered a round yet") || strings.Contains(a.body, "No rounds yet") || strings.Contains(a.body, "No round has been entered") {
			t.Errorf("%s says that nothing was entered", path)
		}
	}
	coach.mustSee(coach.get("/players/1/lessons"), "robin has entered no round played on 3 May 2026 or later, the first day that you see.")
	coach.mustSee(coach.get("/coaching"), "Shared from 3 May.")
	pupil.mustSee(pupil.get("/players/1/months"), "May: ")
}

// A report marks as read the notes that it shows, and no others.
func TestAReportReadsWhatItShows(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	withSeason(t, s.store, 1, 84, "2026-08-01", 3, 3)
	for i := range 40 {
		coach.post("/players/1/notes", "round", "1", "on", "1", "body", fmt.Sprintf("Note %d", i))
	}
	unread := func() int {
		t.Helper()
		n, err := s.store.UnreadNotes(t.Context(), 1)
		if err != nil {
			t.Fatal(err)
		}
		return n
	}
	if n := unread(); n != 40 {
		t.Fatalf("%d notes are unread", n)
	}
	pupil.get("/players/1/report?span=2026-08") // the notes are of May
	if n := unread(); n != 40 {
		t.Errorf("a report that shows none leaves %d unread", n)
	}
	page := pupil.get("/players/1/report?span=2026-05")
	if shown := strings.Count(page.body, "Note "); shown == 0 || unread() != 40-shown {
		t.Errorf("a report that shows %d leaves %d unread", shown, unread())
	}
}

// What was entered since the coach looked is new and says when; a round that was
// saved again is corrected.
func TestEnteredAndCorrectedRounds(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	coach.get("/players/1/lessons")
	dbtest.Exec(t, s.url, "update coachings set looked_at = looked_at - interval '4 hours', before_at = looked_at - interval '4 hours'")
	dbtest.Exec(t, s.url, "update rounds set entered_at = entered_at - interval '5 hours', changed_at = changed_at - interval '5 hours'")
	pupil.post("/rounds/1/holes/1", "line", "r150 g20 3", "version", "1", "press", "save")
	coach.mustSee(coach.get("/coaching"), "1 round corrected", "Nothing waits.")
	coach.mustSee(coach.get("/players/1/lessons"), "robin entered no new rounds, and corrected one.", "corrected ")
	pupil.post("/rounds/1/holes/2", "line", "g20 3", "version", "0", "press", "save")
	coach.mustSee(coach.get("/coaching"), "1 new round", "one new round")
}
