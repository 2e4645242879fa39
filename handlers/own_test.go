package handlers

import (
	"encoding/json"
	"net/http"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// ownOfAccount is the account file of a player without what others wrote and what was
// set to practise.
func (v visitor) ownOfAccount() (text string, parts map[string]any) {
	v.t.Helper()
	text = v.get("/export/everything.json").body
	if err := json.Unmarshal([]byte(text), &parts); err != nil {
		v.t.Fatal(err)
	}
	delete(parts, "practice")
	return text, parts
}

// takesAll takes in a whole account file with its settings.
func (v visitor) takesAll(file string, texts ...string) {
	v.t.Helper()
	v.mustSee(v.upload(file), texts...)
	if a := v.post("/import/confirm", "there", "skip", "settings", "yes"); a.status != http.StatusSeeOther {
		v.t.Fatalf("%d %s", a.status, a.body)
	}
}

// Drawings, bag, sessions on the range and plans come back on another server as they
// were, and once however often they are taken in.
func TestWhatIsOnesOwnComesBackElsewhere(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v, other := s.member("robin"), s.member("ines")
	v.withSeason(s)
	v.drawsHoles()
	other.post("/courses/1/holes/3/picture", "do", "save", "rows", "rough 100 to 200")
	const first = "/courses/1/holes/1/picture"
	v.post(first, "do", "save", "rows", "green 369: 24 wide, 30 deep")
	v.post(first+"/back", "version", "0")
	v.post("/courses/1/holes/3/picture/back", "version", "0") // what another drew
	v.post("/players/1/bag", "club-1", "driver", "length-1", "232", "bend-1", "6", "side-1", "left", "club-2", "hybrid")
	for _, day := range []string{"2026-10-02", "2026-10-02", "2026-10-01"} {
		v.post("/players/1/bag/range", "range_club", "driver", "day", day, "balls", strings.Repeat("12 right, 3 short\r\n\r\n6 right, 5 long\r\n", 6))
		v.post("/players/1/bag/range", "range_club", "hybrid", "day", day, "balls", strings.Repeat("1 2\n", 11))
	}
	v.follows("/players/1/plans")
	file, want := v.ownOfAccount()
	for _, part := range []string{"bag", "range_sessions", "drawn_courses", "practice_plans"} {
		if want[part] == nil {
			t.Fatalf("%s is not in the file: %s", part, file)
		}
	}
	elsewhere := newSite(t, Options{SignUp: SignUpOpen})
	w := elsewhere.member("robin")
	w.takesAll(file, "It also has 4 drawings on 1 course, 6 sessions on the range and 1 plan of practice.", "a bag with 2 clubs for the tee")
	for again := range 2 {
		if _, got := w.ownOfAccount(); !cmp.Equal(want, got) {
			t.Errorf("taken in %d times: %s", again+1, cmp.Diff(want, got))
		}
		w.takesAll(file, "It also has 4 drawings", "Import the rest")
	}
	w.mustSee(w.get("/courses/1/holes/2/picture"), "Drawn by you", "water 110 to 140")
	w.mustSee(w.get("/players/1/plans/1"), "Expected and won back")
	w.mustSee(w.get("/players/1/bag"), "12 balls", `value="6"`)
	w.mustSee(w.get("/players/1/play/1"), "Plan of the round, Harrow Fen")
	v.takesAll(file)
	if _, got := v.ownOfAccount(); !cmp.Equal(want, got) {
		t.Errorf("its own file changes an account: %s", cmp.Diff(want, got))
	}
}

// What somebody drew on a server stays when another takes in drawings of the same hole.
func TestATakenInDrawingReplacesNone(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	v.withRound()
	v.drawsHoles()
	file, _ := v.ownOfAccount()
	elsewhere := newSite(t, Options{SignUp: SignUpOpen})
	there := elsewhere.member("ines")
	there.withRound()
	there.post("/courses/1/holes/1/picture", "do", "save", "rows", "rough 100 to 200")
	w := elsewhere.member("robin")
	w.takesAll(strings.ReplaceAll(file, `"drawn":"20`, `"drawn":"90`))
	w.mustSee(w.get("/courses/1/holes/1/picture"), "Drawn by another player", "rough 100 to 200")
	w.mustSee(w.get("/courses/1/holes/2/picture"), "Drawn by you", "water 110 to 140")
	all, err := elsewhere.store.OwnPictures(t.Context(), 2)
	if err != nil || len(all) != 1 || all[0].DrawnAt.Year() > 8000 {
		t.Errorf("%+v, %v", all, err)
	}
	w.post("/account/delete", "confirm", password)
	if v, err := elsewhere.store.PictureVersions(t.Context(), 1, 2, 5); err != nil || len(v) != 1 {
		t.Errorf("%+v, %v", v, err)
	}
}

// A file whose drawings, balls or plans cannot be used is refused whole, with the place.
func TestAFileThatHoldsWhatCannotBeUsed(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	empty, _ := v.ownOfAccount()
	course := func(picture string) string {
		return `"drawn_courses":[{"course":"Fen","tee":"","holes":[{"number":1,"par":4,"length_in":13824,"stroke_index":0}],"drawings":[{"hole":1,"drawn":"2026-05-02T16:30:00Z","picture":` + picture + `}]}]`
	}
	plan := func(figures string) string {
		return `"practice_plans":[{"day":"2026-05-02","first_day":"2026-01-02","last_day":"2026-05-01","rounds":6,"target":79,"minutes":180,"engine":"x","figures":` + figures + `}]`
	}
	for rest, want := range map[string]string{
		course(`{"version":1,"par":4,"length":384,"lake":1}`): `Drawn course 1 &#34;Fen&#34;, drawing 1 of hole 1: Unknown field &#34;lake&#34;`,
		course(`"\u0000"`):    `Drawn course 1 &#34;Fen&#34;, drawing 1 of hole 1:`,
		course(`7`):           `Drawn course 1 &#34;Fen&#34;, drawing 1 of hole 1:`,
		plan(`{"version":2}`): `Practice plan 1: a plan that was kept has version 2; known: 1`,
		plan(`[1]`):           `Practice plan 1: a plan that was kept:`,
		plan(`{"version":1,"items":[{"kind":256}]}`):                       `Practice plan 1: a plan that was kept has an item of kind 256`,
		plan(`{"version":1,"items":[{"kind":0,"part":"moon"}]}`):           `Practice plan 1: a plan that was kept names a part of the game that is none`,
		`"range_sessions":[{"club":"d","day":"2026-05-02","balls":["3"]}]`: `Range session 1: Line 1:`,
	} {
		a := v.upload(strings.TrimSuffix(strings.TrimSpace(empty), "}") + "," + rest + "}")
		v.mustSee(a, want)
		if a.status != http.StatusUnprocessableEntity {
			t.Errorf("%s: %d", rest, a.status)
		}
	}
	taken := strings.TrimSuffix(strings.TrimSpace(empty), "}") + "," + plan(`{"version":1,"level":80,"items":[{"kind":3,"drill":"x\u0000","drill_name":"\ud800<b>"}],"more":"\u0000"}`) + "," + course("null") + "}"
	v.takesAll(taken)
	v.mustSee(v.get("/players/1/plans/1"), "&lt;b&gt;")
	dbtest.Exec(t, s.url, `insert into range_sessions (player_id, club, day, balls) select 1, 'd', '2026-05-02', '1 2' from generate_series(1, 1000) n`)
	balls := `"range_sessions":[{"club":"d","day":"2026-05-02","balls":["` + strings.TrimSuffix(strings.Repeat(`3 4","`, 10), `,"`) + `]}]`
	v.upload(strings.TrimSuffix(strings.TrimSpace(empty), "}") + "," + balls + "}")
	if a := v.post("/import/confirm", "there", "skip"); a.status != http.StatusConflict || db.RangeSessionsInAll != 1000 {
		t.Errorf("%d %s", a.status, a.body)
	}
}
