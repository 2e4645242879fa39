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

// coachOverALine signs the coach in on a phone, at the end of a line.
func coachOverALine(t *testing.T) (context.Context, *Line) {
	t.Helper()
	line, err := NewLine(app.URL)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(line.Close)
	ctx := tab(t, 360, true)
	if err := SignInAs(ctx, app, Coach); err != nil {
		t.Fatal(err)
	}
	return ctx, line
}

// typed puts texts into fields by their ids, as a hand would.
func typed(t *testing.T, ctx context.Context, idsAndTexts ...string) {
	t.Helper()
	for i := 0; i+1 < len(idsAndTexts); i += 2 {
		evaluates(t, ctx, fmt.Sprintf(`(() => { const f = document.getElementById(%q); for (let d = f.closest("details"); d; d = d.parentElement.closest("details")) d.open = true; f.value = %q; f.dispatchEvent(new Event("input", { bubbles: true })); return ""; })()`, idsAndTexts[i], idsAndTexts[i+1]))
	}
}

// countOf is how often a text stands in the main part of a page.
func countOf(t *testing.T, ctx context.Context, path, text string) string {
	t.Helper()
	do(t, ctx, chromedp.Navigate(app.URL+path), chromedp.WaitReady("main"))
	return evaluates(t, ctx, fmt.Sprintf(`String(document.querySelector("main").innerHTML.split(%q).length - 1)`, text))
}

// Two taps on a button save once, however slow the network is.
func TestTwoTapsSaveOnce(t *testing.T) {
	ctx, line := coachOverALine(t)
	line.Late(300 * time.Millisecond)
	soon := time.Now().AddDate(0, 0, 20).Format(time.DateOnly)
	for _, c := range []struct {
		name, path, form string
		fields           []string
		then, seen, at   string
	}{
		{"a lesson", "/players/2/lessons", `form[action="/players/2/lessons"]`, []string{"next_day", soon, "next_aim", "Twice the gate"}, "#next-lesson:target", "Twice the gate</p>", "/players/2/lessons"},
		{"a note", "/players/2/lessons", `form:has(#lesson)`, []string{"lesson", "Twice the swing."}, ".note-entry:target", "<p> Twice the swing.", "/players/2/lessons"},
		{"practice", "/players/2/lessons", `form[action="/players/2/assignments"]`, []string{"what", "Twice the putts", "due", soon}, "#practice:target", "Twice the putts</h3>", "/players/2/lessons"},
		{"a phrase", "/coaching/phrases", `form:has(#phrase)`, []string{"phrase", "Twice the words."}, ".notice", "<p> Twice the words.", "/coaching/phrases"},
	} {
		do(t, ctx, chromedp.Navigate(line.URL+c.path), chromedp.WaitReady(c.form))
		scripted(t, ctx)
		typed(t, ctx, c.fields...)
		evaluates(t, ctx, fmt.Sprintf(`(() => { const b = document.querySelector(%q).querySelector("button:not([name=phrase])"); b.click(); setTimeout(() => b.click(), 120); return ""; })()`, c.form))
		time.Sleep(1500 * time.Millisecond)
		if got := countOf(t, ctx, c.at, c.seen); got != "1" {
			t.Errorf("%s is there %s times %s", c.name, got, evaluates(t, ctx, `(document.querySelector("main").innerHTML.match(/.{60}Twice .{40}/g) ?? []).join("||")`))
		}
	}
	do(t, ctx, chromedp.Navigate(app.URL+"/players/2/walked"), chromedp.WaitReady("main"))
	before := evaluates(t, ctx, `String(document.querySelectorAll(".news-lines a").length)`)
	do(t, ctx, chromedp.Navigate(line.URL+"/players/2/walked"), chromedp.WaitReady("main"))
	evaluates(t, ctx, `(() => { const b = document.querySelector('section[aria-labelledby="begin"] button'); b.click(); setTimeout(() => b.click(), 120); return ""; })()`)
	time.Sleep(1500 * time.Millisecond)
	do(t, ctx, chromedp.Navigate(app.URL+"/players/2/walked"), chromedp.WaitReady("main"))
	if after := evaluates(t, ctx, `String(document.querySelectorAll(".news-lines a").length)`); after != evaluates(t, ctx, "String("+before+" + 1)") {
		t.Errorf("from %s rounds to %s", before, after)
	}
}

// forms are those that a coach fills in, with the ids and texts of their fields.
func coachForms(walked string) []struct{ path, form, fields string } {
	soon := time.Now().AddDate(0, 0, 21).Format(time.DateOnly)
	return []struct{ path, form, fields string }{
		{"/players/2/lessons", `form[action="/players/2/lessons"]`, "next_day=" + soon + "|next_place=The far green|next_agreed=Forty putts."},
		{"/players/2/lessons", `form[action="/players/2/assignments"]`, "what=Putts in the dark|due=" + soon + "|amount=20 balls"},
		{"/coaching/phrases", `form:has(#phrase)`, "phrase=Breathe out first."},
		{walked, `form[data-draft]`, "line-4=f150 g20 2|line-7==4"},
	}
}

