package handlers

import (
	"fmt"
	"html"
	"net/http"
	"net/url"
	"regexp"
	"slices"
	"strings"
	"testing"

	"strokeledger/db"
	"strokeledger/db/dbtest"
)

var (
	inputTag    = regexp.MustCompile(`<input [^>]*>`)
	attribute   = regexp.MustCompile(`([a-z_-]+)="([^"]*)"`)
	chosenSize  = regexp.MustCompile(`<option value="(\d+)" selected>\d+ holes?</option>`)
	summaryLink = regexp.MustCompile(`href="#([^"]+)"`)
	idOfPage    = regexp.MustCompile(`<[^>]* id="([^"]+)"`)
)

// readForm reads the fields of the form of a course from its page.
func readForm(body string) url.Values {
	form := url.Values{}
	for _, tag := range inputTag.FindAllString(body, -1) {
		at := map[string]string{}
		for _, a := range attribute.FindAllStringSubmatch(tag, -1) {
			at[a[1]] = html.UnescapeString(a[2])
		}
		if at["type"] != "checkbox" && at["name"] != "asked" {
			form.Set(at["name"], at["value"])
		}
	}
	if size := chosenSize.FindStringSubmatch(body); size != nil {
		form.Set("holes", size[1])
	}
	return form
}

// sendForm posts a form with some fields changed.
func (v visitor) sendForm(path string, form url.Values, changes ...string) answer {
	fields := slices.Clone(changes)
	for name, values := range form {
		if i := slices.Index(changes, name); i < 0 || i%2 == 1 {
			for _, value := range values {
				fields = append(fields, name, value)
			}
		}
	}
	return v.post(path, fields...)
}

// nineHoles is the form of a course of nine good holes.
func nineHoles(name string) url.Values {
	form := url.Values{"name": {name}, "tee": {"white"}, "holes": {"9"}}
	for i, row := range [][3]string{{"4", "384", "3"}, {"3", "158", "9"}, {"5", "498", "1"}, {"4", "410", "2"}, {"4", "345", "8"}, {"3", "182", "7"}, {"4", "371", "5"}, {"5", "520", "4"}, {"4", "402", "6"}} {
		for j, field := range []string{"par", "length", "index"} {
			form.Set(fmt.Sprintf("%s-%d", field, i+1), row[j])
		}
	}
	return form
}

// Every problem of a course comes back at once, beside its field and in a
// summary whose links lead to fields of the page.
func TestACourseWithProblems(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	a := v.sendForm("/courses/new", nineHoles(""), "slope", "300", "par-2", "9", "length-4", "x", "index-9", "1")
	if a.status != http.StatusUnprocessableEntity {
		t.Fatalf("%d", a.status)
	}
	v.mustSee(a, "Not saved yet: 5 things to fix.", `id="par-2-wrong"`, `id="length-4-wrong"`, `id="index-9-wrong"`, "Stroke index 1 is on hole 3 and on hole 9.", `value="x"`)
	ids := map[string]int{}
	for _, id := range idOfPage.FindAllStringSubmatch(a.body, -1) {
		if ids[id[1]]++; ids[id[1]] > 1 {
			t.Errorf("two of id %s", id[1])
		}
	}
	links := summaryLink.FindAllStringSubmatch(a.body, -1)
	if len(links) != 6 { // one skips to the page
		t.Errorf("%v", links)
	}
	for _, link := range links {
		if ids[link[1]] == 0 {
			t.Errorf("a link to %s leads nowhere", link[1])
		}
	}
}

// What is unusual is asked about; the answer holds for what was asked only.
func TestACourseWithQuestions(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	form := nineHoles("Harrow Fen")
	a := v.sendForm("/courses/new", form, "length-3", "12")
	if a.status != http.StatusUnprocessableEntity {
		t.Fatalf("%d", a.status)
	}
	v.mustSee(a, "Not saved yet: 1 question.", "Hole 3 is a par 5 of 12 yd. Usual are 380 to 680 yd.", `name="anyway" value="length-3:5:12"`)
	if a := v.sendForm("/courses/new", form, "length-3", "13", "anyway_all", "yes", "asked", "length-3:5:12"); a.status != http.StatusUnprocessableEntity {
		t.Errorf("the answer to another question counts: %d", a.status)
	}
	if a := v.sendForm("/courses/new", form, "length-3", "12", "length-1", "12", "anyway", "length-3:5:12"); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, `value="length-3:5:12" checked`) {
		t.Errorf("%d", a.status)
	}
	a = v.sendForm("/courses/new", form, "length-3", "12", "anyway_all", "yes", "asked", "length-3:5:12")
	if a.status != http.StatusSeeOther || a.location != "/courses/1?saved=course" {
		t.Fatalf("%d %s", a.status, a.body)
	}
	page := v.get(a.location)
	v.mustSee(page, "The course is saved.", "9 of 9 holes, par 36, 2,784 yd")
	if a := v.sendForm("/courses/1", readForm(page.body), "tee", "blue"); a.status != http.StatusSeeOther {
		t.Errorf("asked again about what was saved: %d", a.status)
	}
}

