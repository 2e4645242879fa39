package browser

import (
	"context"

	"github.com/chromedp/chromedp"
)

// SignIn signs the demo's player in.
func SignIn(ctx context.Context, app *App) error {
	return chromedp.Do(ctx, chromedp.Navigate(app.URL+"/"),
		chromedp.SendKeys("#email", app.Email), chromedp.SendKeys("#password", app.Password),
		Press("section.in button"), chromedp.WaitReady("table"))
}

// Press presses the button or link of a selector.
func Press(selector string) chromedp.Action[chromedp.Void] { return chromedp.Click(selector) }

// FirstRound returns the path of the first round of the list.
func FirstRound(ctx context.Context, app *App) (string, error) {
	if err := chromedp.Do(ctx, chromedp.Navigate(app.URL+"/rounds")); err != nil {
		return "", err
	}
	return chromedp.Run(ctx, chromedp.Evaluate[string](`document.querySelector("tbody a").getAttribute("href")`))
}
