package handlers

import (
	"fmt"
	"net/http"
	"strings"
	"testing"
	"time"
)

// accountFile is a file with nothing but settings and one part.
func accountFile(part string) string {
	return `{"version":1,"settings":{"name":"R","far_unit":"yd","green_unit":"ft","target":79,"boundary_yd":50,"clubs":""},"rounds":[],` + part + `}`
}

// What an account file holds besides rounds is refused whole where one figure of it
// cannot be, or comes twice where it may come once; nothing of it is kept.
func TestHostilePartsOfAnAccountFile(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	const (
		plan  = `"practice_plans":[{"day":"2026-05-02","first_day":"2026-04-01","last_day":"2026-05-02","rounds":12,"target":79,"minutes":180,"engine":"x","figures":{"version":1,"level":%s,"items":[]}}]`
		drawn = `"drawn_courses":[{"course":"Fen","tee":"","holes":[{"number":1,"par":4,"length_in":14400,"stroke_index":1}],"drawings":[{"hole":%s,"drawn":"2026-05-02T10:00:00Z","picture":{"version":1,"par":4,"length":%s}}]}]`
		ball  = `"run_out":[{"day":"%s","club":"pw","lie":"rough","green":"fast","carry":%s,"total":21.5,"unit":"paces"}]`
		balls = `"range_sessions":[{"club":"d","day":"2026-05-02","balls":[%s]}]`
		club  = `{"club":"d","length_yd":%s,"shape_yd":0}`
	)
	for _, part := range []string{
		fmt.Sprintf(plan, "1e308"), fmt.Sprintf(plan, "NaN"), fmt.Sprintf(plan, `"84"`), fmt.Sprintf(plan, strings.Repeat("[", 40)),
		fmt.Sprintf(drawn, "1", "1e308"), fmt.Sprintf(drawn, "1", "-5"), fmt.Sprintf(drawn, "1", "Infinity"), fmt.Sprintf(drawn, "2", "400"), fmt.Sprintf(drawn, "1.5", "400"), fmt.Sprintf(drawn, "1", `400,"length":400`),
		strings.Replace(fmt.Sprintf(drawn, "1", "400"), "14400", "0", 1), strings.Replace(fmt.Sprintf(drawn, "1", "400"), "14400", "-1", 1), strings.Replace(fmt.Sprintf(drawn, "1", "400"), `"length_in":14400,`, "", 1), strings.Replace(fmt.Sprintf(drawn, "1", "400"), "14400", "0.001", 1),
		fmt.Sprintf(ball, "2026-05-02", "1e308"), fmt.Sprintf(ball, "2026-05-02", "-1"), fmt.Sprintf(ball, "2026-05-02", "NaN"), fmt.Sprintf(ball, "2026-02-30", "12"), fmt.Sprintf(ball, "10000-01-01", "12"),
		fmt.Sprintf(balls, `"1e308 0"`), fmt.Sprintf(balls, `"NaN NaN"`), fmt.Sprintf(balls, `"=1+1"`),
		`"bag":[` + fmt.Sprintf(club, "1e308") + `]`, `"bag":[` + fmt.Sprintf(club, "200") + "," + fmt.Sprintf(club, "210") + `]`,
	} {
		a := v.upload(accountFile(part))
		if a.status != http.StatusUnprocessableEntity {
			t.Errorf("%s: %d", part, a.status)
		}
		if confirmed := v.post("/import/confirm", "settings", "yes"); confirmed.status != http.StatusNotFound {
			t.Errorf("%s: confirmed with %d", part, confirmed.status)
		}
	}
}

