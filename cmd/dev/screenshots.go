package main

import (
	"context"
	"flag"
	"fmt"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/chromedp/chromedp"

	"strokeledger/cmd/dev/browser"
	"strokeledger/web/sample"
)

const screenshotFolder = "screenshots"

// The pages of the running app, by who sees them. Those of a round follow its
// address.
var (
	visitorShots = []shot{{"front", "/"}, {"join", "/join"}, {"not-found", "/nothing"}}
	playerShots  = []shot{{"rounds", "/rounds"}, {"new-round", "/rounds/new"}, {"import", "/import"},
		{"months", "/months"}, {"years-tour", "/players/2/months?span=2025&span=2026&versus=tour"}, {"months-empty", "/players/2/months?span=2001-01&span=2001-02"},
		{"handicap", "/players/2/handicap"}, {"coaching", "/coaching"}, {"behind", "/players/2/months/behind?in=1&row=approach"},
		{"courses", "/courses"}, {"new-course", "/courses/new"}, {"course", "/courses/1"}, {"account", "/account"}, {"welcome", "/welcome"}, {"removed", "/removed"},
		{"lessons", "/players/2/lessons"}, {"looks", "/coaching/looks"}}
	roundShots = []shot{{"statement", ""}, {"hole", "/holes/7"}, {"shots", "/holes/7/shots"}, {"details", "/details"}}
	coachShots = []shot{{"roster", "/coaching"}, {"squad", "/coaching/squad"}, {"kept-notes", "/coaching/kept"}, {"pupil", "/players/2/lessons"}, {"pupil-rounds", "/players/2/rounds"},
		{"pupil-months", "/players/2/months"}, {"report", "/players/2/report"}}
)

// screenshots writes a picture of every page of the running app and of the
// gallery, at two widths in two lights, for people to look at; and the two of
// the README, which alone are taken with --readme.
func screenshots(args []string) error {
	flags := flag.NewFlagSet("screenshots", flag.ContinueOnError)
	readme := flags.Bool("readme", false, "only the pictures of the README")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if flags.NArg() > 0 {
		return errUsage
	}
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
	if *readme {
		return shootReadme(ctx, app)
	}
	return shootAll(ctx, app)
}

// shootReadme takes the pictures of the README as the player of the club.
func shootReadme(ctx context.Context, app *browser.App) error {
	if err := browser.SignIn(ctx, app); err != nil {
		return err
	}
	round, err := browser.FirstRound(ctx, app)
	if err != nil {
		return err
	}
	return readmePictures(ctx, app.URL, round)
}

// shootAll takes everything: as nobody, as the player, and as the coach.
func shootAll(ctx context.Context, app *browser.App) error {
	if err := os.MkdirAll(screenshotFolder, 0o755); err != nil {
		return err
	}
	if err := shootGallery(ctx); err != nil {
		return err
	}
	if err := shoot(ctx, app.URL, visitorShots); err != nil {
		return err
	}
	if err := shootReadme(ctx, app); err != nil {
		return err
	}
	round, err := browser.FirstRound(ctx, app)
	if err != nil {
		return err
	}
	if err := shoot(ctx, app.URL, append(under(round, roundShots), playerShots...)); err != nil {
		return err
	}
	if err := browser.SignInAs(ctx, app, browser.Coach); err != nil {
		return err
	}
	return shoot(ctx, app.URL, append([]shot{{"pupil-statement", "/players/2" + round}}, coachShots...))
}

// under puts a prefix before the addresses of shots.
func under(prefix string, shots []shot) []shot {
	var all []shot
	for _, s := range shots {
		all = append(all, shot{s.name, prefix + s.path})
	}
	return all
}

// shootGallery takes every page of the gallery.
func shootGallery(ctx context.Context) error {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return err
	}
	pages := sample.Pages()
	server := &http.Server{Handler: gallery(pages), ReadHeaderTimeout: time.Minute}
	defer server.Close()
	go server.Serve(listener)
	var shots []shot
	for _, p := range pages {
		shots = append(shots, shot{"gallery-" + strings.ReplaceAll(p.At(), "/", "-"), "/" + p.At()})
	}
	return shoot(ctx, "http://"+listener.Addr().String(), shots)
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
