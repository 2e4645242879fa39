package browser

import (
	"cmp"
	"context"
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// pathOf is where a tab is, below the app.
func pathOf(t *testing.T, ctx context.Context) string {
	t.Helper()
	return evaluates(t, ctx, `location.pathname`)
}

// fill puts a text into a field.
func fill(selector, text string) chromedp.Action[chromedp.Void] {
	return chromedp.Steps(chromedp.WaitReady(selector), chromedp.SetValue(selector, text))
}

// has reports whether the page holds a text.
func has(t *testing.T, ctx context.Context, text string) bool {
	t.Helper()
	found, err := chromedp.Run(ctx, chromedp.Evaluate[string](`document.querySelector("main").textContent.replace(/\s+/g, " ")`))
	if err != nil {
		t.Fatal(err)
	}
	return strings.Contains(found, text)
}

func wants(t *testing.T, ctx context.Context, texts ...string) {
	t.Helper()
	for _, text := range texts {
		if !has(t, ctx, text) {
			t.Errorf("%s: no %q", pathOf(t, ctx), text)
		}
	}
}

// A pupil and a coach, each in a browser: invited, accepted and approved, reviewed,
// noted, answered, set to practise, marked as done, ended, and gone.
func TestPupilAndCoach(t *testing.T) {
	pupil, coach := tab(t, 360, true), tab(t, 1280, true)
	if err := SignIn(pupil, app); err != nil {
		t.Fatal(err)
	}
	if err := SignInAs(coach, app, Steward); err != nil { // no coach of anybody yet
		t.Fatal(err)
	}
	do(t, pupil, chromedp.Navigate(app.URL+"/coaching"), Press(`form[action="/coaching/invite"] button`), chromedp.WaitReady(".notice code"))
	link := evaluates(t, pupil, `document.querySelector(".notice code").textContent`)
	do(t, coach, chromedp.Navigate(link), Press(`form[action="/coaching/accept"] button`), chromedp.WaitReady(`section[aria-labelledby="coaches"]`))
	do(t, pupil, chromedp.Navigate(app.URL+"/coaching"), Press(`form[action="/coaching/confirm"] button`), chromedp.WaitReady(`main:not(:has(form[action="/coaching/confirm"]))`))

	do(t, coach, chromedp.Navigate(app.URL+"/coaching"), chromedp.WaitReady(".pupil-queue"))
	wants(t, coach, "wait", "Robin Calder")
	do(t, coach, Press(".pupil-list summary"), Press(`.open-links a[href$="/lessons"]`), chromedp.WaitReady(`section[aria-labelledby="rounds"] tbody a`))
	wants(t, coach, "Your first look.")
	do(t, coach, Press(`section[aria-labelledby="rounds"] tbody tr:nth-of-type(2) a`), chromedp.WaitReady("table.statement-table"))
	statement := pathOf(t, coach)

	evaluates(t, coach, `document.querySelector("#h2 details").open = true; ""`)
	do(t, coach, Press(`#h2 a[href*="on=2.1"]`), chromedp.WaitVisible("#write-2-body"), fill("#write-2-body", "Aim at the left half.\n- no driver here"),
		Press(`#write-2 form button`), chromedp.WaitReady("#h2:target .note-reply"))
	note := evaluates(t, coach, `document.querySelector("#h2 .note-reply a").hash.slice(1)`)
	wants(t, coach, "on hole 2, shot 1", "no driver here", "not read yet")

	do(t, pupil, chromedp.Navigate(app.URL+"/rounds"), Press(`.news-lines a[href$="/lessons"]`), chromedp.WaitReady(`section[aria-labelledby="lessons"]`))
	wants(t, pupil, "Aim at the left half.")
	do(t, pupil, Press("#"+note+" summary"), fill("#reply-"+note, "And with the wind behind?"), Press("#"+note+" form button"), chromedp.WaitReady("#"+note+":target .note-reply"))

	do(t, coach, chromedp.Navigate(app.URL+statement), chromedp.WaitReady("#"+note+" .note-reply"))
	wants(t, coach, "And with the wind behind?")
	do(t, coach, chromedp.Navigate(app.URL+strings.Split(statement, "/rounds/")[0]+"/lessons"), Press(`section[aria-labelledby="practice"] details:has(form[action$="/assignments"]) > summary`),
		fill("#what", "Tee shots at the left half"), fill("#amount", "20 balls"), fill("#pass_mark", "14 of 20"), fill("#due", "2030-01-02"), Press(`form[action$="/assignments"] button`), chromedp.WaitReady("#practice:target"))
	wants(t, coach, "Tee shots at the left half")

	do(t, pupil, chromedp.Navigate(app.URL+"/coaching"), Press(`section[aria-labelledby="own"] a`), chromedp.WaitReady(`section[aria-labelledby="practice"] article`))
	task := evaluates(t, pupil, `[...document.querySelectorAll("article")].find(n => n.textContent.includes("Tee shots at the left half")).id`)
	do(t, pupil, Press("#"+task+" summary"), fill("#result-"+task, "15 of 20"), Press(`label[for="passed-`+task+`"]`), Press("#"+task+` form[action$="/results"] button`), chromedp.WaitReady("#"+task+" table"),
		Press("#"+task+` form[action$="/done"] button`), chromedp.WaitReady(`details #`+task))
	do(t, coach, chromedp.Navigate(app.URL+strings.Split(statement, "/rounds/")[0]+"/lessons"), chromedp.WaitReady(`details #`+task))
	wants(t, coach, "15 of 20", "1 of 1 passed", "done")

	do(t, pupil, chromedp.Navigate(app.URL+"/coaching/looks"), chromedp.WaitReady("table"))
	wants(t, pupil, "Steward of Harrow Fen", "Statement of")
	do(t, pupil, chromedp.Navigate(app.URL+"/coaching"), Press(`form[action="/coaching/end"]:has(input[name="coach"][value="1"]) button`), chromedp.WaitReady(`button[name="sure"]`), Press(`button[name="sure"]`), chromedp.WaitReady(`main:not(:has(form[action="/coaching/end"] input[name="coach"][value="1"]))`))
	for _, path := range []string{statement, strings.Split(statement, "/rounds/")[0] + "/lessons", strings.Split(statement, "/rounds/")[0] + "/months"} {
		do(t, coach, chromedp.Navigate(app.URL+path))
		wants(t, coach, "There is no such page, or you do not have access to it.")
	}
	do(t, pupil, chromedp.Navigate(app.URL+"/players/2/lessons"))
	wants(t, pupil, "Aim at the left half.")
}

// A coach looks through a pupil's last round, walks its doubles, writes about a shot,
// keeps a note back and sets practice with a mark: in at most eight clicks and four
// pages, counted from the queue.
func TestReviewingARoundTakesFewClicks(t *testing.T) {
	ctx := tab(t, 1280, true)
	if err := SignInAs(ctx, app, Coach); err != nil {
		t.Fatal(err)
	}
	do(t, ctx, chromedp.Navigate(app.URL+"/coaching"), chromedp.WaitReady(".pupil-queue"))
	clicks, loads := 0, 0
	click := func(selector, then string) {
		t.Helper()
		clicks++
		evaluates(t, ctx, `window.stays = true; ""`)
		do(t, ctx, Press(selector), chromedp.WaitReady(then))
		if evaluates(t, ctx, `String(window.stays === true)`) != "true" {
			loads++
		}
	}
	click(`.pupil-queue a[href*="/rounds/"]:not([href*="#note"])`, "table.statement-table")
	doubles := strings.Fields(evaluates(t, ctx, `[...document.querySelectorAll('.trouble-links [data-walk="d"]')].map(a => a.hash).join(" ")`))
	if len(doubles) == 0 {
		t.Fatal("the round has no double")
	}
	hole := ""
	for i := range 2 { // a round with one double counts as one with two
		at := doubles[min(i, len(doubles)-1)]
		click(`.trouble-links a[href="`+at+`"]`, at+":target")
		hole = strings.TrimPrefix(at, "#h")
	}
	click("#write-"+hole+" > summary", "#write-"+hole+"[open]")
	if about := evaluates(t, ctx, `document.querySelector("#write-`+hole+`-about").value`); !strings.HasPrefix(about, hole+".") {
		t.Errorf("the note is about %s, no shot", about)
	}
	do(t, ctx, fill("#write-"+hole+"-body", "The shot before decided it."))
	click("#write-"+hole+" form button[name=private]:not([value=yes])", "#h"+hole+":target .note-reply")
	do(t, ctx, fill("#write-"+hole+"-body", "Hurries when behind."))
	click("#write-"+hole+" form button[name=private][value=yes]", "#h"+hole+":target .private-note")
	click(`section[aria-labelledby="afterwards"] details:has(form[action$="/assignments"]) > summary`, `form[action$="/assignments"] #what`)
	do(t, ctx, fill("#what", "Back into play"), fill("#amount", "20 balls"), fill("#pass_mark", "15 of 20"))
	click(`form[action$="/assignments"] button`, "#afterwards:target")
	wants(t, ctx, "The practice is set.", "The shot before decided it.", "Hurries when behind.")
	t.Logf("%d clicks, %d pages", clicks, loads)
	if clicks > 8 || loads > 4 {
		t.Errorf("%d clicks and %d pages", clicks, loads)
	}
}

// What is being written comes back when the page is opened again, and is gone once it
// is saved.
func TestADraftComesBack(t *testing.T) {
	ctx := tab(t, 360, true)
	if err := SignInAs(ctx, app, Coach); err != nil {
		t.Fatal(err)
	}
	do(t, ctx, chromedp.Navigate(app.URL+"/players/2"), chromedp.WaitReady("#lesson"))
	write := `(() => { const f = document.querySelector("#lesson"); f.value = "Half a swing."; f.dispatchEvent(new Event("input")); return ""; })()`
	evaluates(t, ctx, write)
	do(t, ctx, chromedp.Navigate(app.URL+"/coaching"), chromedp.Navigate(app.URL+"/players/2"), chromedp.WaitReady("#lesson"))
	if got := evaluates(t, ctx, `document.querySelector("#lesson").value`); got != "Half a swing." {
		t.Errorf("%q came back", got)
	}
	wants(t, ctx, "What you had written is back.")
	do(t, ctx, Press(`form:has(#lesson) button:not([name=phrase])`), chromedp.WaitReady(".note-entry:target"), chromedp.Navigate(app.URL+"/players/2"), chromedp.WaitReady("#lesson"))
	if got := evaluates(t, ctx, `document.querySelector("#lesson").value`); got != "" {
		t.Errorf("after the save %q came back", got)
	}
}

// The keys lead along a round's doubles and roots while the focus is among them,
// and take no key elsewhere; the links do it without.
func TestWalkingARoundsTrouble(t *testing.T) {
	ctx := tab(t, 1280, true)
	if err := SignInAs(ctx, app, Coach); err != nil {
		t.Fatal(err)
	}
	do(t, ctx, chromedp.Navigate(app.URL+"/players/2/rounds"), chromedp.WaitReady("tbody a"))
	with := evaluates(t, ctx, `[...document.querySelectorAll("tr.round-line")].find(r => +r.lastElementChild.textContent > 2).querySelector("a").getAttribute("href")`)
	do(t, ctx, chromedp.Navigate(app.URL+with), chromedp.WaitReady(".trouble-links button"))
	press := func(key string) string {
		return evaluates(t, ctx, `document.activeElement.dispatchEvent(new KeyboardEvent("keydown", {key: "`+key+`", shiftKey: "`+key+`" < "a", bubbles: true, cancelable: true})); location.hash`)
	}
	if hash := press("d"); hash != "" {
		t.Errorf("a key pressed anywhere leads to %s", hash)
	}
	links := strings.Fields(evaluates(t, ctx, `[...document.querySelectorAll('.trouble-links [data-walk="d"]')].map(a => a.hash).join(" ")`))
	roots := strings.Fields(evaluates(t, ctx, `[...document.querySelectorAll('.trouble-links [data-walk="r"]')].map(a => a.hash).join(" ")`))
	do(t, ctx, chromedp.Focus(".trouble-links a"))
	for i, step := range []struct{ key, want string }{{"d", links[0]}, {"d", links[1]}, {"D", links[0]}, {"r", roots[0]}, {"r", roots[1]}, {"d", links[1]}} {
		if got := press(step.key); got != step.want {
			t.Errorf("step %d, %s, leads to %s, want %s", i+1, step.key, got, step.want)
		}
	}
	if inside := evaluates(t, ctx, `String(document.activeElement === document.querySelector(location.hash))`); inside != "true" {
		t.Error("the focus did not follow")
	}
}

// The report of a pupil with two years of rounds, with notes and practice, is
// one printed page.
func TestTheReportIsOnePage(t *testing.T) {
	ctx := tab(t, 1280, true)
	if err := SignInAs(ctx, app, Coach); err != nil {
		t.Fatal(err)
	}
	do(t, ctx, chromedp.Navigate(app.URL+"/players/2/report"), chromedp.WaitReady("table.report-table"))
	print := func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
		return err
	}
	do(t, ctx, chromedp.Func(print))
	if hidden := evaluates(t, ctx, `String([...document.querySelectorAll(".report-table .voucher > summary")].filter((s) => s.getBoundingClientRect().height === 0).length)`); hidden != "0" {
		t.Errorf("%s figures are not printed", hidden)
	}
	if notes := evaluates(t, ctx, `String(document.querySelector(".paper-workings").getBoundingClientRect().height > 0)`); notes != "true" {
		t.Error("the workings are not printed")
	}
	for name, paper := range map[string][2]float64{"A4": {8.27, 11.69}, "letter": {8.5, 11}} {
		do(t, ctx, chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
			printed, err := chromedp.Call(ctx, page.PrintToPDF, page.PrintToPDFParams{PaperWidth: paper[0], PaperHeight: paper[1]})
			if err != nil {
				return err
			}
			if pages := len(regexp.MustCompile(`/Type\s*/Page\b`).FindAll(printed.Data, -1)); pages != 1 {
				t.Errorf("on %s: %d pages in %d bytes", name, pages, len(printed.Data))
			}
			return nil
		}))
	}
}

