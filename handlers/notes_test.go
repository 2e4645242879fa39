package handlers

import (
	"fmt"
	"net/http"
	"regexp"
	"strings"
	"testing"
)

// coached is a pupil with a round, and the pupil's coach.
func (s testSite) coached() (pupil, coach visitor) {
	s.t.Helper()
	pupil, coach = s.member("robin"), s.member("ines")
	pupil.withRound()
	coach.letIn(pupil, 1, 2, "")
	return pupil, coach
}

// follows posts a form and returns the page that it leads to.
func (v visitor) follows(path string, fields ...string) answer {
	v.t.Helper()
	a := v.post(path, fields...)
	if a.status != http.StatusSeeOther {
		v.t.Fatalf("%s: %d %s", path, a.status, a.body)
	}
	at, _, _ := strings.Cut(a.location, "#")
	return v.get(at)
}

// A coach writes about a shot, the pupil reads it, answers and asks; each sees
// what is new and what was read.
func TestAConversation(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	page := coach.follows("/players/1/notes", "round", "1", "on", "1.2", "body", "Two things:\n- the safe side\n- <one club more>")
	for _, want := range []string{"hole 1, shot 2", "<li>the safe side</li>", "&lt;one club more&gt;", "not read yet", "#note-1"} {
		if !strings.Contains(page.body, want) {
			t.Errorf("the coach's page has no %q", want)
		}
	}
	if a := pupil.get("/rounds"); !strings.Contains(a.body, "1 note has something new from a coach.") {
		t.Error("the pupil's first page does not tell of the note")
	}
	if a := pupil.get("/rounds/1"); !strings.Contains(a.body, "the safe side") || !strings.Contains(a.body, `<em class="ink-label">new</em>`) {
		t.Error("the pupil does not find the note")
	}
	if a := pupil.get("/rounds"); strings.Contains(a.body, "something new") {
		t.Error("a note that was read is still new")
	}
	if a := coach.get("/players/1/rounds/1"); strings.Contains(a.body, "not read yet") {
		t.Error("the coach does not see that it was read")
	}
	pupil.follows("/players/1/notes/1/replies", "body", "Which is that?")
	pupil.follows("/players/1/notes", "round", "1", "on", "1", "body", "Was that the club?")
	lessons := coach.get("/players/1/lessons").body
	if q, n := strings.Index(lessons, "Was that the club?"), strings.Index(lessons, "Which is that?"); q < 0 || n < 0 || q > n {
		t.Errorf("the question stands at %d, the answer at %d", q, n)
	}
	if a := coach.get("/coaching"); !strings.Contains(a.body, "#note-2") {
		t.Error("the roster does not tell of the question")
	}
	coach.follows("/players/1/notes/2/replies", "body", "It was.")
	if a := coach.get("/coaching"); strings.Contains(a.body, "#note-2") {
		t.Error("an answered question still waits")
	}
	edited := coach.follows("/players/1/notes/1", "body", "One thing.")
	if !strings.Contains(edited.body, "One thing.") || strings.Contains(edited.body, "the safe side") {
		t.Error("the note was not changed")
	}
	if a := coach.follows("/players/1/notes/1/remove"); strings.Contains(a.body, `id="note-1"`) {
		t.Error("the note was not removed")
	}
}

// What cannot be kept comes back as it was typed, with what is wrong.
func TestNotesComeBack(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	_, coach := s.coached()
	coach.follows("/players/1/notes", "day", "2026-05-03", "body", "A lesson.")
	long := strings.Repeat("long ", 1000)
	for _, c := range []struct{ path, want string }{
		{"/players/1/notes", long}, {"/players/1/notes/1", long}, {"/players/1/notes/1/replies", long},
	} {
		if a := coach.post(c.path, "day", "2026-05-03", "body", long); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, strings.TrimSpace(long)) || !strings.Contains(a.body, "Allowed: 1 to 4000 characters.") {
			t.Errorf("%s: %d", c.path, a.status)
		}
	}
	if a := coach.post("/players/1/notes", "day", "May", "body", "A lesson."); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "A lesson.") {
		t.Errorf("a day that is none: %d", a.status)
	}
	if a := coach.post("/players/1/notes", "round", "1", "on", "1.2", "body", " "); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, `value="1.2" selected`) {
		t.Errorf("an empty note: %d", a.status)
	}
	for _, on := range []string{"x", "1.x", "9", "1.9"} {
		if a := coach.post("/players/1/notes", "round", "1", "on", on, "body", "x"); a.status != http.StatusNotFound {
			t.Errorf("on %s: %d", on, a.status)
		}
	}
	if a := coach.post("/players/1/assignments", "what", "Start line", "due", "soon"); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, `id="due-wrong"`) || strings.Contains(a.body, `id="what-wrong"`) || !strings.Contains(a.body, `value="Start line"`) {
		t.Errorf("a day that is none is not told beside its field: %d", a.status)
	}
	for field, value := range map[string]string{"target": "60", "what": ""} {
		path := map[string]string{"target": "/players/1/target", "what": "/players/1/assignments"}[field]
		if a := coach.post(path, field, value); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, `class="fault-words"`) {
			t.Errorf("%s: %d", path, a.status)
		}
	}
}

