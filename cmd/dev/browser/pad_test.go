package browser

import (
	"encoding/json"
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"strokeledger/static"
)

// padTaps is findings' line, tapped on the pad.
const (
	padTaps = "f 1 8 5 r 2 2 g 1 4 g 2"
	padLine = "f185 r22 g14 g2"
)

// tapAll taps keys one after the other and returns the line.
const tapAll = `(async (keys, every) => {
	const line = document.querySelector("#line");
	line.value = "";
	line.dispatchEvent(new Event("input"));
	for (const key of keys) {
		document.querySelector('button.pad-key[value="' + key + '"]').click();
		await new Promise((done) => setTimeout(done, every));
	}
	return line.value;
})`

// On a slow line no tap is lost, however slow it is and however quick the
// fingers are, and no answer that comes late changes what was typed.
func TestTapsOnASlowLine(t *testing.T) {
	line, err := NewLine(app.URL)
	if err != nil {
		t.Fatal(err)
	}
	defer line.Close()
	ctx, r := tab(t, 360, true), card84(t)
	through(t, line, func() { newcomer(t, ctx, "fay", r) })
	keys, err := json.Marshal(strings.Fields(padTaps))
	if err != nil {
		t.Fatal(err)
	}
	round := evaluates(t, ctx, `location.pathname.replace(/[0-9]+$/, "")`)
	var holes []int // long enough for the line
	for _, h := range r.Holes {
		if h.Length().Yards() > 190 {
			holes = append(holes, h.Number)
		}
	}
	for i, ms := range []int{0, 50, 100, 200, 300, 600, 1200} {
		line.Delay(time.Duration(ms) * time.Millisecond)
		do(t, ctx, chromedp.Navigate(fmt.Sprintf("%s%s%d", line.URL, round, holes[i])), chromedp.WaitReady("form[data-script]"))
		right := 0
		for k := range 20 {
			every := 5
			if k == 0 {
				every = 100
			}
			got, err := chromedp.Run(ctx, chromedp.Evaluate[string](fmt.Sprintf("%s(%s, %d)", tapAll, keys, every), chromedp.EvalAwaitPromise))
			if err != nil {
				t.Fatal(err)
			}
			if got == padLine {
				right++
			}
		}
		if right != 20 {
			t.Errorf("at %d ms the line was right %d times of 20", ms, right)
		}
		do(t, ctx, chromedp.WaitReady(`.total-line[data-holed="yes"]`)) // the newest answer is there
		if got, err := chromedp.Run(ctx, chromedp.Value(lineField)); err != nil || got != padLine {
			t.Errorf("at %d ms an answer made %q of the line, %v", ms, got, err)
		}
		do(t, ctx, Press(`button.pad-key[value="save"]`), chromedp.WaitReady(fmt.Sprintf(`//h1[not(text()="Hole %d")]`, holes[i])))
		if got := read(t, ctx, fmt.Sprintf(".hole-strip li:nth-child(%d) .score-mark", holes[i])); !strings.HasPrefix(got, "5") {
			t.Errorf("at %d ms the hole was saved as %q", ms, got)
		}
	}
}

// through runs steps with the app behind a line.
func through(t *testing.T, l *Line, steps func()) {
	t.Helper()
	direct := app.URL
	app.URL = l.URL
	defer func() { app.URL = direct }()
	steps()
}

