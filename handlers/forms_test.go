package handlers

import (
	"net/http"
	"slices"
	"strings"
	"testing"
)

// wrongForm is a form sent with something that is not allowed.
type wrongForm struct {
	name   string
	who    visitor
	path   string // a GET when it has a question mark
	fields []string
	at     []string // the fields that are wrong, in the order of the page
}

// A form that comes back begins with a summary, which takes the focus and links
// to each field that is wrong; the field says so and names what describes it.
func TestWrongFormsComeBack(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	steward := s.steward()
	another := s.member("another")
	for _, made := range []answer{
		coach.post("/players/1/notes", "round", "1", "body", "The safe side."), coach.post("/players/1/notes", "day", "2026-08-01", "body", "A lesson."),
		coach.post("/players/1/assignments", "what", "Start line", "due", "2092-09-01"), another.post("/courses/new", "name", "Other", "holes", "1", "anyway", "holes:1", "paste", "4 384\n"),
		pupil.post("/rounds/1/holes/2", "line", "g20 2", "version", "0"), pupil.post("/rounds/1/holes/3", "line", "f200 g20 2", "version", "0"),
	} {
		if made.status != http.StatusSeeOther {
			t.Fatalf("%d %s", made.status, made.body)
		}
	}
	long := strings.Repeat("x", 400)
	for _, f := range []wrongForm{
		{"sign in", s.visitor(), "/sign-in", []string{"email", "robin@example.org", "password", "wrong"}, []string{"email"}},
		{"join", s.visitor(), "/join", []string{"name", "", "email", "none", "password", "short"}, []string{"name", "email", "password"}},
		{"reset", s.visitor(), "/reset", []string{"player", "1", "token", "x", "password", "short"}, []string{"password"}},
		{"welcome", pupil, "/welcome", []string{"target", "12", "far", "miles", "green", "ft"}, []string{"target", "far"}},
		{"settings", pupil, "/account", []string{"name", "", "target", "12", "boundary", "50", "far", "yd", "green", "inch", "clubs", "a/b"}, []string{"name", "target", "clubs", "green"}},
		{"password", pupil, "/account/password", []string{"password", "wrong", "new", "short"}, []string{"password", "new"}},
		{"delete", pupil, "/account/delete", []string{"confirm", "wrong"}, []string{"confirm"}},
		{"import", pupil, "/import", nil, []string{"file"}},
		{"begin", pupil, "/rounds/new", []string{"course", "1", "date", "soon", "part", "back", "conditions", long}, []string{"date", "part", "conditions"}},
		{"begin nowhere", pupil, "/rounds/new", []string{"course", "", "date", "2026-05-02"}, []string{"course"}},
		{"begin on a new course", pupil, "/rounds/new", []string{"new_course", "", "new_holes", "30", "date", "soon"}, []string{"new_course", "new_holes", "new_date"}},
		{"course", pupil, "/courses/new", []string{"name", "", "holes", "1", "anyway", "holes:1", "par-1", "9", "length-1", "380"}, []string{"name", "par-1"}},
		{"pasted course", pupil, "/courses/new", []string{"name", "A", "holes", "18", "paste", "four"}, []string{"holes", "paste"}},
		{"size of a course", pupil, "/courses/new", []string{"name", "A", "holes", "2", "par-1", "4", "length-1", "380", "par-2", "4", "length-2", "380"}, []string{"holes"}},
		{"merge", steward, "/courses/1/merge", []string{"same", ""}, []string{"same"}},
		{"details", pupil, "/rounds/1/details", []string{"day", "soon", "course", "", "target", "20", "par18", "72", "first_hole", "1", "par-1", "9", "length-1", "384", "par-2", "3", "length-2", "158", "par-3", "5", "length-3", "many"}, []string{"day", "course", "target", "par-1", "length-3"}},
		{"taken course", pupil, "/rounds/1/details", []string{"day", "2026-05-02", "course", "Fen", "target", "79", "par18", "72", "first_hole", "1", "take", "99", "par-1", "4", "length-1", "384", "par-2", "3", "length-2", "158", "par-3", "5", "length-3", "498"}, []string{"take"}},
		{"shots", pupil, "/rounds/1/holes/1/shots", []string{"club", "a b", "miss", "up", "word", long, "club", "", "miss", "", "word", "", "club", "", "miss", "", "word", long, "club", "", "miss", "", "word", ""}, []string{"club-1", "miss-1", "word-1", "word-3"}},
		{"other shots", pupil, "/rounds/1/holes/1/shots", []string{"club", "7i"}, []string{"club-1"}},
		{"card", pupil, "/rounds/1/conditions", []string{"conditions", long}, []string{"conditions"}},
		{"nine", pupil, "/rounds/1/conditions", []string{"out", "many"}, []string{"out"}},
		{"question", pupil, "/players/1/notes", []string{"round", "1", "body", ""}, []string{"write-body"}},
		{"note", coach, "/players/1/notes", []string{"round", "1", "body", ""}, []string{"write-body"}},
		{"lesson", coach, "/players/1/notes", []string{"day", "soon", "body", ""}, []string{"lesson_day", "lesson"}},
		{"reply", pupil, "/players/1/notes/1/replies", []string{"body", ""}, []string{"reply-note-1"}},
		{"changed note", coach, "/players/1/notes/1", []string{"body", ""}, []string{"edit-note-1"}},
		{"changed lesson", coach, "/players/1/notes/2", []string{"body", ""}, []string{"edit-note-2"}},
		{"practice", coach, "/players/1/assignments", []string{"what", "", "amount", long, "pass_mark", long, "due", "soon"}, []string{"what", "amount", "pass_mark", "due"}},
		{"result", pupil, "/players/1/assignments/1/results", []string{"day", "soon", "result", ""}, []string{"day-practice-1", "result-practice-1"}},
		{"target", coach, "/players/1/target", []string{"target", "12"}, []string{"target"}},
		{"coach's link", pupil, "/coaching/invite", []string{"from", "soon"}, []string{"from"}},
		{"marked day", pupil, "/marks", []string{"day", "soon", "what", ""}, []string{"day", "what"}},
		{"days compared", pupil, "/players/1/months?from=soon&to=later", nil, []string{"from1"}},
		{"level", pupil, "/players/1/months?versus=level&level=12", nil, []string{"level"}},
		{"squad", coach, "/coaching/squad?from=soon&to=later", nil, []string{"from", "to"}},
		{"report", pupil, "/players/1/report?span=soon", nil, []string{"from"}},
	} {
		f.check(t)
	}
}

