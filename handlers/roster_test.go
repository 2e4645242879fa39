package handlers

import (
	"fmt"
	"html"
	"net/http"
	"net/http/httptest"
	"regexp"
	"strings"
	"syscall"
	"testing"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// letIn makes v the coach of a pupil, as the two would.
func (v visitor) letIn(pupil visitor, pupilID, coachID golf.PlayerID, from string) {
	v.t.Helper()
	if a := v.post("/coaching/accept", "player", fmt.Sprint(pupilID), "token", pupil.linkFrom(from)); a.status != 303 {
		v.t.Fatalf("accept: %d", a.status)
	}
	if a := pupil.post("/coaching/confirm", "coach", fmt.Sprint(coachID)); a.status != 303 {
		v.t.Fatalf("confirm: %d", a.status)
	}
}

// linkFrom makes a link that shares rounds from a day on, and returns its token.
func (v visitor) linkFrom(day string) string {
	v.t.Helper()
	made := v.post("/coaching/invite", "from", day)
	link := html.UnescapeString(regexp.MustCompile(`/coaching/accept\?[^<]+`).FindString(made.body))
	_, token, _ := strings.Cut(link, "token=")
	return token
}

var partLost = regexp.MustCompile(`<span data-part="pupil-1">[+−]?\d+\.\d</span>`)

// The roster's figures are made anew when a round is saved, and are the same
// when they are read again.
func TestRosterFollowsTheRounds(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.member("robin"), s.member("ines")
	coach.letIn(pupil, 1, 2, "")
	withSeason(t, s.store, 1, 84, "2026-03-01", 3, 11)
	first := coach.get("/coaching")
	if first.status != 200 || !strings.Contains(first.body, "11 new rounds") {
		t.Fatalf("%d %s", first.status, first.body)
	}
	if again := coach.get("/coaching"); again.body != first.body {
		t.Error("read from what is kept the roster differs")
	}
	list := func(body string) string {
		_, rest, _ := strings.Cut(body, `<ol class="pupil-list">`)
		rest, _, _ = strings.Cut(rest, "</ol>")
		return rest
	}
	if got := len(partLost.FindAllString(list(first.body), -1)); got != 4 || !strings.Contains(first.body, "Plays to: tee ") {
		t.Errorf("%d parts", got)
	}
	rounds, err := s.store.Rounds(t.Context(), 1, 1, db.Chosen{Most: 1})
	if err != nil {
		t.Fatal(err)
	}
	path := fmt.Sprintf("/rounds/%d/holes/1", rounds[0].ID)
	if a := pupil.post(path, "line", "r150 g40 20 10 8 6 5 4", "version", fmt.Sprint(rounds[0].Holes[0].Version), "press", "save"); a.status != 303 {
		t.Fatalf("%d %s", a.status, a.body)
	}
	kept, err := s.store.Summaries(t.Context(), 2, db.Chosen{Most: 1})
	if err != nil || kept[0].MadeFor == "" {
		t.Errorf("a saved round has no summary: %v", err)
	}
	if changed := coach.get("/coaching"); list(changed.body) == list(first.body) {
		t.Error("a round that changed changes nothing")
	}
	if a := coach.get("/coaching?show=late"); !strings.Contains(a.body, "No pupils match.") {
		t.Error("a pupil without practice is late")
	}
	if a := coach.get("/coaching?name=ROB&sort=putting"); !strings.Contains(a.body, "/players/1/lessons") || !strings.Contains(a.body, "Sorted by strokes lost putting") {
		t.Error("a pupil is not found by name")
	}
}

// BenchmarkRoster shows 200 pupils with 25 rounds each, from what is kept and
// after the engine has changed.
func BenchmarkRoster(b *testing.B) {
	url := dbtest.Copy(b)
	store, err := db.Open(b.Context(), url)
	if err != nil {
		b.Fatal(err)
	}
	defer store.Close()
	for _, name := range []string{"pupil", "coach"} {
		if _, err := store.NewPlayer(b.Context(), name+"@example.org", name, "hash"); err != nil {
			b.Fatal(err)
		}
	}
	withSeason(b, store, 1, 84, "2026-03-01", 3, 25)
	dbtest.Crowd(b, url, 199)
	dbtest.Exec(b, url, "update players set target = 72 + id / 20.0") // so that no two rows are the same
	dbtest.LetIn(b, url, 2)
	if err := store.NewSession(b.Context(), 2, hashed("token"), "bench"); err != nil {
		b.Fatal(err)
	}
	h := New(store, Options{SignUp: SignUpOpen})
	r := httptest.NewRequest(http.MethodGet, "/coaching", nil)
	r.AddCookie(&http.Cookie{Name: cookieName, Value: "2.token"})
	look := func() {
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		if w.Code != http.StatusOK || strings.Count(w.Body.String(), `class="pupil-open"`) != 200 {
			b.Fatalf("%d, %d rows", w.Code, strings.Count(w.Body.String(), `class="pupil-open"`))
		}
	}
	b.Run("made anew", func(b *testing.B) {
		for b.Loop() {
			dbtest.Exec(b, url, "delete from round_summaries")
			look()
		}
	})
	dbtest.Exec(b, url, "vacuum analyze")
	look()
	b.Run("after a restart", func(b *testing.B) {
		before := processorTime(b)
		for b.Loop() {
			h = New(store, Options{SignUp: SignUpOpen})
			look()
		}
		b.ReportMetric((processorTime(b)-before).Seconds()*1000/float64(b.N), "cpu-ms/op")
	})
	kept := func(b *testing.B) {
		b.ReportAllocs()
		before := processorTime(b)
		for b.Loop() {
			look()
		}
		b.ReportMetric((processorTime(b)-before).Seconds()*1000/float64(b.N), "cpu-ms/op")
	}
	b.Run("kept, all rounds new", kept)
	dbtest.Exec(b, url, "update coachings set looked_at = now() - interval '1 day'")
	dbtest.Exec(b, url, "update rounds set entered_at = played_on, changed_at = played_on")
	dbtest.Exec(b, url, "vacuum analyze")
	b.Run("kept", kept)
}

// processorTime is what this process has taken of the processors, without that of
// Postgres: on a machine that does other things as well it says more than a clock.
func processorTime(b *testing.B) time.Duration {
	b.Helper()
	var used syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &used); err != nil {
		b.Fatal(err)
	}
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}

