package browser

import (
	"context"
	"fmt"
	"io"
	"net/http"
	"net/http/cookiejar"
	"net/url"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"strokeledger/web/form"
)

// waitFor waits until a script is true.
func waitFor(t *testing.T, ctx context.Context, what, script string) {
	t.Helper()
	for range 600 {
		got, err := chromedp.Run(ctx, chromedp.Evaluate[bool](`(async () => Boolean(await (`+script+`)))()`, chromedp.EvalAwaitPromise))
		if err == nil && got {
			return
		}
		time.Sleep(50 * time.Millisecond)
	}
	t.Fatalf("%s: it does not come to %s", what, script)
}

// elsewhere is somebody's other device: a client that is signed in as well.
type elsewhere struct {
	t      *testing.T
	client http.Client
}

func otherDevice(t *testing.T, name string) elsewhere {
	t.Helper()
	jar, err := cookiejar.New(nil)
	if err != nil {
		t.Fatal(err)
	}
	e := elsewhere{t, http.Client{Jar: jar}}
	e.post("/sign-in", "email", name+"@example.org", "password", "a long password")
	return e
}

func (e elsewhere) get(path string) string {
	e.t.Helper()
	got, err := e.client.Get(app.URL + path)
	if err != nil {
		e.t.Fatal(err)
	}
	defer got.Body.Close()
	body, err := io.ReadAll(got.Body)
	if err != nil {
		e.t.Fatal(err)
	}
	return string(body)
}

func (e elsewhere) post(path string, fields ...string) {
	e.t.Helper()
	values := url.Values{}
	for i := 0; i+1 < len(fields); i += 2 {
		values.Set(fields[i], fields[i+1])
	}
	got, err := e.client.PostForm(app.URL+path, values)
	if err != nil {
		e.t.Fatal(err)
	}
	got.Body.Close()
	if got.StatusCode != http.StatusOK {
		e.t.Fatalf("%s: %s", path, got.Status)
	}
}

var storedLine = regexp.MustCompile(`data-saved="([^"]*)"`)

func (e elsewhere) line(hole string) string {
	e.t.Helper()
	found := storedLine.FindStringSubmatch(e.get(hole))
	if found == nil {
		e.t.Fatalf("%s shows no line", hole)
	}
	return found[1]
}

// A whole round without a connection, the browser closed and opened again in
// between: afterwards all holes are stored, and the one that was changed
// elsewhere meanwhile is shown in both versions.
func TestARoundWithoutAConnection(t *testing.T) {
	line, err := NewLine(app.URL)
	if err != nil {
		t.Fatal(err)
	}
	defer line.Close()
	profile, r := t.TempDir(), card84(t)
	ctx, closeBrowser := phone(t, profile)
	var round string
	through(t, line, func() { newcomer(t, ctx, "ida", r) })
	at := evaluates(t, ctx, `location.pathname`)
	round = at[:strings.LastIndex(at, "/")+1]
	waitFor(t, ctx, "the round is kept", `caches.keys().then(async (names) => { for (const n of names) if (n.startsWith("holes ") && (await (await caches.open(n)).keys()).length === 18) return true; return false; })`)

	line.Gone(true)
	enter := func(from, to int) {
		for i := from; i < to; i++ {
			h := r.Holes[i]
			written := form.WriteLine(h, r.Card()[i], form.StandardUnits)
			typeHole(t, ctx, h.Number, written)
		}
	}
	enter(0, 9)
	do(t, ctx, chromedp.WaitReady(`//h1[text()="Hole 10"]`))
	waitFor(t, ctx, "the page says what waits", `document.querySelector(".saved-state").textContent === "Offline, kept on this phone: nine holes are waiting to be sent."`)
	closeBrowser()

	other := otherDevice(t, "ida")
	other.post(round+"5", "line", "=9", "version", "0", "press", "save")
	ctx, closeBrowser = phone(t, profile)
	defer closeBrowser()
	do(t, ctx, chromedp.Navigate(line.URL+"/rounds"), chromedp.WaitReady(".kept-rounds a"), Press(".kept-rounds a"))
	enter(9, 18)
	waitFor(t, ctx, "the last hole is kept", `Object.keys(localStorage).filter((key) => key.startsWith("wait ")).length === 18`)

	line.Gone(false)
	do(t, ctx, chromedp.Evaluate[chromedp.Void](`void dispatchEvent(new Event("online"))`))
	waitFor(t, ctx, "all but one are sent", `Object.keys(localStorage).filter((key) => key.startsWith("wait ")).length === 1`)
	do(t, ctx, chromedp.Navigate(line.URL+"/rounds"), chromedp.WaitReady(".waiting-bar a"))
	if got := read(t, ctx, ".waiting-bar"); !strings.Contains(got, "One hole needs your answer") || !strings.Contains(got, "Hole 5, Course of ida: also saved in another window") {
		t.Errorf("the list says %q", got)
	}
	do(t, ctx, Press(".waiting-bar a"), chromedp.WaitReady(".conflict-notice"))
	want := form.WriteLine(r.Holes[4], r.Card()[4], form.StandardUnits)
	if got := read(t, ctx, ".version-table"); !strings.Contains(got, "=9") || !strings.Contains(got, want) {
		t.Errorf("both versions: %q", got)
	}
	do(t, ctx, Press(`button[value="mine"]`), chromedp.WaitReady("table.statement-table"))
	waitFor(t, ctx, "nothing waits", `Object.keys(localStorage).filter((key) => key.startsWith("wait ")).length === 0`)
	for i, h := range r.Holes {
		if got, want := other.line(fmt.Sprintf("%s%d", round, h.Number)), form.WriteLine(h, r.Card()[i], form.StandardUnits); got != want {
			t.Errorf("hole %d is stored as %q, want %q", h.Number, got, want)
		}
	}
}

