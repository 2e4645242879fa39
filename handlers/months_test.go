package handlers

import (
	"context"
	"fmt"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/db"
	"strokeledger/db/dbtest"
	"strokeledger/web/form"
)

// withSeason gives a player rounds of a golfer of some level, from a day on.
func withSeason(t testing.TB, store *db.Store, who golf.PlayerID, level float64, first string, days, rounds int) {
	t.Helper()
	day, err := golf.ParseDate(first)
	if err != nil {
		t.Fatal(err)
	}
	p := golfer.Committed()
	card := expect.ReferenceCourse()
	played, err := golfer.Season{Course: "Harrow Fen", Tee: "white", Card: card, Levels: golfer.Even(level), First: day, Days: days, Rounds: rounds, Seed: uint64(who)}.Play(&p)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range played {
		kept := db.Round{Name: r.ID, PlayedOn: r.Date.Time(), Course: r.Course, Tee: r.Tee, Target: 79, BoundaryYd: 50, Par18: 72}
		for i, h := range r.Holes {
			kept.Holes = append(kept.Holes, db.Hole{Hole: h, Length: card[i].Length, Line: form.WriteLine(h, card[i], form.StandardUnits), Units: db.Units(form.StandardUnits)})
		}
		if _, err := store.NewRound(context.Background(), who, kept); err != nil {
			t.Fatal(err)
		}
	}
}

func TestMonthsFromNothingToMany(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	a := v.get("/months")
	if a.status != http.StatusSeeOther || a.location != "/players/1/months" {
		t.Fatalf("%d %s", a.status, a.location)
	}
	says := func(path string, status int, words ...string) {
		t.Helper()
		a := v.get(path)
		if a.status != status {
			t.Errorf("%s: %d", path, a.status)
		}
		for _, w := range words {
			if !strings.Contains(a.body, w) {
				t.Errorf("%s does not say %q", path, w)
			}
		}
		if strings.Contains(a.body, "NaN") || strings.Contains(a.body, "Inf") {
			t.Errorf("%s says what is no number", path)
		}
	}
	says("/players/1/months", http.StatusOK, "No rounds to compare yet")
	v.withRound()
	says("/players/1/months", http.StatusOK, "May: ", "No other span has rounds", "more rounds until a level is shown", "no rounds")
	says("/players/1/months?span=2026-01&span=2026-02", http.StatusOK, "No rounds in February.")
	withSeason(t, s.store, 1, 85, "2026-06-02", 4, 14)
	says("/players/1/months", http.StatusOK, "between June and July", "July (6 rounds) against June", "1 round", "Nothing clear")
	says("/players/1/months?span=last5&span=before5", http.StatusOK, "between the last five rounds from ", " and the five before from ")
	says("/players/1/months?span=2026-06&span=2026-07&versus=tour&course=Harrow+Fen&without=3", http.StatusOK, "against a tour player")
	says("/players/1/months?span=2026-06&span=2026-07&versus=84", http.StatusOK, "against an 84 golfer")
	says("/players/1/months?course=Nowhere", http.StatusOK, "between June and July")
	says("/players/1/months?without=1&without=2&without=3&without=4&without=5&without=6&without=7&without=8&without=9&without=10&without=11&without=12&without=13&without=14&without=15", http.StatusOK, "No rounds left to compare")
	says("/players/1/months/behind?span=2026-06&span=2026-07&in=1&row=approach+100-150", http.StatusOK, "Approach: 100 to 150 yd, June", "/rounds/2#h")
	says("/players/1/months/behind?span=2026-06&span=2026-07&in=2&measure=greens", http.StatusOK, "Greens hit, July", " chances.")
	says("/players/1/months/behind?span=2026-06&span=2026-07&in=2&measure=six+feet", http.StatusOK, "Holed from six feet or less, July")
	says("/players/1/months/behind?span=2026-06&span=2026-07&putts=3-4", http.StatusOK, "Putts, 3 to 4 ft, all these spans", "holed. Strokes ")
	says("/players/1/months.csv?span=2026-06&span=2026-07", http.StatusOK, "2026-06,2026-06-01,2026-06-30,8,144,lost approach,strokes per 18 holes,")
	for _, path := range []string{"?span=2026-06", "?span=May&span=2026-06", "?versus=47", "?versus=level&level=x", "?from=2026-06-02&to=2026-06-01"} {
		says("/players/1/months"+path, http.StatusUnprocessableEntity, `role="alert"`)
	}
	for _, path := range []string{"/players/2/months", "/players/x/months", "/players/1/months/behind?in=9&row=all", "/players/1/months/behind?in=1&row=nothing", "/players/1/months/behind?in=1&measure=nothing", "/players/1/months/behind?putts=7-7"} {
		says(path, http.StatusNotFound)
	}
}

