package handlers

import (
	"cmp"
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/go-chi/chi/v5"

	"strokeledger/db"
	"strokeledger/db/dbtest"
	"strokeledger/web/paths"
)

// may are the answers of a route to everybody: the player whose page 1 it is, the
// player's coach, and who may not: a coach whose access has ended, a coach of
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
	"GET /worker.js": open, "GET /manifest.webmanifest": open, "GET /offline": open, "GET /help": open, "GET /help/{guide}": open,
	"GET /": {303, 303, 303, 200}, "GET /join": open, "POST /join": {422, 422, 422, 422}, "POST /sign-in": {422, 422, 422, 422},
	"GET /rounds": private, "GET /rounds/new": private, "POST /rounds/new": typo,
	"GET /courses": private, "GET /courses/new": private, "POST /courses/new": typo,
	"GET /courses/{course}": private, "POST /courses/{course}": {422, 404, 404, 303}, "POST /courses/{course}/use-card": {303, 303, 303, 303},
	"POST /courses/{course}/remove": {303, 404, 404, 303}, "POST /courses/{course}/merge": absent,
	"GET /courses/{course}/pictures": private, "GET /courses/{course}/holes/{hole}/picture": private, "POST /courses/{course}/holes/{hole}/picture": private,
	"GET /courses/{course}/holes/{hole}/picture.json": absent, "POST /courses/{course}/holes/{hole}/picture/file": typo, "POST /courses/{course}/holes/{hole}/picture/back": {400, 400, 400, 303},
	"GET /account": private, "POST /account": typo, "POST /account/password": typo,
	"POST /account/devices": absent, "POST /account/devices/others": {303, 303, 303, 303}, "POST /account/delete": typo, "POST /account/invite": absent,
	"GET /accounts": absent, "POST /accounts/{player}/reset": absent, "POST /accounts/{player}/reset/remove": absent,
	"POST /accounts/{player}/steward": absent, "POST /accounts/invitations/remove": absent, "POST /accounts/leave": absent,
	"GET /reset": open, "POST /reset": {422, 422, 422, 422},
	"GET /export/shots.csv": private, "GET /export/everything.json": private, "GET /import": private, "POST /import": typo, "POST /import/confirm": absent,
	"GET /rounds/{round}": own, "GET /rounds/{round}/card": own, "GET /rounds/{year}/book": private,
	"GET /rounds/{round}/holes/{hole}": own, "POST /rounds/{round}/holes/{hole}": {400, 404, 404, 303},
	"GET /rounds/{round}/holes/{hole}/shots": own, "POST /rounds/{round}/holes/{hole}/shots": {422, 404, 404, 303}, "POST /rounds/{round}/conditions": {303, 404, 404, 303},
	"POST /rounds/{round}/holes/{hole}/echo": own, "POST /rounds/{round}/remove": {303, 404, 404, 303},
	"GET /rounds/{round}/details": own, "POST /rounds/{round}/details": {422, 404, 404, 303},
	"GET /removed": private, "POST /removed": absent, "GET /welcome": private, "POST /welcome": typo,
	"GET /months": {303, 303, 303, 303}, "POST /marks": typo, "POST /marks/{mark}/remove": {303, 404, 404, 303},
	"GET /coaching": private, "POST /coaching/invite": private, "POST /coaching/revoke": {303, 303, 303, 303},
	"GET /coaching/accept": absent, "POST /coaching/accept": absent, "POST /coaching/confirm": absent, "POST /coaching/end": absent,
	"GET /coaching/looks": private, "GET /coaching/kept": private, "POST /coaching/kept": absent, "GET /coaching/squad": private, "GET /coaching/squad/sheet": {303, 303, 303, 303}, "GET /coaching/squad.csv": private, "GET /coaching/roster.csv": private,
	"GET /coaching/phrases": private, "POST /coaching/phrases": typo, "POST /coaching/phrases/{phrase}/remove": absent,
	"POST /coaching/code": {303, 303, 303, 303}, "POST /coaching/ask": typo, "POST /coaching/answer": absent, "POST /coaching/withdraw": absent,
	"POST /coaching/groups": absent, "GET /notices": private, "GET /notices/feed": {404, 404, 404, 404}, "POST /account/feed": {400, 400, 400, 303}, "POST /account/mail": absent, "GET /notices/mail/confirm": {404, 404, 404, 404}, "POST /notices/mail/confirm": {404, 404, 404, 404}, "GET /notices/mail/end": {404, 404, 404, 404}, "POST /notices/mail/end": {404, 404, 404, 404}, "POST /coaching/day": absent, "POST /coaching/resume": absent,
	"GET /players/{player}/": {303, 200, 404, 303}, "POST /players/{player}/groups": {404, 303, 404, 303}, "POST /players/{player}/archive": {404, 303, 404, 303},
	"GET /players/{player}/months": seen, "GET /players/{player}/months.csv": seen, "GET /players/{player}/months/behind": absent, "GET /players/{player}/handicap": seen,
	"GET /players/{player}/rounds": {303, 200, 404, 303}, "GET /players/{player}/rounds/{round}": seen, "GET /players/{player}/rounds/{year}/book": seen,
	"GET /players/{player}/lessons": seen, "GET /players/{player}/plan": seen, "GET /players/{player}/drills/{drill}": seen, "GET /players/{player}/report": seen, "GET /players/{player}/beside": seen, "GET /players/{player}/report.csv": seen,
	"GET /players/{player}/log": seen, "POST /players/{player}/plans": absent, "GET /players/{player}/plans/{plan}": seen, "POST /players/{player}/plans/{plan}/remove": {303, 404, 404, 303},
	"POST /players/{player}/drills/{drill}": {422, 404, 404, 303}, "GET /players/{player}/sessions/{session}": own,
	"POST /players/{player}/sessions/{session}": {422, 404, 404, 303}, "POST /players/{player}/sessions/{session}/remove": {303, 404, 404, 303},
	"GET /players/{player}/start-line": seen, "GET /players/{player}/run-out": seen, "GET /players/{player}/run-out.csv": seen, "POST /players/{player}/run-out": {422, 404, 404, 303}, "POST /players/{player}/run-out/{trial}/remove": {303, 404, 404, 303},
	"GET /players/{player}/play": seen, "GET /players/{player}/play/{course}": seen, "GET /players/{player}/play/{course}/card": seen,
	"GET /players/{player}/play/{course}/holes/{hole}": seen, "GET /players/{player}/play/{course}/chance": seen, "GET /players/{player}/play/{course}/rounds/{round}": seen,
	"POST /players/{player}/play/{course}/holes/{hole}/advice": {404, 422, 404, 303}, "POST /players/{player}/play/{course}/holes/{hole}/advice/answer": {409, 404, 404, 303},
	"GET /players/{player}/bag": seen, "POST /players/{player}/bag": {303, 404, 404, 303}, "POST /players/{player}/bag/range": {422, 404, 404, 303},
	"POST /players/{player}/bag/range/{session}/remove": {303, 404, 404, 303},
	"POST /players/{player}/notes":                      {422, 422, 404, 303}, "POST /players/{player}/notes/{note}": {404, 422, 404, 303}, "POST /players/{player}/notes/{note}/remove": {404, 303, 404, 303},
	"POST /players/{player}/notes/{note}/replies": {422, 422, 404, 303}, "POST /players/{player}/notes/{note}/replies/{reply}/remove": {404, 303, 404, 303},
	"POST /players/{player}/assignments": {422, 422, 404, 303}, "POST /players/{player}/assignments/{assignment}/results": {422, 404, 404, 303},
	"POST /players/{player}/assignments/{assignment}/results/{result}/remove": {303, 404, 404, 303}, "POST /players/{player}/assignments/{assignment}/done": {303, 404, 404, 303},
	"POST /players/{player}/assignments/{assignment}/remove": {404, 303, 404, 303},
	"GET /players/{player}/walked":                           seen, "POST /players/{player}/walked": {404, 422, 404, 303}, "GET /players/{player}/walked/{walked}": {404, 200, 404, 303}, "POST /players/{player}/walked/{walked}": {404, 303, 404, 303},
	"GET /players/{player}/walked/{walked}/holes/{hole}": {404, 200, 404, 303}, "POST /players/{player}/walked/{walked}/holes/{hole}": {404, 400, 404, 303}, "POST /players/{player}/walked/{walked}/holes/{hole}/echo": {404, 200, 404, 303},
	"POST /players/{player}/walked/{walked}/answer": absent, "POST /players/{player}/walked/{walked}/remove": {404, 303, 404, 303},
	"POST /players/{player}/lessons": {422, 422, 404, 303}, "POST /players/{player}/lessons/{lesson}": {422, 422, 404, 303}, "POST /players/{player}/lessons/{lesson}/remove": {404, 303, 404, 303},
	"GET /players/{player}/lessons/{lesson}/lesson.ics": seen,
	"POST /players/{player}/target":                     {404, 422, 404, 303}, "POST /players/{player}/target/answer": absent,
	"POST /sign-out": {303, 303, 303, 303},
}

