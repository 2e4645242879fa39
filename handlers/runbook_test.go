package handlers

import (
	"net/http"
	"regexp"
	"strings"
	"testing"

	"strokeledger/db"
)

// fromRough is the form of the run-out book with some pairs from the rough.
func fromRough(pairs string) []string {
	return []string{"pairs", pairs, "club", "sw", "lie", "rough", "green", "medium", "unit", "yd", "day", "2026-05-02", "entered", "page " + pairs}
}

// shortSided enters the second hole of a member's round: a par 3 whose tee shot ends 18
// yd from the hole in the rough, on the short side.
func (v visitor) shortSided() {
	v.t.Helper()
	if a := v.post("/rounds/1/holes/2", "line", "r18s g6 2", "version", "0", "press", "save"); a.status != http.StatusSeeOther {
		v.t.Fatalf("%d %s", a.status, a.body)
	}
}

var teeShotLost = regexp.MustCompile(`(?s)id="h2-1".*?data-part="h2">([+−]\d\.\d\d)<`)

// teeShot is what the statement says that the tee shot of the second hole lost.
func (v visitor) teeShot(path string) string {
	v.t.Helper()
	a := v.get(path)
	m := teeShotLost.FindStringSubmatch(a.body)
	if m == nil {
		v.t.Fatalf("%d %s", a.status, a.body)
	}
	return m[1]
}

// A statement judges a short side that was not measured by the player's book as soon
// as there are three trials, says so, and names the player to a coach. Another
// player's book does nothing.
func TestAStatementIsJudgedByTheRunOutBook(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	pupil.shortSided()
	const at, byModel = "/players/1/rounds/1", "short side by the model’s run-out: 7.9 yd from the rough, half of it green"
	before := pupil.teeShot("/rounds/1")
	pupil.mustSee(pupil.get("/rounds/1"), byModel)
	coach.follows("/players/2/run-out", fromRough("12 24, 12 24, 12 24")...)
	pupil.follows("/players/1/run-out", fromRough("6 18, 6 18")...)
	pupil.mustSee(pupil.get("/rounds/1"), byModel)
	pupil.follows("/players/1/run-out", fromRough("6 18")...)
	pupil.mustSee(pupil.get("/rounds/1"), "short side by your run-out book: 12 yd from the rough, half of it green")
	a := coach.get(at)
	coach.mustSee(a, "short side by robin’s run-out book: 12 yd from the rough, half of it green")
	if strings.Contains(a.body, "your run-out book") {
		t.Error("the coach reads of the coach's own book")
	}
	after := pupil.teeShot("/rounds/1")
	if after <= before || coach.teeShot(at) != after {
		t.Errorf("the tee shot lost %s by the model, %s by the book, %s to the coach", before, after, coach.teeShot(at))
	}
	a = pupil.get("/players/1/run-out")
	remove := regexp.MustCompile(`/players/1/run-out/\d+/remove`).FindString(a.body)
	gone := pupil.follows(remove)
	pupil.mustSee(pupil.get("/rounds/1"), byModel)
	pupil.undone(gone)
	if back := pupil.teeShot("/rounds/1"); back != after {
		t.Errorf("after the ball came back %s, before %s", back, after)
	}
}

// The plan counts the short side with the same book, and says so.
func TestThePlanCountsTheShortSideByTheRunOutBook(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v, coach := s.member("robin"), s.member("ines")
	v.withRound()
	v.shortSided()
	coach.letIn(v, 1, 2, "")
	const plain = "What too little green added to chips: aim at the side with room."
	v.mustSee(v.get("/players/1/plan"), plain)
	v.follows("/players/1/run-out", fromRough("6 18, 6 18, 6 18")...)
	v.mustSee(v.get("/players/1/plan"), "What too little green added to chips, judged by your run-out book: aim at the side with room.")
	coach.mustSee(coach.get("/players/1/plan"), "What too little green added to chips, judged by robin’s run-out book: aim at the side with room.")
}

