package handlers

import (
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"strokeledger/db/dbtest"
)

// script posts a form as the page's script does and reads the answer.
func (v visitor) script(path string, fields ...string) (int, scriptAnswer, savedHole) {
	v.t.Helper()
	form := url.Values{}
	for i := 0; i+1 < len(fields); i += 2 {
		form.Add(fields[i], fields[i+1])
	}
	r, err := http.NewRequest(http.MethodPost, v.URL+path, strings.NewReader(form.Encode()))
	if err != nil {
		v.t.Fatal(err)
	}
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	r.Header.Set("Accept", "application/json")
	a := v.ask(r)
	var refused scriptAnswer
	var done savedHole
	if err := json.Unmarshal([]byte(a.body), &refused); err != nil {
		v.t.Fatalf("%s: no JSON: %s", path, a.body)
	}
	if err := json.Unmarshal([]byte(a.body), &done); err != nil {
		v.t.Fatal(err)
	}
	return a.status, refused, done
}

// A save without the version that its page showed is refused, never taken for
// “overwrite”.
func TestASaveWithoutAVersionIsRefused(t *testing.T) {
	v := newSite(t, Options{SignUp: SignUpOpen}).member("a")
	round := v.withRound()
	for _, version := range []string{"", "x", "1.5"} {
		if a := v.post(round+"/holes/1", "line", "r140 g20 2", "version", version, "press", "save"); a.status != http.StatusBadRequest {
			t.Errorf("version %q: %d", version, a.status)
		}
	}
	if body := v.get(round + "/holes/1").body; !strings.Contains(body, `value="r150 g20 2"`) {
		t.Error("the hole was overwritten")
	}
}

// After the session ended a script is told so, and a form brings its line back
// when its player has signed in again.
func TestALineOutlivesItsSession(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	round := v.withRound()
	v.post("/sign-out")
	if status, refused, _ := v.script(round+"/holes/2", "line", "g15 2", "version", "0", "press", "save"); status != http.StatusUnauthorized || refused.Error == "" {
		t.Errorf("a script is told %d %+v", status, refused)
	}
	if status, _, _ := v.script(round+"/holes/2/echo", "line", "g15"); status != http.StatusUnauthorized {
		t.Errorf("an echo is told %d", status)
	}
	if a := v.post(round+"/holes/2", "line", "g15 2", "version", "0", "press", "save"); a.status != http.StatusSeeOther || a.location != "/?again" {
		t.Fatalf("%d %s", a.status, a.location)
	}
	if body := v.get("/?again").body; !strings.Contains(body, "You were signed out") {
		t.Error("the front page does not say why")
	}
	a := v.post("/sign-in", "email", "a@example.org", "password", password)
	if a.status != http.StatusSeeOther || !strings.HasPrefix(a.location, round+"/holes/2?") {
		t.Fatalf("%d %s", a.status, a.location)
	}
	if body := v.get(a.location).body; !strings.Contains(body, `value="g15 2"`) || !strings.Contains(body, "Saved: hole 1, 4 strokes.") {
		t.Error("the line is not in the field, or it was saved")
	}
}

// What is unlikely is asked once, about the very line, and then saved.
func TestTheUnlikelyIsAskedNotRefused(t *testing.T) {
	v := newSite(t, Options{SignUp: SignUpOpen}).member("a")
	at := v.withRound() + "/holes/2" // a par 3 of 158 yd
	a := v.post(at, "line", "f400 g3 2", "version", "0", "press", "save")
	if a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "longer than") || !strings.Contains(a.body, "Save anyway") || !strings.Contains(a.body, `name="asked" value="f400 g3 2"`) {
		t.Fatalf("%d %s", a.status, a.body)
	}
	if a := v.post(at, "line", "f500 g3 2", "version", "0", "press", "anyway", "asked", "f400 g3 2"); a.status != http.StatusUnprocessableEntity {
		t.Errorf("another line was saved on the answer to the first: %d", a.status)
	}
	if a := v.post(at, "line", "f400 g3 2", "version", "0", "press", "anyway", "asked", "f400 g3 2"); a.status != http.StatusSeeOther {
		t.Errorf("%d", a.status)
	}
	status, refused, _ := v.script(strings.Replace(at, "2", "3", 1), "line", "f250 g95 2", "version", "0", "press", "save")
	if status != http.StatusUnprocessableEntity || !strings.Contains(refused.HTML, "95 ft") {
		t.Errorf("a script is asked %d %+v", status, refused)
	}
}

