package handlers

import (
	"net/http"
	"strings"
	"testing"
)

// A round is set beside the plan: what another club costs is what it costs on average,
// the same wherever the ball went. The statement leads there once a hole is drawn, and
// works nothing out.
func TestPlannedAndPlayed(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	statement := v.withRound()
	const at = "/players/1/play/1/rounds/1"
	if a := v.get(statement); strings.Contains(a.body, at) {
		t.Error("a round on a course without drawings is to be compared with its plan")
	}
	v.mustSee(v.get(at), "there is no plan to compare with", `href="/courses/1/pictures"`)
	v.drawsHoles()
	v.mustSee(v.get(statement), `href="`+at+`">Compare with the plan`)
	if n := len(s.server.worked.kept); n != 0 {
		t.Errorf("the statement worked %d answers out", n)
	}
	v.mustSee(v.patient("/players/1/play/1"), "After a round", `href="`+at+`"`)
	v.mustSee(v.patient(at), "Planned and played, Harrow Fen", "Round of 2 May 2026. The plan is today’s.", "No club entered.", `href="/rounds/1/holes/1/shots"`)
	version := "1"
	costs := map[string]bool{}
	for _, line := range []string{"t/hybrid f150 g20 2", "t/hybrid v200 r150 f60 g20 3"} {
		if a := v.post("/rounds/1/holes/1", "line", line, "version", version, "press", "save", "anyway", "all"); a.status != http.StatusSeeOther {
			t.Fatalf("%d %s", a.status, a.body)
		}
		version = "2"
		a := v.patient(at)
		v.mustSee(a, "A different club from the plan’s was played on the 1st. On average that costs", "<b>hybrid</b>")
		_, rest, _ := strings.Cut(a.body, `<b data-sum="left">`)
		cost, _, _ := strings.Cut(rest, "<")
		costs[cost] = true
	}
	if len(costs) != 1 || costs[""] {
		t.Errorf("the same club costs %v", costs)
	}
	for _, path := range []string{"/players/1/play/1/rounds/2", "/players/1/play/2/rounds/1", "/players/2/play/1/rounds/1"} {
		if a := v.get(path); a.status != http.StatusNotFound {
			t.Errorf("%s: %d", path, a.status)
		}
	}
}

// A round that was played elsewhere is compared with no other plan.
func TestARoundIsComparedWithItsOwnCourse(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	v.withRound()
	if a := v.post("/courses/new", "name", "Old Ford", "holes", "3", "anyway", "holes:3", "paste", "4 384\n3 158\n5 498\n"); a.status != http.StatusSeeOther {
		t.Fatalf("%d %s", a.status, a.body)
	}
	if a := v.get("/players/1/play/2/rounds/1"); a.status != http.StatusNotFound {
		t.Errorf("%d", a.status)
	}
}