// The rounds as a file are the same with a book and without one.
func TestAShotsFileKnowsNoRunOutBook(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	v.withRound()
	v.shortSided()
	before := v.get("/export/shots.csv").body
	v.follows("/players/1/run-out", fromRough("6 18, 6 18, 6 18")...)
	if after := v.get("/export/shots.csv").body; after != before || !strings.Contains(before, "rough,18,") {
		t.Errorf("%s\n%s", before, after)
	}
}

// While a hole is typed its shots cost what they cost on the statement.
func TestTheEchoUsesTheRunOutBook(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	round := v.withRound()
	lost := func() string {
		t.Helper()
		status, answer, _ := v.script(round+"/holes/2/echo", "line", "r18s g6 2")
		if status != http.StatusOK {
			t.Fatal(status)
		}
		m := regexp.MustCompile(`data-part="shots">([+−]\d\.\d\d)<`).FindStringSubmatch(answer.HTML)
		if m == nil {
			t.Fatal(answer.HTML)
		}
		return m[1]
	}
	model := lost()
	v.follows("/players/1/run-out", fromRough("6 18, 6 18, 6 18")...)
	book := lost()
	v.shortSided()
	v.post("/rounds/1/holes/3", "line", "f250 f90 g20 2", "version", "0", "press", "save")
	if statement := v.teeShot(round); book == model || statement != book {
		t.Errorf("the echo says %s by the model and %s by the book, the statement %s", model, book, statement)
	}
}

// The roster of a coach is made anew once the book of a pupil has changed, and every
// page that reads the rounds at once agrees with those that read one.
func TestTheRosterFollowsTheRunOutBook(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	pupil.shortSided()
	coach.get("/coaching")
	kept := func() db.SummaryRow {
		t.Helper()
		rows, err := s.store.Summaries(t.Context(), 2, db.Chosen{})
		if err != nil || len(rows) != 1 {
			t.Fatal(err, rows)
		}
		return rows[0]
	}
	before := kept()
	pupil.follows("/players/1/run-out", fromRough("6 18, 6 18, 6 18")...)
	if kept().MadeFor != "" {
		t.Error("the summary of before counts")
	}
	if own, err := s.store.SummariesOf(t.Context(), 1, 1, 1); err != nil || len(own) != 1 || own[0].MadeFor != "" {
		t.Errorf("the summary of before counts beside golfers of the same score: %v, %v", own, err)
	}
	coach.get("/coaching")
	if after := kept(); after.MadeFor != before.MadeFor || string(after.Summary) == string(before.Summary) {
		t.Errorf("made for %q, before for %q; the same summary: %v", after.MadeFor, before.MadeFor, string(after.Summary) == string(before.Summary))
	}
}

// An account file takes the book to another server, where rounds are judged by it;
// taken in twice, nothing is there twice.
func TestTheRunOutBookTravels(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	v.withRound()
	v.shortSided()
	v.follows("/players/1/run-out", fromRough("6 18, 6 18, 6 18")...)
	file := v.get("/export/everything.json").body
	there := newSite(t, Options{SignUp: SignUpOpen})
	u := there.member("robin")
	for range 2 {
		u.mustSee(u.upload(file), "It also has 3 trials of the run-out book.")
		if a := u.post("/import/confirm", "there", "skip"); a.status != http.StatusSeeOther {
			t.Fatalf("%d %s", a.status, a.body)
		}
		u.mustSee(u.get("/players/1/run-out"), "3 trials, the last of 2 May 2026.")
	}
	u.mustSee(u.get("/rounds/1"), "short side by your run-out book: 12 yd from the rough, half of it green")
	_, book, _ := strings.Cut(file, `"run_out":`)
	if _, again, _ := strings.Cut(u.get("/export/everything.json").body, `"run_out":`); again != book {
		t.Errorf("%s\n%s", book, again)
	}
}