// lastRoutes take away what others need, in this order.
var lastRoutes = []string{
	"POST /players/{player}/notes/{note}/replies/{reply}/remove", "POST /players/{player}/notes/{note}/remove",
	"POST /players/{player}/assignments/{assignment}/results/{result}/remove", "POST /players/{player}/assignments/{assignment}/remove",
	"POST /players/{player}/lessons/{lesson}/remove", "POST /players/{player}/walked/{walked}/remove",
	"POST /players/{player}/sessions/{session}/remove", "POST /players/{player}/plans/{plan}/remove",
	"POST /marks/{mark}/remove", "POST /rounds/{round}/remove", "POST /courses/{course}/remove",
	"POST /accounts/{player}/reset/remove", "POST /accounts/leave", "POST /accounts/{player}/steward", "POST /sign-out",
}

// fromADay are the answers to a coach let in from a day on that is after the
// player's round, where they are not those to any coach.
var fromADay = map[string]int{
	"GET /players/{player}/rounds/{round}": 404, "GET /players/{player}/play/{course}/rounds/{round}": 404, "GET /players/{player}/plans/{plan}": 404,
	"POST /players/{player}/notes/{note}": 404, "POST /players/{player}/notes/{note}/remove": 404,
	"POST /players/{player}/notes/{note}/replies": 404, "POST /players/{player}/notes/{note}/replies/{reply}/remove": 404,
	"POST /players/{player}/assignments/{assignment}/remove": 404,
	"POST /players/{player}/lessons/{lesson}":                404, "POST /players/{player}/lessons/{lesson}/remove": 404, // of another coach
	"GET /players/{player}/walked/{walked}": 404, "POST /players/{player}/walked/{walked}": 404, "GET /players/{player}/walked/{walked}/holes/{hole}": 404, "POST /players/{player}/walked/{walked}/holes/{hole}": 404, "POST /players/{player}/walked/{walked}/holes/{hole}/echo": 404, "POST /players/{player}/walked/{walked}/remove": 404,
}

