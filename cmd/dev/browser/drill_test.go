package browser

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
)

// joins makes an account and returns the address of its drills.
func joins(t *testing.T, ctx context.Context, name string) string {
	t.Helper()
	do(t, ctx, chromedp.Navigate(app.URL+"/join"), chromedp.WaitReady("#name"),
		chromedp.SendKeys("#name", name), chromedp.SendKeys("#email", name+"@example.org"), chromedp.SendKeys("#password", "a long password"),
		Press("main form button"), chromedp.WaitReady("#target"), Press("main form button.main-button"), chromedp.WaitReady("a.button.main-button"))
	plan := evaluates(t, ctx, `[...document.querySelectorAll("a")].find((a) => /^\/players\/\d+\/lessons$/.test(a.getAttribute("href"))).getAttribute("href")`)
	return strings.TrimSuffix(plan, "lessons") + "drills/"
}

// holds waits until a script is true, also where pages run none of their own.
func holds(t *testing.T, ctx context.Context, what, script string) {
	t.Helper()
	for range 600 {
		if got, err := chromedp.Run(ctx, chromedp.Evaluate[bool](script)); err == nil && got {
			return
		}
		time.Sleep(50 * time.Millisecond)
	}
	t.Fatalf("%s: it does not come to %s", what, script)
}

// presses presses keys of a drill one after the other, after those before, and waits
// for each to count.
func presses(t *testing.T, ctx context.Context, before, letters string) {
	t.Helper()
	for i, letter := range letters {
		do(t, ctx, Press(fmt.Sprintf(`.tally-keys button[value="%c"]`, letter)))
		holds(t, ctx, "the try counts", fmt.Sprintf(`document.querySelector("[name=tries]")?.value === %q`, before+letters[:i+1]))
	}
}

// A session of putts at the practice green on a phone, with script and without: the
// keys are big, the tries stand in order, the last is taken back, and saving tells the
// result.
func TestASessionAtTheGreen(t *testing.T) {
	for _, script := range []bool{true, false} {
		name := map[bool]string{true: "lea", false: "leo"}[script]
		ctx := tab(t, 360, script)
		drills := joins(t, ctx, name)
		do(t, ctx, Screen(360, 740, false), chromedp.Navigate(app.URL+drills+"start-line"), chromedp.WaitReady(".tally-keys"))
		small := evaluates(t, ctx, `[...document.querySelectorAll(".made-key, .left-key, .right-key")].filter((key) => key.getBoundingClientRect().height < 88 || key.getBoundingClientRect().bottom > 740).map((key) => key.textContent + key.getBoundingClientRect().bottom).join()`)
		if small != "" {
			t.Errorf("script %t: keys are under 88 px or off the screen: %s", script, small)
		}
		presses(t, ctx, "", "mmlrsgm")
		do(t, ctx, Press(`.tally-keys button[value="undo"]`))
		holds(t, ctx, "the last try is taken back", `document.querySelector("[name=tries]").value === "mmlrsg"`)
		if got := read(t, ctx, ".tally-so"); got != "2 made, 1 left, 1 right, 1 short, 1 long" {
			t.Errorf("script %t: so far %q", script, got)
		}
		if got := read(t, ctx, ".try-row"); !strings.HasPrefix(got, "mademadeleftrightshortlongto play") {
			t.Errorf("script %t: in order %q", script, got)
		}
		presses(t, ctx, "mmlrsg", "mmmmm")
		do(t, ctx, Press(`.session-form .main-button`), chromedp.WaitReady("#result"))
		if got := read(t, ctx, "main"); !strings.Contains(got, "The session is saved.") || !strings.Contains(got, "7 of 11 holed.") {
			t.Errorf("script %t: %.400q", script, got)
		}
		if left := evaluates(t, ctx, `document.querySelector("[name=tries]").value`); left != "" {
			t.Errorf("script %t: after saving the form holds %q", script, left)
		}

		do(t, ctx, chromedp.Navigate(app.URL+drills+"wedge-ladder"), chromedp.WaitReady(".count-row"), chromedp.SetValue("#each", "9"), chromedp.SendKeys("#count-1", "4"))
		do(t, ctx, Press(`button[value="more-0"]`))
		holds(t, ctx, "the count goes up", `document.querySelector("#count-0").value === "1" && document.querySelector("#count-1").value === "4"`)
		do(t, ctx, Press(`button[value="less-1"]`))
		holds(t, ctx, "the count goes down", `document.querySelector("#count-1").value === "3"`)
		do(t, ctx, chromedp.SendKeys("#count-2", "0"), Press(`.session-form .main-button`), chromedp.WaitReady("#result"))
		if got := read(t, ctx, ".result-lede"); !strings.Contains(got, "4 of 27 counted") {
			t.Errorf("script %t: %q", script, got)
		}
	}
}

