package handlers

import (
	"net/http"
	"strings"
	"testing"
	"time"
)

// A coach arranges a lesson and the pupil moves it; each hears of what the other did, the
// pupil's first page and the coach's overview say when it is, and both can put it into a
// calendar. Once its day has come it asks to be written up.
func TestALessonIsArranged(t *testing.T) {
	at := time.Date(2026, 11, 26, 9, 0, 0, 0, time.UTC)
	s := newSite(t, Options{SignUp: SignUpOpen, Clock: func() time.Time { return at }})
	pupil, coach := s.coached()
	coach.mustSee(coach.get("/players/1"), "No lesson is arranged.", "Arrange a lesson")
	coach.mustSee(coach.follows("/players/1/lessons", "day", "2026-12-01", "time", "17:30", "place", "The range", "aim", "Start line", "agreed", "- forty putts"),
		"The lesson is arranged", "Tuesday 1 December 2026, 17:30", "with ines", "<li>forty putts</li>")
	pupil.mustSee(pupil.get("/notices"), "has arranged a lesson: Tuesday 1 December 2026, 17:30.")
	pupil.mustSee(pupil.get("/rounds"), "Lesson with ines on Tuesday at 17:30, The range: Start line")
	pupil.mustSee(pupil.follows("/players/1/lessons/1", "day", "2026-12-02", "place", "The green"), "Wednesday 2 December 2026", "with ines", "The green")
	coach.mustSee(coach.get("/notices"), "has changed the lesson: Wednesday 2 December 2026.")
	coach.mustSee(coach.get("/players/1"), "Wednesday 2 December 2026", "The green")
	for who, with := range map[visitor]string{pupil: "ines", coach: "robin"} {
		a := who.get("/players/1/lessons/1/lesson.ics")
		for _, want := range []string{"BEGIN:VCALENDAR\r\n", "\r\nDTSTART;VALUE=DATE:20261202\r\n", "\r\nSEQUENCE:1\r\n", "\r\nDTSTAMP:20261126T090000Z\r\n", "\r\nSUMMARY:Lesson with " + with + "\r\n", "\r\nUID:lesson-1-1@"} {
			if !strings.Contains(a.body, want) {
				t.Errorf("%q lacks %q", a.body, want)
			}
		}
	}
	if file := pupil.get("/export/everything.json").body; !strings.Contains(file, `"lessons":[{"with":"ines","day":"2026-12-02","place":"The green"}]`) {
		t.Errorf("%s", file)
	}
	at = at.AddDate(0, 0, 8)
	coach.mustSee(coach.get("/players/1/lessons"), "Write up what was done", `value="2026-12-02"`)
	coach.follows("/players/1/notes", "day", "2026-12-02", "body", "The gate.")
	if body := coach.get("/players/1/lessons").body; strings.Contains(body, "Write up what was done") || !strings.Contains(body, "The gate.") {
		t.Error("a lesson that was written up asks again")
	}
}

// A day that has passed or is far away comes back at its field, with what was typed.
func TestALessonOnAnotherDayThanAllowed(t *testing.T) {
	s := siteAt(t, time.Date(2026, 11, 26, 9, 0, 0, 0, time.UTC))
	pupil, coach := s.coached()
	for day, says := range map[string]string{"2026-11-25": "This day has passed.", "2999-01-01": "Allowed: at most a year ahead.", "": "Not a day"} {
		a := coach.post("/players/1/lessons", "day", day, "aim", "The gate drill")
		if a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, `id="next_day-wrong"`) || !strings.Contains(a.body, says) || !strings.Contains(a.body, `value="The gate drill"`) || !strings.Contains(a.body, "autofocus") {
			t.Errorf("%s: %d", day, a.status)
		}
	}
	if a := coach.post("/players/1/notes", "day", "2999-01-01", "body", "x"); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "This day is still to come.") {
		t.Errorf("a lesson of 2999 was written up: %d", a.status)
	}
	if a := pupil.post("/players/1/lessons", "coach", "99", "day", "2026-12-01"); a.status != http.StatusNotFound {
		t.Errorf("a lesson with nobody: %d", a.status)
	}
}

// A lesson that is cancelled can be brought back by either, and each time the other hears
// of it; a coach whose access has ended hears nothing more.
func TestALessonIsCancelled(t *testing.T) {
	s := siteAt(t, time.Date(2026, 11, 26, 9, 0, 0, 0, time.UTC))
	pupil, coach := s.coached()
	pupil.follows("/players/1/lessons", "coach", "2", "day", "2026-12-01", "aim", "The grip")
	coach.mustSee(coach.get("/notices"), "has arranged a lesson: Tuesday 1 December 2026.")
	coach.mustSee(coach.follows("/players/1/lessons/1/remove"), "Removed: lesson of 1 Dec 2026, “The grip”, for robin.")
	pupil.mustSee(pupil.get("/notices"), "has cancelled the lesson: Tuesday 1 December 2026.")
	if body := pupil.get("/rounds").body; strings.Contains(body, "Lesson with") {
		t.Error("a cancelled lesson is still to come")
	}
	pupil.mustSee(pupil.get("/removed"), "Lesson of 1 Dec 2026, “The grip”")
	pupil.mustSee(pupil.follows("/removed", "what", "lesson.1.1"), "Restored.", "Tuesday 1 December 2026")
	coach.mustSee(coach.get("/notices"), "has arranged a lesson")
	pupil.follows("/coaching/end", "player", "1", "coach", "2", "sure", "yes")
	coach.get("/notices")
	pupil.follows("/players/1/lessons/1/remove")
	if body := coach.get("/rounds").body; strings.Contains(body, "Notices <b>") {
		t.Error("a former coach was told")
	}
}

// An older window does not change a lesson in silence: the coach reads what it has become
// and can still change it.
func TestALessonChangedInTwoWindows(t *testing.T) {
	s := siteAt(t, time.Date(2026, 11, 26, 9, 0, 0, 0, time.UTC))
	pupil, coach := s.coached()
	coach.follows("/players/1/lessons", "day", "2026-12-01", "time", "17:30", "aim", "Start line")
	coach.mustSee(coach.get("/players/1"), `name="changes" value="0" data-over`)
	pupil.follows("/players/1/lessons/1", "day", "2026-12-02", "aim", "Bunkers", "changes", "0")
	a := coach.post("/players/1/lessons/1", "day", "2026-12-03", "aim", "Putting", "changes", "0")
	if a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "to “Wednesday 2 December 2026: Bunkers”. Save again to change it to this.") || !strings.Contains(a.body, `name="changes" value="1"`) || !strings.Contains(a.body, `value="2026-12-03"`) || !strings.Contains(a.body, "autofocus") {
		t.Errorf("%d %s", a.status, a.body)
	}
	coach.mustSee(coach.get("/players/1"), "Wednesday 2 December 2026")
	coach.mustSee(coach.follows("/players/1/lessons/1", "day", "2026-12-03", "aim", "Putting", "changes", "1"), "Thursday 3 December 2026", "Putting")
}
