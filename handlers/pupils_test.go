package handlers

import (
	"fmt"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"strokeledger/db/dbtest"
)

// Every page of a pupil that a coach sees has the bar, with the page marked that it
// is; a round leads to the one before and the one after, and on to the next pupil who
// waits. The pupil's own pages have none.
func TestEveryPageOfAPupilHasTheBar(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	other := s.member("bea")
	coach.letIn(other, 3, 2, "")
	withSeason(t, s.store, 3, 84, "2026-08-01", 3, 1)
	withSeason(t, s.store, 1, 84, "2026-08-01", 3, 10)
	rounds := regexp.MustCompile(`/players/1/rounds/(\d+)"`).FindAllStringSubmatch(coach.get("/players/1/rounds").body, -1)
	if len(rounds) < 3 {
		t.Fatalf("%d rounds", len(rounds))
	}
	for path, current := range map[string]string{"": "Overview", "/rounds": "Rounds", "/rounds/2026/book": "Rounds", "/months": "Months", "/months/behind?in=1&row=putting": "Months", "/lessons": "Practice", "/plan": "Plan", "/report": "Report",
		"/drills/start-line": "", "/handicap": "", "/rounds/" + rounds[1][1]: "Rounds"} {
		a := coach.get("/players/1" + path)
		marked := regexp.MustCompile(`aria-current="page">([^<]*)</a>`).FindAllStringSubmatch(strings.SplitN(a.body, `<nav class="pupil-bar"`, 2)[len(strings.SplitN(a.body, `<nav class="pupil-bar"`, 2))-1], 1)
		if a.status != 200 || !strings.Contains(a.body, `<nav class="pupil-bar"`) || current != "" && (len(marked) == 0 || marked[0][1] != current) {
			t.Errorf("%s: %d, marked %v, want %s", path, a.status, marked, current)
		}
		coach.mustSee(a, "79, everything shared", "Next in queue: bea")
	}
	middle := coach.get("/players/1/rounds/" + rounds[1][1]).body
	for _, i := range []int{0, 2} {
		if !strings.Contains(middle, fmt.Sprintf(`href="/players/1/rounds/%s">`, rounds[i][1])) {
			t.Errorf("no way to round %s", rounds[i][1])
		}
	}
	if a := pupil.get("/players/1/lessons"); strings.Contains(a.body, "pupil-bar") {
		t.Error("the pupil's own page has the bar")
	}
}

// The overview has what a coach asks before a lesson; the pupil reads that it was
// opened, and stands before the own lessons instead.
func TestOverview(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	pupil, coach := s.coached()
	withSeason(t, s.store, 1, 90, "2026-03-01", 3, 22)
	pupil.post("/players/1/notes", "round", "1", "on", "1.1", "body", "Was that the club?")
	coach.post("/players/1/notes", "day", "2026-04-01", "body", "We looked at the grip.")
	coach.post("/players/1/assignments", "what", "Start line", "due", "2092-01-01", "figure", "putting")
	dbtest.Exec(t, s.url, `update assignments set due_on = '2020-01-01'`)
	page := coach.get("/players/1")
	coach.mustSee(page, "A question waits", "Was that the club?", "The dearest leaks", "Since the lesson", "We looked at the grip.", "Start line", "days late", "Doubles together", "The season", "Putting:")
	for _, link := range regexp.MustCompile(`href="(/players/1/months/behind[^"]+)"`).FindAllStringSubmatch(page.body, -1) {
		at := strings.ReplaceAll(link[1], "&amp;", "&")
		if a := coach.get(at); a.status != 200 {
			t.Errorf("%s: %d", at, a.status)
		}
	}
	if a := pupil.get("/players/1"); a.status != 303 || a.location != "/players/1/lessons" {
		t.Errorf("the pupil: %d %s", a.status, a.location)
	}
	pupil.mustSee(pupil.get("/coaching/looks"), "The overview")
}

// A coach sorts pupils into groups, renames one, puts a pupil away and brings the
// pupil back.
func TestGroupsAndArchive(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	_, coach := s.coached()
	coach.follows("/players/1/groups", "groups", " Tuesday  six, Juniors,, Tuesday six")
	coach.mustSee(coach.get("/players/1"), `value="Juniors, Tuesday six"`)
	six := "/coaching?" + url.Values{"group": {"Tuesday six"}}.Encode()
	coach.mustSee(coach.get(six), "robin", "Rename the group")
	coach.mustSee(coach.get("/coaching?group=Nobody"), "No pupils match.")
	coach.mustSee(coach.get("/coaching/squad?group=Juniors"), `value="1" checked`)
	coach.follows("/players/1/groups", "groups", "juniors, tuesday SIX")
	coach.mustSee(coach.get("/players/1"), `value="Juniors, Tuesday six"`)
	coach.follows("/coaching/groups", "from", "Juniors", "to", "Seniors")
	coach.mustSee(coach.get("/players/1"), `value="Seniors, Tuesday six"`)
	for name, problem := range map[string]string{strings.Repeat("x", 90): "A group has at most 80 letters", "Ladies, Seniors": "Give the group one name, without a comma.", "": "Give the group one name, without a comma."} {
		a := coach.post("/coaching/groups", "from", "Seniors", "to", name)
		if coach.mustSee(a, problem, "The group keeps its name.", `value="`+name+`"`, `name="from" value="Seniors"`); a.status != 422 {
			t.Errorf("the name %q: %d", name, a.status)
		}
	}
	if a := coach.post("/coaching/groups", "from", "Nobody", "to", "Ladies"); a.status != 404 {
		t.Errorf("a group that there is not: %d", a.status)
	}
	coach.follows("/coaching/groups", "from", "Seniors", "to", "SENIORS")
	coach.mustSee(coach.get("/players/1"), `value="SENIORS, Tuesday six"`)
	coach.follows("/coaching/groups", "from", "SENIORS", "to", "tuesday SIX")
	coach.mustSee(coach.get("/players/1"), `value="Tuesday six"`)
	if a := coach.post("/players/1/groups", "groups", strings.Repeat("x", 90)); a.status != 422 || !strings.Contains(a.body, "A group has at most 80 letters") {
		t.Errorf("%d", a.status)
	}
	coach.follows("/players/1/archive", "away", "yes")
	coach.mustSee(coach.get("/coaching"), "No pupils match.", "Nothing waits.")
	coach.mustSee(coach.get("/coaching?show=archived"), "/players/1/lessons")
	coach.mustSee(coach.get("/players/1"), "Bring back to the roster")
	coach.follows("/players/1/archive", "away", "")
	coach.mustSee(coach.get("/coaching"), "/players/1/lessons")
}