func (f wrongForm) check(t *testing.T) {
	t.Helper()
	var a answer
	if strings.Contains(f.path, "?") {
		a = f.who.get(f.path)
	} else {
		a = f.who.post(f.path, f.fields...)
	}
	if a.status != http.StatusUnprocessableEntity {
		t.Errorf("%s: %d", f.name, a.status)
		return
	}
	before, rest, found := strings.Cut(a.body, `<div class="notice faulty fault-summary" role="alert" tabindex="-1" autofocus>`)
	if !found || strings.Contains(rest, "autofocus") || strings.Contains(before, "autofocus") {
		t.Errorf("%s: not one summary that alone takes the focus", f.name)
		return
	}
	summary, _, _ := strings.Cut(rest, "</div>")
	all, linked := tags(a.body), []string{}
	for _, link := range tags(summary) {
		if link.name == "a" {
			linked = append(linked, strings.TrimPrefix(link.attrs["href"], "#"))
		}
	}
	if !slices.Equal(linked, f.at) {
		t.Errorf("%s: links to %q, want %q", f.name, linked, f.at)
	}
	for _, id := range linked {
		to, found := withID(all, id)
		if !found {
			t.Errorf("%s: no field %s", f.name, id)
			continue
		}
		if to.attrs["type"] == "radio" { // the group says it
			i := slices.IndexFunc(all, func(t tag) bool { return t.at > to.at })
			for i--; all[i].name != "fieldset"; i-- {
			}
			to = all[i]
		}
		described, found := withID(all, to.attrs["aria-describedby"])
		if to.attrs["aria-invalid"] != "true" || !found || described.at <= 0 {
			t.Errorf("%s: field %s does not say that it is wrong: %v", f.name, id, to.attrs)
		}
	}
	for _, what := range unnamed(a.body) {
		t.Errorf("%s: %s", f.name, what)
	}
}

// Every page has each id once, and a name for every control.
func TestEveryControlHasAName(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	steward := s.steward()
	coach.post("/players/1/notes", "round", "1", "on", "1.2", "body", "The safe side.")
	coach.post("/players/1/notes", "day", "2026-08-01", "body", "A lesson.")
	coach.post("/players/1/assignments", "what", "Start line", "due", "2092-09-01")
	coach.post("/players/1/assignments", "what", "Wedges", "due", "2092-09-01")
	coach.post("/players/1/target", "target", "82")
	pupil.post("/marks", "day", "2026-06-01", "what", "A new driver")
	pupil.post("/coaching/invite")
	for _, c := range []struct {
		who   visitor
		paths []string
	}{
		{s.visitor(), []string{"/", "/join", "/reset?player=1&token=x", "/nothing", "/offline"}},
		{pupil, []string{"/rounds", "/rounds/new", "/rounds/1", "/rounds/1/holes/1", "/rounds/1/holes/2", "/rounds/1/holes/1/shots", "/rounds/1/details", "/courses", "/courses/1", "/courses/new", "/courses/new?from=1",
			"/account", "/welcome", "/removed", "/import", "/coaching", "/coaching/looks", "/coaching/kept", "/players/1/months", "/players/1/handicap", "/players/1/lessons", "/players/1/report"}},
		{coach, []string{"/coaching", "/coaching/squad", "/players/1/lessons", "/players/1/rounds", "/players/1/rounds/1", "/players/1/rounds/1?on=1.2", "/players/1/months", "/players/1/report"}},
		{steward, []string{"/accounts", "/account", "/courses/1"}},
	} {
		for _, path := range c.paths {
			a := c.who.get(path)
			if path != "/nothing" && a.status != http.StatusOK {
				t.Errorf("%s: %d", path, a.status)
			}
			for _, what := range unnamed(a.body) {
				t.Errorf("%s: %s", path, what)
			}
		}
	}
}
