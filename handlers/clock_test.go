package handlers

import (
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db/dbtest"
)

// in moves a player to a time zone, on the account page.
func (v visitor) in(zone string) {
	v.t.Helper()
	page := v.follows("/account", "name", "A", "target", "79", "boundary", "50", "clubs", "", "far", "yd", "green", "ft", "zone", zone)
	v.mustSee(page, `value="`+zone+`"`)
}

// at is a site whose clock stands still.
func siteAt(t *testing.T, at time.Time) testSite {
	return newSite(t, Options{SignUp: SignUpOpen, Clock: func() time.Time { return at }})
}

// Half an hour after midnight in Auckland it is the day before in Los Angeles: a
// round begins on the day where its player is, and times are the reader's.
// Source: IANA tz database: NZDT is 13 hours ahead of UTC, PST 8 hours behind.
func TestDaysAreThePlayers(t *testing.T) {
	s := siteAt(t, time.Date(2026, 11, 26, 11, 30, 0, 0, time.UTC))
	pupil, coach := s.coached()
	pupil.in("Pacific/Auckland")
	coach.in("America/Los_Angeles")
	pupil.mustSee(pupil.get("/rounds/new"), `value="2026-11-27"`)
	coach.mustSee(coach.get("/rounds/new"), `value="2026-11-26"`)
	coach.get("/players/1/months")
	coach.get("/coaching")
	pupil.mustSee(pupil.get("/coaching/looks"), "Friday 27 November 2026, 00:30 NZDT", "27 Nov 2026, 00:30 NZDT")
	looks, err := s.store.Looks(t.Context(), 1, 0, 9)
	if err != nil || len(looks) != 2 {
		t.Fatalf("%+v, %v", looks, err)
	}
	for _, l := range looks {
		if got := golf.DateOf(l.Day); got != (golf.Date{Year: 2026, Month: 11, Day: 27}) {
			t.Errorf("%s counts for %s", l.Kind, got)
		}
	}
	pupil.post("/players/1/notes", "round", "1", "on", "1", "body", "Why?")
	dbtest.Exec(t, s.url, "update notes set written_at = '2026-11-26 11:45+00'")
	pupil.mustSee(pupil.get("/rounds/1"), "27 Nov 2026, 00:45 NZDT")
	coach.mustSee(coach.get("/players/1/rounds/1"), "26 Nov 2026, 03:45 PST")
	coach.mustSee(coach.get("/players/1/report"), "Thursday 26 November 2026")
	pupil.mustSee(pupil.get("/players/1/report"), "Friday 27 November 2026")
}

// On the last evening of November in Los Angeles, December has begun in Auckland.
func TestMonthsAreTheReaders(t *testing.T) {
	s := siteAt(t, time.Date(2026, 12, 1, 7, 30, 0, 0, time.UTC))
	_, coach := s.coached()
	dbtest.Exec(t, s.url, "update rounds set played_on = '2026-11-15'")
	coach.in("America/Los_Angeles")
	coach.mustSee(coach.get("/coaching"), "One round this month")
	coach.in("Pacific/Auckland")
	coach.mustSee(coach.get("/coaching"), "No rounds this month")
}

// No other code asks the machine for the time than the one clock, and what measures
// how long a request takes.
func TestOneClock(t *testing.T) {
	files, err := filepath.Glob("*.go")
	if err != nil || len(files) < 50 {
		t.Fatal(files, err)
	}
	for _, name := range files {
		source, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if name == "clock.go" || name == "middleware.go" || strings.HasSuffix(name, "_test.go") {
			continue
		}
		if strings.Contains(string(source), "time.Now") {
			t.Errorf("%s asks the machine for the time", name)
		}
	}
}

// Who has chosen no time zone has that of the server's clock; what is none is not
// taken.
func TestTimeZonesOfThoseWhoChoseNone(t *testing.T) {
	auckland, err := golf.ParseZone("Pacific/Auckland")
	if err != nil {
		t.Fatal(err)
	}
	s := siteAt(t, time.Date(2026, 11, 27, 0, 30, 0, 0, auckland))
	player := s.member("robin")
	player.mustSee(player.get("/rounds/new"), `value="2026-11-27"`)
	a := player.post("/account", "name", "A", "target", "79", "boundary", "50", "clubs", "", "far", "yd", "green", "ft", "zone", "Mars/Olympus")
	if a.status != http.StatusUnprocessableEntity {
		t.Errorf("%d", a.status)
	}
	player.mustSee(a, `href="#zone"`, "Mars/Olympus")
	player.in("America/Los_Angeles")
	player.mustSee(player.get("/rounds/new"), `value="2026-11-26"`)
}
