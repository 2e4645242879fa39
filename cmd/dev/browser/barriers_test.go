package browser

import (
	"context"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// screens are the sizes to look at a page in: 640 px is a laptop at 200 %. The
// narrowest and the widest have other rows and columns; between them only sizes
// differ; at 1024 px the columns have the least room.
var screens = []struct {
	width int64
	look  string
}{
	{320, lookAt(`{ type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] }`)},
	{360, lookAt(`["target-size"]`)}, {640, lookAt(`["target-size"]`)}, {1024, ""},
	{1280, lookAt(`{ type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] }`)},
}

// lookAt has axe-core look at a page as it stands.
func lookAt(rules string) string {
	return `axe.run({ runOnly: ` + rules + `, rules: { "target-size": { enabled: true } }, resultTypes: ["violations"] })
		.then(r => r.violations.flatMap(v => v.nodes.map(n => v.id + ": " + n.html.slice(0, 160))))`
}

// wide says what reaches out of a page that scrolls sideways, the innermost last;
// empty for none. Text that runs out of its box makes the box no wider, but what
// can be scrolled.
const wide = `(() => {
	const root = document.documentElement, width = root.clientWidth;
	if (root.scrollWidth <= width) return "";
	const out = [...document.querySelectorAll("body *")].filter(e => !e.closest(".scroll-area") && (e.getBoundingClientRect().right > width + .5 || e.scrollWidth > width));
	return root.scrollWidth + " px: " + out.slice(-6).map(e => e.tagName.toLowerCase() + "." + (e.getAttribute("class") ?? "") + " " + e.textContent.trim().slice(0, 30)).join(" | ");
})()`

// fits checks that a page does not scroll sideways at a width.
func fits(t *testing.T, ctx context.Context, path string, width int64) {
	t.Helper()
	do(t, ctx, Screen(width, 740, false))
	if out := evaluates(t, ctx, wide); out != "" {
		t.Errorf("%s at %d px scrolls sideways, %s", path, width, out)
	}
}

// visit looks at pages, each loaded once: at every width for what reaches out of
// it and for barriers, and in the other light for those of colour.
func visit(t *testing.T, ctx context.Context, paths ...string) {
	t.Helper()
	axe, err := os.ReadFile("node_modules/axe-core/axe.min.js")
	if err != nil {
		t.Fatal("axe-core is missing; type: npm ci --prefix cmd/dev/browser")
	}
	for _, path := range paths {
		do(t, ctx, chromedp.Navigate(app.URL+path))
		if _, err := chromedp.Run(ctx, chromedp.Evaluate[bool](string(axe)+";true")); err != nil {
			t.Fatal(err)
		}
		said := map[string]bool{}
		for _, s := range screens {
			fits(t, ctx, path, s.width)
			if s.look != "" {
				looked(t, ctx, said, fmt.Sprintf("%s at %d px", path, s.width), s.look)
			}
		}
		do(t, ctx, Screen(1280, 740, true))
		looked(t, ctx, said, path+" in the dark", lookAt(`["color-contrast"]`))
	}
}

// looked says what a look found that was not said before.
func looked(t *testing.T, ctx context.Context, said map[string]bool, where, look string) {
	t.Helper()
	found, err := chromedp.Run(ctx, chromedp.Evaluate[[]string](look, chromedp.EvalAwaitPromise))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range found {
		if !said[f] {
			said[f] = true
			t.Errorf("%s: %s", where, f)
		}
	}
}

// No barriers that axe-core finds, on any page, in either light.
func TestNoBarriers(t *testing.T) {
	t.Parallel()
	ctx := tab(t, 1280, true)
	visit(t, ctx, "/", "/join", "/nothing", "/reset?player=1&token=x", "/help")
	if err := SignIn(ctx, app); err != nil {
		t.Fatal(err)
	}
	round, err := FirstRound(ctx, app)
	if err != nil {
		t.Fatal(err)
	}
	visit(t, ctx, "/rounds", round, round+"/holes/7", round+"/holes/7/shots", "/rounds/new", "/import", "/courses", "/courses/new", "/courses/1", "/account", "/welcome", "/removed", round+"/details")
	do(t, ctx, chromedp.Navigate(app.URL+"/months"))
	months := evaluates(t, ctx, `location.pathname`)
	visit(t, ctx, "/coaching", "/coaching/looks", "/players/2/lessons", "/players/2/plan", "/players/2/run-out", "/players/2/run-out?distance=23&edge=17&lie=fairway&speed=medium&slope=level", "/players/2/start-line", "/players/2/start-line?feet=6&tries=40&made=20&left=4&right=12", "/players/2/drills/start-line", "/players/2/drills/wedge-ladder", "/players/2/drills/round-the-hole", months, strings.TrimSuffix(months, "months")+"handicap", months+"/behind?in=1&row=approach")
	visit(t, ctx, "/notices", "/players/2/log", linked(t, ctx, "/players/2/plan", "/plans/"), linked(t, ctx, "/players/2/log", "/sessions/"))
}

// The same for how notices reach somebody elsewhere.
func TestNoBarriersToNoticesElsewhere(t *testing.T) {
	ctx := tab(t, 1280, true)
	if err := SignIn(ctx, app); err != nil {
		t.Fatal(err)
	}
	do(t, ctx, chromedp.Navigate(app.URL+"/account"), Press(`button[name="feed"][value="on"]`), chromedp.WaitReady(".notice code"))
	fits(t, ctx, "the address of a feed", 320)
	app.mails(t, "2", "barriers")
	visit(t, ctx, "/account", "/notices/mail/end?player=2&token=barriers", "/notices/mail/confirm?player=2&token=barriers", "/notices/mail/confirm?player=2&token=wrong", "/notices/mail/confirm?done=started")
}

// linked is where the first link of a page leads whose address has a part.
func linked(t *testing.T, ctx context.Context, page, part string) string {
	t.Helper()
	do(t, ctx, chromedp.Navigate(app.URL+page))
	at := evaluates(t, ctx, fmt.Sprintf(`document.querySelector("main a[href*='%s']")?.getAttribute("href") ?? ""`, part))
	if at == "" {
		t.Fatalf("%s has no link with %s", page, part)
	}
	return at
}

// TestACoachOfMany looks at the coach's other pages.
func TestNoBarriersForTheCoach(t *testing.T) {
	t.Parallel()
	ctx := tab(t, 1280, true)
	if err := SignInAs(ctx, app, Coach); err != nil {
		t.Fatal(err)
	}
	do(t, ctx, chromedp.Navigate(app.URL+"/players/2/rounds"))
	round := evaluates(t, ctx, `document.querySelector("tbody a").getAttribute("href")`)
	walked := beginsWalked(t, ctx, app.URL)
	visit(t, ctx, walked, walked+"/holes/1", "/coaching", "/players/2", "/coaching/squad", "/coaching/squad/sheet?who=all", "/players/2/beside", "/players/2/lessons", round, round+"?on=4.2", "/players/2/report", "/players/2/plan", "/players/2/log", linked(t, ctx, "/players/2/plan", "/plans/"))
}

func TestNoBarriersForTheSteward(t *testing.T) {
	ctx := tab(t, 360, true)
	if err := SignInAs(ctx, app, Steward); err != nil {
		t.Fatal(err)
	}
	visit(t, ctx, "/rounds", "/rounds/new", "/account", "/accounts")
	do(t, ctx, Press("tbody button"), chromedp.WaitReady(".notice code"))
	fits(t, ctx, "a link for a new password", 320)
}

// The policy holds: no page asks for a style or script that it forbids.
func TestContentSecurityPolicyIsKept(t *testing.T) {
	ctx := tab(t, 1280, true)
	if err := SignIn(ctx, app); err != nil {
		t.Fatal(err)
	}
	round, err := FirstRound(ctx, app)
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{"/rounds", round, round + "/holes/7", "/months", "/account", "/players/2/lessons", "/players/2/plan", "/players/2/drills/ladder", "/players/2/report", "/players/2/play/1/holes/6", "/courses/1/holes/6/picture", "/players/2/play/1/card"} {
		do(t, ctx, chromedp.Navigate(app.URL+path))
		inline, err := chromedp.Run(ctx, chromedp.Evaluate[int](`document.querySelectorAll("[style], style, script:not([src]), [onclick]").length`))
		if err != nil || inline != 0 {
			t.Errorf("%s: %d inline styles or scripts, %v", path, inline, err)
		}
	}
}
