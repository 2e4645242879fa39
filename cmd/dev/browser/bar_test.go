package browser

import (
	"testing"

	"github.com/chromedp/chromedp"
)

// The bar over a page keeps to its lines on a phone with a name of 48 letters and a count
// of notices: the book's name and the person on one, and each row of entries on one.
func TestTheBarKeepsToItsLines(t *testing.T) {
	plays, pages, round := playing(t, "bar")
	teaches := somebody(t, "bars-coach")
	teaches.send("/welcome", "skip", "yes")
	plays.letsIn(teaches, pages)
	for range 11 { // and the first is about the link
		teaches.send(pages+"/notes", "day", "2026-10-01", "body", "Half a club more.")
		plays.send(pages+"/notes", "round", round[len("/rounds/"):], "on", "1", "body", "Why?")
	}
	pupil, coach := plays.opened(360), teaches.opened(360)
	for _, c := range []struct {
		who  string
		path string
		rows int
	}{{"player", "/rounds", 1}, {"coach", "/coaching", 1}, {"coach", "/rounds/new", 2}} {
		ctx := pupil
		if c.who == "coach" {
			ctx = coach
		}
		for _, width := range []int64{320, 360} {
			do(t, ctx, Screen(width, 740, false), chromedp.Navigate(app.URL+c.path), chromedp.WaitReady(".signed-in"))
			got := evaluates(t, ctx, `(() => {
				const tops = (all) => new Set([...all].map((e) => Math.round(e.getBoundingClientRect().top))).size;
				const nav = [...document.querySelectorAll(".site-nav ul")], book = document.querySelector(".book-name").getBoundingClientRect();
				const name = document.querySelector(".signed-in li:last-child a").getBoundingClientRect();
				return [nav.length, nav.map((u) => tops(u.children)).join("+"), tops(document.querySelector(".signed-in").children), name.top < book.bottom && book.top < name.bottom, document.querySelector('.signed-in a[href="/notices"] b').textContent,
					name.width >= 24 && name.right <= innerWidth, document.documentElement.scrollWidth <= innerWidth].join(" ");
			})()`)
			want := map[int]string{1: "1 1 1 true 12 true true", 2: "2 1+1 1 true 12 true true"}[c.rows]
			if got != want {
				t.Errorf("%s at %s, %d px: %s, want %s", c.who, c.path, width, got, want)
			}
		}
	}
}
