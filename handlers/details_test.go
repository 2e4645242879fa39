package handlers

import (
	"maps"
	"net/http"
	"strings"
	"testing"
)

// detailsOf are the fields of the round of withRound as they are, with some
// changed.
func detailsOf(changed map[string]string) []string {
	all := map[string]string{"day": "2026-05-02", "course": "Harrow Fen", "tee": "", "target": "79", "par18": "72", "conditions": "", "take": "", "first_hole": "1",
		"par-1": "4", "length-1": "384", "index-1": "", "par-2": "3", "length-2": "158", "index-2": "", "par-3": "5", "length-3": "498", "index-3": ""}
	maps.Copy(all, changed)
	var fields []string
	for k, v := range all {
		fields = append(fields, k, v)
	}
	return fields
}

// Day, course, target and card are put right, and it is said.
func TestDetailsOfARound(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	round := v.withRound()
	if a := v.get(round); !strings.Contains(a.body, `href="`+round+`/details"`) {
		t.Error("the statement does not lead there")
	}
	if a := v.get(round + "/details"); a.status != http.StatusOK || !strings.Contains(a.body, `value="2026-05-02"`) || !strings.Contains(a.body, `id="length-3" name="length-3" type="text" value="498"`) {
		t.Errorf("%d %s", a.status, a.body)
	}
	page := v.follows(round+"/details", detailsOf(map[string]string{"day": "2026-04-30", "course": "Quarry Hill", "tee": "yellow", "target": "84,5", "length-1": "400", "index-1": "7", "conditions": "wind"})...)
	for _, want := range []string{"The date, course and target are saved.", "Thursday 30 April 2026", "Quarry Hill, yellow tees, par 12, 1,056 yd", `value="wind"`, "400 yd"} {
		if !strings.Contains(page.body, want) {
			t.Errorf("no %q", want)
		}
	}
	if a := v.get(round + "/details"); !strings.Contains(a.body, `value="84.5"`) || !strings.Contains(a.body, `id="index-1" name="index-1" type="text" value="7"`) {
		t.Error("target or index is not kept")
	}
	if a := v.get(round + "/holes/1"); !strings.Contains(a.body, `value="r150 g20 2"`) {
		t.Error("the line has changed")
	}
	v.follows(round+"/details", detailsOf(map[string]string{"first_hole": "3"})...)
	if a := v.get(round + "/holes/3"); !strings.Contains(a.body, `data-order="3 1 2"`) {
		t.Error("the order of play is not the one that was put right")
	}
	if a := v.post(round+"/details", detailsOf(map[string]string{"first_hole": "9"})...); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "The round has no such hole.") {
		t.Errorf("a hole that was not played: %d", a.status)
	}
}

// Every problem stands beside its field at once and is summed up with links;
// what was typed is kept, and nothing is saved.
func TestDetailsThatAreWrong(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	round := v.withRound()
	wrong := map[string]string{"day": "May", "course": "", "target": "60", "par18": "7", "conditions": strings.Repeat("x", 301), "par-1": "4.5", "length-2": "far", "index-1": "3", "index-3": "3", "take": "77"}
	a := v.post(round+"/details", detailsOf(wrong)...)
	if a.status != http.StatusUnprocessableEntity {
		t.Fatalf("%d", a.status)
	}
	for _, field := range []string{"day", "course", "target", "par18", "conditions", "par-1", "length-2", "index-3", "take"} {
		if !strings.Contains(a.body, `<a href="#`+field+`">`) || !strings.Contains(a.body, `id="`+field+`"`) {
			t.Errorf("%s is not linked", field)
		}
		if field != "take" && !strings.Contains(a.body, `id="`+field+`-wrong"`) {
			t.Errorf("no problem beside %s", field)
		}
	}
	for _, typed := range []string{`value="May"`, `value="60"`, `value="4.5"`, `value="far"`} {
		if !strings.Contains(a.body, typed) {
			t.Errorf("%s is not kept", typed)
		}
	}
	if a := v.get(round + "/details"); !strings.Contains(a.body, `value="2026-05-02"`) {
		t.Error("something was saved")
	}
}

// A course of the server replaces name, tees and card where the holes match;
// lengths that stand as they were shown stay exact in metres.
func TestACourseIsTakenOver(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	round := v.withRound()
	if a := v.post("/courses/new", "name", "Saltmarsh", "tee", "red", "holes", "2", "anyway", "holes:2", "paste", "5 470 3\n4 300 9\n"); a.status != http.StatusSeeOther {
		t.Fatalf("%d %s", a.status, a.body)
	}
	page := v.follows(round+"/details", detailsOf(map[string]string{"take": "2"})...)
	if !strings.Contains(page.body, "Saltmarsh, red tees, par 14, 1,268 yd") {
		t.Error("not taken over")
	}
	v.follows("/account", "name", "A", "target", "79", "boundary", "50", "clubs", "", "far", "m", "green", "m")
	v.follows(round+"/details", detailsOf(map[string]string{"course": "Saltmarsh", "tee": "red", "par-1": "5", "length-1": "429.8", "par-2": "4", "length-2": "274.3", "length-3": "455.4"})...)
	v.follows("/account", "name", "A", "target", "79", "boundary", "50", "clubs", "", "far", "yd", "green", "ft")
	if a := v.get(round); !strings.Contains(a.body, "par 14, 1,268 yd") {
		t.Error("a length changed by being shown in metres")
	}
}
