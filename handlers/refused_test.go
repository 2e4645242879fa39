package handlers

import (
	"net/http"
	"strings"
	"testing"
)

func TestOtherSitesMayNotPost(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	r, err := http.NewRequest(http.MethodPost, v.URL+"/sign-out", nil)
	if err != nil {
		t.Fatal(err)
	}
	r.Header.Set("Origin", "https://elsewhere.example")
	r.Header.Set("Sec-Fetch-Site", "cross-site")
	if a := v.ask(r); a.status != http.StatusForbidden {
		t.Errorf("%d", a.status)
	}
	if a := v.get("/rounds"); a.status != http.StatusOK {
		t.Errorf("signed out by another site: %d", a.status)
	}
}

func TestAddressesThatAreNone(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	round := v.withRound()
	for _, path := range []string{"/rounds/x", "/rounds/0", "/rounds/99", round + "/holes/19", round + "/holes/x", "/courses/77", "/nothing", "/rounds/99999999999999999999"} {
		if a := v.get(path); a.status != http.StatusNotFound || !strings.Contains(a.body, "Not found") {
			t.Errorf("%s: %d", path, a.status)
		}
	}
}