// Nothing private reaches the pupil: not on a page, not in a report, not in the
// export. It is the coach's, in the coach's own export and after the end.
func TestPrivateNotesStayPrivate(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	const secret = "stands too close"
	coach.follows("/players/1/notes", "round", "1", "body", secret, "private", "yes")
	coach.follows("/players/1/notes", "round", "1", "body", "well played")
	for _, path := range []string{"/rounds/1", "/players/1/rounds/1", "/players/1/lessons", "/players/1/report?span=2026", "/export/everything.json", "/export/shots.csv", "/rounds", "/coaching"} {
		if a := pupil.get(path); a.status != http.StatusOK || strings.Contains(a.body, secret) {
			t.Errorf("%s: %d, or it tells what is private", path, a.status)
		}
	}
	if a := pupil.get("/export/everything.json"); !strings.Contains(a.body, "well played") {
		t.Error("a shared note is not in the pupil's export")
	}
	if a := coach.get("/players/1/report?span=2026"); strings.Contains(a.body, secret) || !strings.Contains(a.body, "well played") {
		t.Error("a report to take away has what is private, or has not what is shared")
	}
	if a := coach.get("/export/everything.json"); !strings.Contains(a.body, secret) {
		t.Error("a private note is not in its writer's export")
	}
	if a := coach.get("/players/1/lessons"); !strings.Contains(a.body, "private: only you can read it") {
		t.Error("a private note is not marked")
	}
	pupil.follows("/coaching/end", "player", "1", "coach", "2", "sure", "yes")
	if a := coach.get("/coaching/kept"); !strings.Contains(a.body, secret) || strings.Contains(a.body, "well played") {
		t.Error("the coach has not kept the private note alone")
	}
	if a := pupil.get("/rounds/1"); !strings.Contains(a.body, "well played") {
		t.Error("the shared note is gone with the access")
	}
	removed := coach.follows("/coaching/kept", "player", "1", "note", "1")
	if a := coach.get("/coaching/kept"); strings.Contains(a.body, secret) {
		t.Error("a kept note cannot be removed")
	}
	if a := coach.undone(removed); !strings.Contains(a.body, secret) || !strings.Contains(a.body, "Restored.") {
		t.Error("a kept note does not come back where the coach reads it")
	}
}

func TestPracticeIsSetAndRecorded(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	coach.follows("/players/1/assignments", "what", "Start line", "amount", "40 putts", "pass_mark", "32 of 40", "due", "2092-09-01")
	if a := pupil.get("/players/1/lessons"); !strings.Contains(a.body, "pass mark 32 of 40") || !strings.Contains(a.body, "1 Sep 2092") {
		t.Error("the pupil does not find it")
	}
	if a := pupil.post("/players/1/assignments/1/results", "day", "2026-08-30", "result", ""); a.status != http.StatusUnprocessableEntity {
		t.Errorf("an empty result: %d", a.status)
	}
	pupil.follows("/players/1/assignments/1/results", "day", "2026-08-30", "result", "33 of 40", "passed", "yes")
	pupil.follows("/players/1/assignments/1/done", "done", "yes")
	if a := coach.get("/players/1/lessons"); !strings.Contains(a.body, "33 of 40") || !strings.Contains(a.body, "1 of 1 passed") || !strings.Contains(a.body, "<b>done</b>") {
		t.Error("the coach does not see the result")
	}
	coach.follows("/players/1/target", "target", "82.5")
	if a := pupil.get("/players/1/lessons"); !strings.Contains(a.body, "Accept 82.5 as my target") {
		t.Error("the pupil is not asked")
	}
	if a := pupil.follows("/players/1/target/answer", "coach", "2", "accept", "yes"); strings.Contains(a.body, "Accept 82.5") {
		t.Error("the pupil is asked again")
	}
	if a := coach.get("/players/1/lessons"); !strings.Contains(a.body, "Target 82.5.") {
		t.Error("the target was not taken")
	}
}

