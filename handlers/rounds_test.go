package handlers

import (
	"net/http"
	"strings"
	"testing"
)

func TestAHoleIsSavedOnceHoweverOftenItIsSent(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	round := v.withRound()
	for range 3 {
		if a := v.post(round+"/holes/2", "line", "g15 2", "version", "0", "press", "save"); a.status != http.StatusSeeOther {
			t.Fatalf("%d %s", a.status, a.body)
		}
	}
	if a := v.post(round+"/holes/2", "line", "g18 2", "version", "0"); a.status != http.StatusConflict || !strings.Contains(a.body, "g15 2") || !strings.Contains(a.body, `value="g18 2"`) {
		t.Errorf("%d %s", a.status, a.body)
	}
	if a := v.post(round+"/holes/2", "line", "g18 2", "version", "1"); a.status != http.StatusSeeOther {
		t.Errorf("%d", a.status)
	}
}

func TestMoreIsSaidOfShotsAndOutlivesTheLine(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	round := v.withRound()
	said := []string{"version", "1", "club", "driver", "miss", "right", "word", "pushed", "club", "8i", "miss", "short-left", "word", "", "club", "", "miss", "", "word", "lag", "club", "", "miss", "", "word", ""}
	if a := v.post(round+"/holes/1/shots", said...); a.status != http.StatusSeeOther {
		t.Fatalf("%d %s", a.status, a.body)
	}
	if a := v.post(round+"/holes/1", "line", "t/driver r150/8i g22 2", "version", "2"); a.status != http.StatusSeeOther {
		t.Fatalf("%d %s", a.status, a.body)
	}
	body := v.get(round + "/holes/1/shots").body
	for _, want := range []string{`value="pushed"`, `value="driver"`, `value="8i"`, `<option value="short-left" selected>`} {
		if !strings.Contains(body, want) {
			t.Errorf("no %s", want)
		}
	}
	if strings.Contains(body, `value="lag"`) {
		t.Error("a word stayed with a putt that is another now")
	}
	said[5] = "wide"
	if a := v.post(round+"/holes/1/shots", said...); a.status != http.StatusUnprocessableEntity {
		t.Errorf("%d", a.status)
	}
}

func TestTheCardChecksTheNine(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	round := v.withRound()
	v.post(round+"/holes/2", "line", "g15 2", "version", "0")
	v.post(round+"/holes/3", "line", "r250 f90 g15 2", "version", "0")
	for said, want := range map[string]string{"12": "It agrees with the holes", "13": "The holes add up to 12", "": "Score out on your card"} {
		if a := v.post(round+"/conditions", "out", said, "conditions", "wind"); a.status != http.StatusSeeOther {
			t.Fatalf("%d", a.status)
		}
		if body := v.get(round).body; !strings.Contains(body, want) || !strings.Contains(body, `value="wind"`) {
			t.Errorf("%q: no %q", said, want)
		}
	}
}

// What is no score is refused beside its field, with what was typed; a form
// that asks for the nines alone leaves the note.
func TestACardThatIsNoScore(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	round := v.withRound()
	v.post(round+"/holes/2", "line", "g15 2", "version", "0")
	v.post(round+"/holes/3", "line", "r250 f90 g15 2", "version", "0")
	v.follows(round+"/conditions", "conditions", "wind")
	if a := v.get(round + "?saved=round"); !strings.Contains(a.body, "Does the card agree?") || strings.Count(a.body, `id="out"`) != 1 {
		t.Error("the card is not asked for first after the last hole, or twice")
	}
	if a := v.get(round); strings.Contains(a.body, "Does the card agree?") || strings.Count(a.body, `id="out"`) != 1 {
		t.Error("the card is asked for first long after the round")
	}
	for _, typed := range []string{"abc", "0", "-3", "999"} {
		if a := v.post(round+"/conditions", "out", typed); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, `id="out-wrong"`) || !strings.Contains(a.body, `value="`+typed+`"`) {
			t.Errorf("%s: %d", typed, a.status)
		}
	}
	if a := v.post(round+"/conditions", "out", "12", "conditions", strings.Repeat("x", 301)); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, `id="conditions-wrong"`) {
		t.Errorf("a long note: %d", a.status)
	}
	if a := v.follows(round+"/conditions", "out", "12"); !strings.Contains(a.body, "Card agrees: 12.") || !strings.Contains(a.body, `value="wind"`) || strings.Contains(a.body, "Does the card agree?") {
		t.Error("a card that agrees is not said, or the note is lost")
	}
	if a := v.get(round); !strings.Contains(a.body, "Fairways 0 of 2, greens 3 of 3, 6 putts.") {
		_, line, _ := strings.Cut(a.body, "counts-line")
		t.Errorf("the counts are not said: %.90s", line)
	}
}

// A course that nobody put in is told hole by hole while its first round is
// entered, and is there afterwards.
func TestACourseIsToldHoleByHole(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	a := v.post("/rounds/new", "new_course", "Quarry Hill", "new_holes", "2", "date", "2026-05-02")
	if a.status != http.StatusSeeOther || a.location != "/rounds/1/holes/1" {
		t.Fatalf("%d %s", a.status, a.location)
	}
	if a := v.post("/rounds/1/holes/1", "line", "r150 g20 2", "version", "0", "par", "4"); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, `value="r150 g20 2"`) {
		t.Errorf("saved without a length: %d", a.status)
	}
	if a := v.post("/rounds/1/holes/1", "line", "r150 g20 2", "version", "0", "par", "4", "length", "380", "index", "7"); a.status != http.StatusSeeOther {
		t.Fatalf("%d %s", a.status, a.body)
	}
	if a := v.post("/rounds/1/holes/2", "line", "g20 2", "version", "0", "par", "3", "length", "155"); a.status != http.StatusSeeOther || a.location != "/rounds/1?saved=round" {
		t.Fatalf("%d %s", a.status, a.body)
	}
	course := readForm(v.get("/courses/1").body)
	for field, want := range map[string]string{"par-1": "4", "length-1": "380", "index-1": "7", "par-2": "3", "length-2": "155", "index-2": "", "holes": "2"} {
		if course.Get(field) != want {
			t.Errorf("%s of the course is %q", field, course.Get(field))
		}
	}
	if body := v.get("/rounds/1").body; !strings.Contains(body, "par 7, 535 yd") {
		t.Error("the statement does not know the card")
	}
}

func TestARoundIsGoneOnWith(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	round := v.withRound()
	if body := v.get("/rounds/new").body; !strings.Contains(body, `href="`+round+`/holes/2"`) || !strings.Contains(body, "2 holes to go") || !strings.Contains(body, `<option value="1" selected>`) {
		t.Error("the round that was begun is not offered")
	}
	v.post(round+"/holes/2", "line", "g15 2", "version", "0")
	v.post(round+"/holes/3", "line", "=7", "version", "0")
	if body := v.get("/rounds/new").body; strings.Contains(body, "to go") {
		t.Error("a round that is entered whole is offered")
	}
}
