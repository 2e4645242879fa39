package browser

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// A plan of practice is taken on a phone, with script and without: its page says what
// was promised, its drills stand among the practice, and it goes again with them.
func TestAPlanIsTakenOnAPhone(t *testing.T) {
	const listed = `[...document.querySelectorAll("section[aria-labelledby='taken'] a")].length`
	for _, script := range []bool{true, false} {
		ctx := tab(t, 360, script)
		if err := SignIn(ctx, app); err != nil {
			t.Fatal(err)
		}
		do(t, ctx, Screen(360, 740, false), chromedp.Navigate(app.URL+"/players/2/plan"), chromedp.WaitReady("section[aria-labelledby='take'] button"))
		before := evaluates(t, ctx, "String("+listed+")")
		drill := evaluates(t, ctx, `document.querySelector(".candidate a[href*='/drills/']").textContent`)
		if low := evaluates(t, ctx, `(() => { const b = document.querySelector("section[aria-labelledby='take'] button").getBoundingClientRect(); return b.height >= 44 && b.right <= 360 ? "" : b.height + " px high, to " + b.right; })()`); low != "" {
			t.Errorf("script %t: the button is %s", script, low)
		}
		do(t, ctx, Press("section[aria-labelledby='take'] button"), chromedp.WaitReady("section[aria-labelledby='promised'] .candidate"))
		wants(t, ctx, "The plan is yours now", "Expected", "not done yet", drill)
		fits(t, ctx, "a plan that was taken", 360)
		taken := pathOf(t, ctx)
		if !strings.HasPrefix(taken, "/players/2/plans/") {
			t.Errorf("script %t: it leads to %s", script, taken)
		}
		do(t, ctx, chromedp.Navigate(app.URL+"/players/2/lessons"), chromedp.WaitReady("#practice"))
		wants(t, ctx, drill)
		do(t, ctx, chromedp.Navigate(app.URL+"/players/2/plan"), chromedp.WaitReady("section[aria-labelledby='taken']"))
		if after := evaluates(t, ctx, fmt.Sprintf("String(%s - %s)", listed, before)); after != "1" {
			t.Errorf("script %t: %s more plans are listed", script, after)
		}
		do(t, ctx, chromedp.Navigate(app.URL+taken), Press(`form[action$="/remove"] button`), chromedp.WaitReady("section[aria-labelledby='take']"))
		wants(t, ctx, "Removed: plan of")
		if after := evaluates(t, ctx, fmt.Sprintf("String(%s - %s)", listed, before)); after != "0" {
			t.Errorf("script %t: %s more plans are listed after the removal", script, after)
		}
	}
}

// Where a coach writes about a hole, the form's title stands in one line, beside the
// nine and alone.
func TestTheTitleOfAFormOnAHoleIsALine(t *testing.T) {
	ctx := tab(t, 1280, true)
	if err := SignInAs(ctx, app, Coach); err != nil {
		t.Fatal(err)
	}
	do(t, ctx, chromedp.Navigate(app.URL+linked(t, ctx, "/players/2/rounds", "/rounds/")), chromedp.WaitReady(".hole-lines"))
	evaluates(t, ctx, `document.querySelectorAll(".hole-lines > li > details").forEach((d) => { d.open = true; }); ""`)
	for _, width := range []int64{360, 1280} {
		do(t, ctx, Screen(width, 740, false))
		if got := evaluates(t, ctx, `(() => {
			const titles = [...document.querySelectorAll(".hole-open .fold-line > summary b")];
			const high = titles.filter((b) => b.getBoundingClientRect().height > 30).length;
			return titles.length > 8 && high === 0 ? "" : high + " of " + titles.length + " take more than a line";
		})()`); got != "" {
			t.Errorf("at %d px %s", width, got)
		}
	}
}

// brokenWords are the words of a table of sessions that a line's end cuts in two.
const brokenWords = `(() => {
	const broken = [];
	for (const cell of document.querySelectorAll(".session-table :is(th, td)")) {
		const walk = document.createTreeWalker(cell, NodeFilter.SHOW_TEXT);
		for (let text = walk.nextNode(); text; text = walk.nextNode()) {
			for (const word of text.data.matchAll(/[^\s-]+/g)) {
				const range = document.createRange();
				range.setStart(text, word.index);
				range.setEnd(text, word.index + word[0].length);
				if (new Set([...range.getClientRects()].map((r) => Math.round(r.top))).size > 1) broken.push(word[0]);
			}
		}
	}
	return document.querySelector(".session-table tbody td") ? broken.join() : "no session";
})()`

// On a phone the tables of sessions break lines between words.
func TestTablesOfSessionsKeepTheirWords(t *testing.T) {
	ctx := tab(t, 360, true)
	if err := SignIn(ctx, app); err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{"/players/2/drills/start-line", linked(t, ctx, "/players/2/log", "/drills/")} {
		do(t, ctx, chromedp.Navigate(app.URL+path), chromedp.WaitReady(".session-table"))
		for _, width := range []int64{320, 360} {
			fits(t, ctx, path, width)
			if got := evaluates(t, ctx, brokenWords); got != "" {
				t.Errorf("%s at %d px: %s", path, width, got)
			}
		}
	}
}