// The keys in the browser do what the server's do without script, and at the
// caret what a golfer means by them.
func TestKeysInTheBrowser(t *testing.T) {
	ctx := tab(t, 360, true)
	do(t, ctx, chromedp.Navigate(app.URL+"/join"))
	data, err := os.ReadFile("../../../testdata/pad.json")
	if err != nil {
		t.Fatal(err)
	}
	script := fmt.Sprintf(`import(%q).then(({ press }) => {
		const wrong = [];
		const type = (state, keys) => keys.split(" ").reduce((s, key) => press(s, key), state);
		const check = (from, keys, want) => { const got = type(from, keys).line; if (got !== want) wrong.push(keys + ": " + got + ", want " + want); };
		const empty = { line: "", start: 0, end: 0 };
		for (const c of %s) check(empty, c.keys, c.line);
		const at = (line, start, end) => ({ line, start, end: end ?? start });
		check(at("f185 r22 g14", 0, 4), "1 9 0", "f190 r22 g14");
		check(at("f185 r22 g14", 0, 4), "b", "b185 r22 g14");
		check(at("f185 r22 g14", 5, 8), "next b 1 8", "f185 r22 b18 g14");
		check(at("f185 r22 g14", 8), "x", "f185 r22x g14");
		check(at("f185 r22 g14", 0, 5), "back", "r22 g14");
		check(at("f185w r22", 0, 5), "1 7", "f17w r22");
		check(at("g12 3 1", 4, 5), "4", "g12 4 1");
		check(at("f185 r22", 8), "h h", "f185 r22h");
		return wrong;
	})`, static.URL("keys.js"), data)
	wrong, err := chromedp.Run(ctx, chromedp.Evaluate[[]string](script, chromedp.EvalAwaitPromise))
	if err != nil {
		t.Fatal(err)
	}
	for _, w := range wrong {
		t.Error(w)
	}
}

// The pad stands still: every key is where it was, from the empty line to the
// ninth shot, and all are large enough for a thumb.
func TestThePadStandsStill(t *testing.T) {
	ctx, r := tab(t, 360, true), card84(t)
	newcomer(t, ctx, "gus", r)
	for _, height := range []int64{640, 740} {
		do(t, ctx, Screen(360, height, false))
		var places []string
		for _, line := range []string{"", "f202 b", "f202 b25 g30", "x v187 f60 r18 g24 6", "f90 80 70 60 50 40 30 20 g9 8h", "f420 g30 1h", "r165 q"} {
			do(t, ctx, chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`void ((line) => { line.value = %q; line.dispatchEvent(new Event("input")); })(document.querySelector("#line"))`, line)))
			time.Sleep(300 * time.Millisecond)
			places = append(places, evaluates(t, ctx, `JSON.stringify([...document.querySelectorAll(".key-pad > .pad-key, .key-pad > details")].map((k) => { const b = k.getBoundingClientRect(); return [Math.round(b.top), Math.round(b.left)]; }))`))
		}
		for i, p := range places {
			if p != places[0] {
				t.Errorf("at %d px the pad moved with line %d: %s, was %s", height, i, p, places[0])
			}
		}
		small := evaluates(t, ctx, `[...document.querySelectorAll(".key-pad .pad-key")].filter((k) => k.offsetParent && k.getBoundingClientRect().height < 44).map((k) => k.textContent).join()`)
		if small != "" {
			t.Errorf("at %d px smaller than 44 px: %s", height, small)
		}
		if wide := evaluates(t, ctx, `String(document.documentElement.scrollWidth > 360)`); wide != "false" {
			t.Error("the page scrolls sideways")
		}
	}
}

// A row of the table puts the caret into its word; a forgotten shot goes in
// between.
func TestAShotInTheMiddle(t *testing.T) {
	ctx, r := tab(t, 360, true), card84(t)
	newcomer(t, ctx, "hal", r)
	tap := func(keys string) {
		for key := range strings.FieldsSeq(keys) {
			do(t, ctx, Press(fmt.Sprintf(`button.pad-key[value=%q]`, key)))
		}
	}
	tap("f 1 8 0 g 2 4 g 3")
	waitFor(t, ctx, "the shots are in the table", `document.querySelector("tr[data-from='5'] .row-button")`)
	do(t, ctx, Press(`tr[data-from="0"] .row-button`))
	tap("next r 2 0")
	waitValue(t, ctx, "f180 r20 g24 g3")
	waitFor(t, ctx, "the shots are in the table", `document.querySelector("tr[data-from='5'] .row-button")`)
	do(t, ctx, Press(`tr[data-from="0"] .row-button`))
	tap("1 7 5")
	waitValue(t, ctx, "f175 r20 g24 g3")
	tap("undo undo undo")
	waitValue(t, ctx, "f180 r20 g24 g3")
}
