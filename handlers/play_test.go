package handlers

import (
	"net/http"
	"strings"
	"testing"
	"time"

	"strokeledger/db/dbtest"
)

const sixthDrawn = "bend 260: 10 right\nfairway 165: 17 left, 16 right\nfairway 340: 12 left, 14 right\nout 0 to 420, across open to -18\ntrees 120 to 330, across 35 to open\ngreen 370: 26 wide, 29 deep\nbunker 372 to 390, across 13 to 22"

// drawsHoles draws the first two holes of the course of withRound.
func (v visitor) drawsHoles() {
	v.t.Helper()
	for path, rows := range map[string]string{"/courses/1/holes/1/picture": sixthDrawn, "/courses/1/holes/2/picture": "water 110 to 140, across open to 10\ngreen 146: 24 wide, 24 deep"} {
		if a := v.post(path, "do", "save", "rows", rows); a.status != http.StatusSeeOther {
			v.t.Fatalf("%d %s", a.status, a.body)
		}
	}
}

// A round is prepared: the courses, the plan with its card, each hole with nine places
// of the flag, and the chance of the target.
func TestPlay(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	v.withRound()
	v.mustSee(v.get("/players/1/play"), "Harrow Fen", "no hole drawn", `href="/players/1/play/1"`, `href="/players/1/bag"`, `aria-current="page">Play`)
	v.mustSee(v.get("/players/1/play/1"), "No hole of this course is drawn yet", `href="/courses/1/pictures"`)
	v.mustSee(v.get("/players/1/play/1/holes/1"), "has not been drawn yet", `href="/courses/1/holes/1/picture"`)
	v.drawsHoles()
	v.mustSee(v.get("/players/1/play"), "2 of 3 holes drawn")
	round := v.patient("/players/1/play/1")
	v.mustSee(round, "Plan of the round, Harrow Fen", "Hole by hole", "The card to carry", "this is the golfer of the target", "Draw hole 3", "Written notes are normally allowed under the Rules")
	card := v.get("/players/1/play/1/card")
	v.mustSee(card, "carry-card", "data-needed=", "carry")
	if strings.Contains(card.body, "Hole by hole") {
		t.Error("the card is not alone")
	}
	hole := v.get("/players/1/play/1/holes/1")
	v.mustSee(hole, "Hole 1, Harrow Fen", "From the tee", "What each aim costs", "Curving 8 yd left", "At the green", "Back left", "The hole in words", "Out of bounds, 0 to 420 yd, from 18 yd left outward")
	flag := v.get("/players/1/play/1/holes/1?flag=back-left")
	v.mustSee(flag, `aria-current="true">Back left`)
	v.mustSee(v.get("/players/1/play/1/holes/1?flag=upstairs"), `aria-current="true">Middle`)
	v.mustSee(v.get("/players/1/play/1/holes/2"), "Hole 2, Harrow Fen", "At the green")
	for _, path := range []string{"/players/1/play/9", "/players/1/play/1/holes/7", "/players/1/play/9/chance", "/players/2/play"} {
		if a := v.get(path); a.status != http.StatusNotFound {
			t.Errorf("%s: %d", path, a.status)
		}
	}
}

// A drawing with nothing in it, or one that no longer agrees with the card, is no plan
// and no fault.
func TestDrawingsThatSayNothing(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	v.withRound()
	for path, rows := range map[string]string{"/courses/1/holes/1/picture": "rough 100 to 200", "/courses/1/holes/2/picture": "fairway 20: 10 left, 10 right\nfairway 140: 10 left, 10 right", "/courses/1/holes/3/picture": "green 485: 20 wide, 26 deep"} {
		if a := v.post(path, "do", "save", "rows", rows); a.status != http.StatusSeeOther {
			t.Fatalf("%d %s", a.status, a.body)
		}
	}
	dbtest.Exec(t, s.url, `insert into hole_pictures (course_id, hole, version, picture) values (1, 1, 2, '{"version":1,"par":4,"length":384,"bends":[],"fairway":[],"zones":[]}')`)
	dbtest.Exec(t, s.url, `update course_holes set length_in = 36 * 300 where number = 3`)
	for _, path := range []string{"/players/1/play/1", "/players/1/play/1/card", "/players/1/play/1/holes/1", "/players/1/play/1/holes/2", "/players/1/play/1/holes/3", "/players/1/play/1/chance", "/courses/1/pictures", "/courses/1/holes/3/picture"} {
		if a := v.patient(path); a.status != http.StatusOK {
			t.Errorf("%s: %d", path, a.status)
		}
	}
}