// phone opens a browser on a profile that stays.
func phone(t *testing.T, profile string) (context.Context, context.CancelFunc) {
	t.Helper()
	if err := sourceTouched(); err != nil {
		t.Fatal(err)
	}
	ctx, cancel, err := TabIn(context.Background(), profile)
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancelTime := context.WithTimeout(ctx, 4*time.Minute)
	do(t, ctx, Screen(360, 740, false))
	return ctx, func() {
		chromedp.Cancel(ctx) // the browser writes its profile before it goes
		cancelTime()
		cancel()
	}
}

// A session that ended keeps what was typed, and signing in sends it; another
// player who signs in on the same device never sees it; signing out asks before
// it loses anything.
func TestWhatWaitsBelongsToItsPlayer(t *testing.T) {
	ctx, r := tab(t, 360, true), card84(t)
	newcomer(t, ctx, "jon", r)
	hole := evaluates(t, ctx, `location.pathname`)
	other := otherDevice(t, "jon")
	endSession := func() {
		t.Helper()
		found := regexp.MustCompile(`name="device" value="([0-9a-f]+)"`).FindAllStringSubmatch(other.get("/account"), -1)
		if len(found) == 0 {
			t.Fatal("no other device to sign out")
		}
		for _, f := range found {
			other.post("/account/devices", "device", f[1])
		}
	}
	endSession()
	do(t, ctx, chromedp.SendKeys(lineField, "r137 f52 g36 4\r"))
	waitFor(t, ctx, "the hole waits", `document.querySelector(".saved-state a") !== null`)
	if got := read(t, ctx, ".saved-state"); !strings.Contains(got, "You are signed out") || !strings.Contains(got, "One hole is waiting") {
		t.Errorf("the page says %q", got)
	}

	do(t, ctx, chromedp.Navigate(app.URL+"/join"), chromedp.SendKeys("#name", "ken"), chromedp.SendKeys("#email", "ken@example.org"),
		chromedp.SendKeys("#password", "a long password"), Press("main form button"), chromedp.WaitReady(".signed-in"),
		chromedp.Navigate(app.URL+"/rounds"), chromedp.WaitReady(".signed-in"))
	if got := evaluates(t, ctx, `document.querySelector(".waiting-bar").textContent + document.querySelector(".waiting-bar").hidden`); got != "true" {
		t.Errorf("another player reads %q", got)
	}
	waitFor(t, ctx, "no page of the first player is kept", `caches.keys().then((names) => names.every((n) => !n.startsWith("holes ")))`)
	do(t, ctx, chromedp.Navigate(app.URL+"/account"), Press("form.sign-out button"), chromedp.WaitReady("section.sign-in"))

	do(t, ctx, chromedp.SendKeys("#email", "jon@example.org"), chromedp.SendKeys("#password", "a long password"), Press("section.sign-in button"), chromedp.WaitReady(".signed-in"))
	waitFor(t, ctx, "the hole is sent", `Object.keys(localStorage).filter((key) => key.startsWith("wait ")).length === 0`)
	if got := other.line(hole); got != "r137 f52 g36 4" {
		t.Errorf("the hole is stored as %q", got)
	}
	do(t, ctx, chromedp.Navigate(app.URL+strings.Replace(hole, "/holes/1", "/holes/2", 1)), chromedp.SendKeys(lineField, "r169 r"))
	waitFor(t, ctx, "a draft is kept", `Object.keys(localStorage).some((key) => key.startsWith("draft "))`)
	do(t, ctx, chromedp.Navigate(app.URL+"/account"), Press("form.sign-out button"), chromedp.WaitReady("section.sign-in"))
	if left := evaluates(t, ctx, `Object.keys(localStorage).join()`); left != "" {
		t.Errorf("after signing out this is left: %s", left)
	}
}