// steered are the answers to the steward where they are not those to others: the
// steward's own pages, and the courses of everybody.
var steered = map[string]int{
	"GET /accounts": 200, "POST /accounts/{player}/reset": 200,
	"POST /courses/{course}/merge": 422, "POST /courses/{course}/remove": 303,
	"POST /accounts/{player}/reset/remove": 303, "POST /accounts/{player}/steward": 303, "POST /accounts/leave": 422,
}

// role is somebody who asks every route.
type role struct {
	visitor
	as       string
	want     func(name string, row may) int
	mayWrite func(name string, status int) bool // whether an answer may go with a change of the owner's rows
}

// furnished makes a player with a round and all that is written about it, and
// the player's coach.
func (s testSite) furnished() (owner, coach visitor) {
	s.t.Helper()
	owner, coach = s.member("owner"), s.member("coach")
	owner.withRound()
	coach.letIn(owner, 1, 2, "")
	for _, made := range []answer{
		coach.post("/players/1/notes", "round", "1", "body", "The safe side."), coach.post("/players/1/notes/1/replies", "body", "The left."),
		coach.post("/players/1/assignments", "what", "Start line", "due", "2092-09-01"), owner.post("/players/1/assignments/1/results", "day", "2026-08-01", "result", "7 of 10"),
		coach.post("/players/1/target", "target", "82"),
		coach.post("/players/1/lessons", "day", time.Now().AddDate(0, 0, 10).Format(time.DateOnly), "aim", "Start line"),
		owner.post("/players/1/drills/start-line", "entered", "a-page-of-before", "day", "2026-08-01", "feet", "6", "tries", "mmlrm", "press", "save"),
		owner.post("/marks", "day", "2026-05-01", "what", "A lesson"),
		owner.post("/players/1/bag/range", "range_club", "driver", "day", "2026-10-02", "balls", strings.Repeat("3 left, 4 short\n", 10)),
		owner.post("/players/1/run-out", "pairs", "12 21, 13 23", "club", "pw", "lie", "fairway", "green", "medium", "unit", "yd", "day", "2026-05-01"),
	} {
		if made.status != http.StatusSeeOther {
			s.t.Fatalf("%d %s", made.status, made.body)
		}
	}
	walked := db.Walked{PlayedOn: time.Date(2026, 5, 2, 0, 0, 0, 0, time.UTC), Course: "Harrow Fen", Par18: 72, FarUnit: "yd", GreenUnit: "ft", Holes: []db.WalkedHole{{Number: 1, Par: 4, Length: 384 * 36}}}
	if _, err := s.store.BeginWalked(s.t.Context(), 2, 1, walked); err != nil {
		s.t.Fatal(err)
	}
	plan := db.TakenPlan{Day: time.Now(), FirstDay: time.Date(2026, 4, 1, 0, 0, 0, 0, time.UTC), LastDay: time.Now(), Rounds: 12, Target: 79, Minutes: 180, Figures: []byte(`{"version": 1, "level": 84, "items": []}`)}
	if _, err := s.store.TakePlan(s.t.Context(), 1, plan, nil); err != nil {
		s.t.Fatal(err)
	}
	return owner, coach
}

