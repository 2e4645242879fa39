package handlers

import (
	"net/http"
	"strings"
	"testing"

	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// A hole is drawn from its answers in one post, refined as text, and saved; the
// newest drawing holds, and an earlier one comes back.
func TestAHoleIsDrawn(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	v.withRound()
	const at = "/courses/1/holes/1/picture"
	v.mustSee(v.get("/courses/1/pictures"), "No hole is drawn yet", `href="`+at+`"`)
	v.mustSee(v.get(at), "Draw hole 1, Harrow Fen", "Tee shot, six answers", "Green, five answers", "230 yd from the tee")
	answers := []string{"bend", "left", "fairway", "30", "left", "out", "left_far", "25", "right", "trees", "right_far", "30", "width", "24", "depth", "30", "short", "bunker", "green_left", "", "green_right", "water"}
	drawn := v.post(at, append(answers, "do", "draw")...)
	v.mustSee(drawn, "Drawn, and not saved yet.", "bend 230: 25 left", "Out of bounds, 0 to 429 yd, from 25 yd left outward", `class="edge-out"`, `class="ground-trees"`)
	if a := v.get(at + ".json"); drawn.status != http.StatusOK || a.status != http.StatusNotFound {
		t.Errorf("%d: saved before it was asked for: %s", drawn.status, a.body)
	}
	rows := "green 369: 24 wide, 30 deep\nwater 300 to 330, across open to -10"
	a := v.post(at, "do", "save", "rows", rows)
	if a.status != http.StatusSeeOther || a.location != at+"?saved=picture" {
		t.Fatalf("%d %s %s", a.status, a.location, a.body)
	}
	v.mustSee(v.get(a.location), "The drawing is saved.", "Drawn by you", "Water, 300 to 330 yd, from 10 yd left outward")
	v.mustSee(v.get("/courses/1/pictures"), "One of 3 holes is drawn.", "water and green")
	file := v.get(at + ".json")
	if want := `{"version":1,"par":4,"length":384,"bends":[],"fairway":[],"zones":[{"kind":"water","from":300,"to":330,"across":[null,-10]}],"green":{"front":369,"width":24,"depth":30,"turn":0}}`; strings.TrimSpace(file.body) != want {
		t.Errorf("%s", file.body)
	}
	other := s.member("b")
	other.mustSee(other.post("/courses/1/holes/1/picture/file", "picture", file.body), "The rows are filled from the file", "water 300 to 330")
	if a := other.post(at, "do", "save", "rows", rows+"\nbunker 350 to 365, across 13 to 20"); a.status != http.StatusSeeOther {
		t.Fatalf("%d %s", a.status, a.body)
	}
	v.mustSee(v.get(at), "Drawn by another player", "bunker 350 to 365", "?version=1")
	if early := v.get(at + "?version=1"); early.status != http.StatusOK || strings.Contains(early.body, "bunker 350") {
		t.Errorf("%d %s", early.status, early.body)
	}
	v.mustSee(v.follows(at+"/back", "version", "1"), "The earlier drawing is back in use.")
	if again := v.get(at + ".json"); again.body != file.body {
		t.Errorf("%s", again.body)
	}
	v.mustSee(v.follows(at+"/back", "version", "0"), "The drawing is removed", "Removed by you")
	if a := v.get(at + ".json"); a.status != http.StatusNotFound {
		t.Errorf("%d %s", a.status, a.body)
	}
}

// Rows that answers replace come back with one press; nothing is saved by it.
func TestAnswersThatReplaceRowsAreUndone(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	v.withRound()
	const at, rows = "/courses/1/holes/2/picture", "green 145: 20 wide, 26 deep"
	a := v.post(at, "do", "draw", "rows", rows, "width", "24", "depth", "30")
	v.mustSee(a, "green 143: 24 wide, 30 deep", "Undo: the rows as they were", `name="before" value="`+rows+`"`)
	a = v.post(at, "do", "undo", "rows", "green 143: 24 wide, 30 deep", "before", rows)
	v.mustSee(a, ">"+rows+"</textarea>")
	if strings.Contains(a.body, "six answers") {
		t.Error("a par 3 asks for its fairway")
	}
}

// Every fault is answered with 422 and its place, and keeps what was typed.
func TestFaultsOfADrawing(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	v.withRound()
	const at = "/courses/1/holes/1/picture"
	for name, c := range map[string]struct {
		path   string
		fields []string
		texts  []string
	}{
		"answers": {at, []string{"do", "draw", "left", "water", "fairway", "3", "width", "24"}, []string{"Not saved yet: 3 things to fix.", "Left, from the middle, yd: How far", "Fairway width, yd: Allowed: 8 to 100 yd.", `id="depth-wrong"`, `value="24"`}},
		"rows":    {at, []string{"do", "save", "rows", "green 369: 24 wide, 30 deep\nbunkr 10 to 20\nwater 300 to 280"}, []string{"Row 2: No kind &#34;bunkr&#34;", "Row 3: Along from 300 to 280; allowed: the smaller number first.", "bunkr 10 to 20", `href="#rows"`}},
		"nothing": {at, []string{"do", "save"}, []string{"Width, yd: About how many?"}},
		"a file":  {at + "/file", []string{"picture", `{"version": 1, "par": 4, "length": 384, "lake": 1}`}, []string{"Unknown field &#34;lake&#34;"}},
		"no file": {at + "/file", []string{"picture", "green 3"}, []string{"This is not JSON"}},
	} {
		a := v.post(c.path, c.fields...)
		if a.status != http.StatusUnprocessableEntity {
			t.Errorf("%s: %d", name, a.status)
		}
		v.mustSee(a, c.texts...)
	}
	for _, path := range []string{"/courses/1/holes/4/picture", "/courses/9/holes/1/picture", "/courses/1/holes/x/picture", at + "?version=1", at + "?version=x", "/courses/9/pictures"} {
		if a := v.get(path); a.status != http.StatusNotFound {
			t.Errorf("%s: %d", path, a.status)
		}
	}
	if a := v.post(at+"/back", "version", "7"); a.status != http.StatusNotFound {
		t.Errorf("%d", a.status)
	}
	dbtest.Exec(t, s.url, `insert into hole_pictures (course_id, hole, version, drawn_by, picture) select 1, 1, n, 1, 'p' || n from generate_series(1, `+"400"+`) n`)
	v.mustSee(v.post(at, "do", "save", "rows", "green 369: 24 wide, 30 deep"), noMorePictures(db.ErrPicturesOfADay))
	if a := v.post(at+"/back", "version", "0"); a.status != http.StatusTooManyRequests || db.PicturesOfADay != 400 {
		t.Errorf("%d %s", a.status, a.body)
	}
}
