package browser

import (
	"context"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// evaluates is what an expression gives.
func evaluates(t *testing.T, ctx context.Context, script string) string {
	t.Helper()
	got, err := chromedp.Run(ctx, chromedp.Evaluate[string](script))
	if err != nil {
		t.Fatal(err)
	}
	return got
}

// A player chooses spans, opens a part of the game, its band and a shot of it,
// and comes back to the very choice by its address; without script as with it.
func TestMonthsSideBySide(t *testing.T) {
	for _, script := range []bool{true, false} {
		ctx := tab(t, 1280, script)
		if err := SignIn(ctx, app); err != nil {
			t.Fatal(err)
		}
		do(t, ctx, chromedp.Navigate(app.URL+"/months"), chromedp.WaitReady("table.part-months"),
			Press(`nav.preset-links a[href*="last10"]`), chromedp.WaitReady(`nav.preset-links a[href*="last10"][aria-current]`))
		address := evaluates(t, ctx, `location.pathname + location.search`)
		if !strings.HasSuffix(address, "/months?span=before10&span=last10") {
			t.Errorf("the address is %s", address)
		}
		lede := evaluates(t, ctx, `document.querySelector(".lede").textContent`)
		if !strings.Contains(lede, "the last ten") && !strings.HasPrefix(lede, "The last ten against the ten before: ") {
			t.Errorf("%q", lede)
		}
		bands := `details.fold-line:nth-of-type(5)`
		band := bands + ` tr.detail-row:has(+ .voucher-row a[href*="approach+"])`
		if shown := evaluates(t, ctx, `String(document.querySelector('`+band+`').checkVisibility())`); shown != "false" {
			t.Error("a band is open before it was opened")
		}
		do(t, ctx, Press(bands+` > summary`), chromedp.WaitVisible(band), Press(band+` .voucher > summary`),
			chromedp.WaitVisible(band+` + .voucher-row a`), Press(band+` + .voucher-row a`), chromedp.WaitReady("main > div.scroll-area"))
		heading := evaluates(t, ctx, `document.querySelector("h1").textContent`)
		if !strings.HasPrefix(heading, "Approach: ") {
			t.Errorf("%q", heading)
		}
		do(t, ctx, Press("table.plain-table tbody tr:not(.voucher-row) td a"), chromedp.WaitReady("table.statement-table"), chromedp.WaitReady("footer.page-foot"))
		if open := evaluates(t, ctx, `String(document.querySelector(":target") !== null)`); open != "true" {
			t.Error("the shot is not on its statement")
		}
		do(t, ctx, chromedp.Navigate(app.URL+address), chromedp.WaitReady("table.part-months"))
		if again := evaluates(t, ctx, `document.querySelector(".lede").textContent`); again != lede {
			t.Errorf("by its address the page says %q, not %q", again, lede)
		}
	}
}

// Days typed into the form become an address; an empty month and months before
// the first round stand as such.
func TestMonthsThatAreEmpty(t *testing.T) {
	ctx := tab(t, 360, true)
	if err := SignIn(ctx, app); err != nil {
		t.Fatal(err)
	}
	do(t, ctx, chromedp.Navigate(app.URL+"/months"), Press("details.span-choice > summary"), chromedp.WaitVisible("#from1"))
	evaluates(t, ctx, `[["1","2001-01-01","2001-01-31"],["2","2001-02-01","2001-02-28"]].forEach(([n,a,b])=>{document.getElementById("from"+n).value=a;document.getElementById("to"+n).value=b});
		for (const n of ["3","4","5","6"]) for (const e of ["from","to"]) document.getElementById(e+n).value=""; ""`)
	do(t, ctx, Press("details.span-choice form button"), chromedp.WaitReady(`input[name=span][value="2001-02"]`))
	if got := evaluates(t, ctx, `location.search + document.querySelector(".lede").textContent`); got != "?span=2001-01&span=2001-02No rounds in Feb 2001." {
		t.Errorf("%q", got)
	}
	if got := evaluates(t, ctx, `document.querySelector("table.part-months td.no-figure").textContent.trim()`); got != "no rounds" {
		t.Errorf("%q", got)
	}
}

// No label of an axis lies on another at 360 px with six columns.
func TestMonthsHaveRoom(t *testing.T) {
	ctx := tab(t, 360, true)
	if err := SignIn(ctx, app); err != nil {
		t.Fatal(err)
	}
	do(t, ctx, chromedp.Navigate(app.URL+"/months"), Press(`nav.preset-links a:nth-of-type(3)`), chromedp.WaitReady(`nav.preset-links a:nth-of-type(3)[aria-current]`))
	for _, width := range []int64{360, 1280} {
		do(t, ctx, Screen(width, 800, false))
		got := evaluates(t, ctx, `(() => {
			const all = [...document.querySelectorAll("svg.chart-plot text, svg.axis-ticks text")].filter(e => e.checkVisibility() && getComputedStyle(e).display !== "none").map(e => [e, e.getBoundingClientRect()]);
			const hits = [];
			for (let i = 0; i < all.length; i++) for (let k = i + 1; k < all.length; k++) {
				const [a, ra] = all[i], [b, rb] = all[k];
				if (a.closest("svg.chart-plot, svg.axis-ticks") === b.closest("svg.chart-plot, svg.axis-ticks") && !a.classList.contains("chart-words") && !b.classList.contains("chart-words") &&
					ra.left < rb.right && rb.left < ra.right && ra.top < rb.bottom && rb.top < ra.bottom) hits.push(a.textContent + " on " + b.textContent);
			}
			return hits.join("; ") + (document.documentElement.scrollWidth > innerWidth ? "; the page is too wide" : "");
		})()`)
		if got != "" {
			t.Errorf("at %d px: %s", width, got)
		}
	}
}
