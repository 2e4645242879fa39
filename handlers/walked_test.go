package handlers

import (
	"net/http"
	"strings"
	"testing"
)

// A coach types a round that the coach walked; it is the pupil's once the pupil accepts it,
// and until then it counts nowhere. The statement says who entered it.
func TestACoachEntersARound(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	coach.mustSee(coach.get("/players/1"), "Enter a round for robin")
	coach.mustSee(coach.follows("/players/1/walked", "course", "1", "date", "2026-05-20"), "robin’s shots after the tee", "a golfer who averages robin’s target of", "All holes, and sending the round")
	page := coach.get("/players/1/walked/1")
	coach.mustSee(page, "Hole 1, par 4, 384 yd", "Hole 3, par 5, 498 yd", "Send it to robin")
	if a := coach.post("/players/1/walked/1", "line-1", "r150 q20 2", "line-2", "g20 2", "press", "send"); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, `id="line-1-wrong"`) || !strings.Contains(a.body, `value="g20 2"`) || !strings.Contains(a.body, "autofocus") {
		t.Errorf("a line that cannot be read: %d", a.status)
	}
	coach.mustSee(coach.post("/players/1/walked/1", "press", "send"), "Type at least one hole")
	coach.mustSee(coach.follows("/players/1/walked/1", "line-1", "r150 g20 2", "press", "save"), "Holed in 4, par", "Rough 150 yd, Green 20 ft, Green 2 ft", "The lines are saved.")
	if a := pupil.get("/players/1/walked/1"); a.status != http.StatusNotFound {
		t.Errorf("the pupil reads what is not sent: %d", a.status)
	}
	before := pupil.get("/export/shots.csv").body
	coach.mustSee(coach.follows("/players/1/walked/1", "line-1", "r150 g20 2", "line-2", "=5", "press", "send"), "The round is sent", "Sent, and not answered yet.")
	if a := coach.post("/players/1/walked/1", "line-1", "x", "press", "save"); a.status != http.StatusNotFound {
		t.Errorf("changed after it was sent: %d", a.status)
	}
	pupil.mustSee(pupil.get("/notices"), "has entered a round for you to accept: 20 May 2026, Harrow Fen.")
	rounds := pupil.get("/rounds")
	pupil.mustSee(rounds, "One round that a coach entered waits for you.")
	if strings.Contains(rounds.body, "20 May") || pupil.get("/export/shots.csv").body != before {
		t.Error("it counts before it is accepted")
	}
	pupil.mustSee(pupil.get("/export/everything.json"), `"rounds_to_accept":[{"by":"ines","day":"2026-05-20","course":"Harrow Fen","holes":["1: r150 g20 2","2: =5"]}]`)
	pupil.mustSee(pupil.get("/players/1/walked/1"), "ines has entered this round for you", "Holed in 4, par", "Score only: 5", "not played")
	pupil.mustSee(pupil.follows("/players/1/walked/1/answer", "accept", "yes"), "The round is yours now", "Statement, Wednesday 20 May 2026", "Entered by ines")
	coach.mustSee(coach.get("/notices"), "has accepted the round that you entered: 20 May 2026, Harrow Fen.")
	coach.mustSee(coach.get("/players/1/rounds/2"), "Entered by ines")
	pupil.mustSee(pupil.get("/export/everything.json"), `"entered_by":"ines"`)
	if after := pupil.get("/export/shots.csv").body; len(after) <= len(before) {
		t.Error("it does not count once it is accepted")
	}
	if a := pupil.post("/players/1/walked/1/answer", "accept", "yes"); a.status != http.StatusNotFound {
		t.Errorf("accepted twice: %d", a.status)
	}
}

// What is declined can be accepted after all, and what a coach took back can be sent.
func TestAWalkedRoundIsDeclined(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	coach.follows("/players/1/walked", "course", "1", "date", "2026-05-20")
	coach.mustSee(coach.follows("/players/1/walked/1/remove"), "Removed: entered round of 20 May 2026, Harrow Fen, for robin.")
	coach.mustSee(coach.follows("/removed", "what", "walked.1.1"), "Restored.", "Send it to robin")
	coach.follows("/players/1/walked/1", "line-1", "r150 g20 2", "press", "send")
	pupil.mustSee(pupil.follows("/players/1/walked/1/answer", "accept", ""), "Removed: entered round of 20 May 2026, Harrow Fen.", "No round waits for you.")
	coach.mustSee(coach.get("/notices"), "has declined the round that you entered: 20 May 2026, Harrow Fen.")
	if a := coach.post("/removed", "what", "walked.1.1"); a.status != http.StatusNotFound {
		t.Errorf("the coach brings back what the pupil declined: %d", a.status)
	}
	pupil.mustSee(pupil.follows("/removed", "what", "walked.1.1"), "Accept this round")
	pupil.mustSee(pupil.follows("/players/1/walked/1/answer", "accept", "yes"), "Entered by ines")
}

// A round can be entered only on a day that the coach sees, not later than today, and on a
// course whose card is whole.
func TestAWalkedRoundOfAnotherDay(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	pupil.follows("/coaching/day", "coach", "2", "from", "2026-05-10")
	for day, says := range map[string]string{"2999-01-01": "This day is still to come.", "2026-05-09": "The pupil shares what was played from 10 May 2026 on.", "x": "Not a day"} {
		if a := coach.post("/players/1/walked", "course", "1", "date", day); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, says) {
			t.Errorf("%s: %d", day, a.status)
		}
	}
	if a := coach.post("/players/1/walked", "course", "9", "date", "2026-05-20"); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "Choose a course.") {
		t.Errorf("no course: %d", a.status)
	}
	pupil.follows("/rounds/new", "new_course", "Quarry Hill", "new_holes", "9", "date", "2026-05-20")
	if a := coach.post("/players/1/walked", "course", "2", "date", "2026-05-20"); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "The card of this course is not whole.") {
		t.Errorf("a course without a card: %d", a.status)
	}
	if a := pupil.post("/players/1/walked", "course", "1", "date", "2026-05-20"); a.status != http.StatusNotFound {
		t.Errorf("the pupil: %d", a.status)
	}
}