// A form's choice becomes an address that says the same, and is read again.
func TestAComparisonHasOneAddress(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	a := v.get("/players/1/months?from=2026-05-01&to=2026-05-31&from=&to=&from=2026-06-03&to=&versus=tour&without=4")
	if want := "/players/1/months?span=2026-05&span=2026-06-03..&versus=tour&without=4"; a.status != http.StatusSeeOther || a.location != want {
		t.Errorf("%d %s", a.status, a.location)
	}
	a = v.get("/players/1/months?span=last10&span=before10&versus=level&level=84")
	if want := "/players/1/months?span=last10&span=before10&versus=84"; a.status != http.StatusSeeOther || a.location != want {
		t.Errorf("%d %s", a.status, a.location)
	}
}

// What an address says of rounds and courses that the player does not have is
// dropped, and of others no more is taken than a page can repeat.
func TestAComparisonIsBounded(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	v.withRound()
	a := v.get("/players/1/months?course=Nowhere&without=1&without=1&without=77&without=88")
	if a.status != http.StatusOK || strings.Contains(a.body, "Nowhere") || strings.Contains(a.body, "without=77") || strings.Contains(a.body, "without=1&amp;without=1") {
		t.Errorf("%d %s", a.status, a.body)
	}
	if !strings.Contains(a.body, "without=1") {
		t.Error("the round is not left out")
	}
	many := strings.Builder{}
	for n := range golf.MaxWithout + 1 {
		fmt.Fprintf(&many, "&without=%d", n+1)
	}
	if a := v.get("/players/1/months?" + many.String()[1:]); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "More than 200 rounds are left out") {
		t.Errorf("%d", a.status)
	}
	if a := v.get("/players/1/months?span=" + strings.Repeat("2026-05&span=", 6) + "2026-05"); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "7 spans were chosen") {
		t.Errorf("%d", a.status)
	}
	if a := v.get("/players/1/months?span=" + strings.Repeat("x", 5000)); a.status != http.StatusUnprocessableEntity || strings.Contains(a.body, "xxxxx") {
		t.Errorf("%d", a.status)
	}
	for _, path := range []string{"/players/1/months", "/rounds", "/coaching", "/"} {
		if a := v.get(path + "?course=" + strings.Repeat("x", largestQuery)); a.status != http.StatusRequestURITooLong || !strings.Contains(a.body, "<h1") || strings.Contains(a.body, "xxxxx") {
			t.Errorf("%s: %d", path, a.status)
		}
	}
}

func TestMarkedDays(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v, other := s.member("robin"), s.member("bea")
	if a := v.post("/marks", "day", "2026-06-01", "what", "a new driver"); a.status != http.StatusSeeOther {
		t.Fatalf("%d", a.status)
	}
	v.withRound()
	if a := v.get("/players/1/months"); !strings.Contains(a.body, "before and after a new driver") {
		t.Error("the marked day is not offered")
	}
	if a := v.post("/marks", "day", "June", "what", "a new driver"); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "Not marked yet.") {
		t.Errorf("%d", a.status)
	}
	if a := other.post("/marks/1/remove"); a.status != http.StatusNotFound {
		t.Errorf("another removes it: %d", a.status)
	}
	if a := v.post("/marks/1/remove"); a.status != http.StatusSeeOther {
		t.Errorf("%d", a.status)
	}
}

// BenchmarkMonths is the page of a player with 300 rounds, about 24,000 shots,
// alone on the server and among twenty others of as many.
func BenchmarkMonths(b *testing.B) {
	for _, others := range []int{0, 20} {
		b.Run(fmt.Sprintf("among %d others", others), func(b *testing.B) {
			h, cookie := benchSite(b, others)
			r := httptest.NewRequest(http.MethodGet, "/players/1/months?span=2025-01&span=2025-02&span=2025-03&span=2025-04&span=2025-05&span=2025-06", nil)
			r.AddCookie(cookie)
			b.ReportAllocs()
			for b.Loop() {
				w := httptest.NewRecorder()
				h.ServeHTTP(w, r)
				if w.Code != http.StatusOK {
					b.Fatalf("%d", w.Code)
				}
			}
		})
	}
}

// benchSite is a server with one player of 300 rounds, signed in, and others of
// as many.
func benchSite(b *testing.B, others int) (http.Handler, *http.Cookie) {
	b.Helper()
	url := dbtest.Copy(b)
	store, err := db.Open(b.Context(), url)
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(store.Close)
	p, err := store.NewPlayer(b.Context(), "p@example.org", "P", "hash")
	if err != nil {
		b.Fatal(err)
	}
	withSeason(b, store, p.ID, 84, "2024-07-01", 2, 300)
	dbtest.Crowd(b, url, others)
	if err := store.NewSession(b.Context(), p.ID, hashed("token"), "bench"); err != nil {
		b.Fatal(err)
	}
	return New(store, Options{SignUp: SignUpOpen}), &http.Cookie{Name: cookieName, Value: "1.token"}
}