// roles are who may not first, since what is left to ask after the owner is
// less.
func (s testSite) roles(owner, coach visitor) []role {
	ended, another, player, from, waiting := s.member("ended"), s.member("another"), s.member("player"), s.member("from"), s.member("waiting")
	steward := s.steward()
	ended.letIn(owner, 1, 3, "")
	another.letIn(player, 5, 4, "")
	from.letIn(owner, 1, 6, "2026-08-15")
	waiting.letIn(owner, 1, 7, "")
	dbtest.Exec(s.t, s.url, `update coachings set confirmed_at = null where coach_id = 7`)
	owner.post("/coaching/end", "player", "1", "coach", "3", "sure", "yes")
	others := func(_ string, row may) int { return row.others }
	never := func(string, int) bool { return false }
	found := func(_ string, status int) bool { return status != http.StatusNotFound }
	return []role{
		{s.visitor(), "nobody", func(_ string, row may) int { return row.nobody }, never},
		{player, "another player", others, never}, {another, "a coach of another", others, never},
		{ended, "a coach whose access has ended", others, never}, {waiting, "a coach who waits to be confirmed", others, never},
		{steward, "the steward", func(name string, row may) int { return cmp.Or(steered[name], row.others) },
			func(name string, status int) bool { return steered[name] == status }},
		{from, "a coach from a day on", func(name string, row may) int { return cmp.Or(fromADay[name], row.coach) }, found},
		{coach, "the coach", func(_ string, row may) int { return row.coach }, found},
		{owner, "the owner", func(_ string, row may) int { return row.owner }, func(string, int) bool { return true }},
	}
}

// routesInOrder are the names of all routes, those that take things away last.
// One that is not in the table fails the test.
func routesInOrder(t *testing.T, known chi.Routes) []string {
	t.Helper()
	var routes []string
	err := chi.Walk(known, func(method, route string, _ http.Handler, _ ...func(http.Handler) http.Handler) error {
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
	return append(routes, lastRoutes...)
}

// Every route that the router knows, for everybody, with its form empty; and for
// who may not with the form as the player or the coach would send it. No row of
// the owner's is another after a request of who may not.
func TestAccess(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen, Proxies: []string{"127.0.0.0/8"}})
	owner, coach := s.furnished()
	roles := s.roles(owner, coach)
	server := &server{store: s.store, options: Options{SignUp: SignUpOpen}, hashing: newHashing(testCost, 1), uploads: newUploads()}
	routes := server.routes().(chi.Routes)
	forms := gather(t, routes, coach)
	for name, a := range gather(t, routes, owner) {
		for field, values := range a.fields {
			if forms[name].fields.Get(field) == "" {
				forms[name].fields[field] = values
			}
		}
	}
	digest := dbtest.Digest(t, s.url)
	before, count := digest(1), 0
	for _, name := range routesInOrder(t, routes) {
		for _, who := range roles {
			count++
			who.from = fmt.Sprintf("192.0.%d.%d", count/250%250, count%250) // some routes count tries by address
			got := who.sent(name)
			if want := who.want(name, access[name]); got != want {
				t.Errorf("%s as %s: %d, want %d", name, who.as, got, want)
			}
			after := digest(1)
			if after != before && !who.mayWrite(name, got) {
				t.Errorf("%s as %s changed rows of the owner's", name, who.as)
			}
			before = after
			if !slices.Contains(refusedRoles, who.as) || !strings.HasPrefix(name, "POST /") || slices.Contains(costly, name) || name == "POST /sign-out" {
				continue
			}
			a := who.post(forms[name].path, fieldsOf(forms[name].fields)...)
			if access[name].others == http.StatusNotFound && a.status != http.StatusNotFound && (who.as != "nobody" || a.location != paths.Front && a.location != paths.SignInAgain) {
				t.Errorf("%s as %s with a form: %d", name, who.as, a.status)
			}
			if after = digest(1); after != before {
				t.Errorf("%s as %s with a form changed rows of the owner's", name, who.as)
			}
			before = after
		}
	}
}

// refusedRoles send whole forms too: nothing of the owner's is theirs.
var refusedRoles = []string{"nobody", "another player", "a coach of another", "a coach whose access has ended", "a coach who waits to be confirmed"}

func fieldsOf(values url.Values) (fields []string) {
	for name, all := range values {
		for _, value := range all {
			fields = append(fields, name, value)
		}
	}
	return fields
}

// sent asks a route for what belongs to the first player, a form sent empty, and
// returns the status.
func (v visitor) sent(name string) int {
	method, route, _ := strings.Cut(name, " ")
	if method == http.MethodGet {
		return v.get(filled(route)).status
	}
	return v.post(filled(route)).status
}