// patient asks for a page until it is worked out.
func (v visitor) patient(path string) answer {
	v.t.Helper()
	for range 60 {
		a := v.get(path)
		if !strings.Contains(a.body, "the page updates by itself") && !strings.Contains(a.body, "The page updates by itself") {
			return a
		}
	}
	v.t.Fatalf("%s is never done", path)
	return answer{}
}

// The chance of the target is worked out, with what would change it, and kept.
func TestChanceOfTheTarget(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	v.withRound()
	v.drawsHoles()
	begun := time.Now()
	v.mustSee(v.patient("/players/1/play/1/chance"), "Chance of", "What if", "15 yards longer", "The aims of the plan", "What it takes", "Work it out")
	t.Log("the first time", time.Since(begun))
	v.mustSee(v.patient("/players/1/play/1/chance?aims=plan&one=15+yards+longer&two=no+compounding"), "with the plan’s aims", "15 yards longer, and no second error after trouble")
	v.mustSee(v.patient("/players/1/play/1/chance?as=70&one=&two="), "as a 70", `name="as" type="text" value="70"`)
	if a := v.patient("/players/1/play/1/chance?as=60"); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "Allowed: 68 to 110") {
		t.Errorf("a level of 60: %d", a.status)
	}
	begun = time.Now()
	v.get("/players/1/play/1/chance")
	t.Log("again", time.Since(begun))
}

// The bag and the balls of the range are entered, refused with their places, and make
// the pattern of a club.
func TestBag(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	v.mustSee(v.get("/players/1/bag"), "Clubs for the tee", "from the level", "As the level’s", `value="fairway wood"`)
	v.mustSee(v.follows("/players/1/bag", "club-1", "driver", "length-1", "232", "club-2", "hybrid", "length-2", "200", "bend-2", "6", "side-2", "left", "club-3", "fairway wood"), "The bag is saved.", "232 yd, own", "6 yd left of the aim", `value="232"`)
	a := v.post("/players/1/bag", "club-1", "driver", "length-1", "20", "club-2", "Driver", "length-3", "200", "club-4", "hybrid", "bend-4", "8")
	v.mustSee(a, "Not saved yet: 4 things to fix.", "Length, yd, row 1: Allowed: 60 to 400 yd.", "Club, row 2: This club stands in a row above.", "Club, row 3: Which club is it?", "Which side, row 4: Left or right?")
	if a.status != http.StatusUnprocessableEntity {
		t.Errorf("%d", a.status)
	}
	balls := strings.TrimSpace(strings.Repeat("12 right, 3 short\n6 right, 5 long\n", 6))
	v.mustSee(v.follows("/players/1/bag/range", "range_club", "driver", "day", "2026-10-02", "balls", balls), "The balls are saved.", "2 Oct 2026, driver, 12 balls", "12 balls:", "right of the aim")
	few := v.post("/players/1/bag/range", "range_club", "driver", "day", "2026-10-02", "balls", "12 right, 3 short\n3 up")
	v.mustSee(few, "Line 2:", "12 right, 3 short\n3 up</textarea>")
	if few.status != http.StatusUnprocessableEntity {
		t.Errorf("%d", few.status)
	}
	v.mustSee(v.post("/players/1/bag/range", "range_club", "spoon", "day", "soon", "balls", "3 4"), "Choose one of the list.", "One ball: it takes at least 10 to show a pattern.", "Not saved yet: 3 things to fix.")
	gone := v.follows("/players/1/bag/range/1/remove")
	v.mustSee(gone, "Removed: range session of 2 Oct 2026")
	if strings.Contains(gone.body, "12 balls:") {
		t.Error("balls that were removed still count")
	}
	v.mustSee(v.undone(gone), "Restored.", "12 balls:")
	if a := v.post("/players/1/bag/range/9/remove"); a.status != http.StatusNotFound {
		t.Errorf("%d", a.status)
	}
}

// A coach reads a pupil's plans and changes nothing of them.
func TestACoachReadsPlans(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.furnished()
	pupil.drawsHoles()
	coach.mustSee(coach.get("/players/1/play"), "Play: owner", "Harrow Fen")
	coach.mustSee(coach.get("/players/1/play/1/holes/1"), "Drawn by owner")
	coach.mustSee(coach.get("/players/1/bag"), "Bag of owner")
	if card := coach.get("/players/1/play/1/card"); strings.Contains(card.body, "data-needed") {
		t.Error("a coach's phone keeps the pupil's card")
	}
	if a := coach.post("/players/1/bag", "club-1", "driver"); a.status != http.StatusNotFound {
		t.Errorf("%d", a.status)
	}
	pupil.mustSee(pupil.get("/coaching/looks"), "The plan of a round")
}
