package handlers

import (
	"net/http"
	"strings"
	"testing"
	"time"

	"strokeledger/db"
)

const startLine = "/players/1/drills/start-line"

// inJune is a site on a day soon after the sessions of these tests.
var inJune = Options{SignUp: SignUpOpen, Clock: func() time.Time { return time.Date(2026, 6, 10, 9, 0, 0, 0, time.UTC) }}

// aSession is a session of putts as its form sends it.
func aSession(tries string, more ...string) []string {
	return append([]string{"entered", "a-page-of-putts", "day", "2026-06-01", "feet", "6", "tries", tries, "press", "save"}, more...)
}

// sessions are the sessions that the first player has.
func (s testSite) sessions() []db.DrillSession {
	s.t.Helper()
	all, err := s.store.DrillSessions(s.t.Context(), 1, 1, "")
	if err != nil {
		s.t.Fatal(err)
	}
	return all
}

// Without script every key is a button that sends the tries so far and gets them back
// with one more, and nothing is stored until it is saved.
func TestKeysOfADrillWithoutScript(t *testing.T) {
	s := newSite(t, inJune)
	v := s.member("robin")
	for _, c := range []struct{ tries, press, want string }{{"", "m", "m"}, {"mm", "l", "mml"}, {"mml", "undo", "mm"}, {"", "undo", ""}, {"m", "q", "m"}} {
		a := v.post(startLine, "entered", "a-page-of-putts", "day", "2026-06-01", "feet", "6", "tries", c.tries, "note", "left edge", "press", c.press)
		v.mustSee(a, `name="tries" value="`+c.want+`"`, `value="a-page-of-putts"`, `value="left edge"`, `value="6"`)
	}
	a := v.post("/players/1/drills/wedge-ladder", "entered", "a-page-of-chips", "day", "2026-06-01", "each", "9", "count-0", "5", "count-1", "", "count-2", "9", "press", "more-0")
	v.mustSee(a, `value="6" aria-label="Counted from 40`, "<b>15</b> of <span>27</span>")
	if all := s.sessions(); len(all) != 0 {
		t.Errorf("%+v", all)
	}
}

// A saved session is told at once: what came of it, what was to be expected, and
// whether the mark was passed.
func TestASessionIsSavedAndTold(t *testing.T) {
	s := newSite(t, inJune)
	v, coach := s.member("robin"), s.member("ines")
	coach.letIn(v, 1, 2, "")
	for range 2 { // the same form twice
		a := v.follows(startLine, aSession(strings.Repeat("m", 14)+"lrlrsgll", "minutes", "25", "note", "left edge")...)
		v.mustSee(a, "The session is saved.", "14 of 22 holed.", "Passed: the mark for 22 tries is", "is expected to reach", "Note: left edge", "Start line from 6 ft", "Next:")
	}
	a := v.follows("/players/1/drills/wedge-ladder", "entered", "a-page-of-chips", "day", "2026-06-02", "each", "9", "count-0", "1", "count-1", "0", "count-2", "0")
	v.mustSee(a, "1 of 27 counted.", "Not passed: the mark for 27 tries is", "1 of 9")
	all := s.sessions()
	if len(all) != 2 || all[0].Tries != "mmmmmmmmmmmmmmlrlrsgll" || all[0].Feet != 6 || all[0].Minutes != 25 || all[1].Counted[0] != 1 || all[1].Tried[2] != 9 {
		t.Errorf("%+v", all)
	}
	seen := coach.get(startLine)
	coach.mustSee(seen, "14 of 22 holed.", "1 Jun 2026")
	if strings.Contains(seen.body, "session-form") || strings.Contains(seen.body, "/sessions/") {
		t.Error("the coach may change a session")
	}
}

// What is not allowed comes back as it was typed, with what is wrong.
func TestARefusedSessionComesBack(t *testing.T) {
	s := newSite(t, inJune)
	v := s.member("robin")
	for wrong, c := range map[string]struct {
		drill  string
		fields []string
	}{
		"No try is written down yet":    {"start-line", aSession("")},
		"Not a try of this drill":       {"start-line", aSession("mmx")},
		"Allowed: 3 to 10":              {"start-line", aSession("mm", "feet", "30")},
		"This day is still to come":     {"start-line", aSession("mm", "day", "2092-06-01")},
		"Allowed: 0 to 600":             {"start-line", aSession("mm", "minutes", "900")},
		"Allowed: up to 200 characters": {"start-line", aSession("mm", "note", strings.Repeat("n", 300))},
		"Nothing is counted yet":        {"wedge-ladder", aSession("", "each", "9")},
		"How many counted?":             {"wedge-ladder", aSession("", "each", "9", "count-0", "3")},
		"Allowed: 0 to 9":               {"wedge-ladder", aSession("", "each", "9", "count-0", "12", "count-1", "0", "count-2", "0")},
		"Allowed: 1 to 66":              {"wedge-ladder", aSession("", "each", "900", "count-0", "3")},
		"Say what you saw":              {"short-side", aSession("")},
	} {
		typed := map[string]string{}
		for i := 0; i < len(c.fields); i += 2 {
			typed[c.fields[i]] = c.fields[i+1] // the last one counts
		}
		var fields []string
		for name, text := range typed {
			fields = append(fields, name, text)
		}
		a := v.post("/players/1/drills/"+c.drill, fields...)
		if a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, wrong) || !strings.Contains(a.body, `value="`+typed["day"]+`"`) {
			t.Errorf("%s: %d", wrong, a.status)
		}
		if status, said, _ := v.script("/players/1/drills/"+c.drill, fields...); status != http.StatusUnprocessableEntity || said.Error == "" {
			t.Errorf("%s, to a script: %d %q", wrong, status, said.Error)
		}
	}
	if all := s.sessions(); len(all) != 0 {
		t.Errorf("%+v", all)
	}
}

