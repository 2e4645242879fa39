package handlers

import (
	"net/http"
	"strings"
	"testing"
)

// undone follows the way back that a page offers.
func (v visitor) undone(page answer) answer {
	v.t.Helper()
	_, bar, found := strings.Cut(page.body, `<div class="undo-bar"`)
	_, what, named := strings.Cut(bar, `name="what" value="`)
	what, _, _ = strings.Cut(what, `"`)
	if !found || !named {
		v.t.Fatalf("no way back on\n%s", page.body)
	}
	return v.follows("/removed", "what", what)
}

// Every removal is answered by a page that says what was removed and takes it
// back with one tap.
func TestEveryRemovalIsUndone(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	coach.follows("/players/1/notes", "round", "1", "on", "1.2", "body", "The safe side.")
	pupil.follows("/players/1/notes/1/replies", "body", "Which is that?")
	coach.follows("/players/1/assignments", "what", "Start line", "due", "2092-09-01")
	pupil.follows("/players/1/assignments/1/results", "day", "2026-08-01", "result", "7 of 10")
	pupil.follows("/players/1/run-out", balls("12 21, 13 23")...)
	for _, c := range []struct {
		who          visitor
		remove, says string
		read, gone   string // where it is read, and what is gone from there
	}{
		{pupil, "/rounds/1/remove", "Removed: round of 2 May 2026, Harrow Fen.", "/rounds", `href="/rounds/1"`},
		{coach, "/players/1/notes/1/remove", "Removed: note of 2 May 2026, “The safe side.”, for robin.", "/players/1/rounds/1", `id="note-1"`},
		{pupil, "/players/1/notes/1/replies/1/remove", "Removed: answer of 2 May 2026, “Which is that?”.", "/rounds/1", "Which is that?</p>"},
		{pupil, "/players/1/assignments/1/results/1/remove", "Removed: result of 1 Aug 2026, “Start line: 7 of 10”.", "/players/1/lessons", `<td class="text-cell">7 of 10`},
		{pupil, "/players/1/run-out/1/remove", "Removed: trial of 2 May 2026, “pw, 12 and 21 paces”.", "/players/1/run-out", "12 and 21 paces"},
		{pupil, "/players/1/assignments/1/remove", "Removed: practice “Start line”.", "/players/1/lessons", `id="practice-1"`},
	} {
		if a := c.who.get(c.read); !strings.Contains(a.body, c.gone) {
			t.Errorf("%s: %s has no %q before", c.remove, c.read, c.gone)
		}
		page := c.who.follows(c.remove)
		if page.status != http.StatusOK || !strings.Contains(page.body, c.says) {
			t.Errorf("%s: no %q", c.remove, c.says)
		}
		if a := c.who.get(c.read); strings.Contains(a.body, c.gone) {
			t.Errorf("%s: still on %s", c.remove, c.read)
		}
		if a := c.who.get("/export/everything.json"); strings.Contains(a.body, "Harrow Fen") == (c.remove == "/rounds/1/remove") && c.who == pupil {
			t.Errorf("%s: the export and the round", c.remove)
		}
		if a := c.who.get("/removed"); !strings.Contains(a.body, "Restore<span") {
			t.Errorf("%s is not listed", c.remove)
		}
		back := c.who.undone(page)
		if back.status != http.StatusOK || !strings.Contains(back.body, "Restored.") {
			t.Errorf("%s: back with %d", c.remove, back.status)
		}
		if a := c.who.get(c.read); !strings.Contains(a.body, c.gone) {
			t.Errorf("%s: not back on %s", c.remove, c.read)
		}
	}
	if a := pupil.get("/removed"); !strings.Contains(a.body, "Nothing has been removed") {
		t.Error("what came back is still listed")
	}
}

// Nobody brings back what is another's, and an address says nothing of its own.
func TestTheWayBackIsOnesOwn(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	pupil.follows("/rounds/1/remove")
	for _, what := range []string{"", "round", "round.1.1", "note.1.1", "round.1.99"} {
		if a := coach.post("/removed", "what", what); a.status != http.StatusNotFound {
			t.Errorf("%q: %d", what, a.status)
		}
	}
	for _, path := range []string{"/rounds?removed=round.1.1", "/rounds?removed=%3Cb%3E", "/rounds?saved=you+won"} {
		if a := coach.get(path); strings.Contains(a.body, "undo-bar") || strings.Contains(a.body, "you won") || strings.Contains(a.body, `class="notice"`) {
			t.Errorf("%s says something", path)
		}
	}
	if a := pupil.post("/removed", "what", "round.1.1"); a.status != http.StatusSeeOther || a.location != "/rounds/1?saved=back" {
		t.Errorf("%d %s", a.status, a.location)
	}
}

// A new player is asked for target and units once, and may skip it.
func TestTheFirstVisit(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen, SetupToken: "sesame"})
	join := func(name string) visitor {
		v := s.visitor()
		if a := v.post("/join", "name", name, "email", name+"@example.org", "password", password, "token", "sesame"); a.location != "/welcome" {
			t.Fatalf("%d to %s", a.status, a.location)
		}
		return v
	}
	one, two := join("one"), join("two")
	if a := one.get("/welcome"); !strings.Contains(a.body, `value="79"`) || !strings.Contains(a.body, `value="yd" checked`) {
		t.Errorf("%d, or the usual settings are not offered", a.status)
	}
	if a := one.post("/welcome", "target", "60", "far", "miles", "green", "m"); a.status != http.StatusUnprocessableEntity || strings.Count(a.body, `class="fault-words"`) != 2 || !strings.Contains(a.body, `value="60"`) {
		t.Errorf("%d", a.status)
	}
	if a := one.follows("/welcome", "target", "84", "far", "m", "green", "m"); !strings.Contains(a.body, "target and units are saved") {
		t.Error("it is not said")
	}
	if a := one.get("/account"); !strings.Contains(a.body, `value="84"`) || strings.Count(a.body, `value="m" checked`) != 2 {
		t.Error("what was answered is not kept")
	}
	if a := two.post("/welcome", "skip", "yes"); a.location != "/rounds?saved=welcome" {
		t.Errorf("skipped to %s", a.location)
	}
	for i, v := range []visitor{one, two} {
		if a := v.get("/"); a.location != "/rounds" {
			t.Errorf("%d is asked again: %s", i, a.location)
		}
	}
}

// Every save says so on the next page, and unknown units are refused.
func TestASaveSaysSo(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	settings := []string{"name", "A", "target", "84", "boundary", "50", "clubs", "", "far", "m", "green", "ft"}
	if a := v.follows("/account", settings...); !strings.Contains(a.body, "Your settings are saved.") {
		t.Error("settings")
	}
	settings[9] = "ells"
	if a := v.post("/account", settings...); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "Choose yards or metres.") {
		t.Errorf("unknown units: %d", a.status)
	}
	if a := v.get("/account"); !strings.Contains(a.body, `value="m" checked`) {
		t.Error("units that were refused reset the ones that are kept")
	}
	if a := v.follows("/account/password", "password", password, "new", "another password"); !strings.Contains(a.body, "Your password is changed.") {
		t.Error("password")
	}
	if a := v.follows("/account/delete", "confirm", "another password"); !strings.Contains(a.body, "Your account is deleted") {
		t.Error("account")
	}
}
