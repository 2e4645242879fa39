package handlers

import (
	"net/http"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"strokeledger/db/dbtest"
	"strokeledger/web/paths"
)

// answers takes or declines the proposal of a page, as its form has it.
func (v visitor) answers(at, take string) answer {
	v.t.Helper()
	return v.follows(at+"/advice/answer", append(formOf(v.t, v.get(at)), "take", take)...)
}

// formOf is what the form of a proposal sends, as a page has it.
func formOf(t *testing.T, page answer) []string {
	t.Helper()
	m := regexp.MustCompile(`name="advice" value="(\d+)">\s*<input type="hidden" name="written" value="(\d+)"`).FindStringSubmatch(page.body)
	if m == nil {
		t.Fatalf("no proposal to answer: %d %s", page.status, page.body)
	}
	return []string{"advice", m[1], "written", m[2]}
}

// A coach says something of a hole and proposes a club and an aim; the pupil hears of
// it, sees what it costs, takes it into the plan and onto the card, and gives it up.
func TestACoachAdvisesOnAHole(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.furnished()
	pupil.drawsHoles()
	const at, plan = "/players/1/play/1/holes/1", "/players/1/play/1"
	coach.mustSee(coach.get(at), "A note and a proposal", `name="club"`, "Hybrid")
	for _, wrong := range [][]string{{"side", "70", "to", "left", "club", "driver"}, {"club", "spoon"}, {"side", "6", "club", "driver"}} {
		if a := coach.post(at+"/advice", wrong...); a.status != http.StatusUnprocessableEntity {
			t.Errorf("%v: %d", wrong, a.status)
		}
	}
	coach.mustSee(coach.post(at+"/advice", "note", "Left is dead.", "side", "6", "club", "driver"), "Left or right?", "Left is dead.</textarea>")
	coach.mustSee(coach.follows(at+"/advice", "note", "Left is dead.", "club", "hybrid", "side", "6", "to", "right"), "Saved. Your pupil sees it", "Proposes the hybrid, aim 6 yd right of the middle.", "Not answered yet.", `value="6"`)
	coach.follows(at+"/advice", "note", "Left is dead.", "club", "hybrid", "side", "6", "to", "right") // pressed twice
	notices := pupil.get("/notices")
	pupil.mustSee(notices, "has left a note on hole 1, Harrow Fen", `href="`+at+`#advice"`)
	if n := strings.Count(notices.body, "has left a note on hole 1"); n != 1 {
		t.Errorf("told %d times", n)
	}
	pupil.mustSee(pupil.get(at), "What your coach says", "Left is dead.", "It costs", "the best aim", "Take it into my plan", "Keep the best aim")
	pupil.mustSee(pupil.get(plan), "What is said of its holes", "Left is dead. Proposes the hybrid, aim 6 yd right of the middle: not answered yet.")
	pupil.mustSee(pupil.answers(at, "yes"), "It is in your plan now, and on the card to carry.", "Accepted: it is in your plan and on the card.")
	pupil.mustSee(pupil.patient(plan), "On the 1st the proposal of a coach stands.", "<b>Hybrid</b> 6 yd right")
	pupil.mustSee(pupil.patient(plan+"/card"), "hybrid", "6 →")
	pupil.mustSee(pupil.get(at), "In the plan, as coach proposes: the hybrid, aim 6 yd right of the middle,", "Without it:")
	const chance = "The plan’s aim on the 1st is the one that a coach proposed, not the best."
	pupil.mustSee(pupil.patient(plan+"/chance"), chance)
	pupil.mustSee(pupil.patient(plan+"/chance?aims=plan"), chance)
	coach.mustSee(coach.get("/notices"), "has accepted your proposal for hole 1, Harrow Fen")
	coach.mustSee(coach.patient(plan), "<b>Hybrid</b> 6 yd right")
	pupil.mustSee(pupil.get("/export/everything.json"), `"holes":[{"by":"coach","course":"Harrow Fen"`, `"answer":"taken"`)
	pupil.post("/players/1/bag", "club-1", "driver", "length-1", "232")
	pupil.mustSee(pupil.get(at), "The hybrid is no longer one of the clubs for the tee")
	pupil.mustSee(pupil.patient(plan), "taken, but its cost is not known, so the best aim stands")
	pupil.mustSee(pupil.answers(at, ""), "Declined. It is not in your plan.")
	coach.mustSee(coach.get("/notices"), "has declined your proposal for hole 1, Harrow Fen")
	if a := pupil.patient(plan + "/chance?aims=plan"); strings.Contains(a.body, chance) {
		t.Error("rounds are still played with what was given up")
	}
	if a := pupil.patient(plan); strings.Contains(a.body, "the proposal of a coach stands") {
		t.Error("what was given up still stands")
	}
	coach.mustSee(coach.follows(at+"/advice", "note", "", "club", ""), "Removed: what you said of hole 1, Harrow Fen", "Undo")
	if a := pupil.get(at); strings.Contains(a.body, "What your coach says") {
		t.Error("what was removed is still there")
	}
}