// The same page saved in two windows: neither loses what the other stored.
func TestTwoWindowsOfADrill(t *testing.T) {
	s := newSite(t, inJune)
	v := s.member("robin")
	v.follows(startLine, aSession("mml")...)
	a := v.post(startLine, aSession("mmlrr")...)
	if a.status != http.StatusConflict {
		t.Fatalf("%d", a.status)
	}
	v.mustSee(a, "already saved", "2 of 3", `name="tries" value="mmlrr"`, "Replace it with this one", "Keep both")
	if status, _, _ := v.script(startLine, aSession("mmlrr")...); status != http.StatusConflict {
		t.Errorf("a script is told %d", status)
	}
	both := []string{"entered", "a-page-of-putts", "day", "2026-06-01", "feet", "6", "tries", "mmlrr", "press", "another"}
	v.follows(startLine, both...)
	if all := s.sessions(); len(all) != 2 || all[0].Tries != "mml" || all[1].Tries != "mmlrr" {
		t.Errorf("both are kept: %+v", all)
	}
	both[len(both)-1] = "replace"
	v.follows(startLine, both...)
	if all := s.sessions(); len(all) != 2 || all[0].Tries != "mmlrr" {
		t.Errorf("replaced: %+v", all)
	}
}

// A session at the server that ended loses nothing: signing in leads to the page with
// what was typed, and a script is told to keep it.
func TestADrillAfterTheSessionEnded(t *testing.T) {
	s := newSite(t, inJune)
	s.member("robin")
	v := s.visitor()
	if status, _, _ := v.script(startLine, aSession("mml")...); status != http.StatusUnauthorized {
		t.Errorf("a script is told %d", status)
	}
	for _, press := range []string{"m", "save"} {
		v = s.visitor()
		v.post(startLine, "entered", "a-page-of-putts", "day", "2026-06-01", "feet", "7", "tries", "mmlr", "note", "a & b", "press", press)
		a := v.follows("/sign-in", "email", "robin@example.org", "password", "a long password")
		v.mustSee(a, `name="tries" value="mmlr"`, `value="a-page-of-putts"`, `value="a &amp; b"`, "From, 3 to 10 ft", `value="7"`)
	}
	if all := s.sessions(); len(all) != 0 {
		t.Errorf("%+v", all)
	}
}

// A session is changed on a page of its own, and a removed one comes back.
func TestASessionIsChangedAndRemoved(t *testing.T) {
	s := newSite(t, inJune)
	v := s.member("robin")
	v.follows(startLine, aSession("mml")...)
	v.mustSee(v.get("/players/1/sessions/1"), `name="tries" value="mml"`, "Save the changes", "Remove this session")
	v.mustSee(v.post("/players/1/sessions/1", "day", "2026-06-01", "feet", "6", "tries", "mml", "press", "r"), `name="tries" value="mmlr"`)
	if a := v.post("/players/1/sessions/1", aSession("")...); a.status != http.StatusUnprocessableEntity {
		t.Errorf("nothing is saved: %d", a.status)
	}
	a := v.follows("/players/1/sessions/1", "day", "2026-06-03", "feet", "8", "tries", "mmlm", "press", "save")
	v.mustSee(a, "3 of 4 holed", "3 Jun 2026")
	if all := s.sessions(); len(all) != 1 || all[0].Feet != 8 || all[0].Tries != "mmlm" || all[0].EnteredAs != "a-page-of-putts" {
		t.Errorf("%+v", all)
	}
	a = v.follows("/players/1/sessions/1/remove")
	v.mustSee(a, "Removed: session of 3 Jun 2026")
	if all := s.sessions(); len(all) != 0 {
		t.Errorf("%+v", all)
	}
	v.mustSee(v.undone(a), "Restored.")
	if all := s.sessions(); len(all) != 1 {
		t.Errorf("%+v", all)
	}
}
