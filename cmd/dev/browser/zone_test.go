package browser

import (
	"context"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// inZone moves the browser to a time zone.
func inZone(name string) chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Call(ctx, emulation.SetTimezoneOverride, emulation.SetTimezoneOverrideParams{TimezoneID: name})
		return err
	})
}

// The browser's time zone is filled into the field of an account that has none, and
// offered beside another one.
func TestTheBrowsersTimeZoneIsOffered(t *testing.T) {
	player := somebody(t, "zoe")
	ctx := tab(t, 320, true)
	player.signedIn(ctx)
	value := func() string { return evaluates(t, ctx, `document.querySelector("#zone").value`) }
	do(t, ctx, inZone("Pacific/Auckland"), Screen(320, 740, false), chromedp.Navigate(app.URL+"/account"), chromedp.WaitReady("#zone"))
	waitFor(t, ctx, "the field is filled in", `document.querySelector("#zone").value === "Pacific/Auckland"`)
	do(t, ctx, Press(`form[action="/account"] .main-button`), chromedp.WaitReady(".notice"))
	do(t, ctx, inZone("America/Los_Angeles"), chromedp.Navigate(app.URL+"/account"), chromedp.WaitReady(".form-field .small-button"))
	if got := value(); got != "Pacific/Auckland" {
		t.Errorf("stored is %q", got)
	}
	if got := read(t, ctx, ".form-field .small-button"); got != "Use America/Los_Angeles, the time zone of this device" {
		t.Errorf("the button says %q", got)
	}
	do(t, ctx, Press(".form-field .small-button"))
	if got := value(); got != "America/Los_Angeles" {
		t.Errorf("after it the field has %q", got)
	}
	if got := evaluates(t, ctx, `String(document.documentElement.scrollWidth)`); got != "320" {
		t.Errorf("the account is %s px wide on 320", got)
	}
}
