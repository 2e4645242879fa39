package browser

import (
	"context"
	"fmt"
	"html"
	"io"
	"net/http"
	"net/http/cookiejar"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/network"
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
	"xx f205w b180u2 v150+3 r80 g40 12 3", "f330 b300 b290 r280 v270 v260 f120 b20 b18 g60 12 4", "f195x b20s4 g30 3-",
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

// body posts a form, or gets a page when there is none, and returns the page.
func (p person) body(path string, form url.Values) string {
	p.t.Helper()
	var got *http.Response
	var err error
	if form == nil {
		got, err = p.Get(app.URL + path)
	} else {
		got, err = p.PostForm(app.URL+path, form)
	}
	if err != nil {
		p.t.Fatal(err)
	}
	defer got.Body.Close()
	text, err := io.ReadAll(got.Body)
	if err != nil {
		p.t.Fatal(err)
	}
	return html.UnescapeString(string(text))
}

// part is what a pattern holds of a text.
func (p person) part(pattern, text string) string {
	p.t.Helper()
	m := regexp.MustCompile(pattern).FindStringSubmatch(text)
	if m == nil {
		p.t.Fatalf("no %s in %s", pattern, text)
	}
	return m[1]
}

// awkward makes a pupil of a name in metres and a coach, with rounds, notes and practice
// that are hard to show, and returns the pupil's pages and the path of a round.
func awkward(t *testing.T, name string) (pupil, coach person, pages, round string) {
	t.Helper()
	pupil, coach = somebody(t, name), somebody(t, name+"-coach")
	pupil.send("/welcome", "target", "79", "far", "yd", "green", "ft")
	coach.send("/welcome", "skip", "yes")
	at := pupil.send("/courses/new", "name", longName, "tee", longName, "holes", "9", "rating", "36.5", "slope", "155", "paste", awkwardCard)
	course := pupil.part(`^/courses/(\d+)`, at)
	for range 5 { // as many as a plan stands on
		at := pupil.send("/rounds/new", "course", course, "date", "2026-10-02", "conditions", longName+" "+longName)
		round = at[:strings.Index(at, "/holes/")]
		for i, line := range awkwardRound {
			pupil.send(fmt.Sprintf("%s/holes/%d", round, i+1), "line", line, "version", "0", "press", "anyway", "asked", line)
		}
	}
	pupil.send("/rounds/new", "course", course, "date", "2026-10-03")
	pupil.send("/account", "name", longName, "target", "79", "boundary", "50", "far", "m", "green", "m", "clubs", strings.Repeat("driver-of-my-grandfather ", 6))
	pages = "/players/" + pupil.part(`/players/(\d+)/`, pupil.body("/coaching", nil))
	number := strings.TrimPrefix(pages, "/players/")
	token := pupil.part(`token=(\w+)`, pupil.body("/coaching/invite", url.Values{}))
	coach.send("/coaching/accept", "player", number, "token", token)
	pupil.send("/coaching/confirm", "coach", pupil.part(`name="coach" value="(\d+)"`, pupil.body("/coaching", nil)))
	seen := strings.TrimPrefix(round, "/rounds/")
	coach.send(pages+"/notes", "round", seen, "on", "1.2", "body", "See "+longLink+"\n- "+longName)
	coach.send(pages+"/notes", "round", seen, "private", "yes", "body", longLink)
	coach.send(pages+"/notes", "day", "2026-10-01", "body", longLink)
	coach.send("/coaching/phrases", "body", longLink)
	pupil.send(pages+"/notes", "round", seen, "on", "2", "body", longLink)
	coach.send(pages+"/assignments", "what", longName, "amount", longLink[:190], "pass_mark", longName, "due", "2092-09-01")
	task := coach.part(`/assignments/(\d+)/`, coach.body(pages+"/lessons", nil))
	pupil.send(pages+"/assignments/"+task+"/results", "day", "2026-08-01", "result", longLink[:190])
	coach.send(pages+"/target", "target", "82.5")
	walked := coach.send(pages+"/walked", "course", course, "date", "2026-10-02")
	for i, line := range awkwardRound[:3] {
		coach.send(strings.TrimSuffix(walked, "1")+fmt.Sprint(i+1), "line", line, "version", "0", "press", "anyway", "asked", line)
	}
	pupil.send("/marks", "day", "2026-10-02", "what", longName)
	for i, club := range []string{longName[:40], "driver-of-my-grandfather", "pw"} {
		pupil.send(pages+"/run-out", "entered", fmt.Sprint(i), "pairs", "12.25 21.75, 13 23, 14.5 24, 9 60, 16 27, 59.5 99.5", "club", club, "lie", "fairway", "green", "fast", "unit", "paces", "day", "2026-10-02")
	}
	for i := range 4 {
		pupil.send(pages+"/drills/start-line", "entered", fmt.Sprint(i), "day", fmt.Sprintf("2026-10-%02d", 1+i), "feet", "9.5", "tries", "mmlrsgmmmmmm", "minutes", "240", "note", longLink[:190])
	}
	pupil.send(pages + "/plans")
	app.mails(t, number, name)
	return pupil, coach, pages, round
}

// signedIn makes a browser that of somebody who has signed in without one.
func (p person) signedIn(ctx context.Context) {
	p.t.Helper()
	at, err := url.Parse(app.URL)
	if err != nil {
		p.t.Fatal(err)
	}
	var cookies []*network.CookieParam
	for _, c := range p.Jar.Cookies(at) {
		cookies = append(cookies, &network.CookieParam{Name: c.Name, Value: c.Value, URL: app.URL, HTTPOnly: true})
	}
	do(p.t, ctx, chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Call(ctx, network.SetCookies, network.SetCookiesParams{Cookies: cookies})
		return err
	}))
}

