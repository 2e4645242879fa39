package browser

import (
	"testing"

	"github.com/chromedp/chromedp"
)

// The form of a course fits the narrowest screen, shows nine rows for nine
// holes, counts while it is typed, and begins with what is wrong.
func TestTheFormOfACourse(t *testing.T) {
	ctx := tab(t, 320, true)
	if err := SignIn(ctx, app); err != nil {
		t.Fatal(err)
	}
	fits := func(where string) {
		t.Helper()
		if got := evaluates(t, ctx, `String(document.documentElement.scrollWidth)`); got != "320" {
			t.Errorf("%s is %s px wide on 320", where, got)
		}
	}
	shown := func() string {
		return evaluates(t, ctx, `String([...document.querySelectorAll(".hole-rows tbody tr")].filter((row) => row.getClientRects().length).length)`)
	}
	for _, path := range []string{"/courses", "/courses/1", "/courses/new"} {
		do(t, ctx, Screen(320, 740, false), chromedp.Navigate(app.URL+path))
		fits(path)
	}
	if got := shown(); got != "18" {
		t.Errorf("%s rows for 18 holes", got)
	}
	do(t, ctx, chromedp.SetValue("#holes", "9"), chromedp.SendKeys("#par-1", "5"), chromedp.SendKeys("#length-1", "12"), chromedp.SendKeys("#par-2", "9"), chromedp.SendKeys("#length-2", "346m"))
	if got := shown(); got != "9" {
		t.Errorf("%s rows for nine holes", got)
	}
	if got := read(t, ctx, ".card-count"); got != "1 of 9 holes, par 5, 12 yd" {
		t.Errorf("the count says %q", got)
	}
	do(t, ctx, chromedp.SendKeys("#par-3", "4"), chromedp.SendKeys("#length-3", "346m"))
	if got := read(t, ctx, ".card-count"); got != "2 of 9 holes, par 9, 390 yd" {
		t.Errorf("the count says %q", got)
	}
	do(t, ctx, Press(".course-form button.main-button"), chromedp.WaitReady(".notice.faulty"))
	fits("what is wrong")
	if got := evaluates(t, ctx, `document.activeElement.className + " " + (document.activeElement.getBoundingClientRect().top < innerHeight)`); got != "notice faulty fault-summary true" {
		t.Errorf("the page begins at %q", got)
	}
	if got := evaluates(t, ctx, `document.querySelector("#par-2").value + document.querySelector("#length-2").value`); got != "9346m" {
		t.Errorf("what was typed is %q", got)
	}
}
