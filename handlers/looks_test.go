package handlers

import (
	"fmt"
	"net/http"
	"strings"
	"testing"

	"strokeledger/db/dbtest"
	"strokeledger/web/coach"
)

// What a coach opened stands in the pupil's list, by round, and in nobody
// else's; what a coach did not find does not.
func TestLooksAreListed(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	for range 2 {
		coach.get("/players/1/rounds/1")
	}
	for _, none := range []string{"/players/1/rounds/n0", "/players/1/rounds/99", "/players/1/rounds/You%20owe%20me", "/players/1/months/behind?in=99&row=all", "/players/1/nothing"} {
		if a := coach.get(none); a.status != http.StatusNotFound {
			t.Errorf("%s: %d", none, a.status)
		}
	}
	coach.get("/coaching")
	pupil.get("/players/1/months")
	list := pupil.get("/coaching/looks").body
	for _, want := range []string{`<a href="/rounds/1">Statement of 2 May 2026, Harrow Fen</a>`, "2 times", "The roster of pupils", "ines"} {
		if !strings.Contains(list, want) {
			t.Errorf("no %q", want)
		}
	}
	for _, none := range []string{"Months side by side", "behind a figure", "owe", "n0", "rounds/99", "in=99"} {
		if strings.Contains(list, none) {
			t.Errorf("%q is listed", none)
		}
	}
	if a := coach.get("/coaching/looks"); !strings.Contains(a.body, "No coach has opened") {
		t.Error("the coach sees looks")
	}
}

// Every page of a pupil's that a coach gets to see is noted, those too that come
// back with a form that was refused.
func TestEveryLookIsNoted(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	for path, kind := range map[string]string{"/months": "Months side by side", "/months.csv": "Months, downloaded", "/months/behind?in=2&row=all": "Shots behind a figure", "/handicap": "The handicap estimate",
		"/rounds": "The list of rounds", "/rounds/1": "Statement of", "/lessons": "Lessons and practice", "/report": "A report"} {
		dbtest.Exec(t, s.url, "delete from coach_looks")
		if a := coach.get("/players/1" + path); a.status != http.StatusOK {
			t.Errorf("%s: %d", path, a.status)
		}
		if a := pupil.get("/coaching/looks"); !strings.Contains(a.body, kind) {
			t.Errorf("%s is not noted", path)
		}
	}
	for _, form := range [][]string{{"/players/1/notes", "Statement of", "round", "1"}, {"/players/1/notes", "Lessons and practice"}, {"/players/1/target", "Lessons and practice"}} {
		dbtest.Exec(t, s.url, "delete from coach_looks")
		if a := coach.post(form[0], form[2:]...); a.status != http.StatusUnprocessableEntity {
			t.Errorf("%v: %d", form, a.status)
		}
		if a := pupil.get("/coaching/looks"); !strings.Contains(a.body, form[1]) {
			t.Errorf("%v is not noted", form)
		}
	}
}

// However much a coach opens, everything stays in the pupil's list, page by
// page.
func TestLooksArePaged(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, ines := s.coached()
	dbtest.Exec(t, s.url, fmt.Sprintf(`insert into coach_looks (player_id, coach_id, day, kind, name, last_at) select 1, 2, day, 'lessons', 'ines', day from generate_series('2026-01-01'::timestamptz, '2026-01-01'::timestamptz + interval '%d days', '1 day') day`, coach.LooksPerPage))
	dbtest.Exec(t, s.url, `insert into coach_looks (player_id, coach_id, day, kind, about, name) select 1, 2, current_date, 'statement', n, 'ines' from generate_series(1, 600) n`)
	ines.get("/players/1/months")
	first, second := pupil.get("/coaching/looks").body, pupil.get("/coaching/looks?page=2").body
	for _, want := range []string{"600 statements", "Months side by side", `href="/coaching/looks?page=2"`} {
		if !strings.Contains(first, want) {
			t.Errorf("no %q", want)
		}
	}
	if !strings.Contains(second, ">1 Jan 2026,") || strings.Contains(first, ">1 Jan 2026,") || strings.Contains(second, "page=3") || !strings.Contains(second, `href="/coaching/looks"`) {
		t.Error("the lines are not divided over the pages")
	}
	for _, page := range []string{"0", "-1", "x", "99999999999999999999", "1000001"} {
		if a := pupil.get("/coaching/looks?page=" + page); a.status != http.StatusNotFound {
			t.Errorf("page %s: %d", page, a.status)
		}
	}
}
