package handlers

import (
	"fmt"
	"net/http"
	"strings"
	"testing"
)

// card18 is a card of eighteen par threes.
func card18() string {
	var b strings.Builder
	for i := range 18 {
		fmt.Fprintf(&b, "3 %d\n", 120+i)
	}
	return b.String()
}

// A round begins at any hole, goes on in the order of play, past the end of the
// card, and is gone on with there.
func TestAShotgunStart(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	v.post("/courses/new", "name", "Fen", "holes", "18", "paste", card18())
	at := v.post("/rounds/new", "course", "1", "date", "2026-05-02", "first_hole", "17").location
	if at != "/rounds/1/holes/17" {
		t.Fatalf("begins at %s", at)
	}
	for _, want := range []string{"/rounds/1/holes/18", "/rounds/1/holes/1", "/rounds/1/holes/2"} {
		a := v.post(at, "line", "=3", "version", "0")
		if a.location != want {
			t.Errorf("%s goes on with %s, want %s", at, a.location, want)
		}
		at = a.location
	}
	v.post("/rounds/1/holes/5", "line", "=3", "version", "0")
	if a := v.get("/rounds/new"); !strings.Contains(a.body, `href="/rounds/1/holes/2"`) {
		t.Error("it is not gone on with at hole 2")
	}
	if a := v.get("/rounds/1"); !strings.Contains(a.body, `href="/rounds/1/holes/2">Enter the next hole`) {
		t.Error("the statement does not go on at hole 2")
	}
}

// The back nine alone has holes 10 to 18.
func TestTheBackNineAlone(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	v.post("/courses/new", "name", "Fen", "holes", "18", "paste", card18())
	if a := v.post("/rounds/new", "course", "1", "date", "2026-05-02", "first_hole", "1", "part", "back"); a.location != "/rounds/1/holes/10" {
		t.Fatalf("%d to %s", a.status, a.location)
	}
	if a := v.get("/rounds/1/holes/9"); a.status != http.StatusNotFound {
		t.Errorf("hole 9: %d", a.status)
	}
	at := "/rounds/1/holes/10"
	for range 9 {
		at = v.post(at, "line", "=3", "version", "0").location
	}
	if at != "/rounds/1?saved=round" {
		t.Errorf("after the last: %s", at)
	}
	if a := v.get(at); strings.Contains(a.body, "not entered yet") || !strings.Contains(a.body, "par 27") {
		t.Errorf("%d %s", a.status, a.body)
	}
}

// What is wrong stands beside its field in the form that was sent, and nothing
// is made.
func TestABeginningThatIsWrong(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	v.post("/courses/new", "name", "Fen", "holes", "2", "anyway", "holes:2", "paste", "3 120\n3 130\n")
	for _, c := range []struct {
		fields []string
		wrong  []string
	}{
		{[]string{"course", "1", "date", "May", "first_hole", "x", "conditions", strings.Repeat("x", 301)}, []string{`id="date-wrong"`, `id="first_hole-wrong"`, `id="conditions-wrong"`, `value="x"`}},
		{[]string{"course", "9", "date", "2026-05-02"}, []string{"Choose a course."}},
		{[]string{"course", "1", "date", "2026-05-02", "part", "back"}, []string{"The course has no such holes."}},
		{[]string{"course", "1", "date", "2026-05-02", "first_hole", "5"}, []string{"Allowed: 1 to 2."}},
		{[]string{"new_course", "", "new_holes", "20", "date", "May"}, []string{`id="new_course-wrong"`, `id="new_holes-wrong"`, `id="new_date-wrong"`}},
	} {
		a := v.post("/rounds/new", c.fields...)
		for _, want := range c.wrong {
			if a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, want) {
				t.Errorf("%v: %d, no %s", c.fields, a.status, want)
			}
		}
	}
	if a := v.get("/courses/2"); a.status != http.StatusNotFound {
		t.Error("a course was made of what was refused")
	}
	if a := v.get("/rounds/1"); a.status != http.StatusNotFound {
		t.Error("a round was made of what was refused")
	}
}