// Two windows: both versions are shown, and either can be kept.
func TestBothVersionsOfAHole(t *testing.T) {
	v := newSite(t, Options{SignUp: SignUpOpen}).member("a")
	at := v.withRound() + "/holes/2"
	v.post(at, "line", "g15 2", "version", "0", "press", "save")
	a := v.post(at, "line", "g18 3 1", "version", "0", "press", "save")
	for _, want := range []string{"also saved in another window", `<b>g15</b>`, `<b>g18</b>`, `name="version" value="1"`, `value="g18 3 1"`, "Keep mine", "Keep the other"} {
		if a.status != http.StatusConflict || !strings.Contains(a.body, want) {
			t.Errorf("%d: no %s", a.status, want)
		}
	}
	status, refused, _ := v.script(at, "line", "g18 3 1", "version", "0", "press", "save")
	if status != http.StatusConflict || refused.Version == nil || *refused.Version != 1 || !strings.Contains(refused.HTML, "Keep mine") {
		t.Errorf("a script is told %d %+v", status, refused)
	}
	if a := v.post(at, "line", "g18 3 1", "version", "1", "press", "theirs"); a.status != http.StatusSeeOther || a.location != at {
		t.Errorf("take the other: %d %s", a.status, a.location)
	}
	if body := v.get(at).body; !strings.Contains(body, `value="g15 2"`) {
		t.Error("the other was not kept")
	}
	if status, _, done := v.script(at, "line", "g18 3 1", "version", "1", "press", "mine"); status != http.StatusOK || done.Version != 2 || done.Score != "4" || !strings.HasSuffix(done.Next, "/holes/3") {
		t.Errorf("keep mine: %d %+v", status, done)
	}
}

// A saved hole and the page after it take at most twelve trips to the database,
// and a session is recorded once a minute at the most.
func TestTripsOfASavedHole(t *testing.T) {
	store, trips := dbtest.Counted(t)
	s := testSite{httptest.NewServer(New(store, Options{SignUp: SignUpOpen, Hash: testCost})), nil, store, "", t}
	defer s.Close()
	v := s.member("a")
	at := v.withRound()
	trips.Store(0)
	status, _, done := v.script(at+"/holes/2", "line", "g15 2", "version", "0", "press", "save")
	if status != http.StatusOK {
		t.Fatal(status)
	}
	saving := trips.Swap(0)
	if a := v.get(done.Next); a.status != http.StatusOK {
		t.Fatal(a.status)
	}
	page := trips.Swap(0)
	t.Logf("a save %d trips, the page %d", saving, page)
	if saving+page > 12 {
		t.Errorf("%d and %d trips", saving, page)
	}
	if status, _, _ := v.script(at+"/holes/3/echo", "line", "f2"); status != http.StatusOK {
		t.Fatal(status)
	}
	if n := trips.Swap(0); n > 4 {
		t.Errorf("an echo took %d trips", n)
	}
	if a := v.post(at+"/holes/3", "line", "r150 g20 2", "version", "0", "press", "save"); a.status != http.StatusSeeOther {
		t.Fatal(a.status)
	}
	if n := trips.Load(); n > saving {
		t.Errorf("a save without script took %d trips, one with it %d: a redirect asks for nothing that a page shows", n, saving)
	}
}

// The cookie slides with the session: a use that is noted gives it another 60
// days.
func TestTheCookieSlides(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	cookies := func() string {
		r, err := http.NewRequest(http.MethodGet, v.URL+"/rounds", nil)
		if err != nil {
			t.Fatal(err)
		}
		got, err := v.client.Do(r)
		if err != nil {
			t.Fatal(err)
		}
		got.Body.Close()
		return got.Header.Get("Set-Cookie")
	}
	if got := cookies(); got != "" {
		t.Errorf("a use within the minute sets %q", got)
	}
	dbtest.Exec(t, s.url, "update sessions set seen_at = seen_at - interval '2 minutes'")
	if got := cookies(); !strings.HasPrefix(got, "ledger=") || !strings.Contains(got, "Max-Age=5184000") {
		t.Errorf("a use after two minutes sets %q", got)
	}
	if got := cookies(); got != "" {
		t.Errorf("the next use sets %q", got)
	}
}
