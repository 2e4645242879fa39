package handlers

import (
	"regexp"
	"strings"
	"testing"
)

// Each hears what the other did, once, with a count on every page until it is read;
// nobody hears of a private note or of what is not theirs.
func TestNotices(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	stranger := s.member("bea")
	count := func(v visitor) string {
		m := regexp.MustCompile(`Notices <b>(\d+)</b>`).FindStringSubmatch(v.get("/account").body)
		if m == nil {
			return ""
		}
		return m[1]
	}
	hears := func(v visitor, n string, texts ...string) {
		t.Helper()
		if got := count(v); got != n {
			t.Errorf("%q notices, want %q", got, n)
		}
		v.mustSee(v.get("/notices"), texts...)
		if got := count(v); got != "" {
			t.Errorf("%s notices after they were read", got)
		}
	}
	hears(pupil, "1", "ines", "has accepted your link")
	hears(coach, "1", "robin", "has approved you as a coach.")
	pupil.follows("/players/1/notes", "round", "1", "on", "1.1", "body", "Why?")
	hears(coach, "1", "asks about a round.")
	coach.follows("/players/1/notes/1/replies", "body", "So.")
	coach.follows("/players/1/notes", "round", "1", "body", "Mine alone.", "private", "yes")
	coach.follows("/players/1/notes", "day", "2026-05-02", "body", "The grip.")
	coach.follows("/players/1/target", "target", "82")
	coach.follows("/players/1/assignments", "what", "Start line", "due", "2030-01-01")
	hears(pupil, "4", "has replied.", "has written a note.", "proposes a target of 82.", "has set “Start line” to practise.")
	pupil.follows("/players/1/target/answer", "coach", "2", "accept", "yes")
	pupil.follows("/players/1/assignments/1/results", "day", "2026-08-01", "result", "7 of 10")
	pupil.follows("/players/1/assignments/1/remove")
	pupil.follows("/coaching/day", "coach", "2", "from", "2026-05-01")
	pupil.follows("/coaching/end", "player", "1", "coach", "2", "sure", "yes")
	pupil.follows("/coaching/resume", "player", "1", "coach", "2")
	hears(coach, "6", "has accepted the target that you proposed.", "has recorded a practice: 7 of 10.", "has removed the practice “Start line”.", "now shares what was played from 1 May 2026 on.", "has ended your access.", "lets you in again.")
	if a := stranger.get("/notices"); a.status != 200 || strings.Contains(a.body, "robin") {
		t.Errorf("a stranger: %d", a.status)
	}
}
