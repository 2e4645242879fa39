package handlers

import (
	"net/http"
	"strings"
	"testing"
)

// An answer to a pupil has the keys as well, wherever it is written; under what nobody has
// to answer they do not stand.
func TestPhrasesInAnswers(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	coach.follows("/coaching/phrases", "body", "Count to three.")
	pupil.post("/players/1/notes", "round", "1", "on", "1.1", "body", "Was that the club?")
	for _, page := range []string{"/players/1", "/players/1/lessons", "/players/1/rounds/1"} {
		coach.mustSee(coach.get(page), `formaction="/players/1/notes/1/replies#reply-note-1"`)
	}
	a := coach.post("/players/1/notes/1/replies", "body", "Yes.", "phrase", "1")
	coach.mustSee(a, ">Yes. Count to three.</textarea>")
	if a.status != http.StatusOK || !strings.Contains(a.body, `<details class="fold-out" open`) || strings.Contains(pupil.get("/rounds/1").body, "Count to three.") {
		t.Errorf("%d", a.status)
	}
	pupil.mustSee(pupil.post("/players/1/notes/1/replies", "body", "Mine.", "phrase", "1"), ">Mine.</textarea>")
	if body := pupil.get("/rounds/1").body; strings.Contains(body, `name="phrase"`) {
		t.Error("the pupil has a coach's keys")
	}
	coach.follows("/players/1/notes/1/replies", "body", "Yes.")
	if body := coach.get("/players/1/rounds/1").body; strings.Contains(body, "/replies#reply-note-1") {
		t.Error("the keys stand where nothing waits for an answer")
	}
	pupil.follows("/players/1/notes/1/replies", "body", "And the wind?")
	coach.mustSee(coach.get("/players/1/rounds/1"), "/replies#reply-note-1")
}

// A coach keeps the words of a note with one button, puts them into another note, and
// nothing is saved by that; what was removed can be brought back.
func TestPhrases(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	coach.follows("/players/1/notes", "day", "2026-05-02", "body", "Count to three.")
	coach.mustSee(coach.get("/players/1/lessons"), "Keep as a phrase", `<input type="hidden" name="body" value="Count to three.">`)
	coach.mustSee(coach.follows("/coaching/phrases", "body", "Count to three."), "The phrase is saved.", "Count to three.")
	coach.follows("/coaching/phrases", "body", "Count to three.")
	page := coach.get("/players/1/lessons")
	coach.mustSee(page, `name="phrase" value="1"`, `formaction="/players/1/notes#lesson"`, "/static/drafts.")
	if n := strings.Count(page.body, `name="phrase"`); n != 1 {
		t.Errorf("%d keys of one phrase", n)
	}
	a := coach.post("/players/1/notes", "day", "2026-05-03", "body", "The grip.", "phrase", "1")
	coach.mustSee(a, ">The grip. Count to three.</textarea>", `value="2026-05-03"`)
	if a.status != http.StatusOK || strings.Contains(a.body, "Not saved yet") {
		t.Errorf("%d", a.status)
	}
	coach.mustSee(coach.get("/players/1"), `name="phrase" value="1"`)
	if body := pupil.get("/players/1/lessons").body; strings.Contains(body, "The grip.") || strings.Contains(body, "Keep as a phrase") || strings.Contains(body, `name="phrase"`) {
		t.Error("the pupil reads what was not saved, or a coach's keys")
	}
	coach.mustSee(coach.get("/players/1/rounds/1?on=1.2"), `formaction="/players/1/notes#write-1-body"`, `formaction="/players/1/notes#write-body"`)
	under := coach.post("/players/1/notes", "round", "1", "on", "1.2", "body", "The grip.", "phrase", "1")
	coach.mustSee(under, ">The grip. Count to three.</textarea>", `<option value="1.2" selected`)
	if under.status != http.StatusOK || strings.Contains(under.body, "Not saved yet") || strings.Contains(pupil.get("/rounds/1").body, "The grip.") {
		t.Errorf("under a hole: %d", under.status)
	}
	pupil.mustSee(pupil.post("/players/1/notes", "day", "2026-05-03", "body", "Mine.", "phrase", "1"), ">Mine.</textarea>")
	coach.mustSee(coach.get("/export/everything.json"), `"phrases":["Count to three."]`)
	coach.mustSee(coach.follows("/coaching/phrases/1/remove"), "Removed: phrase “Count to three.”.")
	coach.mustSee(coach.follows("/removed", "what", "phrase.2.1"), "Restored.", "Count to three.")
	if a := coach.post("/coaching/phrases", "body", " "); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "autofocus") {
		t.Errorf("an empty phrase: %d", a.status)
	}
}
