package handlers

import (
	"net/http"
	"strings"
	"testing"
)

// balls is the form of the run-out book with some pairs.
func balls(pairs string) []string {
	return []string{"pairs", pairs, "club", "pw", "lie", "fairway", "green", "medium", "unit", "paces", "day", "2026-05-02", "entered", "page " + pairs}
}

// Balls are entered in pairs, sent twice they are stored once, and the book answers
// where to land a chip. Common practice: 12 and 21, 13 and 23 with one wedge run out
// 9 to 10, and a chip of 23 yd is landed at 13 to 13.5.
func TestTheRunOutBook(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	pupil.mustSee(pupil.get("/players/1/run-out"), "No trials yet.", "Add to the book")
	for range 2 {
		pupil.mustSee(pupil.follows("/players/1/run-out", balls("12 21, 13 23")...), "The trials are in the book.", "2 trials, the last of 2 May 2026.")
	}
	const ask = "/players/1/run-out?distance=23&edge=17&lie=fairway&speed=medium&slope=level"
	for _, v := range []visitor{pupil, coach} {
		v.mustSee(v.get(ask), "23 yd with 17 yd of green: pw, landed at 13.5 yd. It runs 9.5 yd.", "14 paces", "from two trials only", "Card for the bag", "Ends at")
	}
	if a := coach.get("/players/1/run-out"); strings.Contains(a.body, "Add to the book") || strings.Contains(a.body, "/remove") {
		t.Error("the coach is offered to change the book")
	}
	pupil.mustSee(pupil.get("/coaching/looks"), "The run-out book")
	a := pupil.get("/players/1/run-out.csv")
	if want := "club,lie,carry,total,green,day,carry typed,total typed,unit\npw,fairway,12,21,medium,2026-05-02,12,21,paces\n"; !strings.HasPrefix(a.body, want) {
		t.Errorf("%s", a.body)
	}
	if a := pupil.get("/export/everything.json"); !strings.Contains(a.body, `"run_out":[{"day":"2026-05-02","club":"pw","lie":"fairway","green":"medium","carry":12,"total":21,"unit":"paces"}`) {
		t.Errorf("the account file has no trials:\n%s", a.body)
	}
}

// What was typed comes back with what is wrong, by the place of the ball.
func TestTrialsThatAreRefused(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	a := v.post("/players/1/run-out", balls("12 21, 13, 14 24")...)
	if a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, `value="12 21, 13, 14 24"`) || !strings.Contains(a.body, "Ball 2, “13”: two numbers") {
		t.Errorf("%d %s", a.status, a.body)
	}
	if a := v.get("/players/1/run-out"); !strings.Contains(a.body, "No trials yet.") {
		t.Error("some of a refused line was stored")
	}
	v.follows("/players/1/run-out", balls("12 21")...)
	for _, query := range []string{"distance=far&edge=17", "distance=23&edge=24", "distance=23&edge=17&lie=bunker", "distance="} {
		a := v.get("/players/1/run-out?" + query + "&speed=medium&slope=level")
		if a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "Not worked out yet") {
			t.Errorf("%s: %d", query, a.status)
		}
	}
}