// A session without a connection: the tries stay on the phone, also when the page is
// opened again from what is kept; what is saved waits, is sent once the connection is
// back, and is stored once.
func TestASessionWithoutAConnection(t *testing.T) {
	line, err := NewLine(app.URL)
	if err != nil {
		t.Fatal(err)
	}
	defer line.Close()
	profile := t.TempDir()
	ctx, closeBrowser := phone(t, profile)
	var drill string
	through(t, line, func() { drill = joins(t, ctx, "mia") + "start-line" })
	do(t, ctx, chromedp.Navigate(line.URL+drill), chromedp.WaitReady(".tally-keys"))
	waitFor(t, ctx, "the page is kept", `caches.keys().then(async (names) => { for (const n of names) if (n.startsWith("holes ") && (await (await caches.open(n)).keys()).length === 1) return true; return false; })`)
	line.Gone(true)
	presses(t, ctx, "", "mml")
	closeBrowser()

	ctx, closeBrowser = phone(t, profile)
	defer closeBrowser()
	do(t, ctx, chromedp.Navigate(line.URL+"/rounds"), chromedp.WaitReady(".kept-rounds a"))
	if got := read(t, ctx, ".kept-rounds"); got != "Write down Start line, 4 ft" {
		t.Errorf("the page without a connection offers %q", got)
	}
	do(t, ctx, Press(".kept-rounds a"), chromedp.WaitReady(".tally-keys"))
	waitFor(t, ctx, "the tries are back", `document.querySelector("[name=tries]").value === "mml"`)
	presses(t, ctx, "mml", "r")
	do(t, ctx, Press(`.session-form .main-button`))
	waitFor(t, ctx, "the session waits", `Object.keys(localStorage).filter((key) => key.startsWith("wait ")).length === 1`)
	if got := read(t, ctx, ".session-state"); !strings.Contains(got, "kept on this phone") {
		t.Errorf("the page says %q", got)
	}
	presses(t, ctx, "", "rr") // the next session begins at once
	do(t, ctx, Press(`.session-form .main-button`))
	waitFor(t, ctx, "two sessions wait", `Object.keys(localStorage).filter((key) => key.startsWith("wait ")).length === 2`)
	if got := read(t, ctx, ".waiting-bar"); !strings.Contains(got, "Two sessions of practice are waiting to be sent") {
		t.Errorf("the bar says %q", got)
	}

	line.Gone(false)
	do(t, ctx, chromedp.Evaluate[chromedp.Void](`void dispatchEvent(new Event("online"))`))
	waitFor(t, ctx, "nothing waits", `Object.keys(localStorage).filter((key) => key.startsWith("wait ")).length === 0`)
	do(t, ctx, chromedp.Navigate(line.URL+drill), chromedp.WaitReady(".session-table"))
	waitFor(t, ctx, "both are stored once", `document.querySelectorAll(".session-table tbody tr").length === 2`)
	if got := read(t, ctx, ".session-table tbody"); !strings.Contains(got, "0 of 2") || !strings.Contains(got, "2 of 4") {
		t.Errorf("stored: %q", got)
	}
}

// A session of practice that was saved after the sign-in had ended waits, and is sent
// by the same player's next sign-in; two windows of a drill show the same tries.
func TestASessionOutlivesTheSignIn(t *testing.T) {
	ctx := tab(t, 360, true)
	drill := joins(t, ctx, "nia") + "start-line"
	do(t, ctx, chromedp.Navigate(app.URL+drill), chromedp.WaitReady(".tally-keys"))
	presses(t, ctx, "", "mm")
	second, cancel := chromedp.NewContext(ctx)
	defer cancel()
	do(t, second, chromedp.Navigate(app.URL+drill), chromedp.WaitReady(".tally-keys"))
	waitFor(t, second, "the second window has the tries", `document.querySelector("[name=tries]").value === "mm"`)
	do(t, second, Press(`.tally-keys button[value="l"]`))
	waitFor(t, ctx, "the first window follows", `document.querySelector("[name=tries]").value === "mml"`)

	do(t, ctx, chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Call(ctx, network.ClearBrowserCookies, cdp.Empty{})
		return err
	}), Press(`.session-form .main-button`))
	waitFor(t, ctx, "the session waits", `/You are signed out/.test(document.querySelector(".session-state").textContent)`)
	waitFor(t, second, "the second window begins anew", `document.querySelector("[name=tries]").value === ""`)
	do(t, ctx, chromedp.Navigate(app.URL+"/"), chromedp.WaitReady("section.sign-in"),
		chromedp.SendKeys("#email", "nia@example.org"), chromedp.SendKeys("#password", "a long password"), Press("section.sign-in button"), chromedp.WaitReady(".signed-in"))
	waitFor(t, ctx, "the session is sent", `Object.keys(localStorage).filter((key) => key.startsWith("wait ")).length === 0`)
	do(t, ctx, chromedp.Navigate(app.URL+drill), chromedp.WaitReady(".session-table"))
	if got := read(t, ctx, ".session-table tbody"); !strings.Contains(got, "2 of 3") {
		t.Errorf("stored: %q", got)
	}
}
