package browser

import (
	"context"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
)

// The made-up club's people who may be signed in.
const (
	Player  = "robin@harrowfen.example"
	Coach   = "ines@harrowfen.example"
	Steward = "steward@harrowfen.example"
)

// SignIn signs the demo's player in.
func SignIn(ctx context.Context, app *App) error { return SignInAs(ctx, app, Player) }

// SignInAs signs somebody of the demo in, in the place of whoever was. The form is sent once for each person,
// since the program limits how often an address may try; after that the cookie
// is set that it gave.
func SignInAs(ctx context.Context, app *App, email string) error {
	app.signing.Lock()
	defer app.signing.Unlock()
	if cookie := app.cookies[email]; cookie != nil {
		return chromedp.Do(ctx, chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
			_, err := chromedp.Call(ctx, network.SetCookies, network.SetCookiesParams{Cookies: []*network.CookieParam{cookie}})
			return err
		}), chromedp.Navigate(app.URL+"/rounds"), chromedp.WaitReady(".signed-in"))
	}
	return chromedp.Do(ctx, chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Call(ctx, network.ClearBrowserCookies, cdp.Empty{})
		return err
	}), chromedp.Navigate(app.URL+"/"),
		chromedp.SendKeys("#email", email), chromedp.SendKeys("#password", app.Password),
		Press("section.sign-in button"), chromedp.WaitReady(".signed-in"),
		chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
			got, err := chromedp.Call(ctx, network.GetCookies, network.GetCookiesParams{})
			if err != nil {
				return err
			}
			for _, c := range got.Cookies {
				if c.Name == "ledger" { // the session; another remembers the device
					app.cookies[email] = &network.CookieParam{Name: c.Name, Value: c.Value, Domain: c.Domain, Path: c.Path, HTTPOnly: c.HTTPOnly}
				}
			}
			return nil
		}))
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
