package handlers

import (
	"html"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"
)

// A coach gets access by a link and the pupil's approval, can read but change
// nothing, and finds no page once access has ended.
func TestACoachComesAndGoes(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach, other := s.member("robin"), s.member("ines"), s.member("tam")
	pupil.withRound()
	if a := pupil.post("/coaching/invite", "from", "May"); a.status != http.StatusUnprocessableEntity || strings.Contains(a.body, "/coaching/accept?") {
		t.Errorf("a day that is none makes a link: %d", a.status)
	}
	made := pupil.post("/coaching/invite")
	link := html.UnescapeString(regexp.MustCompile(`/coaching/accept\?[^<]+`).FindString(made.body))
	if link == "" {
		t.Fatal(made.body)
	}
	pages := []string{"/players/1/months", "/players/1/months.csv", "/players/1/months/behind?in=2&row=all", "/players/1/handicap", "/players/1/rounds/1"}
	sees := func(v visitor, who string, want int) {
		t.Helper()
		for _, path := range pages {
			if a := v.get(path); a.status != want {
				t.Errorf("%s gets %d from %s, want %d", who, a.status, path, want)
			}
		}
	}
	sees(coach, "the coach without access", http.StatusNotFound)
	if a := coach.get(link); a.status != http.StatusOK || !strings.Contains(a.body, "robin would like you as a coach") {
		t.Fatalf("%d", a.status)
	}
	_, query, _ := strings.Cut(link, "token=")
	accept := []string{"player", "1", "token", query}
	if a := coach.post("/coaching/accept", accept...); a.status != http.StatusSeeOther {
		t.Fatalf("%d", a.status)
	}
	if a := other.post("/coaching/accept", accept...); a.status != http.StatusGone {
		t.Errorf("the link is used twice: %d", a.status)
	}
	sees(coach, "the coach before the pupil approves", http.StatusNotFound)
	if a := pupil.get("/rounds"); !strings.Contains(a.body, "ines is waiting for you to approve them") {
		t.Error("the pupil's first page does not tell who waits")
	}
	if a := pupil.get("/coaching"); !strings.Contains(a.body, "Approve <bdi>ines</bdi>") || !strings.Contains(a.body, "ines@example.org") {
		t.Error("the pupil is not asked by name and e-mail address")
	}
	if a := coach.post("/coaching/confirm", "coach", "2"); a.status != http.StatusNotFound {
		t.Errorf("the coach confirms alone: %d", a.status)
	}
	if a := pupil.post("/coaching/confirm", "coach", "2"); a.status != http.StatusSeeOther {
		t.Fatalf("%d", a.status)
	}
	sees(coach, "the coach", http.StatusOK)
	sees(pupil, "the pupil", http.StatusOK)
	if a, b := coach.get("/").location, pupil.get("/").location; a != "/coaching" || b != "/rounds" {
		t.Errorf("a coach without rounds begins at %s, the pupil at %s", a, b)
	}
	sees(other, "another", http.StatusNotFound)
	if a := coach.get("/players/1/rounds/1"); strings.Contains(a.body, "Delete the round") || strings.Contains(a.body, "Change this hole") || strings.Contains(a.body, `/note"`) {
		t.Error("the coach is offered to change the round")
	}
	for _, path := range []string{"/rounds/1", "/rounds/1/holes/1"} {
		if a := coach.get(path); a.status != http.StatusNotFound {
			t.Errorf("%s: %d", path, a.status)
		}
	}
	for _, path := range []string{"/rounds/1/remove", "/rounds/1/conditions", "/rounds/1/holes/1"} {
		if a := coach.post(path, "line", "r150 g3", "version", "1"); a.status != http.StatusNotFound {
			t.Errorf("%s: %d", path, a.status)
		}
	}
	if a := pupil.get("/coaching"); !strings.Contains(a.body, "last looked on") {
		t.Error("the pupil does not see when the coach looked")
	}
	if a := pupil.post("/coaching/end", "player", "1", "coach", "2", "sure", "yes"); a.status != http.StatusSeeOther {
		t.Fatalf("%d", a.status)
	}
	sees(coach, "the coach after the end", http.StatusNotFound)
}