// However many pupils there are, the roster asks the database as often.
func TestRosterAsksAsOften(t *testing.T) {
	store, asked := dbtest.Counted(t)
	h := New(store, Options{SignUp: SignUpOpen})
	newcomer := func(name string) golf.PlayerID {
		p, err := store.NewPlayer(t.Context(), name+"@example.org", name, "hash")
		if err != nil {
			t.Fatal(err)
		}
		return p.ID
	}
	coach := newcomer("coach")
	if err := store.NewSession(t.Context(), coach, hashed("token"), "test"); err != nil {
		t.Fatal(err)
	}
	letIn := func(name string) {
		pupil := newcomer(name)
		withSeason(t, store, pupil, 84, "2026-03-01", 3, 2)
		for _, err := range []error{store.NewCoachInvitation(t.Context(), pupil, hashed(name), golf.Date{}, 7), store.AcceptCoaching(t.Context(), coach, pupil, hashed(name)), store.ConfirmCoach(t.Context(), pupil, coach)} {
			if err != nil {
				t.Fatal(err)
			}
		}
	}
	look := func(pupils int) int64 {
		r := httptest.NewRequest(http.MethodGet, "/coaching", nil)
		r.AddCookie(&http.Cookie{Name: cookieName, Value: fmt.Sprintf("%d.token", coach)})
		before, w := asked.Load(), httptest.NewRecorder()
		h.ServeHTTP(w, r)
		if got := strings.Count(w.Body.String(), `class="pupil-open"`); w.Code != http.StatusOK || got != pupils {
			t.Fatalf("%d, %d pupils: %s", w.Code, got, w.Body)
		}
		return asked.Load() - before
	}
	letIn("a")
	look(1) // makes the summaries
	one := look(1)
	for _, name := range []string{"b", "c", "d", "e"} {
		letIn(name)
	}
	look(5)
	if many := look(5); many != one || many > 10 {
		t.Errorf("one pupil takes %d questions, five take %d", one, many)
	}
}

// A lesson of today or tomorrow, by the day where the coach is, leads from the queue to
// its place on the pupil's overview; a golfer who asks by the code stands there as well.
func TestQueueLeadsToLessonsAndRequests(t *testing.T) {
	at := time.Date(2026, 11, 26, 9, 0, 0, 0, time.UTC)
	s := newSite(t, Options{SignUp: SignUpOpen, Clock: func() time.Time { return at }})
	_, coach := s.coached()
	coach.follows("/players/1/lessons", "day", "2026-11-28", "time", "17:30", "aim", "Start line")
	if body := coach.get("/coaching").body; strings.Contains(body, "lesson-1") {
		t.Error("a lesson in two days stands in the queue")
	}
	at = at.Add(15 * time.Hour) // midnight here, and a day later in Auckland
	coach.mustSee(coach.get("/coaching"), `href="/players/1#lesson-1"`, "tomorrow at 17:30: Start line", "One lesson tomorrow.")
	dbtest.Exec(t, s.url, `update players set zone = 'Pacific/Auckland' where name = 'ines'`)
	at = at.Add(14 * time.Hour)
	coach.mustSee(coach.get("/coaching"), "today at 17:30: Start line", "One lesson today.")
	coach.mustSee(coach.get("/players/1"), `id="lesson-1"`)
	coach.follows("/coaching/code", "code", "renew")
	s.member("gwen").follows("/coaching/ask", "code", coach.codeOf(), "sure", "yes")
	coach.mustSee(coach.get("/coaching"), `href="#request-3"`, `id="request-3"`, "to be coached by you, since ", "One lesson today. ")
}
