package handlers

import (
	"fmt"
	"strings"
	"testing"
)

// Four sessions of a drill stand beside the course, for the player and for a coach;
// three do not yet.
func TestADrillIsSetBesideTheCourse(t *testing.T) {
	s := newSite(t, inJune)
	v, coach := s.member("robin"), s.member("ines")
	coach.letIn(v, 1, 2, "")
	for i := range 4 {
		if a := v.get(startLine); strings.Contains(a.body, "Does it carry over?") {
			t.Errorf("%d sessions stand beside the course", i)
		}
		v.follows(startLine, "entered", fmt.Sprint("a-page-of-putts-", i), "day", fmt.Sprint("2026-06-0", i+1), "feet", "6", "tries", "mmmmmlrlrm", "press", "save")
	}
	for _, who := range []visitor{v, coach} {
		who.mustSee(who.get(startLine), `id="carry"`, "Does it carry over?", "holed 60 (", "2 Jun 2026", "It takes rounds on both sides to compare.")
	}
}

// A drill that the player chose stands on the report of the days that it was done on.
func TestTheReportHasDrillsThatNobodySet(t *testing.T) {
	s := newSite(t, inJune)
	v, coach := s.member("robin"), s.member("ines")
	coach.letIn(v, 1, 2, "")
	v.follows(startLine, "entered", "a-page-of-putts", "day", "2026-06-01", "feet", "6", "tries", "mmmmmlrlrm", "press", "save")
	for _, who := range []visitor{v, coach} {
		who.mustSee(who.get("/players/1/report?span=2026-06"), "1 session", "not set by anybody", "1 Jun 2026: 6 of 10")
		if a := who.get("/players/1/report?span=2026-05"); strings.Contains(a.body, "not set by anybody") {
			t.Error("a session of June stands on the report of May")
		}
	}
}