// Pasted text fills the rows, is saved when there is nothing else, and is kept
// while something is wrong with it.
func TestAPastedCourse(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	text := strings.Repeat("4 347,5\n", 9)
	a := v.post("/courses/new", "name", "Fen", "holes", "18", "fill", "yes", "paste", text)
	if form := readForm(a.body); a.status != http.StatusOK || form.Get("length-9") != "347,5" || form.Get("holes") != "9" || form.Get("name") != "Fen" || strings.Contains(a.body, "4 347,5\n") {
		t.Errorf("%d %v", a.status, form)
	}
	v.mustSee(a, "The rows are filled from the text.")
	if a = v.post("/courses/new", "name", "Fen", "holes", "18", "fill", "yes", "paste", text+"4 300 1 7\n"); a.status != http.StatusUnprocessableEntity {
		t.Errorf("%d", a.status)
	}
	v.mustSee(a, "4 300 1 7\n", "Line 10: “7” is too much after the stroke index.", `<details class="fold-out" open>`)
	form := nineHoles("Fen")
	a = v.sendForm("/courses/new", form, "paste", "4 300 1\n")
	if a.status != http.StatusUnprocessableEntity {
		t.Errorf("text that was not used is lost: %d", a.status)
	}
	v.mustSee(a, "The pasted text differs from the rows.")
	if a := v.post("/courses/new", "name", "Fen", "holes", "18", "paste", text); a.status != http.StatusSeeOther {
		t.Errorf("%d %s", a.status, a.body)
	}
}

// Metres are stored as typed, and come back so in either unit.
func TestACourseInMetres(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	dbtest.Exec(t, s.url, "update players set far_unit = 'm'")
	if a := v.sendForm("/courses/new", nineHoles("Fen"), "length-1", "347,5", "length-5", "333m", "length-3", "456", "length-4", "380 yd"); a.status != http.StatusSeeOther {
		t.Fatalf("%d %s", a.status, a.body)
	}
	form := readForm(v.get("/courses/1").body)
	if form.Get("length-1") != "347.5" || form.Get("length-5") != "333" || form.Get("length-4") != "347.5" {
		t.Errorf("%v", form)
	}
	v.mustSee(v.get("/courses"), "3,117 m")
	dbtest.Exec(t, s.url, "update players set far_unit = 'yd'")
	if a := v.sendForm("/courses/1", readForm(v.get("/courses/1").body)); a.status != http.StatusSeeOther {
		t.Fatalf("%d", a.status)
	}
	c, err := s.store.Course(t.Context(), 1)
	if err != nil || c.Holes[4].Length.Metres() != 333 {
		t.Errorf("a length that was not touched has changed: %v, %v", c.Holes[4].Length.Metres(), err)
	}
}

// Other tees begin with name, pars and indexes; the lengths are only shown.
func TestOtherTees(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	a, b := s.member("a"), s.member("b")
	if got := a.sendForm("/courses/new", nineHoles("Harrow Fen")); got.status != http.StatusSeeOther {
		t.Fatalf("%d", got.status)
	}
	b.mustSee(b.get("/courses/1"), `href="/courses/new?from=1"`)
	page := b.get("/courses/new?from=1")
	if form := readForm(page.body); form.Get("name") != "Harrow Fen" || form.Get("tee") != "" || form.Get("par-3") != "5" || form.Get("index-3") != "1" || form.Get("length-3") != "" || form.Get("holes") != "9" {
		t.Errorf("%v", form)
	}
	b.mustSee(page, `placeholder="498"`, `action="/courses/new?from=1"`)
	b.mustSee(b.sendForm("/courses/new?from=1", readForm(page.body)), `placeholder="498"`, "Hole 3 has no length.")
	if got := b.get("/courses/new?from=9"); got.status != http.StatusNotFound {
		t.Errorf("%d", got.status)
	}
}

// Others see the card as a table and cannot change, remove or merge it.
func TestSomebodyElsesCourse(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	a, b := s.member("a"), s.member("b")
	a.sendForm("/courses/new", nineHoles("Harrow Fen"), "slope", "121")
	page := b.get("/courses/1")
	b.mustSee(page, "Only the person who added this course can edit it.", "498 yd", "121", "9 holes, par 36, 3,270 yd.")
	if strings.Contains(page.body, "<input") || strings.Contains(page.body, "Remove") {
		t.Error("a form for a stranger")
	}
	for _, path := range []string{"/courses/1", "/courses/1/remove", "/courses/1/restore", "/courses/1/merge"} {
		if got := b.sendForm(path, nineHoles("Mine now")); got.status != http.StatusNotFound {
			t.Errorf("%s: %d", path, got.status)
		}
	}
}

