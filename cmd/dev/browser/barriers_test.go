package browser

import (
	"context"
	"os"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// visit looks for barriers with axe-core on pages, at a width and in a light.
func visit(t *testing.T, ctx context.Context, width int64, dark bool, paths ...string) {
	t.Helper()
	axe, err := os.ReadFile("node_modules/axe-core/axe.min.js")
	if err != nil {
		t.Fatal("axe-core is missing; type: npm ci --prefix cmd/dev/browser")
	}
	for _, path := range paths {
		do(t, ctx, Screen(width, 800, dark), chromedp.Navigate(app.URL+path))
		if _, err := chromedp.Run(ctx, chromedp.Evaluate[bool](string(axe)+";true")); err != nil {
			t.Fatal(err)
		}
		found, err := chromedp.Run(ctx, chromedp.Evaluate[[]string](
			`axe.run().then(r => r.violations.flatMap(v => v.nodes.map(n => v.id + ": " + n.html.slice(0, 160))))`, chromedp.EvalAwaitPromise))
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range found {
			t.Errorf("%s at %d px, dark %v: %s", path, width, dark, f)
		}
	}
}

// No barriers that axe-core finds, on any page, in either light.
func TestNoBarriers(t *testing.T) {
	ctx := tab(t, 1280, true)
	both := func(paths ...string) {
		for _, width := range []int64{360, 1280} {
			for _, dark := range []bool{false, true} {
				visit(t, ctx, width, dark, paths...)
			}
		}
	}
	both("/", "/join", "/nothing", "/reset?player=1&token=x")
	if err := SignIn(ctx, app); err != nil {
		t.Fatal(err)
	}
	round, err := FirstRound(ctx, app)
	if err != nil {
		t.Fatal(err)
	}
	both("/rounds", round, round+"/holes/7", round+"/holes/7/shots", "/rounds/new", "/import", "/courses", "/courses/new", "/courses/1", "/account", "/welcome", "/removed", round+"/details")
	do(t, ctx, chromedp.Navigate(app.URL+"/months"))
	months := evaluates(t, ctx, `location.pathname`)
	both("/coaching", "/coaching/looks", "/players/2/lessons", months, strings.TrimSuffix(months, "months")+"handicap", months+"/behind?in=1&row=approach")
}

func TestNoBarriersForTheCoach(t *testing.T) {
	ctx := tab(t, 1280, true)
	if err := SignInAs(ctx, app, Coach); err != nil {
		t.Fatal(err)
	}
	do(t, ctx, chromedp.Navigate(app.URL+"/players/2/rounds"))
	round := evaluates(t, ctx, `document.querySelector("tbody a").getAttribute("href")`)
	for _, width := range []int64{360, 1280} {
		for _, dark := range []bool{false, true} {
			visit(t, ctx, width, dark, "/coaching", "/coaching/squad", "/coaching/kept", "/players/2/lessons", "/players/2/rounds", round, round+"?on=4.2", "/players/2/report")
		}
	}
}

func TestNoBarriersForTheSteward(t *testing.T) {
	ctx := tab(t, 360, true)
	if err := SignInAs(ctx, app, Steward); err != nil {
		t.Fatal(err)
	}
	visit(t, ctx, 360, true, "/rounds", "/rounds/new", "/account", "/accounts")
	do(t, ctx, Press("tbody button"), chromedp.WaitReady(".flash code"))
	visit(t, ctx, 1280, false, "/accounts")
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
	for _, path := range []string{"/rounds", round, round + "/holes/7", "/months", "/account", "/players/2/lessons", "/players/2/report"} {
		do(t, ctx, chromedp.Navigate(app.URL+path))
		inline, err := chromedp.Run(ctx, chromedp.Evaluate[int](`document.querySelectorAll("[style], style, script:not([src]), [onclick]").length`))
		if err != nil || inline != 0 {
			t.Errorf("%s: %d inline styles or scripts, %v", path, inline, err)
		}
	}
}
