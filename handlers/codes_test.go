package handlers

import (
	"net/http"
	"regexp"
	"strings"
	"testing"
)

// codeOf is the code on a coach's page.
func (v visitor) codeOf() string {
	v.t.Helper()
	m := regexp.MustCompile(`<code>([A-Z]{3}-[A-Z]{3}-[A-Z]{3})</code>`).FindStringSubmatch(v.get("/coaching").body)
	if m == nil {
		v.t.Fatal("no code")
	}
	return m[1]
}

// A pupil who types a coach's code sees whose it is, says yes, and the coach says yes;
// before that the coach sees nothing, and each hears of the other.
func TestAPupilAsksByACode(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.member("robin"), s.member("ines")
	pupil.withRound()
	coach.mustSee(coach.get("/coaching"), "You have no code.")
	coach.mustSee(coach.follows("/coaching/code", "code", "renew"), "You have a new code.")
	code := coach.codeOf()
	pupil.mustSee(pupil.post("/coaching/ask", "code", strings.ToLower(strings.ReplaceAll(code, "-", "")), "from", "2026-05-01"), "This is the code of ines, ines@example.org.", "rounds played from 1 May 2026 on", "Ask ines")
	if body := coach.get("/coaching").body; strings.Contains(body, "robin") {
		t.Error("the coach was asked before the pupil said yes")
	}
	pupil.mustSee(pupil.follows("/coaching/ask", "code", code, "from", "2026-05-01", "sure", "yes"), "Your request is sent.", "has not answered yet; would see rounds played from 1 May 2026 on")
	coach.mustSee(coach.get("/notices"), "robin", "asks you to coach them, with your code.")
	if a := coach.get("/players/1/rounds"); a.status != http.StatusNotFound {
		t.Errorf("seen before the coach said yes: %d", a.status)
	}
	coach.mustSee(coach.get("/coaching"), "robin@example.org", "Accept <bdi>robin</bdi>")
	coach.mustSee(coach.follows("/coaching/answer", "player", "1", "accept", "yes"), "You have accepted.", "robin")
	pupil.mustSee(pupil.get("/notices"), "has accepted you as a pupil")
	if a := coach.get("/players/1/rounds"); a.status != http.StatusOK {
		t.Errorf("not seen after both said yes: %d", a.status)
	}
	pupil.mustSee(pupil.post("/coaching/ask", "code", code), "ines has access to your pages already.")
	coach.mustSee(coach.post("/coaching/ask", "code", code), "This is your own code.")
}

// A request is taken back or declined; a wrong code and one that is turned off read the
// same, and after some tries there are no more for a while.
func TestCodesThatLeadNowhere(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.member("robin"), s.member("ines")
	coach.follows("/coaching/code", "code", "renew")
	old := coach.codeOf()
	pupil.follows("/coaching/ask", "code", old, "sure", "yes")
	pupil.mustSee(pupil.follows("/coaching/withdraw", "coach", "2"), "Your request is withdrawn.")
	pupil.follows("/coaching/ask", "code", old, "sure", "yes")
	coach.mustSee(coach.follows("/coaching/answer", "player", "1", "accept", ""), "You have declined")
	pupil.mustSee(pupil.get("/notices"), "has declined to coach you.")
	coach.follows("/coaching/code", "code", "renew")
	if code := coach.codeOf(); code == old {
		t.Error("renewed, the code is the same")
	}
	coach.mustSee(coach.follows("/coaching/code", "code", ""), "Your code is turned off.", "You have no code.")
	turnedOff, wrong := pupil.post("/coaching/ask", "code", old), pupil.post("/coaching/ask", "code", "BBB-BBB-BBB")
	if turnedOff.status != http.StatusUnprocessableEntity || strings.ReplaceAll(turnedOff.body, old, "") != strings.ReplaceAll(wrong.body, "BBB-BBB-BBB", "") {
		t.Errorf("%d and %d", turnedOff.status, wrong.status)
	}
	pupil.mustSee(wrong, "No coach has this code now.", `id="coach_code-wrong"`, "autofocus")
	for range triesOfCode - 4 {
		pupil.post("/coaching/ask", "code", "BBB-BBB-BBB")
	}
	if a := pupil.post("/coaching/ask", "code", "BBB-BBB-BBB"); a.status != http.StatusTooManyRequests {
		t.Errorf("another try: %d", a.status)
	}
}
