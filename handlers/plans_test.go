package handlers

import (
	"fmt"
	"net/http"
	"strings"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/db/dbtest"
)

// withSeason gives the first player six rounds, each the one that is entered.
func (v visitor) withSeason(s testSite) {
	v.t.Helper()
	v.withRound()
	for _, sql := range []string{
		`insert into rounds (player_id, name, played_on, course, tee, target, boundary_yd, par18)
		 select player_id, 'again ' || i, played_on - i, course, tee, target, boundary_yd, par18 from rounds, generate_series(1, 5) i where id = 1`,
		`insert into holes (player_id, round_id, number, par, length_in, line, far_unit, green_unit, picked_up, score_only)
		 select h.player_id, r.id, h.number, h.par, h.length_in, h.line, h.far_unit, h.green_unit, h.picked_up, h.score_only
		 from holes h, rounds r where h.round_id = 1 and r.name like 'again%'`,
		`insert into shots (player_id, round_id, hole, number, lie, distance_in, unit, about, penalty, short_sided, green_in, club, miss, word)
		 select s.player_id, r.id, s.hole, s.number, s.lie, s.distance_in, s.unit, s.about, s.penalty, s.short_sided, s.green_in, s.club, s.miss, s.word
		 from shots s, rounds r where s.round_id = 1 and r.name like 'again%'`,
	} {
		dbtest.Exec(v.t, s.url, sql)
	}
}

// A plan that was taken is kept as it was made, stands beside what came, sets its
// drills among the practice, and is removed and brought back with them.
func TestAPlanIsTaken(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v, coach := s.member("robin"), s.member("ines")
	v.withSeason(s)
	coach.letIn(v, 1, 2, "")
	v.mustSee(v.get("/players/1/plan"), "Take this plan")
	for range 2 { // pressed twice
		v.mustSee(v.follows("/players/1/plans"), "The plan is yours now", "Expected and won back", "not done yet", "With care")
	}
	if plans, err := s.store.TakenPlans(t.Context(), 1, 1); err != nil || len(plans) != 1 || plans[0].Minutes != 180 || len(plans[0].Figures) < 100 {
		t.Fatalf("%+v, %v", plans, err)
	}
	set, err := s.store.Assignments(t.Context(), 1, 1, 0)
	if err != nil || len(set) < 3 || set[0].Drill == "" || !strings.HasSuffix(set[0].Amount, "minutes a week") {
		t.Fatalf("%+v, %v", set, err)
	}
	v.mustSee(v.get("/players/1/plan"), "Plans taken")
	v.mustSee(v.get("/export/everything.json"), `"practice_plans":[{`, `"figures":{`)
	lessons := v.get("/players/1/lessons")
	for _, a := range set {
		v.mustSee(lessons, a.What, "/drills/"+a.Drill)
	}
	coach.mustSee(coach.get("/players/1/plans/1"), "Expected and won back")
	if a := coach.get("/players/1/plans/1"); strings.Contains(a.body, "Remove this plan") {
		t.Error("the coach may remove the plan")
	}
	a := v.follows("/players/1/plans/1/remove")
	v.mustSee(a, "Removed: plan of")
	if left, err := s.store.Assignments(t.Context(), 1, 1, 0); err != nil || len(left) != 0 {
		t.Errorf("%+v, %v", left, err)
	}
	v.mustSee(v.undone(a), "Restored.", "Expected and won back")
	if left, err := s.store.Assignments(t.Context(), 1, 1, 0); err != nil || len(left) != len(set) {
		t.Errorf("%+v, %v", left, err)
	}
}

// Too few rounds make no plan to take.
func TestNoPlanOfFewRounds(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	v.withRound()
	if a := v.get("/players/1/plan"); strings.Contains(a.body, "Take this plan") {
		t.Error("a plan of one round can be taken")
	}
	if a := v.post("/players/1/plans"); a.status != http.StatusNotFound {
		t.Errorf("%d", a.status)
	}
}

// The minutes of a week are a setting, and the plan shares them out.
func TestMinutesOfAWeek(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	v.withSeason(s)
	v.mustSee(v.get("/account"), `name="minutes"`, `value="180"`)
	settings := []string{"name", "robin", "target", "79", "boundary", "50", "far", "yd", "green", "ft", "clubs", "", "zone", ""}
	if a := v.post("/account", append(settings, "minutes", "59")...); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "60 to 600, in steps of 5") {
		t.Errorf("59 minutes: %d", a.status)
	}
	v.follows("/account", append(settings, "minutes", "95")...)
	v.mustSee(v.get("/players/1/plan"), "95 minutes a week")
}

