package handlers

import (
	"net/http"
	"net/url"
	"strings"
	"testing"
)

func TestFirstAccountNeedsTheSetupToken(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpInvitation, SetupToken: "sesame"})
	v := s.visitor()
	fields := []string{"name", "Steward", "email", "s@example.org", "password", password, "token"}
	if a := v.post("/join", append(fields, "wrong")...); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "setup token") {
		t.Errorf("%d", a.status)
	}
	if a := v.post("/join", append(fields, "sesame")...); a.status != http.StatusSeeOther {
		t.Fatalf("%d %s", a.status, a.body)
	}
	if a := s.visitor().post("/join", append(fields, "sesame")...); a.status == http.StatusSeeOther {
		t.Error("the setup token worked twice")
	}
	a := v.post("/account/invite")
	_, link, found := strings.Cut(a.body, "<code>http://")
	if !found {
		t.Fatalf("%d %s", a.status, a.body)
	}
	link, _, _ = strings.Cut(link, "</code>")
	_, token, _ := strings.Cut(link, "token=")
	pupil := s.visitor()
	if a := pupil.get("/join?token=" + token); a.status != http.StatusOK {
		t.Errorf("%d", a.status)
	}
	join := func(v visitor, name string) int {
		return v.post("/join", "name", name, "email", name+"@example.org", "password", password, "token", token).status
	}
	if got := join(pupil, "one"); got != http.StatusSeeOther {
		t.Errorf("%d", got)
	}
	if got := join(s.visitor(), "two"); got != http.StatusNotFound {
		t.Errorf("the invitation made a second account: %d", got)
	}
}

func TestDeletingTheAccount(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	v.withRound()
	if a := v.post("/account/delete", "confirm", "wrong"); a.status != http.StatusUnprocessableEntity {
		t.Errorf("%d", a.status)
	}
	if a := v.post("/account/delete", "confirm", password); a.status != http.StatusSeeOther {
		t.Errorf("%d", a.status)
	}
	if a := s.visitor().post("/sign-in", "email", "a@example.org", "password", password); a.status != http.StatusUnprocessableEntity {
		t.Errorf("signed in to a deleted account: %d", a.status)
	}
}

func TestForgottenPassword(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpInvitation, SetupToken: "sesame"})
	steward := s.visitor()
	if a := steward.post("/join", "name", "Steward", "email", "s@example.org", "password", password, "token", "sesame"); a.status != http.StatusSeeOther {
		t.Fatalf("%d", a.status)
	}
	v := s.member("a")
	a := steward.post("/accounts/2/reset")
	_, link, found := strings.Cut(a.body, "<code>"+s.URL)
	if !found {
		t.Fatalf("%d %s", a.status, a.body)
	}
	link, _, _ = strings.Cut(strings.ReplaceAll(link, "&amp;", "&"), "</code>")
	if got := v.get("/rounds"); !strings.Contains(got.body, "The steward made a link") {
		t.Error("the player is not told")
	}
	if got := v.get("/rounds"); strings.Contains(got.body, "The steward made a link") {
		t.Error("the player is told twice")
	}
	where, err := url.Parse(link)
	if err != nil {
		t.Fatal(err)
	}
	token := where.Query().Get("token")
	out := s.visitor()
	if got := out.get(link); got.status != http.StatusOK {
		t.Errorf("%d", got.status)
	}
	for i, want := range []int{http.StatusSeeOther, http.StatusNotFound} {
		if got := out.post("/reset", "player", "2", "token", token, "password", "another password"); got.status != want {
			t.Errorf("use %d: %d", i+1, got.status)
		}
	}
	if got := v.get("/rounds"); got.status != http.StatusSeeOther {
		t.Error("still signed in with the old password")
	}
	if got := out.post("/sign-in", "email", "a@example.org", "password", "another password"); got.status != http.StatusSeeOther {
		t.Errorf("%d", got.status)
	}
}
