package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"

	"github.com/chromedp/chromedp"

	"strokeledger/cmd/dev/browser"
)

const screenshotFolder = "screenshots"

// screenshots writes a picture of every page at two widths in two lights, for
// people to look at.
func screenshots() error {
	if err := prepare(); err != nil {
		return err
	}
	app, err := browser.Start(".")
	if err != nil {
		return err
	}
	defer app.Stop()
	ctx, cancel, err := browser.Tab(context.Background())
	if err != nil {
		return err
	}
	defer cancel()
	if err := os.MkdirAll(screenshotFolder, 0o755); err != nil {
		return err
	}
	if err := shoot(ctx, app.URL, []shot{{"front", "/"}, {"join", "/join"}, {"not-found", "/nothing"}}); err != nil {
		return err
	}
	if err := browser.SignIn(ctx, app); err != nil {
		return err
	}
	round, err := browser.FirstRound(ctx, app)
	if err != nil {
		return err
	}
	if err := shoot(ctx, app.URL, []shot{{"rounds", "/rounds"}, {"statement", round}, {"hole", round + "/holes/7"}, {"shots", round + "/holes/7/shots"}, {"new-round", "/rounds/new"}, {"import", "/import"},
		{"months", "/months"}, {"years-tour", "/players/2/months?span=2025&span=2026&versus=tour"}, {"months-empty", "/players/2/months?span=2001-01&span=2001-02"}, {"handicap", "/players/2/handicap"}, {"coaching", "/coaching"}, {"behind", "/players/2/months/behind?in=1&row=approach"},
		{"courses", "/courses"}, {"new-course", "/courses/new"}, {"course", "/courses/1"}, {"account", "/account"}, {"welcome", "/welcome"}, {"removed", "/removed"}, {"details", round + "/details"}, {"lessons", "/players/2/lessons"}, {"looks", "/coaching/looks"}}); err != nil {
		return err
	}
	if err := browser.SignInAs(ctx, app, browser.Coach); err != nil {
		return err
	}
	return shoot(ctx, app.URL, []shot{{"roster", "/coaching"}, {"squad", "/coaching/squad"}, {"kept-notes", "/coaching/kept"}, {"pupil", "/players/2/lessons"}, {"pupil-rounds", "/players/2/rounds"},
		{"pupil-statement", "/players/2" + round}, {"pupil-months", "/players/2/months"}, {"report", "/players/2/report"}})
}

type shot struct{ name, path string }

func shoot(ctx context.Context, url string, shots []shot) error {
	for _, width := range []int64{360, 1280} {
		for _, dark := range []bool{false, true} {
			light := map[bool]string{false: "light", true: "dark"}[dark]
			for _, s := range shots {
				if err := chromedp.Do(ctx, browser.Screen(width, 800, dark), chromedp.Navigate(url+s.path)); err != nil {
					return err
				}
				picture, err := chromedp.Run(ctx, chromedp.FullScreenshot(100))
				if err != nil {
					return err
				}
				name := filepath.Join(screenshotFolder, fmt.Sprintf("%s-%d-%s.png", s.name, width, light))
				if err := os.WriteFile(name, picture, 0o644); err != nil {
					return err
				}
			}
		}
	}
	return nil
}
