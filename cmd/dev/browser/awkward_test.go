package browser

import (
	"context"
	"fmt"
	"net/http"
	"net/http/cookiejar"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// Texts that break a page that was drawn for kind ones.
var (
	longName = strings.Repeat("Wolfeschlegelsteinhausen", 2)
	longLink = "https://example.org/" + strings.Repeat("film-of-the-lesson", 10)
)

// awkwardRound is legal and hard to show: a tee shot twice out of bounds and on
// into penalty areas, a hole of 12 strokes, one picked up, two known by score.
var awkwardRound = []string{
	"xx f205w r180u2 v150+3 r80 g40 12 3", "f330 b300 b290 r280 v270 v260 f120 b20 b18 g60 12 4", "f195x b20s4 g30 3-",
	"=15", "r165 g24 3", "=7", "f1.5 g60 30 10 2", "t385/driver-of-my-grandfather r150/7-iron-of-my-grandfather g20 2", "f230 f90 g10",
}

var awkwardCard = "4 392\n5 598\n3 210\n4 420\n4 378\n5 540\n4 402\n4 388\n5 520\n"

// person is somebody who sends forms without a browser.
type person struct {
	t *testing.T
	client
	name string
}

func somebody(t *testing.T, name string) person {
	t.Helper()
	jar, err := cookiejar.New(nil)
	if err != nil {
		t.Fatal(err)
	}
	p := person{t, client{http.Client{Jar: jar, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}}, name}
	p.send("/join", "name", longName[:48-len(name)]+name, "email", name+"@example.org", "password", "a long password")
	return p
}

// send posts a form and returns where it leads to.
func (p person) send(path string, fields ...string) string {
	p.t.Helper()
	form := url.Values{}
	for i := 0; i+1 < len(fields); i += 2 {
		form.Add(fields[i], fields[i+1])
	}
	got, err := p.post(app, path, form)
	if err != nil || got.StatusCode != http.StatusSeeOther {
		p.t.Fatalf("%s %q: %v, %v", path, fields, got, err)
	}
	return got.Header.Get("Location")
}

var inviteLink = regexp.MustCompile(`/coaching/accept\?player=(\d+)&(?:amp;)?token=(\w+)`)

// awkward makes a pupil in metres and a coach, with rounds, notes and practice
// that are hard to show, and returns the pupil's number and the path of a round.
func awkward(t *testing.T) (pupil, coach person, number, round string) {
	t.Helper()
	pupil, coach = somebody(t, "awkward"), somebody(t, "coach")
	pupil.send("/welcome", "target", "79", "far", "yd", "green", "ft")
	coach.send("/welcome", "skip", "yes")
	course := strings.Split(strings.TrimPrefix(pupil.send("/courses/new", "name", longName, "tee", longName, "holes", "9", "rating", "36.5", "slope", "155", "paste", awkwardCard, "anyway", "length-2:598"), "/courses/"), "?")[0]
	at := ""
	for range 2 {
		at = pupil.send("/rounds/new", "course", course, "date", "2026-10-02", "note", longName+" "+longName)
		round = at[:strings.Index(at, "/holes/")]
		for i, line := range awkwardRound {
			pupil.send(fmt.Sprintf("%s/holes/%d", round, i+1), "line", line, "version", "0", "press", "save", "anyway", "yes")
		}
	}
	pupil.send("/rounds/new", "course", course, "date", "2026-10-03")
	pupil.send("/account", "name", longName, "target", "79", "boundary", "50", "far", "m", "green", "m", "clubs", strings.Repeat("driver-of-my-grandfather ", 6))
	got, err := pupil.post(app, "/coaching/invite", nil)
	if err != nil {
		t.Fatal(err)
	}
	_ = got
	return pupil, coach, number, round
}

// signedIn opens a browser as somebody who has signed in without one.
func (p person) signedIn(ctx context.Context) {
	p.t.Helper()
	do(p.t, ctx, chromedp.Navigate(app.URL+"/"), chromedp.SendKeys("#email", p.name+"@example.org"), chromedp.SendKeys("#password", "a long password"), Press("section.in button"), chromedp.WaitReady(".who"))
}