// fieldsNow is what stands in fields, written as coachForms does.
func fieldsNow(t *testing.T, ctx context.Context, fields string) string {
	t.Helper()
	return evaluates(t, ctx, fmt.Sprintf(`%q.split("|").map((f) => f.split("=")[0]).map((id) => id + "=" + document.getElementById(id).value).join("|")`, fields))
}

// typedAll types what coachForms says.
func typedAll(t *testing.T, ctx context.Context, fields string) {
	t.Helper()
	for _, field := range strings.Split(fields, "|") {
		id, text, _ := strings.Cut(field, "=")
		typed(t, ctx, id, text)
	}
}

// What a coach typed is there again after a save that did not arrive, and after signing in
// again where the session had ended; it is gone once it is saved.
func TestACoachsFormsSurvive(t *testing.T) {
	ctx, line := coachOverALine(t)
	walked := beginsWalked(t, ctx, line.URL)
	for _, c := range coachForms(walked) {
		press := fmt.Sprintf(`(() => { document.querySelector(%q).querySelector("button:not([name=phrase])").click(); return ""; })()`, c.form)
		do(t, ctx, chromedp.Navigate(line.URL+c.path), chromedp.WaitReady(c.form))
		scripted(t, ctx)
		typedAll(t, ctx, c.fields)
		line.Gone(true)
		evaluates(t, ctx, press)
		time.Sleep(time.Second)
		line.Gone(false)
		do(t, ctx, chromedp.Navigate(line.URL+c.path), chromedp.WaitReady(c.form))
		scripted(t, ctx)
		if got := fieldsNow(t, ctx, c.fields); got != c.fields {
			t.Errorf("%s without a connection: %q came back", c.path, got)
		}
		wants(t, ctx, "What you had written is back. It is not saved yet.")
		endSession(t, ctx)
		evaluates(t, ctx, press)
		waitFor(t, ctx, "the page says why", `document.body.textContent.includes("You were signed out, so nothing was saved.")`)
		do(t, ctx, chromedp.SendKeys("#email", Coach), chromedp.SendKeys("#password", app.Password), Press("section.sign-in button"), chromedp.WaitReady(c.form))
		scripted(t, ctx)
		if got := fieldsNow(t, ctx, c.fields); got != c.fields {
			t.Errorf("%s after the session: %q came back", c.path, got)
		}
		evaluates(t, ctx, press)
		waitFor(t, ctx, "it is saved", `new URLSearchParams(location.search).has("saved")`)
		do(t, ctx, chromedp.Navigate(line.URL+c.path), chromedp.WaitReady(c.form))
		scripted(t, ctx)
		if has(t, ctx, "What you had written is back.") {
			t.Errorf("%s: what was saved comes back as if it was not: %s", c.path, fieldsNow(t, ctx, c.fields))
		}
	}
}

// scripted waits until the scripts of a page have run, which come after its forms.
func scripted(t *testing.T, ctx context.Context) {
	t.Helper()
	waitFor(t, ctx, "the scripts have run", `document.readyState === "complete"`)
}

// endSession takes the session's cookie away.
func endSession(t *testing.T, ctx context.Context) {
	t.Helper()
	do(t, ctx, chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Call(ctx, network.ClearBrowserCookies, cdp.Empty{})
		return err
	}))
}

// A form that the server sent back leaves no old draft behind once it is saved.
func TestNoDraftOfARefusedForm(t *testing.T) {
	ctx, line := coachOverALine(t)
	do(t, ctx, chromedp.Navigate(line.URL+"/players/2/lessons"), chromedp.WaitReady("#lesson"))
	scripted(t, ctx)
	typed(t, ctx, "lesson", "First words.", "lesson_day", "2999-01-01")
	press := `(() => { document.querySelector("form:has(#lesson) button:not([name=phrase])").click(); return ""; })()`
	evaluates(t, ctx, press)
	waitFor(t, ctx, "the day is refused", `document.querySelector("#lesson_day[aria-invalid]")`)
	scripted(t, ctx)
	typed(t, ctx, "lesson", "Other words.", "lesson_day", time.Now().AddDate(0, 0, -1).Format(time.DateOnly))
	evaluates(t, ctx, press)
	waitFor(t, ctx, "it is saved", `new URLSearchParams(location.search).has("saved")`)
	do(t, ctx, chromedp.Navigate(line.URL+"/players/2/lessons"), chromedp.WaitReady("#lesson"))
	if got := evaluates(t, ctx, `document.querySelector("#lesson").value`); got != "" {
		t.Errorf("%q came back", got)
	}
}