// On a par 3 an aim by the flag is proposed, and on a hole that is not drawn there is
// a note alone. Nobody answers for another, nor what is not there.
func TestAdviceWithoutAClub(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.furnished()
	pupil.drawsHoles()
	const short, bare = "/players/1/play/1/holes/2", "/players/1/play/1/holes/3"
	coach.mustSee(coach.follows(short+"/advice", "club", "aim", "side", "5", "to", "right", "long", "3", "way", "short"), "Proposes an aim 5 yd right of the flag and 3 short.")
	pupil.mustSee(pupil.answers(short, "yes"), "Accepted:")
	pupil.mustSee(pupil.patient("/players/1/play/1/card"), "5 → 3 ↓")
	if a := coach.post(bare+"/advice", "club", "driver"); a.status != http.StatusUnprocessableEntity {
		t.Errorf("a club on a hole that is not drawn: %d", a.status)
	}
	coach.follows(bare+"/advice", "note", "A long carry.")
	pupil.mustSee(pupil.get(bare), "This hole has not been drawn yet", "A long carry.")
	for name, a := range map[string]answer{
		"the coach answers": coach.post(short+"/advice/answer", append(formOf(t, pupil.get(short)), "take", "yes")...), "the pupil advises": pupil.post(short+"/advice", "note", "x"),
	} {
		if a.status != http.StatusNotFound {
			t.Errorf("%s: %d", name, a.status)
		}
	}
	for name, a := range map[string]answer{"a note is answered": pupil.post(bare+"/advice/answer", "advice", "2", "take", "yes"), "nothing is answered": pupil.post(short+"/advice/answer", "advice", "x")} {
		if a.status != http.StatusConflict {
			t.Errorf("%s: %d", name, a.status)
		}
	}
	dbtest.Exec(t, s.url, `update course_holes set par = 4 where number = 2`)
	pupil.mustSee(pupil.get(short), "The hole has a new par, so its cost is not known.")
	pupil.follows("/coaching/end", "player", "1", "coach", "2", "sure", "yes")
	pupil.mustSee(pupil.get(bare), "A long carry.")
	if a := coach.get(bare); a.status != http.StatusNotFound {
		t.Errorf("%d", a.status)
	}
}

// A coach proposes a safe side of the green, alone or with an aim. The pupil reads what a
// miss there leaves; taken it stands in the plan and on the card.
func TestACoachProposesASafeSide(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.furnished()
	pupil.drawsHoles()
	const at, plan, short = "/players/1/play/1/holes/1", "/players/1/play/1", "/players/1/play/1/holes/2"
	coach.mustSee(coach.get(at), "Safe side of the green", "As worked out", "Worked out: ")
	if a := coach.post("/players/1/play/1/holes/3/advice", "safe", "left"); a.status != http.StatusUnprocessableEntity {
		t.Errorf("a safe side of a hole that is not drawn: %d", a.status)
	}
	coach.mustSee(coach.follows(at+"/advice", "safe", "long"), "Proposes long as the safe side of the green.", "A miss long leaves ", `<option value="long" selected>`)
	pupil.mustSee(pupil.get("/notices"), "has left a note on hole 1, Harrow Fen")
	pupil.mustSee(pupil.get(at), "Proposes long as the safe side of the green.", "A miss long leaves ", "Take it into my plan", "Keep the plan’s safe side")
	pupil.mustSee(pupil.get(plan), "Proposes long as the safe side of the green: not answered yet.")
	pupil.mustSee(pupil.answers(at, "yes"), "Accepted: it is in your plan and on the card.", "In the plan: long, as coach proposes.")
	pupil.mustSee(pupil.get(at+"?flag=back-left"), "At this flag a miss long leaves ")
	pupil.mustSee(pupil.patient(plan), "The safe side of the green on the 1st is the one that a coach proposed.", `<td class="text-cell">long</td>`)
	pupil.mustSee(pupil.patient(plan+"/card"), `<td class="text-cell">long</td>`)
	if a := pupil.patient(plan); strings.Contains(a.body, "the proposal of a coach stands") {
		t.Error("an aim stands that was not proposed")
	}
	coach.mustSee(coach.follows(short+"/advice", "club", "aim", "side", "5", "to", "right", "safe", "short"), "Proposes an aim 5 yd right of the flag; short as the safe side of the green.")
	pupil.mustSee(pupil.answers(short, "yes"), "Accepted:")
	pupil.mustSee(pupil.patient(plan), "On the 2nd the proposal of a coach stands.", "The safe side of the green on the 1st and the 2nd is")
	pupil.mustSee(pupil.get("/export/everything.json"), `"safe":"long"`)
	pupil.mustSee(pupil.answers(at, ""), "Declined: it is not in your plan.")
	pupil.mustSee(pupil.patient(plan), "The safe side of the green on the 2nd is")
}

