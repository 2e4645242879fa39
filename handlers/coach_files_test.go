package handlers

import (
	"strings"
	"testing"
)

// A coach downloads the roster and a group lesson, of the coach's own pupils only and
// with the choices of the page; the pupil is told of either as of the page.
func TestACoachsFiles(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	stranger := s.member("bea")
	roster := coach.get("/coaching/roster.csv")
	coach.mustSee(roster, "pupil,target,", "robin,")
	coach.mustSee(coach.get("/coaching"), `href="/coaching/roster.csv"`)
	squad := coach.get("/coaching/squad.csv?pupil=1")
	coach.mustSee(squad, "pupil,target,rounds,from,part,lost_per_18,low_95,high_95\nrobin,", ",putting,")
	coach.mustSee(coach.get("/coaching/squad?pupil=1&from=2026-05-01"), `href="/coaching/squad.csv?from=2026-05-01&amp;pupil=1"`)
	if a := coach.get("/coaching/squad.csv?from=2026-05-03"); a.status != 200 || strings.Contains(a.body, "robin") {
		t.Errorf("after the round: %d %s", a.status, a.body)
	}
	if a := coach.get("/coaching/squad.csv?from=soon"); a.status != 422 || !strings.Contains(a.body, "fault-summary") {
		t.Errorf("%d %s", a.status, a.body)
	}
	for _, path := range []string{"/coaching/roster.csv", "/coaching/squad.csv", "/coaching/squad.csv?pupil=1"} {
		if a := stranger.get(path); a.status != 200 || strings.Contains(a.body, "robin") || strings.Count(a.body, "\n") != 1 {
			t.Errorf("%s to a stranger: %d %s", path, a.status, a.body)
		}
	}
	file := coach.get("/players/1/report.csv?span=2026-05-01..")
	coach.mustSee(file, "day,course,holes,score,picked_up,target,target_of_holes,holes_known,lost_all,lost_tee,", ",lost_putting_3_to_6,", "\n2026-")
	coach.mustSee(coach.get("/players/1/report"), `href="/players/1/report.csv?span=`)
	if own := pupil.get("/players/1/report.csv?span=2026-05-01.."); own.body != file.body {
		t.Errorf("to the player: %d %s", own.status, own.body)
	}
	if none := coach.get("/players/1/report.csv?span=2001-01-01..2001-02-01"); strings.Count(none.body, "\n") != 1 {
		t.Errorf("of no round: %s", none.body)
	}
	if a := coach.get("/players/1/report.csv?span=soon"); a.status != 404 {
		t.Errorf("%d", a.status)
	}
	pupil.mustSee(pupil.get("/coaching/looks"), "A report", "The roster of pupils", "The pupils side by side")
}