// A coach's pages print what they hold, the roster its pupils and an overview its notes
// and practice, on as few sheets as that needs.
func TestACoachsPagesOnPaper(t *testing.T) {
	ctx := tab(t, 1280, true)
	if err := SignInAs(ctx, app, Coach); err != nil {
		t.Fatal(err)
	}
	for path, c := range map[string]struct {
		shown string
		most  int
	}{"/coaching": {".pupil-list li", 1}, "/players/2": {`section[aria-labelledby="practice"], section[aria-labelledby="notes"], .pupil-bar-name`, 2}, "/players/2/lessons": {`section[aria-labelledby="practice"], .note-words`, 0}, "/coaching/squad?who=all": {"table, .share-list li", 2}, "/coaching/squad/sheet?who=all": {".sheet-table tr", 1}} {
		do(t, ctx, chromedp.Navigate(app.URL+path))
		room := int(math.Ceil(needed(t, ctx, papers["A4"])*1.15)) + 1 // for the lessons, to which other tests add
		do(t, ctx, chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
			_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
			return err
		}))
		if hidden := evaluates(t, ctx, `JSON.stringify([...document.querySelectorAll('`+c.shown+`')].map(e => e.getBoundingClientRect().height))`); hidden == "[]" || strings.Contains(strings.NewReplacer("[", ",", "]", ",").Replace(hidden), ",0,") {
			t.Errorf("%s on paper: %s", path, hidden)
		}
		do(t, ctx, chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
			printed, err := chromedp.Call(ctx, page.PrintToPDF, page.PrintToPDFParams{PaperWidth: 8.27, PaperHeight: 11.69})
			if err != nil {
				return err
			}
			if pages := len(regexp.MustCompile(`/Type\s*/Page\b`).FindAll(printed.Data, -1)); pages > cmp.Or(c.most, room) {
				t.Errorf("%s takes %d sheets", path, pages)
			}
			return nil
		}))
	}
}
