package handlers

import (
	"context"
	"io"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"net/url"
	"os"
	"strings"
	"testing"

	"strokeledger/db"
	"strokeledger/db/dbtest"
)

func TestMain(m *testing.M) { os.Exit(dbtest.Run(m)) }

// testCost makes hashes that cost next to nothing, since nobody tries to break
// those of tests.
var testCost = HashCost{Memory: 64, Passes: 1, Lanes: 1}

// testSite is a server with a database of its own.
type testSite struct {
	*httptest.Server
	server *server
	store  *db.Store
	url    string // of the database
	t      *testing.T
}

func newSite(t *testing.T, options Options) testSite {
	t.Helper()
	url := dbtest.Copy(t)
	store, err := db.Open(t.Context(), url)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(store.Close)
	if options.Hash == (HashCost{}) {
		options.Hash = testCost
	}
	if options.ChanceRounds == 0 {
		options.ChanceRounds = 200
	}
	server := newServer(store, options)
	s := httptest.NewServer(server.routes())
	t.Cleanup(s.Close)
	return testSite{s, server, store, url, t}
}

// visitor is a browser that follows no redirect by itself.
type visitor struct {
	testSite
	client *http.Client
	from   string // address that a proxy tells; empty for the real one
}

func (s testSite) visitor() visitor {
	jar, err := cookiejar.New(nil)
	if err != nil {
		s.t.Fatal(err)
	}
	return visitor{testSite: s, client: &http.Client{Jar: jar, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}}
}

// answer is what came back.
type answer struct {
	status   int
	location string
	body     string
}

func (v visitor) ask(r *http.Request) answer {
	v.t.Helper()
	if v.from != "" {
		r.Header.Set("X-Forwarded-For", v.from)
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
	return answer{got.StatusCode, got.Header.Get("Location"), string(body)}
}

func (v visitor) get(path string) answer {
	r, err := http.NewRequest(http.MethodGet, v.URL+path, nil)
	if err != nil {
		v.t.Fatal(err)
	}
	return v.ask(r)
}

func (v visitor) post(path string, fields ...string) answer {
	form := url.Values{}
	for i := 0; i+1 < len(fields); i += 2 {
		form.Add(fields[i], fields[i+1])
	}
	r, err := http.NewRequest(http.MethodPost, v.URL+path, strings.NewReader(form.Encode()))
	if err != nil {
		v.t.Fatal(err)
	}
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	return v.ask(r)
}

const password = "a long password"

// member is a visitor with an account, signed in.
func (s testSite) member(name string) visitor {
	s.t.Helper()
	hash, err := newHashing(testCost, 1).hash(context.Background(), "", password)
	if err != nil {
		s.t.Fatal(err)
	}
	p, err := s.store.NewPlayer(context.Background(), name+"@example.org", name, hash)
	if err != nil {
		s.t.Fatal(err)
	}
	if err := s.store.Greet(context.Background(), p.ID, p.Target, p.Units(), p.Zone); err != nil {
		s.t.Fatal(err)
	}
	v := s.visitor()
	if a := v.post("/sign-in", "email", name+"@example.org", "password", password); a.status != http.StatusSeeOther {
		s.t.Fatalf("%s: %d %s", name, a.status, a.body)
	}
	return v
}

// steward is a member who looks after the server.
func (s testSite) steward() visitor {
	s.t.Helper()
	v := s.member("steward")
	dbtest.Exec(s.t, s.url, "update players set steward = true where name = 'steward'")
	return v
}

// withRound gives a member a course and a round with its first hole entered,
// and returns the round's path.
func (v visitor) withRound() string {
	v.t.Helper()
	if a := v.post("/courses/new", "name", "Harrow Fen", "holes", "3", "anyway", "holes:3", "paste", "4 384\n3 158\n5 498\n"); a.status != http.StatusSeeOther {
		v.t.Fatalf("%d %s", a.status, a.body)
	}
	a := v.post("/rounds/new", "course", "1", "date", "2026-05-02")
	if a.status != http.StatusSeeOther || a.location != "/rounds/1/holes/1" {
		v.t.Fatalf("%d %s %s", a.status, a.location, a.body)
	}
	if a := v.post("/rounds/1/holes/1", "line", "r150 g20 2", "version", "0", "press", "save"); a.status != http.StatusSeeOther || a.location != "/rounds/1/holes/2" {
		v.t.Fatalf("%d %s %s", a.status, a.location, a.body)
	}
	return "/rounds/1"
}

// mustSee checks that an answer has texts.
func (v visitor) mustSee(a answer, texts ...string) {
	v.t.Helper()
	for _, text := range texts {
		if !strings.Contains(a.body, text) {
			v.t.Errorf("no %q: %d %s", text, a.status, a.body)
		}
	}
}
