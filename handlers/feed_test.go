package handlers

import (
	"bytes"
	"html"
	"io"
	"log/slog"
	"net/http"
	"regexp"
	"strings"
	"testing"

	"strokeledger/db/dbtest"
)

// feedAt is the path of the feed whose address a page shows.
func (v visitor) feedAt(page answer) string {
	v.t.Helper()
	at := regexp.MustCompile(`<code>http://[^/]+(/notices/feed[^<]+)</code>`).FindStringSubmatch(page.body)
	if at == nil {
		v.t.Fatalf("no address: %d %s", page.status, page.body)
	}
	return html.UnescapeString(at[1])
}

// asks asks for a path with a header, and returns the answer with its headers.
func (v visitor) asks(path, header, value string) (*http.Response, string) {
	v.t.Helper()
	r, err := http.NewRequest(http.MethodGet, v.URL+path, nil)
	if err != nil {
		v.t.Fatal(err)
	}
	if header != "" {
		r.Header.Set(header, value)
	}
	got, err := v.client.Do(r)
	if err != nil {
		v.t.Fatal(err)
	}
	defer got.Body.Close()
	body, err := io.ReadAll(got.Body)
	if err != nil {
		v.t.Fatal(err)
	}
	return got, string(body)
}

// The feed is read without a session by whoever has its address, which is shown once,
// stored as a hash and never logged; it ends at once, and marks nothing as read.
func TestFeed(t *testing.T) {
	var log bytes.Buffer
	s := newSite(t, Options{SignUp: SignUpOpen, Log: slog.New(slog.NewTextHandler(&log, nil))})
	pupil, coach := s.coached()
	coach.follows("/players/1/notes", "round", "1", "on", "1.2", "body", "The safe side of 150.")
	made := pupil.post("/account/feed", "feed", "on")
	at := pupil.feedAt(made)
	if page := pupil.get("/account"); strings.Contains(page.body, "token=") || !strings.Contains(page.body, "The feed is on.") {
		t.Error("the address is shown again, or the feed is not on")
	}
	reader := s.visitor()
	got, body := reader.asks(at, "", "")
	for name, want := range map[string]string{"Content-Type": "application/atom+xml; charset=utf-8", "Cache-Control": "private, no-cache"} {
		if got.StatusCode != 200 || got.Header.Get(name) != want {
			t.Errorf("%d %s: %q", got.StatusCode, name, got.Header.Get(name))
		}
	}
	if !strings.Contains(body, "<title>ines has written a note.</title>") || !strings.Contains(body, s.URL+"/rounds/1#note-1") || len(got.Cookies()) != 0 {
		t.Errorf("%s", body)
	}
	for _, not := range []string{"The safe side", "robin", "token", "r150"} {
		if strings.Contains(body, not) {
			t.Errorf("the feed says %q: %s", not, body)
		}
	}
	pupil.mustSee(pupil.get("/account"), "Notices <b>2</b>") // asked and a note, both still new
	tag := got.Header.Get("ETag")
	for _, have := range []string{tag, "W/" + tag, `"other", ` + tag, "*"} {
		if again, body := reader.asks(at, "If-None-Match", have); again.StatusCode != http.StatusNotModified || body != "" || again.Header.Get("ETag") != tag {
			t.Errorf("with %s: %d", have, again.StatusCode)
		}
	}
	coach.follows("/players/1/notes", "day", "2026-05-02", "body", "The grip.")
	if again, _ := reader.asks(at, "If-None-Match", tag); again.StatusCode != 200 {
		t.Errorf("after another notice: %d", again.StatusCode)
	}
	token := at[strings.Index(at, "token=")+len("token="):]
	if strings.Contains(log.String(), token) {
		t.Error("the log has the secret")
	}
	dbtest.Exec(t, s.url, `do $$ begin if (select count(*) from feeds f where octet_length(f.token_hash) = 32 and position('`+token+`' in f::text) = 0) <> 1 then raise 'the database has the secret'; end if; end $$`)
}

// A wrong, renewed or ended secret, one from before the password was changed, and
// another account's get the same answer as any page that is not there; each account
// has its own feed.
func TestFeedIsSecret(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	first := pupil.feedAt(pupil.post("/account/feed", "feed", "on"))
	coachs := coach.feedAt(coach.post("/account/feed", "feed", "on"))
	reader := s.visitor()
	if a := reader.get(coachs); a.status != 200 || !strings.Contains(a.body, "robin has approved you as a coach.") {
		t.Errorf("%d %s", a.status, a.body)
	}
	id := regexp.MustCompile(`<id>[^<]+</id>`).FindString(reader.get(first).body)
	second := pupil.feedAt(pupil.post("/account/feed", "feed", "on"))
	if a := reader.get(second); a.status != 200 || regexp.MustCompile(`<id>[^<]+</id>`).FindString(a.body) != id {
		t.Error("the new address does not work, or makes another feed")
	}
	nothing := reader.get("/nothing/here")
	absent := func(at string) {
		t.Helper()
		if a := reader.get(at); a.status != 404 || a.body != nothing.body {
			t.Errorf("%s: %d %s", at, a.status, a.body)
		}
	}
	absent(first)
	absent(strings.Replace(second, "player=1", "player=2", 1))
	absent(strings.Replace(second, "player=1", "player=9", 1))
	absent("/notices/feed?player=1&token=")
	absent("/notices/feed")
	if a := pupil.follows("/account/feed", "feed", "off"); !strings.Contains(a.body, "The feed is off.") || !strings.Contains(a.body, "Turn the feed on") {
		t.Errorf("%d %s", a.status, a.body)
	}
	absent(second)
	third := pupil.feedAt(pupil.post("/account/feed", "feed", "on"))
	pupil.mustSee(pupil.follows("/account/password", "password", password, "new", "seven irons in march"), "an address of a feed no longer works")
	absent(third)
	coach.post("/account/delete", "confirm", password)
	absent(coachs)
}

// A client that asks for feeds too often has to wait.
func TestFeedIsLimited(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	reader := s.visitor()
	for range feedMost {
		reader.get("/notices/feed?player=1&token=A")
	}
	if a := reader.get("/notices/feed?player=1&token=A"); a.status != http.StatusTooManyRequests {
		t.Errorf("%d", a.status)
	}
}
