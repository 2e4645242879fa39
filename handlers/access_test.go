package handlers

import (
	"fmt"
	"net/http"
	"slices"
	"strings"
	"testing"

	"github.com/go-chi/chi/v5"
)

// may are the answers of a route to everybody: the player whose page 1 it is, the
// player's coach, and who may not: a coach whose leave has ended, a coach of
// another player, another player, the steward; and nobody signed in.
type may struct{ owner, coach, others, nobody int }

var (
	open    = may{200, 200, 200, 200}
	private = may{200, 200, 200, 303} // everybody's own
	own     = may{200, 404, 404, 303}
	seen    = may{200, 200, 404, 303}
	typo    = may{422, 422, 422, 303} // everybody's own form, sent empty
	absent  = may{404, 404, 404, 303} // for want of something to do it to
)

// access has a row for every route. Forms are sent empty, so that one which
// somebody may send comes back, or changes nothing that a later row needs.
var access = map[string]may{
	"GET /healthz": open, "GET /readyz": open, "GET /static/{file}": {404, 404, 404, 404},
	"GET /worker.js": open, "GET /manifest.webmanifest": open, "GET /offline": open, "GET /help": open,
	"GET /": {303, 303, 303, 200}, "GET /join": open, "POST /join": {422, 422, 422, 422}, "POST /sign-in": {422, 422, 422, 422},
	"GET /rounds": private, "GET /rounds/new": private, "POST /rounds/new": typo,
	"GET /courses": private, "GET /courses/new": private, "POST /courses/new": typo,
	"GET /courses/{course}": private, "POST /courses/{course}": {422, 404, 404, 303}, "POST /courses/{course}/use-card": {303, 303, 303, 303},
	"POST /courses/{course}/remove": {303, 404, 404, 303}, "POST /courses/{course}/merge": absent,
	"GET /account": private, "POST /account": typo, "POST /account/password": typo,
	"POST /account/devices": absent, "POST /account/devices/others": {303, 303, 303, 303}, "POST /account/delete": typo, "POST /account/invite": absent,
	"GET /accounts": absent, "POST /accounts/{player}/reset": absent, "POST /accounts/{player}/reset/remove": absent,
	"POST /accounts/{player}/steward": absent, "POST /accounts/invitations/remove": absent, "POST /accounts/leave": absent,
	"GET /reset": open, "POST /reset": {422, 422, 422, 422},
	"GET /export/shots.csv": private, "GET /export/everything.json": private, "GET /import": private, "POST /import": typo, "POST /import/confirm": absent,
	"GET /rounds/{round}": own, "GET /rounds/{round}/holes/{hole}": own, "POST /rounds/{round}/holes/{hole}": {400, 404, 404, 303},
	"GET /rounds/{round}/holes/{hole}/shots": own, "POST /rounds/{round}/holes/{hole}/shots": {422, 404, 404, 303}, "POST /rounds/{round}/note": {303, 404, 404, 303},
	"POST /rounds/{round}/holes/{hole}/echo": own, "POST /rounds/{round}/remove": {303, 404, 404, 303},
	"GET /rounds/{round}/details": own, "POST /rounds/{round}/details": {422, 404, 404, 303},
	"GET /removed": private, "POST /removed": absent, "GET /welcome": private, "POST /welcome": typo,
	"GET /months": {303, 303, 303, 303}, "POST /marks": typo, "POST /marks/{mark}/remove": absent,
	"GET /coaching": private, "POST /coaching/invite": private, "POST /coaching/revoke": {303, 303, 303, 303},
	"GET /coaching/accept": absent, "POST /coaching/accept": absent, "POST /coaching/confirm": absent, "POST /coaching/end": absent,
	"GET /coaching/looks": private, "GET /coaching/kept": private, "POST /coaching/kept": absent, "GET /coaching/squad": private,
	"GET /players/{player}/months": seen, "GET /players/{player}/months.csv": seen, "GET /players/{player}/months/behind": absent, "GET /players/{player}/handicap": seen,
	"GET /players/{player}/rounds": {303, 200, 404, 303}, "GET /players/{player}/rounds/{round}": seen,
	"GET /players/{player}/lessons": seen, "GET /players/{player}/report": seen,
	"POST /players/{player}/notes": {422, 422, 404, 303}, "POST /players/{player}/notes/{note}": {404, 422, 404, 303}, "POST /players/{player}/notes/{note}/remove": {404, 303, 404, 303},
	"POST /players/{player}/notes/{note}/replies": {422, 422, 404, 303}, "POST /players/{player}/notes/{note}/replies/{reply}/remove": {404, 303, 404, 303},
	"POST /players/{player}/assignments": {422, 422, 404, 303}, "POST /players/{player}/assignments/{assignment}/results": {422, 404, 404, 303},
	"POST /players/{player}/assignments/{assignment}/results/{result}/remove": {303, 404, 404, 303}, "POST /players/{player}/assignments/{assignment}/done": {303, 404, 404, 303},
	"POST /players/{player}/assignments/{assignment}/remove": {404, 303, 404, 303},
	"POST /players/{player}/target":                          {404, 422, 404, 303}, "POST /players/{player}/target/answer": absent,
	"POST /sign-out": {303, 303, 303, 303},
}

