package handlers

import (
	"log/slog"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/go-chi/chi/v5"
)

// Every route that the router knows: who may, who may not. A route that is not
// in the table fails the test.
func TestAccess(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen, SetupToken: "token"})
	owner, stranger, nobody := s.member("owner"), s.member("stranger"), s.visitor()
	owner.withRound()
	type who struct{ owner, stranger, nobody int }
	open, own, private := who{200, 200, 200}, who{200, 404, 303}, who{200, 200, 303}
	table := map[string]who{
		"GET /healthz": open, "GET /readyz": open, "GET /static/{file}": {404, 404, 404},
		"GET /": {303, 303, 200}, "GET /join": open, "POST /join": {422, 422, 422}, "POST /sign-in": {422, 422, 422},
		"GET /rounds": private, "GET /rounds/new": private, "POST /rounds/new": {422, 422, 303},
		"GET /courses": private, "GET /courses/new": private, "POST /courses/new": {422, 422, 303},
		"GET /courses/{course}": private, "POST /courses/{course}": {422, 422, 303},
		"GET /account": private, "POST /account": {422, 422, 303}, "POST /account/password": {422, 422, 303},
		"POST /account/devices": {404, 404, 303}, "POST /account/delete": {422, 422, 303}, "POST /account/invite": {404, 404, 303},
		"GET /accounts": {404, 404, 303}, "POST /accounts/{player}/reset": {404, 404, 303}, "GET /reset": open, "POST /reset": {422, 422, 422},
		"GET /export/shots.csv": private, "GET /export/everything.json": private, "GET /import": private, "POST /import": {422, 422, 303}, "POST /import/confirm": {404, 404, 303},
		"GET /rounds/{round}": own, "GET /rounds/{round}/holes/{hole}": own, "POST /rounds/{round}/holes/{hole}": {422, 404, 303},
		"GET /rounds/{round}/holes/{hole}/shots": own, "POST /rounds/{round}/holes/{hole}/shots": {422, 404, 303}, "POST /rounds/{round}/note": {303, 404, 303},
		"POST /rounds/{round}/holes/{hole}/echo": own,
		"POST /rounds/{round}/remove":            {303, 404, 303}, "POST /rounds/{round}/restore": {303, 404, 303},
		"GET /coaching": private, "POST /coaching/invite": {200, 200, 303}, "POST /coaching/revoke": {303, 303, 303},
		"GET /coaching/accept": {404, 404, 303}, "POST /coaching/accept": {404, 404, 303}, "POST /coaching/confirm": {404, 404, 303}, "POST /coaching/end": {404, 404, 303},
		"GET /players/{player}/rounds/{round}": own,
		"GET /months":                          {303, 303, 303}, "POST /marks": {422, 422, 303}, "POST /marks/{mark}/remove": {404, 404, 303},
		"GET /players/{player}/months": own, "GET /players/{player}/handicap": own, "GET /players/{player}/months.csv": own, "GET /players/{player}/months/behind": {404, 404, 303},
		"POST /sign-out": {303, 303, 303},
	}
	server := &server{store: s.store, options: Options{SignUp: SignUpOpen}, hashes: make(chan struct{}, 1)}
	routes, last := []string{}, []string{}
	err := chi.Walk(server.routes().(chi.Routes), func(method, route string, _ http.Handler, _ ...func(http.Handler) http.Handler) error {
		name := method + " " + route
		if _, known := table[name]; !known {
			t.Errorf("%s has no row", name)
		}
		switch name {
		case "POST /sign-out", "POST /rounds/{round}/remove":
			last = append(last, name)
		case "POST /rounds/{round}/restore":
			last = append(last, name)
		default:
			routes = append(routes, name)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(routes)+len(last) != len(table) {
		t.Errorf("%d routes, %d rows", len(routes)+len(last), len(table))
	}
	check := func(name string, v visitor, as string, want int) {
		method, route, _ := strings.Cut(name, " ")
		path := strings.NewReplacer("{round}", "1", "{hole}", "1", "{course}", "1", "{player}", "1", "{file}", "none.css").Replace(route)
		got := answer{}
		if method == http.MethodGet {
			got = v.get(path)
		} else {
			got = v.post(path)
		}
		if got.status != want {
			t.Errorf("%s as %s: %d, want %d", name, as, got.status, want)
		}
	}
	for _, name := range append(routes, "POST /rounds/{round}/remove", "POST /rounds/{round}/restore", "POST /sign-out") {
		check(name, nobody, "nobody", table[name].nobody)
		check(name, stranger, "a stranger", table[name].stranger)
		check(name, owner, "the owner", table[name].owner)
	}
}

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

// A database that is gone is a page that says what to do.
func TestADatabaseThatIsGone(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	s.store.Close()
	for _, path := range []string{"/", "/rounds", "/readyz"} {
		if a := v.get(path); a.status != http.StatusServiceUnavailable || !strings.Contains(a.body, "try again in a minute") || strings.Contains(a.body, "closed pool") {
			t.Errorf("%s: %d %s", path, a.status, a.body)
		}
	}
	if a := v.get("/healthz"); a.status != http.StatusOK {
		t.Errorf("the process itself is well, and says %d", a.status)
	}
}

func TestAPanicBecomesAPage(t *testing.T) {
	s := &server{options: Options{Log: slog.New(slog.DiscardHandler)}}
	w := httptest.NewRecorder()
	s.identify(s.recovered(http.HandlerFunc(func(http.ResponseWriter, *http.Request) { panic("a bug") }))).ServeHTTP(w, httptest.NewRequest(http.MethodGet, "/", nil))
	if body := w.Body.String(); w.Code != http.StatusInternalServerError || !strings.Contains(body, "Something went wrong here") || !strings.Contains(body, "Request ") || strings.Contains(body, "a bug") {
		t.Errorf("%d %s", w.Code, body)
	}
}
