package browser

import (
	"context"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// proposes fills in the form of a coach on the page of a hole, and sends it.
func proposes(t *testing.T, ctx context.Context, path string, values map[string]string) {
	t.Helper()
	do(t, ctx, chromedp.Navigate(app.URL+path), chromedp.WaitReady(`form[action$="/advice"]`))
	chooses(t, ctx, values)
	do(t, ctx, Press(`form[action$="/advice"] button:not([name])`), chromedp.WaitReady(`button[name="remove"]`))
	if got := read(t, ctx, `.notice[role="status"]`); got != "Saved. Your pupil sees it here and on the plan of the round." {
		t.Errorf("the page says %q", got)
	}
}

// A coach and a pupil, each in a browser, with script and without it: the coach proposes
// a club, an aim and a safe side; the pupil comes from the notice to the very place and
// takes it, and it stands in the plan and on the card. The next proposal is changed while
// the pupil's page is open, so that it is shown and not taken, and is then declined. The
// coach removes it, and brings it back.
func TestAProposalIsTakenAndAnotherDeclined(t *testing.T) {
	for hole, script := range map[string]bool{"8": true, "10": false} {
		pupil, coach := tab(t, 360, script), tab(t, 1280, script)
		if err := SignIn(pupil, app); err != nil {
			t.Fatal(err)
		}
		if err := SignInAs(coach, app, Coach); err != nil {
			t.Fatal(err)
		}
		const plan = "/players/2/play/1"
		at := plan + "/holes/" + hole
		proposes(t, coach, at, map[string]string{"advice-note": "Left is never the place here.", "club": "hybrid", "side": "7", "to": "right", "safe": "short"})
		fits(t, coach, "a hole with a proposal", 320)

		do(t, pupil, chromedp.Navigate(app.URL+"/notices"), Press(`main a[href="`+at+`#advice"]`), chromedp.WaitReady(`form[action$="/advice/answer"]`))
		if got := evaluates(t, pupil, `location.hash + " " + String(document.querySelector("#advice").getBoundingClientRect().top < innerHeight)`); got != "#advice true" {
			t.Errorf("the notice leads to %q", got)
		}
		wants(t, pupil, "Left is never the place here.", "Proposes the hybrid, aim 7 yd right of the middle; short as the safe side of the green.", "It costs", "A miss short leaves")
		fits(t, pupil, "a hole with a proposal", 320)
		do(t, pupil, Press(`button[name="take"][value="yes"]`), chromedp.WaitReady(`main:not(:has(button[name="take"][value="yes"]))`))
		wants(t, pupil, "Accepted: it is in your plan and on the card.")
		for _, path := range []string{plan, plan + "/card"} {
			do(t, pupil, chromedp.Navigate(app.URL+path))
			waitFor(t, pupil, path+" is worked out", `document.querySelector(".carry-card") && !document.body.textContent.includes("updates by itself")`)
			line := evaluates(t, pupil, `[...document.querySelectorAll(".carry-table tbody tr")].find(r => r.querySelector("th").textContent === "`+hole+`").textContent`)
			if !strings.Contains(line, "hybrid") || !strings.Contains(line, "7 →") || !strings.Contains(line, "short") {
				t.Errorf("%s has hole %s as %q", path, hole, line)
			}
		}

		proposes(t, coach, at, map[string]string{"club": "driver", "side": "12", "to": "left", "safe": ""})
		do(t, pupil, chromedp.Navigate(app.URL+at), chromedp.WaitReady(`button[name="take"][value="yes"]`))
		wants(t, pupil, "Proposes the driver, aim 12 yd left of the middle.")
		proposes(t, coach, at, map[string]string{"side": "30"})
		do(t, pupil, Press(`button[name="take"][value="yes"]`), chromedp.WaitReady(`.notice[role="alert"]`))
		wants(t, pupil, "Your answer is not recorded", "Proposes the driver, aim 30 yd left of the middle.")
		do(t, pupil, Press(`button[name="take"][value=""]`), chromedp.WaitReady(`main:not(:has(button[name="take"][value=""]))`))
		wants(t, pupil, "Declined: it is not in your plan.")

		do(t, coach, chromedp.Navigate(app.URL+at), chromedp.WaitReady(`button[name="remove"]`))
		wants(t, coach, "Declined.")
		do(t, coach, Press(`button[name="remove"]`), chromedp.WaitReady(".undo-bar"), Press(".undo-bar button"), chromedp.WaitReady(`button[name="remove"]`))
		wants(t, coach, "Proposes the driver, aim 30 yd left of the middle.", "Declined.")
	}
}
