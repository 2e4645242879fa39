package browser

import (
	"context"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// beginsWalked begins a round that the coach walks with the demo's pupil, and returns the
// address of its page.
func beginsWalked(t *testing.T, ctx context.Context, at string) string {
	t.Helper()
	do(t, ctx, chromedp.Navigate(at+"/players/2/walked"), Press(`section[aria-labelledby="begin"] button`), chromedp.WaitReady("#line"))
	path := pathOf(t, ctx)
	return path[:strings.LastIndex(path, "/holes/")]
}

// A coach on the course types holes with the keys while there is no connection; they are
// sent when it is back, and the round can then go to the pupil.
func TestAWalkedRoundWithoutAConnection(t *testing.T) {
	line, err := NewLine(app.URL)
	if err != nil {
		t.Fatal(err)
	}
	defer line.Close()
	ctx := tab(t, 360, true)
	if err := SignInAs(ctx, app, Coach); err != nil {
		t.Fatal(err)
	}
	round := beginsWalked(t, ctx, line.URL)
	if got := evaluates(t, ctx, `document.querySelector('label[for="line"]').textContent`); got != "Robin Calder’s shots after the tee" {
		t.Errorf("the line is named %q", got)
	}
	waitFor(t, ctx, "the round is kept", `caches.keys().then(async (names) => { for (const n of names) if (n.startsWith("holes ") && (await (await caches.open(n)).keys()).filter((k) => k.url.includes("/walked/")).length >= 9) return true; return false; })`)
	line.Gone(true)
	for _, key := range []string{"f", "1", "5", "0", "g", "2", "0"} {
		do(t, ctx, Press(`.key-pad button[value="`+key+`"]`))
	}
	do(t, ctx, Press(`.key-pad button[value="next"]`), Press(`.key-pad button[value="2"]`), Press(`.key-pad button[value="h"]`), Press(`.key-pad button[value="save"]`), chromedp.WaitReady(`//h1[text()="Hole 2"]`))
	typeHole(t, ctx, 2, "=5")
	waitFor(t, ctx, "the page says what waits", `document.querySelector(".saved-state").textContent === "Offline, kept on this phone: two holes are waiting to be sent."`)
	line.Gone(false)
	do(t, ctx, chromedp.Evaluate[chromedp.Void](`void dispatchEvent(new Event("online"))`))
	waitFor(t, ctx, "both are sent", `Object.keys(localStorage).filter((key) => key.startsWith("wait ")).length === 0`)
	do(t, ctx, chromedp.Navigate(app.URL+round), chromedp.WaitReady("#line-1"))
	if got := evaluates(t, ctx, `document.querySelector("#line-1").value + "|" + document.querySelector("#line-2").value`); got != "f150 g20 g2h|=5" {
		t.Errorf("stored are %q", got)
	}
	wants(t, ctx, "Type hole 3 with the keys", "Send it to Robin Calder")
	do(t, ctx, chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
		return err
	}))
	if got := evaluates(t, ctx, `[...document.querySelectorAll(".walked-hole")].filter((hole) => hole.offsetHeight > 0).length + " of " + document.querySelectorAll(".walked-hole").length`); got != "2 of 18" {
		t.Errorf("printed are %s holes", got)
	}
}