// A coach whose access has ended reaches nothing of what the coach made there: rounds
// that were walked, lessons with their files, what was said of holes, what was removed,
// and no file or page of the group names the pupil.
func TestAnEndedCoachReachesNothingOfTheirOwn(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.furnished()
	pupil.drawsHoles()
	const hole = "/players/1/play/1/holes/1"
	soon := time.Now().AddDate(0, 0, 12).Format(time.DateOnly)
	coach.follows(hole+"/advice", "note", "Left is dead.", "club", "hybrid", "side", "6", "to", "right")
	coach.follows("/players/1/walked", "course", "1", "date", "2026-05-20")
	coach.follows("/players/1/walked/2", "line-1", "r150 g20 2", "press", "send")
	coach.follows("/players/1/walked", "course", "1", "date", "2026-05-21")
	coach.follows("/players/1/walked/3/remove")
	coach.follows("/players/1/lessons/1/remove")
	coach.follows("/removed", "what", "lesson.1.1")
	ics := coach.get("/players/1/lessons/1/lesson.ics")
	if ics.status != http.StatusOK {
		t.Fatalf("%d", ics.status)
	}
	coach.follows("/players/1/lessons", "day", soon, "aim", "Putts")
	coach.follows("/players/1/lessons/2/remove")
	before := coach.get("/removed").body
	coach.mustSee(coach.get("/coaching/squad?pupil=1"), "owner")
	pupil.follows("/coaching/end", "player", "1", "coach", "2", "sure", "yes")
	for _, at := range []string{"", "/walked", "/walked/1", "/walked/2", "/walked/3", "/lessons", "/lessons/1/lesson.ics", "/play", "/play/1", "/play/1/card", "/play/1/holes/1", "/beside", "/report", "/report.csv", "/months.csv", "/run-out.csv"} {
		if a := coach.get("/players/1" + at); a.status != http.StatusNotFound {
			t.Errorf("GET %s: %d", at, a.status)
		}
	}
	for _, c := range [][]string{
		{"/players/1/walked", "course", "1", "date", "2026-05-22"}, {"/players/1/walked/2", "line-1", "r150 g20 2", "press", "send"}, {"/players/1/walked/2/remove"}, {"/players/1/walked/2/answer", "accept", "yes"},
		{"/players/1/lessons", "day", soon}, {"/players/1/lessons/1", "day", soon}, {"/players/1/lessons/1/remove"},
		{hole + "/advice", "note", "Right is dead."}, {hole + "/advice/answer", "advice", "1", "take", "yes"},
		{"/removed", "what", "walked.1.3"}, {"/removed", "what", "lesson.1.2"},
	} {
		if a := coach.post(c[0], c[1:]...); a.status != http.StatusNotFound {
			t.Errorf("POST %v: %d", c, a.status)
		}
	}
	if !strings.Contains(before, "walked.1.3") || !strings.Contains(before, "lesson.1.2") {
		t.Errorf("nothing was removed: %s", before)
	}
	for _, at := range []string{"/coaching/squad?pupil=1", "/coaching/squad?who=all", "/coaching/squad/sheet?pupil=1", "/coaching/squad.csv?pupil=1", "/coaching/squad.csv", "/coaching/roster.csv"} {
		if a := coach.get(at); strings.Contains(a.body, "owner") {
			t.Errorf("%s names the pupil: %d %s", at, a.status, a.body)
		}
	}
}

// A phrase belongs to who keeps it, and a key of another's puts nothing into a note; a
// request answers to the two of it alone.
func TestPhrasesAndRequestsOfOthers(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	stranger := s.member("tam")
	coach.follows("/coaching/phrases", "body", "A phrase of ines.")
	for _, c := range [][]string{{"/coaching/phrases/1/remove"}, {"/removed", "what", "phrase.2.1"}} {
		if a := stranger.post(c[0], c[1:]...); a.status != http.StatusNotFound {
			t.Errorf("%v: %d", c, a.status)
		}
	}
	if a := pupil.post("/players/1/notes", "day", "2026-05-02", "body", "Mine.", "phrase", "1"); strings.Contains(a.body, "A phrase of ines") {
		t.Error("a phrase of another's")
	}
	coach.mustSee(coach.get("/coaching/phrases"), "A phrase of ines.")
	coach.follows("/coaching/code", "code", "renew")
	code := coach.codeOf()
	stranger.follows("/coaching/ask", "code", code, "from", "", "sure", "yes")
	for who, v := range map[string]visitor{"the asker": stranger, "a pupil": pupil} {
		if a := v.post("/coaching/answer", "player", "3", "accept", "yes"); a.status != http.StatusNotFound {
			t.Errorf("%s accepts: %d", who, a.status)
		}
	}
	if a := pupil.post("/coaching/withdraw", "coach", "2"); a.status != http.StatusNotFound {
		t.Errorf("withdrawn by another: %d", a.status)
	}
	if a := coach.get("/players/3"); a.status != http.StatusNotFound {
		t.Errorf("seen before it is accepted: %d", a.status)
	}
	coach.follows("/coaching/answer", "player", "3", "accept", "yes")
	coach.mustSee(coach.get("/players/3"), "tam")
}