// No page is wider than the screen with a legal round, names and notes that are
// hard to show.
func TestAwkwardPagesFit(t *testing.T) {
	t.Parallel()
	pupil, coach, pages, round := awkward(t, "awkward")
	ctx := tab(t, 360, true)
	plan := pages + "/plans/" + pupil.part(`/plans/(\d+)`, pupil.body(pages+"/plan", nil))
	fit := func(paths ...string) {
		for _, path := range paths {
			do(t, ctx, chromedp.Navigate(app.URL+path))
			evaluates(t, ctx, `document.querySelectorAll("details").forEach((d) => { d.open = true; }); ""`)
			for _, width := range []int64{320, 360, 640, 1280} {
				fits(t, ctx, path, width)
			}
		}
	}
	pupil.signedIn(ctx)
	do(t, ctx, chromedp.Navigate(app.URL+pages+"/play/1"))
	waitFor(t, ctx, "the plan of the round is worked out", `document.querySelector(".carry-card") && !document.body.textContent.includes("updates by itself")`)
	fit("/rounds", round, round+"?saved=card", round+"/details", round+"/holes/1", round+"/holes/1/shots", "/rounds/new", "/courses", "/courses/new", pages+"/months", pages+"/handicap", pages+"/lessons", pages+"/report", pages+"/plan", pages+"/run-out", pages+"/run-out?distance=23&edge=17&lie=fairway&speed=fast&slope=level", pages+"/start-line", pages+"/drills/bunker",
		pages+"/play", pages+"/play/1", pages+"/play/1/card", pages+"/play/1/holes/6", pages+"/play/1/holes/3", pages+"/bag", "/courses/1/pictures", "/courses/1/holes/6/picture",
		"/coaching", "/account", "/import", "/removed", "/welcome", "/help", pages+"/months/behind?in=1&row=approach",
		"/notices", "/notices/mail/confirm?token=awkward&player="+strings.TrimPrefix(pages, "/players/"), "/notices/mail/end?token=awkward&player="+strings.TrimPrefix(pages, "/players/"), pages+"/log", plan, pages+"/drills/start-line", pages+"/sessions/"+pupil.part(`/sessions/(\d+)`, pupil.body(pages+"/log", nil)))
	do(t, ctx, chromedp.Navigate(app.URL+"/account"), Press(`button[name="feed"][value="on"]`), chromedp.WaitReady(".notice code"))
	fits(t, ctx, "the address of a feed", 320)
	fit("/account")
	coach.signedIn(ctx)
	fit(plan, "/coaching", "/coaching/phrases", "/coaching/squad", "/coaching/squad?who=all", "/coaching/squad/sheet?who=all", pages+"/beside", pages, pages+"/walked", pages+"/walked/"+coach.part(`/walked/(\d+)"`, coach.body(pages+"/walked", nil)), pages+"/walked/"+coach.part(`/walked/(\d+)"`, coach.body(pages+"/walked", nil))+"/holes/4", pages+"/lessons", pages+"/rounds", pages+round, pages+round+"?on=1.2", pages+"/months", pages+"/report", pages+"/plan", pages+"/run-out?distance=23&edge=17&lie=fairway&speed=fast&slope=level", pages+"/start-line", pages+"/drills/bunker", "/coaching/looks", "/notices", pages+"/log", pages+"/drills/start-line")
	if err := SignInAs(ctx, app, Steward); err != nil {
		t.Fatal(err)
	}
	fit("/accounts", "/account")
}

// On the phone the first round stands on the first screen, its day first,
// and is a line that a thumb can hit; a form that comes back deep in a page is in
// sight.
func TestTheFirstScreenOfThePhone(t *testing.T) {
	ctx := tab(t, 360, false)
	if err := SignIn(ctx, app); err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{"/players/2/lessons", "/notices", "/rounds"} { // other tests write to this player: what is new is read first
		do(t, ctx, Screen(360, 740, false), chromedp.Navigate(app.URL+path))
	}
	row := evaluates(t, ctx, `(() => {
		const row = document.querySelector(".round-book .round-line"), box = row.getBoundingClientRect(), of = (c) => row.querySelector(c).getBoundingClientRect();
		const hit = document.elementFromPoint(box.left + 8, box.bottom - 8).closest("a");
		return [box.bottom <= innerHeight, box.height >= 44, of("th").left < of(".score-cell").left, of(".score-cell").left < of(".over-cell").left, !!hit].join();
	})()`)
	if row != "true,true,true,true,true" {
		t.Errorf("in sight, high enough, the day first, then the score, all of it a link: %s", row)
	}
	do(t, ctx, chromedp.Navigate(app.URL+"/players/2/lessons"))
	evaluates(t, ctx, `document.querySelectorAll("details").forEach((d) => { d.open = true; }); ""`)
	do(t, ctx, Press(`form[action$="/assignments"] button`), chromedp.WaitReady(".fault-summary"))
	waitFor(t, ctx, "the page begins at what is wrong, in sight", `(() => { const s = document.activeElement, box = s.getBoundingClientRect(); return s.matches(".notice.faulty.fault-summary") && box.top >= 0 && box.bottom <= innerHeight; })()`)
}
