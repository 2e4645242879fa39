package handlers

import (
	"net/http"
	"net/url"
	"strings"
	"testing"
)

// Whatever is saved, the next page says so.
func TestEverySaveSaysSo(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.member("robin"), s.member("ines")
	pupil.withRound()
	link := pupil.post("/coaching/invite")
	_, token, found := strings.Cut(link.body, "token=")
	if !found {
		t.Fatal("no link")
	}
	token = token[:strings.IndexAny(token, "<&\"")]
	for _, c := range []struct {
		who    visitor
		path   string
		fields []string
		says   string
	}{
		{coach, "/coaching/accept", []string{"player", "1", "token", token}, "You have accepted. You get access once your pupil approves you."},
		{pupil, "/coaching/confirm", []string{"coach", "2"}, "Your coach now has access."},
		{pupil, "/rounds/1/holes/1/shots", []string{"club", "d", "miss", "left", "word", "", "club", "", "miss", "", "word", "", "club", "", "miss", "", "word", "", "club", "", "miss", "", "word", ""}, "Clubs and notes are saved."},
		{pupil, "/marks", []string{"day", "2026-06-01", "what", "A new driver"}, "The day is marked."},
		{pupil, "/marks/1/remove", nil, "The mark is removed."},
		{coach, "/players/1/notes", []string{"round", "1", "body", "The safe side."}, "The note is saved."},
		{pupil, "/players/1/notes", []string{"round", "1", "body", "Which?"}, "Your coach can see your question."},
		{pupil, "/players/1/notes/1/replies", []string{"body", "Which?"}, "The reply is saved."},
		{coach, "/players/1/assignments", []string{"what", "Start line", "due", "2092-09-01"}, "The practice is set."},
		{pupil, "/players/1/assignments/1/results", []string{"day", "2026-08-01", "result", "7 of 10"}, "The result is recorded."},
		{pupil, "/rounds/1/conditions", []string{"conditions", "Windy"}, "The card and conditions are saved."},
		{pupil, "/account", []string{"name", "robin", "target", "82", "boundary", "50", "far", "yd", "green", "ft", "clubs", ""}, "Your settings are saved."},
		{pupil, "/account/devices/others", nil, "All other devices are signed out."},
		{pupil, "/coaching/revoke", nil, "Unused links no longer work."},
		{pupil, "/coaching/end", []string{"player", "1", "coach", "2", "sure", "yes"}, "Access has ended."},
	} {
		a := c.who.post(c.path, c.fields...)
		if a.status != http.StatusSeeOther {
			t.Errorf("%s: %d", c.path, a.status)
			continue
		}
		at, err := url.Parse(a.location)
		if err != nil {
			t.Fatal(err)
		}
		if got := c.who.get(at.RequestURI()); !strings.Contains(got.body, `<p class="notice" role="status">`+c.says) {
			t.Errorf("%s leads to %s, which does not say %q", c.path, a.location, c.says)
		}
	}
}

// One button signs out every device but the one in hand.
func TestOtherDevicesAreSignedOut(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	here, there := s.member("robin"), s.visitor()
	if a := there.post("/sign-in", "email", "robin@example.org", "password", password); a.status != http.StatusSeeOther {
		t.Fatalf("%d", a.status)
	}
	other := s.member("bea")
	if a := here.get("/account"); !strings.Contains(a.body, "Sign out the others") {
		t.Error("it is not offered")
	}
	here.post("/account/devices/others")
	if a := there.get("/account"); a.status != http.StatusSeeOther {
		t.Errorf("the other device: %d", a.status)
	}
	for _, v := range []visitor{here, other} {
		if a := v.get("/account"); a.status != http.StatusOK || strings.Contains(a.body, "Sign out the others") {
			t.Errorf("%d", a.status)
		}
	}
}
