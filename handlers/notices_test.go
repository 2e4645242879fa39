package handlers

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"strokeledger/db/dbtest"
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
	hears(coach, "6", "has taken the target that you proposed.", "has recorded a practice: 7 of 10.", "has removed the practice “Start line”.", "now shares what was played from 1 May 2026 on.", "has ended your access.", "lets you in again.")
	if a := stranger.get("/notices"); a.status != 200 || strings.Contains(a.body, "robin") {
		t.Errorf("a stranger: %d", a.status)
	}
}

// A coach hears of practice from the first shared day on: of what is due from then on,
// and what came of it from then on.
func TestNoticesKeepToTheFirstSharedDay(t *testing.T) {
	s := newSite(t, inJune)
	pupil, coach := s.coached()
	for _, due := range []string{"2026-06-10", "2026-07-01"} {
		coach.follows("/players/1/assignments", "what", "Start line until "+due, "due", due)
	}
	set, err := s.store.Assignments(t.Context(), 1, 1, 0)
	if err != nil || len(set) != 2 || set[0].DueOn.After(set[1].DueOn) {
		t.Fatalf("%+v, %v", set, err)
	}
	early, late := fmt.Sprintf("/players/1/assignments/%d/", set[0].ID), fmt.Sprintf("/players/1/assignments/%d/", set[1].ID)
	pupil.follows("/coaching/day", "coach", "2", "from", "2026-06-20")
	coach.get("/notices")
	pupil.follows(early+"results", "day", "2026-06-21", "result", "due too early")
	pupil.follows(late+"results", "day", "2026-06-19", "result", "done too early")
	pupil.follows(early + "remove")
	kept, err := s.store.Notices(t.Context(), 2)
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range kept {
		if n.ReadAt == nil {
			t.Errorf("told of a day that the coach does not see: %s, %s", n.Kind, n.What)
		}
	}
	pupil.follows(late+"results", "day", "2026-06-20", "result", "7 of 10")
	pupil.follows(late + "remove")
	coach.mustSee(coach.get("/notices"), "has recorded a practice: 7 of 10.", "has removed the practice “Start line until 2026-07-01”.")
}

// Only what the page lists is read by opening it. What there was no room for comes the
// next time, and what arrives meanwhile is still new.
func TestOnlyListedNoticesAreRead(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil := s.member("robin")
	dbtest.Exec(t, s.url, `insert into notices (player_id, kind, by_name, of_id, what, told_at)
		select id, 'off', 'ines', id, 'number ' || n || ' of 130', now() - make_interval(mins => n) from players, generate_series(1, 130) n`)
	unread := func() int {
		t.Helper()
		all, err := s.store.Unmailed(t.Context(), 1)
		if err != nil {
			t.Fatal(err)
		}
		return len(all)
	}
	first := pupil.get("/notices")
	pupil.mustSee(first, "100 new notices. There are more: open this page again to read them.", "number 1 of 130.", "number 100 of 130.")
	pupil.mustSee(pupil.get("/account"), "Notices <b>30</b>")
	if strings.Contains(first.body, "number 101 of 130.") || unread() != 30 {
		t.Errorf("%d are unread", unread())
	}
	kept, err := s.store.NoticesToRead(t.Context(), 1)
	if err != nil {
		t.Fatal(err)
	}
	dbtest.Exec(t, s.url, `insert into notices (player_id, kind, by_name, of_id, what) select id, 'off', 'ines', id, 'meanwhile' from players`)
	var listed []int64
	for _, n := range kept {
		listed = append(listed, n.ID)
	}
	if err := s.store.NoticesRead(t.Context(), 1, listed); err != nil || unread() != 1 {
		t.Errorf("%d are unread, %v", unread(), err)
	}
	second := pupil.get("/notices")
	pupil.mustSee(second, "One new notice.", "meanwhile.", "number 1 of 130.")
	if strings.Contains(second.body, "There are more") || unread() != 0 {
		t.Errorf("%d are unread", unread())
	}
}
