package browser

import (
	"context"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// chooses gives a field of a form its value.
func chooses(t *testing.T, ctx context.Context, values map[string]string) {
	t.Helper()
	for id, value := range values {
		do(t, ctx, chromedp.SetValue("#"+id, value))
	}
}

// The pages of preparing a round have no barriers. Those that are worked out for a while
// are looked at when they are done.
func TestNoBarriersInPlay(t *testing.T) {
	t.Parallel()
	ctx := tab(t, 1280, true)
	if err := SignIn(ctx, app); err != nil {
		t.Fatal(err)
	}
	do(t, ctx, chromedp.Navigate(app.URL+"/players/2/play/1"))
	waitFor(t, ctx, "the plan offers a round", `document.querySelector("#compare")`)
	round := evaluates(t, ctx, `document.querySelector("[aria-labelledby=compare] .end-links a").getAttribute("href")`)
	for _, path := range []string{"/players/2/play/1", "/players/2/play/1/chance"} {
		do(t, ctx, chromedp.Navigate(app.URL+path))
		waitFor(t, ctx, path+" is worked out", `document.querySelector(".carry-card, .if-table") && !document.body.textContent.includes("updates by itself")`)
	}
	visit(t, ctx, "/courses/1/pictures", "/courses/1/holes/6/picture", "/courses/2/holes/18/picture", "/players/2/play", "/players/2/play/1", "/players/2/play/1/card",
		"/players/2/play/1/holes/6", "/players/2/play/1/holes/3?flag=back-left", "/players/2/play/1/chance", round, "/players/2/bag")
}

// A hole is drawn on the phone from eleven answers, saved, and planned, with and
// without script; the flag is a tap.
func TestAHoleIsDrawnAndPlanned(t *testing.T) {
	for hole, script := range map[string]bool{"1": true, "2": false} {
		ctx := tab(t, 360, script)
		if err := SignIn(ctx, app); err != nil {
			t.Fatal(err)
		}
		do(t, ctx, chromedp.Navigate(app.URL+"/courses/2/holes/"+hole+"/picture"))
		fits(t, ctx, "an empty drawing", 320)
		do(t, ctx, Press(`button[value="draw"]`), chromedp.WaitReady(".fault-summary"))
		if got := evaluates(t, ctx, `document.activeElement.className`); script && !strings.Contains(got, "fault-summary") {
			t.Errorf("the page begins at %q", got)
		}
		chooses(t, ctx, map[string]string{"bend": "little-right", "fairway": "32", "left": "out", "left_far": "18", "right": "trees", "right_far": "30", "width": "26", "depth": "29", "green_left": "bunker", "short": "water"})
		do(t, ctx, Press(`button[value="draw"]`), chromedp.WaitReady(".hole-map .edge-out"))
		if got := read(t, ctx, `.notice[role="status"]`); got != "Drawn, and not saved yet." {
			t.Errorf("the page says %q", got)
		}
		if got := read(t, ctx, ".row-echo tbody"); !strings.Contains(got, "from 18 yd left outward") || !strings.Contains(got, "right across") {
			t.Errorf("the rows read %q", got)
		}
		fits(t, ctx, "a drawing", 320)
		do(t, ctx, Press(`button[value="save"]`), chromedp.WaitReady(`a[href*="/play/2/holes/"]`)) // only a saved drawing leads there
		if got := read(t, ctx, `.notice[role="status"]`); got != "The drawing is saved." {
			t.Errorf("the page says %q", got)
		}
		do(t, ctx, Press(`a[href*="/play/2/holes/"]`), chromedp.WaitReady(".cost-curve"))
		fits(t, ctx, "the plan of a hole", 320)
		do(t, ctx, Press(`a[href$="flag=back-left#approach"]`), chromedp.WaitReady(`a[href$="flag=back-left#approach"][aria-current]`))
		if got := read(t, ctx, "#approach"); got != "At the green" {
			t.Errorf("the page is at %q", got)
		}
	}
}

// The bag and balls from the range are entered without script as with it.
func TestBallsFromTheRange(t *testing.T) {
	for _, script := range []bool{true, false} {
		ctx := tab(t, 360, script)
		if err := SignIn(ctx, app); err != nil {
			t.Fatal(err)
		}
		do(t, ctx, chromedp.Navigate(app.URL+"/players/2/bag"))
		fits(t, ctx, "the bag", 320)
		chooses(t, ctx, map[string]string{"range_club": "hybrid", "balls": strings.TrimSpace(strings.Repeat("6 right, 4 short\n2 left, 3 long\n", 5))})
		do(t, ctx, Press(`form[action$="/bag/range"] button`), chromedp.WaitReady(`form[action$="/remove"]`))
		if got := read(t, ctx, `.notice[role="status"]`); got != "The balls are saved." {
			t.Errorf("the page says %q", got)
		}
		do(t, ctx, Press(`form[action$="/remove"] button`), chromedp.WaitReady(".undo-bar"))
		if got := read(t, ctx, ".undo-bar"); !strings.Contains(got, "hybrid") {
			t.Errorf("removed %q", got)
		}
	}
}

// The card to carry opens without a connection once it was opened, and is gone from
// the phone after signing out.
func TestTheCardIsCarriedWithoutAConnection(t *testing.T) {
	line, err := NewLine(app.URL)
	if err != nil {
		t.Fatal(err)
	}
	defer line.Close()
	ctx, closeBrowser := phone(t, t.TempDir())
	defer closeBrowser()
	do(t, ctx, chromedp.Navigate(line.URL+"/"), chromedp.SendKeys("#email", Player), chromedp.SendKeys("#password", app.Password), Press("section.sign-in button"), chromedp.WaitReady(".signed-in"))
	const card = "/players/2/play/1/card"
	do(t, ctx, chromedp.Navigate(line.URL+card))
	waitFor(t, ctx, "the card is whole", `document.querySelector(".carry-card[data-needed]")`)
	waitFor(t, ctx, "the card is kept", `!document.querySelector(".kept-words")?.hidden`)
	fits(t, ctx, "the card", 320)
	line.Gone(true)
	do(t, ctx, chromedp.Navigate(line.URL+card))
	if got := read(t, ctx, ".carry-card"); !strings.Contains(got, "Harrow Fen") || !strings.Contains(got, "driver") {
		t.Errorf("without a connection the card says %q", got)
	}
	do(t, ctx, chromedp.Navigate(line.URL+"/players/2/play/1"), chromedp.WaitReady(".kept-rounds a"))
	if got := read(t, ctx, ".kept-rounds"); !strings.Contains(got, "Card to carry") {
		t.Errorf("the page without a connection offers %q", got)
	}
	line.Gone(false)
	do(t, ctx, chromedp.Navigate(line.URL+"/account"), Press("form.sign-out button"), chromedp.WaitReady("section.sign-in"))
	waitFor(t, ctx, "the card is gone", `caches.keys().then((names) => !names.some((name) => name.startsWith("card ")))`)
	line.Gone(true)
	do(t, ctx, chromedp.Navigate(line.URL+card))
	if got := evaluates(t, ctx, `String(document.querySelector(".carry-card") !== null)`); got != "false" {
		t.Error("the card opens after signing out")
	}
}