// The coach changes the proposal, and then removes it, while the pupil's page is open:
// what was not shown is not taken. The pupil sees what it says now.
func TestOnlyWhatWasShownIsTaken(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.furnished()
	pupil.drawsHoles()
	const at = "/players/1/play/1/holes/1"
	coach.follows(at+"/advice", "club", "hybrid", "side", "6", "to", "right")
	shown := formOf(t, pupil.get(at))
	coach.follows(at+"/advice", "club", "driver", "side", "40", "to", "left")
	for _, take := range []string{"yes", ""} {
		a := pupil.post(at+"/advice/answer", append(shown, "take", take)...)
		if a.status != http.StatusConflict {
			t.Errorf("%q: %d", take, a.status)
		}
		pupil.mustSee(a, "Your answer is not recorded: what your coach proposes has changed", `<a href="#advice">What it says now</a>`, "Proposes the driver, aim 40 yd left of the middle.", "Take it into my plan", "Keep the best aim")
	}
	coach.mustSee(coach.get(at), "Not answered yet.")
	if a := coach.get("/notices"); strings.Contains(a.body, "your proposal for hole 1") {
		t.Error("the coach is told of an answer")
	}
	shown = formOf(t, pupil.get(at))
	coach.follows(at+"/advice", "remove", "yes")
	if a := pupil.post(at+"/advice/answer", append(shown, "take", "yes")...); a.status != http.StatusConflict || !strings.Contains(a.body, "your coach has removed the proposal since you opened this page.") {
		t.Errorf("%d", a.status)
	}
	coach.follows(paths.Removed, "what", "advice.1.1")
	pupil.mustSee(pupil.follows(at+"/advice/answer", append(shown, "take", "yes")...), "Accepted: it is in your plan")
}

// What a coach removes can be restored: with the button of the message, or from the list.
// The pupil is told when it stood in the plan, both times. Nothing said is refused.
func TestRemovedAdviceIsRestored(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.furnished()
	pupil.drawsHoles()
	const at = "/players/1/play/1/holes/1"
	if a := coach.post(at+"/advice", "note", " "); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "Write a note, or propose something.") {
		t.Errorf("%d", a.status)
	}
	if a := coach.post(at+"/advice", "remove", "yes"); a.status != http.StatusNotFound {
		t.Errorf("nothing is removed: %d", a.status)
	}
	coach.follows(at+"/advice", "note", "Left is dead.", "club", "hybrid", "side", "6", "to", "right")
	pupil.answers(at, "yes")
	coach.mustSee(coach.get(at), "Remove it")
	coach.mustSee(coach.follows(at+"/advice", "note", "Left is dead.", "remove", "yes"), "Removed: what you said of hole 1, Harrow Fen", "Undo", `value="advice.1.1"`)
	if a := pupil.get(at); strings.Contains(a.body, "Left is dead.") {
		t.Error("what was removed is still there")
	}
	pupil.mustSee(pupil.get("/notices"), "has removed the proposal for hole 1, Harrow Fen")
	coach.mustSee(coach.get(paths.Removed), "Notes and proposals on holes", "What you said of hole 1, Harrow Fen")
	coach.mustSee(coach.follows(paths.Removed, "what", "advice.1.1"), "Restored.", "Left is dead.", "Accepted: it is in the plan.")
	pupil.mustSee(pupil.get(at), "Left is dead.", "Accepted: it is in your plan and on the card.")
	if n := strings.Count(pupil.get("/notices").body, "has left a note on hole 1"); n != 2 {
		t.Errorf("told %d times", n)
	}
	if a := pupil.post(paths.Removed, "what", "advice.1.1"); a.status != http.StatusNotFound {
		t.Errorf("what is there is restored: %d", a.status)
	}
}

// The rounds of the chance play what was taken: an aim far into trouble makes the
// average of rounds with the plan's aims worse, and declined again it is as before.
func TestTheChancePlaysWhatWasTaken(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen, ChanceRounds: 500})
	pupil, coach := s.furnished()
	pupil.drawsHoles()
	const at = "/players/1/play/1/holes/1"
	average := func() float64 {
		t.Helper()
		a := pupil.patient("/players/1/play/1/chance?aims=plan")
		said := regexp.MustCompile(`Average ([0-9.]+)\.`).FindStringSubmatch(a.body)
		if said == nil {
			t.Fatalf("%d %s", a.status, a.body)
		}
		x, _ := strconv.ParseFloat(said[1], 64)
		return x
	}
	before := average()
	coach.follows(at+"/advice", "club", "driver", "side", "55", "to", "left")
	if now := average(); now != before {
		t.Errorf("what is only proposed is played: %g after %g", now, before)
	}
	pupil.answers(at, "yes")
	if now := average(); now < before+.2 {
		t.Errorf("%g after %g", now, before)
	}
	pupil.answers(at, "")
	if now := average(); now != before {
		t.Errorf("declined: %g after %g", now, before)
	}
}