// Who opens a link without being signed in comes back to it after signing in,
// once, and only to a page of this site.
func TestALinkOutlivesSigningIn(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	s.member("ines").post("/sign-out")
	v := s.visitor()
	if a := v.get("/coaching/accept?player=1&token=x"); a.location != "/" {
		t.Fatalf("%d %s", a.status, a.location)
	}
	if a := v.post("/sign-in", "email", "ines@example.org", "password", password); a.location != "/coaching/accept?player=1&token=x" {
		t.Errorf("on to %s", a.location)
	}
	if a := v.get("/"); a.location != "/rounds" {
		t.Errorf("a second time to %s", a.location)
	}
	for _, evil := range []string{"//elsewhere.example/", "https://elsewhere.example/", `/\elsewhere.example`} {
		r, err := http.NewRequest(http.MethodGet, s.URL+"/", nil)
		if err != nil {
			t.Fatal(err)
		}
		r.AddCookie(&http.Cookie{Name: returnName, Value: url.QueryEscape(evil)})
		if a := v.ask(r); a.location != "/rounds" {
			t.Errorf("%s leads to %s", evil, a.location)
		}
	}
}

// Links say what became of them, and ending asks, and can be taken back for a day.
func TestLinksAndEndings(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach, other := s.member("robin"), s.member("ines"), s.member("bea")
	pupil.withRound()
	link := func() string {
		made := pupil.post("/coaching/invite", "from", "2026-05-01")
		return html.UnescapeString(regexp.MustCompile(`/coaching/accept\?[^<]+`).FindString(made.body))
	}
	first := link()
	pupil.mustSee(pupil.get(first), "This is your own link.")
	coach.mustSee(coach.get(first), "robin would like you as a coach.", "what robin played from 1 May 2026 on")
	_, token, _ := strings.Cut(first, "token=")
	coach.follows("/coaching/accept", "player", "1", "token", token)
	coach.mustSee(coach.get(first), "robin still has to approve you")
	if a := other.get(first); a.status != 410 || !strings.Contains(a.body, "This link has been used.") {
		t.Errorf("%d", a.status)
	}
	if a := other.post("/coaching/accept", "player", "1", "token", token); a.status != 410 {
		t.Errorf("%d", a.status)
	}
	pupil.follows("/coaching/confirm", "coach", "2")
	second := link()
	pupil.follows("/coaching/revoke")
	if a := other.get(second); a.status != 410 || !strings.Contains(a.body, "robin has withdrawn this link.") {
		t.Errorf("%d", a.status)
	}
	pupil.follows("/coaching/day", "coach", "2", "from", "2026-05-03")
	pupil.mustSee(pupil.get("/coaching"), "can see rounds played from 3 May 2026 on")
	if a := coach.get("/players/1/rounds/1"); a.status != 404 {
		t.Errorf("a round before the new day: %d", a.status)
	}
	if a := pupil.post("/coaching/day", "coach", "2", "from", "May"); a.status != 422 {
		t.Errorf("%d", a.status)
	}
	pupil.follows("/coaching/day", "coach", "2", "from", "")
	pupil.mustSee(pupil.post("/coaching/end", "player", "1", "coach", "2"), "End the access of ines?")
	if a := coach.get("/players/1"); a.status != 200 {
		t.Errorf("asking ends it: %d", a.status)
	}
	pupil.follows("/coaching/end", "player", "1", "coach", "2", "sure", "yes")
	if a := coach.get("/players/1"); a.status != 404 {
		t.Errorf("after the end: %d", a.status)
	}
	pupil.mustSee(pupil.get("/coaching"), "You ended the access of ines.")
	if a := coach.post("/coaching/resume", "player", "1", "coach", "2"); a.status != 404 {
		t.Errorf("the coach takes back what the pupil ended: %d", a.status)
	}
	pupil.follows("/coaching/resume", "player", "1", "coach", "2")
	if a := coach.get("/players/1/rounds/1"); a.status != 200 {
		t.Errorf("taken back: %d", a.status)
	}
}

// A coach who has access and accepts another link is told so, and so is the pupil:
// nobody waits for an approval.
func TestAnotherLinkOfACoachWithAccess(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.member("robin"), s.member("ines")
	coach.letIn(pupil, 1, 2, "2026-06-01")
	pupil.get("/notices")
	for _, c := range []struct{ from, told string }{
		{"2026-07-01", "has accepted your link, and now sees what was played from 1 Jun 2026 on."},
		{"2026-05-01", "has accepted your link, and now sees what was played from 1 May 2026 on."},
		{"", "has accepted your link, and now sees everything."},
	} {
		coach.mustSee(coach.follows("/coaching/accept", "player", "1", "token", pupil.linkFrom(c.from)), "You have access already, and an earlier first day applies at once.")
		told := pupil.get("/notices")
		if pupil.mustSee(told, c.told); strings.Count(told.body, "waits for you to approve") != 1 { // the first link
			t.Errorf("after a link from %q the pupil is asked to approve again", c.from)
		}
	}
}