// A removal is confirmed with the way back; its rounds stay.
func TestARemovedCourse(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v, b := s.member("a"), s.member("b")
	round := v.withRound()
	page := v.follows("/courses/1/remove")
	v.mustSee(page, "Removed: course Harrow Fen.", `value="course.1.1"`)
	if got := v.get("/courses/1"); got.status != http.StatusNotFound {
		t.Errorf("%d", got.status)
	} else if got := v.post("/rounds/new", "course", "1", "date", "2026-05-03"); got.status != http.StatusUnprocessableEntity {
		t.Errorf("a round begins on a removed course: %d", got.status)
	}
	v.mustSee(v.get(round), "par 12, 1,040 yd")
	if strings.Contains(b.get("/courses?removed=course.1.1").body, "Removed: ") {
		t.Error("a stranger reads what was removed")
	}
	back := v.post("/removed", "what", "course.1.1")
	if back.location != "/courses/1?saved=back" {
		t.Errorf("%d %s", back.status, back.location)
	}
	v.mustSee(v.get(back.location), "Restored.", "Harrow Fen")
}

// The steward makes duplicates one.
func TestDuplicateCourses(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v, steward := s.member("a"), s.steward()
	v.withRound()
	v.sendForm("/courses/new", nineHoles("Harrow Fen"))
	steward.mustSee(steward.get("/courses/1"), `action="/courses/1/merge"`, "Choose a course", `<option value="2">`)
	if got := steward.post("/courses/1/merge", "same", "1"); got.status != http.StatusUnprocessableEntity {
		t.Errorf("%d", got.status)
	}
	steward.mustSee(steward.follows("/courses/1/merge", "same", "2"), "The two courses are merged.")
	if all, err := s.store.Courses(t.Context(), 1); err != nil || len(all) != 1 || all[0].Times != 1 {
		t.Errorf("%+v, %v", all, err)
	}
}

// A course that is described while it is played says how far it is, and a second
// round on it has all its holes, also before the first is known.
func TestASecondRoundOnANewCourse(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	v.post("/rounds/new", "new_course", "Quarry Hill", "new_holes", "18", "date", "2026-05-02")
	v.mustSee(v.get("/courses"), "0 of 18 holes so far")
	for round := 2; round <= 3; round++ {
		if a := v.post("/rounds/new", "course", "1", "date", "2026-05-03"); a.status != http.StatusSeeOther || a.location != fmt.Sprintf("/rounds/%d/holes/1", round) {
			t.Fatalf("%d %s", a.status, a.body)
		}
		kept, err := s.store.Rounds(t.Context(), 1, 1, db.Chosen{Most: 1})
		if err != nil || len(kept[0].Holes) != 18 || kept[0].Par18 != 72 {
			t.Fatalf("%+v, %v", kept, err)
		}
		if known := kept[0].Holes[3]; round == 3 && (known.Par != 3 || known.Length == 0) {
			t.Errorf("a hole that is known comes without its card: %+v", known)
		}
		v.post("/rounds/1/holes/4", "line", "g20 2", "version", "0", "par", "3", "length", "155")
	}
	v.mustSee(v.get("/courses"), "1 of 18 holes so far")
	v.mustSee(v.get("/rounds/new"), "Quarry Hill, 1 of 18 holes so far")
	page := v.get("/courses/1")
	if a := v.sendForm("/courses/1", readForm(page.body), "tee", "white"); a.status != http.StatusSeeOther {
		t.Errorf("a course that is on its way cannot be saved: %d", a.status)
	}
}

// After a change the rounds with another card are offered the new one.
func TestACorrectedCard(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v, b := s.member("a"), s.member("b")
	v.withRound()
	v.post("/rounds/new", "course", "1", "date", "2026-05-03")
	page := v.get("/courses/1")
	if strings.Contains(page.body, "Use this card") {
		t.Error("offered to rounds that have it")
	}
	page = v.get(v.sendForm("/courses/1", readForm(page.body), "length-1", "400").location)
	v.mustSee(page, "Use this card in 2 rounds?", "2 May 2026: 1 hole differs", `name="round" value="2"`)
	if got := b.get("/courses/1"); strings.Contains(got.body, "Use this card") {
		t.Error("offered for another player's rounds")
	}
	b.post("/courses/1/use-card", "round", "1") // not one of b's rounds
	v.mustSee(v.follows("/courses/1/use-card", "round", "1"), "The selected rounds now use this card.", "Use this card in 1 round?")
	for round, want := range map[int]string{1: "1,056 yd", 2: "1,040 yd"} {
		if body := v.get(fmt.Sprintf("/rounds/%d", round)).body; !strings.Contains(body, want) {
			t.Errorf("round %d: no %s", round, want)
		}
	}
}
