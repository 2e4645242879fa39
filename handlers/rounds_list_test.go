package handlers

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"strokeledger/db/dbtest"
)

// withMonths gives the first player 24 rounds over eight months of 2026, the
// last one in August, and one in 2025.
func (v visitor) withMonths(s testSite) {
	v.withRound()
	dbtest.Exec(v.t, s.url, `update rounds set played_on = '2026-08-09', course = 'Harrow Fen'`)
	for i := range 23 {
		dbtest.Exec(v.t, s.url, fmt.Sprintf(`insert into rounds (player_id, name, played_on, course, tee, target, boundary_yd, par18, conditions, card_out, card_in, first_hole)
			select player_id, name || '-%d', '2026-%02d-%02d', 'Fen %d', tee, target, boundary_yd, par18, conditions, card_out, card_in, first_hole from rounds where id = 1`, i, 8-i/3, 8-i%3, i%2))
	}
	dbtest.Exec(v.t, s.url, `update rounds set played_on = '2025-12-01' where name like '%-22'`)
}

// The list shows about twenty rounds and leads to the older ones by a plain
// address; what an address cannot mean chooses nothing.
func TestTheListOfRoundsHasPages(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	v.withMonths(s)
	count := func(path string) (rounds int, body string) {
		a := v.get(path)
		if a.status != http.StatusOK {
			t.Fatalf("%s: %d", path, a.status)
		}
		return strings.Count(a.body, `class="round-line"`), a.body
	}
	first, body := count("/rounds")
	if first != 19 || !strings.Contains(body, `href="/rounds?before=2026-03"`) || !strings.Contains(body, "February and older: 5 rounds") || !strings.Contains(body, `href="/rounds/2026/book"`) {
		t.Errorf("%d rounds: %s", first, body)
	}
	for path, want := range map[string]int{
		"/rounds?before=2026-03": 5, "/rounds?before=2026-01": 1, "/rounds?before=2025-12": 0, "/rounds?before=x": 19, "/rounds?before=2026-13": 19,
		"/rounds?course=Fen+1": 11, "/rounds?course=Fen+1&since=2026-07": 3, "/rounds?until=2026-02": 5, "/rounds?since=2026-07&until=2026-07": 3, "/rounds?course=Moor": 0,
		"/rounds/2026/book": 23, "/rounds/2025/book": 1, "/rounds/2024/book": 0,
	} {
		if got, _ := count(path); got != want {
			t.Errorf("%s: %d rounds, want %d", path, got, want)
		}
	}
	for _, path := range []string{"/rounds/x/book", "/rounds/0/book", "/rounds/20260/book"} {
		if a := v.get(path); a.status != http.StatusNotFound {
			t.Errorf("%s: %d", path, a.status)
		}
	}
}

// The list asks the database as often for 29 rounds as for one.
func TestTripsOfTheListOfRounds(t *testing.T) {
	store, trips := dbtest.Counted(t)
	s := testSite{httptest.NewServer(New(store, Options{SignUp: SignUpOpen, Hash: testCost})), nil, store, "", t}
	defer s.Close()
	v := s.member("a")
	v.withRound()
	asked := func() int64 {
		trips.Store(0)
		v.get("/rounds")
		return trips.Load()
	}
	one := asked()
	for day := range 28 {
		if a := v.post("/rounds/new", "course", "1", "date", fmt.Sprintf("2026-04-%02d", day+1)); a.status != http.StatusSeeOther {
			t.Fatalf("%d", a.status)
		}
	}
	if many := asked(); many != one || one == 0 {
		t.Errorf("%d trips for one round, %d for 29", one, many)
	}
}