func TestSquadAndReport(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.member("robin"), s.member("ines")
	coach.letIn(pupil, 1, 2, "")
	withSeason(t, s.store, 1, 86, "2026-03-01", 3, 12)
	if a := coach.get("/coaching/squad?from=2026-03-01&to=2026-03-31&who=all"); a.status != http.StatusOK || !strings.Contains(a.body, "11 rounds of 1 pupil") || !strings.Contains(a.body, "loses most") {
		t.Errorf("%d %s", a.status, a.body)
	}
	if a := coach.get("/coaching/squad?from=2001-01-01&to=2001-01-31&who=all"); !strings.Contains(a.body, "None of the chosen pupils played") {
		t.Error("nobody has played, and yet")
	}
	if a := coach.get("/coaching/squad?from=March"); a.status != http.StatusUnprocessableEntity {
		t.Errorf("a day that is none: %d", a.status)
	}
	if a := coach.get("/coaching/squad?from=2026-03-04&to=2026-03-04&who=all"); !strings.Contains(a.body, "1 round of 1 pupil, 4 Mar 2026.") {
		t.Error("a single day is not the span")
	}
	if a := coach.get("/coaching/squad?from=2026-03-04&to=2026-03-01"); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "The last day is before the first.") {
		t.Errorf("days that run backwards: %d", a.status)
	}
	if a := coach.get("/players/1/report?span=..2026-03-10"); !strings.Contains(a.body, "No other span has rounds to compare it with.") || strings.Contains(a.body, "could be chance") {
		t.Error("a span without one before it is compared with itself")
	}
	for span, want := range map[string]int{"last10": 200, "2026-03": 200, "2001": 200, "nonsense": 422, "..2026-03-10": 200} {
		if a := coach.get("/players/1/report?span=" + span); a.status != want {
			t.Errorf("%s: %d", span, a.status)
		}
	}
	if a := coach.get("/players/1/report?from=2026-03-01&to=2026-03-31"); a.location != "/players/1/report?span=2026-03" {
		t.Errorf("%d %s", a.status, a.location)
	}
}

// Links are made and tried a few times a minute at the most.
func TestCoachLinksHaveALimit(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	last := 0
	for i := range triesMost + 1 {
		last = v.post("/coaching/accept", "player", "9", "token", fmt.Sprint(i)).status
	}
	if last != http.StatusTooManyRequests {
		t.Errorf("after %d tries: %d", triesMost, last)
	}
}

// An older window does not write over a note in silence.
func TestANoteEditedInTwoWindows(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	_, coach := s.coached()
	coach.follows("/players/1/notes", "day", "2026-05-02", "body", "The grip.")
	coach.follows("/players/1/notes/1", "body", "The stance.", "version", "")
	a := coach.post("/players/1/notes/1", "body", "The swing.", "version", "")
	if a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "in another window, to “The stance.”") || !strings.Contains(a.body, ">The swing.</textarea>") {
		t.Errorf("%d", a.status)
	}
	version := regexp.MustCompile(`name="version" value="(\d+)"`).FindStringSubmatch(a.body)
	if version == nil {
		t.Fatal("no version")
	}
	coach.mustSee(coach.follows("/players/1/notes/1", "body", "The swing.", "version", version[1]), "The swing.")
}

// Whoever sent a form when the session had ended is led back to its page, without the word
// that something was saved.
func TestAFormAfterTheSession(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	_, coach := s.coached()
	coach.post("/sign-out")
	r, err := http.NewRequest(http.MethodPost, s.URL+"/players/1/notes", strings.NewReader("body=The+grip."))
	if err != nil {
		t.Fatal(err)
	}
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	r.Header.Set("Referer", s.URL+"/players/1/lessons?saved=note&removed=note.1.1")
	if a := coach.ask(r); a.location != "/?again=form" {
		t.Fatalf("%d %s", a.status, a.location)
	}
	coach.mustSee(coach.get("/?again=form"), "You were signed out, so nothing was saved.")
	if a := coach.post("/sign-in", "email", "ines@example.org", "password", password); a.location != "/players/1/lessons" {
		t.Errorf("%d %s", a.status, a.location)
	}
}
