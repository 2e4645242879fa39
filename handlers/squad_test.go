package handlers

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/db"
)

var ticked = regexp.MustCompile(`name="pupil"[^>]* checked`)

// A coach chooses who comes: nobody is ticked before, and everybody, a group or those
// who share something are a link each; the sheet is of those who come.
func TestAGroupLesson(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	robin, coach := s.member("robin"), s.member("ines")
	coach.letIn(robin, 1, 2, "")
	withSeason(t, s.store, 1, 84, "2026-03-01", 3, 11)
	bea := s.member("bea")
	coach.letIn(bea, 3, 2, "")
	open := coach.get("/coaching/squad")
	if open.status != 200 || ticked.MatchString(open.body) || strings.Count(open.body, `name="pupil"`) != 2 {
		t.Errorf("%d, ticked %v", open.status, ticked.FindAllString(open.body, -1))
	}
	coach.mustSee(open, `href="/coaching/squad?who=all"`)
	if all := coach.get("/coaching/squad?who=all"); len(ticked.FindAllString(all.body, -1)) != 2 || !strings.Contains(all.body, "10 rounds of 1 pupil") {
		t.Errorf("%s", all.body)
	}
	one := coach.get("/coaching/squad?pupil=1")
	coach.mustSee(one, `href="/coaching/squad/sheet?pupil=1"`, "10 rounds of 1 pupil")
	sheet := coach.get("/coaching/squad/sheet?pupil=1&pupil=3")
	coach.mustSee(sheet, "2 pupils, ", "Without a line, for want of five rounds: bea.", "A try counts when", "sheet-table")
	coach.mustSee(coach.get("/coaching/squad/sheet?pupil=1&row=putting+3-6"), "Putting, 3 to 6 ft", "Start line")
	for _, path := range []string{"/coaching/squad/sheet", "/coaching/squad/sheet?pupil=1&from=soon"} {
		if a := coach.get(path); a.status != 303 {
			t.Errorf("%s: %d", path, a.status)
		}
	}
	if a := bea.get("/coaching/squad/sheet?pupil=1"); a.status != 303 {
		t.Errorf("to another player: %d", a.status)
	}
	robin.mustSee(robin.get("/coaching/looks"), "The pupils side by side")
}

// A new target makes new summaries, since they hold what was lost to its golfer.
func TestSummariesFollowTheTarget(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	robin, coach := s.member("robin"), s.member("ines")
	coach.letIn(robin, 1, 2, "")
	withSeason(t, s.store, 1, 84, "2026-03-01", 3, 6)
	lost := regexp.MustCompile(`<th scope="row"><bdi>robin</bdi></th>\s*<td class="figure-cell">(?:<b>)?([^<]+)`)
	of := func(target float64) string {
		if err := s.store.Greet(t.Context(), 1, target, db.Units{Far: golf.Yards, Green: golf.Feet}, ""); err != nil {
			t.Fatal(err)
		}
		a := coach.get("/coaching/squad/sheet?pupil=1&row=approach")
		m := lost.FindStringSubmatch(a.body)
		if m == nil {
			t.Fatalf("%g: %d %s", target, a.status, a.body)
		}
		return fmt.Sprint(m[1])
	}
	if a, b := of(90), of(72); a == b || of(90) != a {
		t.Errorf("against a 90 %s are lost, against a 72 %s", a, b)
	}
}