// The log has every session by week, with the minutes of the week added up.
func TestTheLogOfPractice(t *testing.T) {
	s := newSite(t, inJune)
	v, coach := s.member("robin"), s.member("ines")
	coach.letIn(v, 1, 2, "")
	v.mustSee(v.get("/players/1/log"), "No practice recorded yet")
	coach.mustSee(coach.get("/players/1/log"), "robin has not recorded any practice yet")
	for i, day := range []golf.Date{{Year: 2026, Month: 6, Day: 1}, {Year: 2026, Month: 6, Day: 7}, {Year: 2026, Month: 6, Day: 8}} {
		v.follows(startLine, "entered", fmt.Sprint("a-page-of-putts-", i), "day", day.String(), "feet", "6", "tries", "mmmmmlrlrm", "minutes", fmt.Sprint(10*i+10), "note", "left edge")
	}
	coach.follows("/players/1/assignments", "what", "Nine holes with one club", "due", "2026-06-30")
	v.follows("/players/1/assignments/1/results", "day", "2026-06-02", "result", "47 strokes")
	a := v.get("/players/1/log")
	v.mustSee(a, "Week of 1 Jun 2026", "Week of 8 Jun 2026", `<b data-sum="week-2026-06-01">30</b>`, "3 sessions", "6 of 10", "Start line, 6 ft", "left edge", "47 strokes", "This week: one session, 30 of 180 minutes", "/sessions/1")
	v.mustSee(v.get("/export/everything.json"), `"drill_sessions":[{"drill":"Start line","day":"2026-06-01","feet":6,"tries":"mmmmmlrlrm"`, `"minutes":10,"note":"left edge"`)
	if b := coach.get("/players/1/log"); strings.Contains(b.body, "/sessions/1") || !strings.Contains(b.body, "6 of 10") {
		t.Error("the coach reads something else")
	}
}

// A coach sets a drill from the list, with the mark of each pupil's target, or one of
// the coach's own, for several pupils at once; the pupil writes it down on its page and
// the coach reads what came of it.
func TestACoachSetsDrills(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v, coach, second, stranger := s.member("robin"), s.member("ines"), s.member("wil"), s.member("sam")
	coach.letIn(v, 1, 2, "")
	coach.letIn(second, 3, 2, "")
	coach.mustSee(coach.get("/players/1/lessons"), "Wedge ladder", "A drill that is not in the list", "Also for", "wil")
	coach.follows("/players/1/assignments", "drill", "wedge-ladder", "due", "2092-06-30", "also", "3")
	coach.follows("/players/1/assignments", "what", "Gate", "set_up", "Two tees a ball and a half apart.", "tries", "10", "mark", "7", "due", "2092-06-30")
	if a := coach.post("/players/1/assignments", "drill", "lag", "due", "2092-06-30", "also", "4"); a.status != http.StatusNotFound {
		t.Errorf("set for somebody who is no pupil: %d", a.status)
	}
	if a := coach.post("/players/1/assignments", "drill", "moon", "due", "2092-06-30"); a.status != http.StatusNotFound {
		t.Errorf("a drill that is not there: %d", a.status)
	}
	second.mustSee(second.get("/players/3/lessons"), "Wedge ladder", "set by ines", "/drills/wedge-ladder")
	set, err := s.store.Assignments(t.Context(), 1, 1, 0)
	if err != nil || len(set) != 2 || set[0].PassMark == "" {
		t.Fatalf("%+v, %v", set, err)
	}
	v.mustSee(v.get("/players/1/drills/own-3"), "Gate", "Two tees a ball and a half apart.", "This drill has no model", "Mark: 7 of 10")
	v.mustSee(v.follows("/players/1/drills/own-3", "entered", "a-page-of-a-gate", "day", set[1].GivenAt.Format("2006-01-02"), "tries", "mmmmmmmxxx"), "7 of 10 counted", "Passed: the mark for 10 tries is 7")
	lessons := coach.get("/players/1/lessons")
	coach.mustSee(lessons, "7 of 10", "passed", "1 of 1 passed")
	coach.mustSee(coach.get("/players/1/drills/own-3"), "7 of 10 counted")
	coach.mustSee(coach.get("/players/1/log"), "Gate")
	for _, nobodys := range []string{"own-9", "own-x", "own-1"} {
		if a := v.get("/players/1/drills/" + nobodys); a.status != http.StatusNotFound {
			t.Errorf("%s: %d", nobodys, a.status)
		}
	}
	if a := stranger.get("/players/1/drills/own-3"); a.status != http.StatusNotFound {
		t.Errorf("a stranger: %d", a.status)
	}
}