// lastRoutes take away what others need, in this order.
var lastRoutes = []string{
	"POST /players/{player}/notes/{note}/replies/{reply}/remove", "POST /players/{player}/notes/{note}/remove",
	"POST /players/{player}/assignments/{assignment}/results/{result}/remove", "POST /players/{player}/assignments/{assignment}/remove",
	"POST /rounds/{round}/remove", "POST /courses/{course}/remove",
	"POST /accounts/{player}/reset/remove", "POST /accounts/leave", "POST /accounts/{player}/steward", "POST /sign-out",
}

// Every route that the router knows, for everybody. A route that is not in the
// table fails the test.
func TestAccess(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen, Proxies: []string{"127.0.0.0/8"}})
	owner, coach, ended, another, player := s.member("owner"), s.member("coach"), s.member("ended"), s.member("another"), s.member("player")
	steward := s.steward()
	owner.withRound()
	coach.letIn(owner, 1, 2, "")
	ended.letIn(owner, 1, 3, "")
	another.letIn(player, 5, 4, "")
	owner.post("/coaching/end", "player", "1", "coach", "3")
	for _, made := range []answer{
		coach.post("/players/1/notes", "round", "1", "body", "The safe side."), coach.post("/players/1/notes/1/replies", "body", "The left."),
		coach.post("/players/1/assignments", "what", "Start line", "due", "2026-09-01"), owner.post("/players/1/assignments/1/results", "day", "2026-08-01", "result", "7 of 10"),
		coach.post("/players/1/target", "target", "82"),
	} {
		if made.status != http.StatusSeeOther {
			t.Fatalf("%d %s", made.status, made.body)
		}
	}
	server := &server{store: s.store, options: Options{SignUp: SignUpOpen}, hashing: newHashing(testCost, 1), uploads: newUploads()}
	routes := []string{}
	err := chi.Walk(server.routes().(chi.Routes), func(method, route string, _ http.Handler, _ ...func(http.Handler) http.Handler) error {
		name := method + " " + route
		if _, known := access[name]; !known {
			t.Errorf("%s has no row", name)
		}
		if !slices.Contains(lastRoutes, name) {
			routes = append(routes, name)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(routes)+len(lastRoutes) != len(access) {
		t.Errorf("%d routes, %d rows", len(routes)+len(lastRoutes), len(access))
	}
	asked := 0
	for _, name := range append(routes, lastRoutes...) {
		row := access[name]
		steered := row.others
		if name == "GET /accounts" || name == "POST /accounts/{player}/reset" {
			steered = http.StatusOK // the steward's own
		}
		if name == "POST /accounts/{player}/reset/remove" || name == "POST /accounts/{player}/steward" {
			steered = http.StatusSeeOther // the steward's own too
		}
		if name == "POST /accounts/leave" {
			steered = http.StatusUnprocessableEntity // the only one
		}
		if name == "POST /courses/{course}/merge" {
			steered = http.StatusUnprocessableEntity // the steward's too, and no other course is named
		}
		if name == "POST /courses/{course}/remove" {
			steered = http.StatusSeeOther // of anybody's course, as may who added it
		}
		for _, c := range []struct {
			as   string
			who  visitor
			want int
		}{
			{"nobody", s.visitor(), row.nobody}, {"another player", player, row.others}, {"a coach of another", another, row.others},
			{"a coach whose leave has ended", ended, row.others}, {"the steward", steward, steered}, {"the coach", coach, row.coach}, {"the owner", owner, row.owner},
		} {
			asked++
			c.who.from = fmt.Sprintf("192.0.2.%d", asked%250) // some routes count tries by address
			if got := c.who.sent(name); got != c.want {
				t.Errorf("%s as %s: %d, want %d", name, c.as, got, c.want)
			}
		}
	}
}

// sent asks a route for what belongs to the first player, a form sent empty, and
// returns the status.
func (v visitor) sent(name string) int {
	method, route, _ := strings.Cut(name, " ")
	path := strings.NewReplacer("{round}", "1", "{hole}", "1", "{course}", "1", "{player}", "1", "{note}", "1", "{reply}", "1", "{assignment}", "1", "{result}", "1", "{file}", "none.css").Replace(route)
	if method == http.MethodGet {
		return v.get(path).status
	}
	return v.post(path).status
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
