package browser

import (
	"context"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// statement runs a statement in the database of the app, for what would take days.
func (a *App) statement(t *testing.T, sql string) {
	t.Helper()
	// Source of the file's lines: PostgreSQL 15, src/include/utils/pidfile.h: the fifth is the socket's folder.
	found, err := filepath.Glob(filepath.Join(a.folder, "data", "postgres", "*", "postmaster.pid"))
	if err != nil || len(found) != 1 {
		t.Fatalf("%q, %v", found, err)
	}
	said, err := os.ReadFile(found[0])
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(string(said), "\n")
	if len(lines) < 5 {
		t.Fatalf("%q", said)
	}
	if out, err := exec.Command("psql", "-X", "-q", "-v", "ON_ERROR_STOP=1", "-h", lines[4], "-U", "ledger", "-d", "postgres", "-c", sql).CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
}

// mails makes an account one that has chosen mail and waits to confirm its address, on an
// app that sends none.
func (a *App) mails(t *testing.T, player, token string) {
	t.Helper()
	a.statement(t, `insert into digests (player_id, every, token, due_at, asked, asked_hash, asked_at, asked_until)
		select id, 'daily', '`+token+`', '2099-01-01', email, sha256('`+token+`'), now(), now() + interval '3 days' from players where id = `+player+` on conflict (player_id) do nothing`)
}

// playing is a new player with a round of a hole, past the questions of the first visit.
func playing(t *testing.T, name string) (p person, pages, round string) {
	t.Helper()
	p = somebody(t, name)
	p.send("/welcome", "target", "79", "far", "yd", "green", "ft")
	course := p.part(`^/courses/(\d+)`, p.send("/courses/new", "name", "Nine of "+name, "holes", "9", "paste", awkwardCard))
	at := p.send("/rounds/new", "course", course, "date", "2026-10-02")
	round = at[:strings.Index(at, "/holes/")]
	p.send(round+"/holes/1", "line", "r150 g20 2", "version", "0", "press", "anyway")
	return p, "/players/" + p.part(`/players/(\d+)/`, p.body("/coaching", nil)), round
}

// letsIn makes somebody the coach of a player.
func (p person) letsIn(coach person, pages string) {
	p.t.Helper()
	token := p.part(`token=(\w+)`, p.body("/coaching/invite", url.Values{}))
	coach.send("/coaching/accept", "player", strings.TrimPrefix(pages, "/players/"), "token", token)
	p.send("/coaching/confirm", "coach", p.part(`(?s)action="/coaching/confirm".*?name="coach" value="(\d+)"`, p.body("/coaching", nil)))
}

// opened is a browser in which somebody is signed in.
func (p person) opened(width int64) context.Context {
	p.t.Helper()
	ctx := tab(p.t, width, true)
	p.signedIn(ctx)
	return ctx
}

// A link says what it is to whoever opens it: to its maker, to the coach before and after
// accepting and after the approval, and to somebody else once it was used, withdrawn or
// has expired. It can be accepted in one of these states only.
func TestEveryStateOfAnInvitation(t *testing.T) {
	asks, teaches, other := somebody(t, "asks"), somebody(t, "teaches"), somebody(t, "other")
	for _, p := range []person{asks, teaches, other} {
		p.send("/welcome", "skip", "yes")
	}
	pupil, coach, third := asks.opened(360), teaches.opened(1280), other.opened(360)
	invites := func() string {
		t.Helper()
		do(t, pupil, chromedp.Navigate(app.URL+"/coaching"), Press(`form[action="/coaching/invite"] button`), chromedp.WaitReady(".notice code"))
		return evaluates(t, pupil, `document.querySelector(".notice code").textContent`)
	}
	state := func(ctx context.Context, link, want string, accepts bool) {
		t.Helper()
		do(t, ctx, chromedp.Navigate(link))
		if got := read(t, ctx, "main .lede"); !strings.Contains(got, want) {
			t.Errorf("%q, want %q", got, want)
		}
		if found := evaluates(t, ctx, `String(document.querySelector('form[action="/coaching/accept"]') !== null)`) == "true"; found != accepts {
			t.Errorf("%q can be accepted: %v", want, found)
		}
	}
	link := invites()
	state(pupil, link, "This is your own link.", false)
	state(coach, link, "would like you as a coach.", true)
	do(t, coach, Press(`form[action="/coaching/accept"] button`), chromedp.WaitReady(`section[aria-labelledby="coaches"]`))
	wants(t, coach, "You get access once your pupil approves you.")
	state(coach, link, "still has to approve you", false)
	state(third, link, "This link has been used.", false)
	do(t, pupil, chromedp.Navigate(app.URL+"/coaching"), Press(`form[action="/coaching/confirm"] button`), chromedp.WaitReady(`main:not(:has(form[action="/coaching/confirm"]))`))
	state(coach, link, "already.", false)
	withdrawn := invites()
	do(t, pupil, Press(`form[action="/coaching/revoke"] button`), chromedp.WaitReady(`main:not(:has(form[action="/coaching/revoke"]))`))
	wants(t, pupil, "Unused links no longer work.")
	state(third, withdrawn, "has withdrawn this link.", false)
	expired := invites()
	app.statement(t, `update coach_invitations set expires_at = now() - interval '1 hour' where used_at is null and revoked_at is null`)
	state(third, expired, "This link has expired.", false)
}

// What a coach is typing when the pupil ends the access is not lost: it is the coach's
// own private note from then on, the page says so, and the pupil never reads it.
func TestAnAccessEndsWhileTheCoachTypes(t *testing.T) {
	plays, pages, round := playing(t, "ends")
	types := somebody(t, "types")
	types.send("/welcome", "skip", "yes")
	plays.letsIn(types, pages)
	pupil, coach := plays.opened(360), types.opened(1280)
	do(t, coach, chromedp.Navigate(app.URL+pages+round), chromedp.WaitReady("table.statement-table"))
	evaluates(t, coach, `document.querySelector("#h1 details").open = true; ""`)
	do(t, coach, Press(`#h1 a[href*="on=1.1"]`), chromedp.WaitVisible("#write-1-body"))
	evaluates(t, coach, `(() => { const f = document.querySelector("#write-1-body"); f.value = "Half a club more, and slower."; f.dispatchEvent(new Event("input")); return ""; })()`)
	do(t, pupil, chromedp.Navigate(app.URL+"/coaching"), Press(`form[action="/coaching/end"] button`), chromedp.WaitReady(`button[name="sure"]`), Press(`button[name="sure"]`), chromedp.WaitReady(`main:not(:has(button[name="sure"]))`))
	do(t, coach, Press("#write-1 form button"), chromedp.WaitReady(".notice"))
	if at := pathOf(t, coach); at != "/coaching/kept" {
		t.Errorf("the coach is at %s", at)
	}
	wants(t, coach, "Your access to the pupil has ended. What you wrote is kept here as a private note of yours; the pupil cannot read it.", "Half a club more, and slower.")
	if left := evaluates(t, coach, `Object.keys(localStorage).filter((key) => key.startsWith("draft ")).join()`); left != "" {
		t.Errorf("the draft is kept besides: %s", left)
	}
	do(t, coach, chromedp.Navigate(app.URL+"/notices"))
	wants(t, coach, "has ended your access.")
	for _, path := range []string{round, pages + "/lessons"} {
		do(t, pupil, chromedp.Navigate(app.URL+path))
		if has(t, pupil, "Half a club more") {
			t.Errorf("%s shows it to the pupil", path)
		}
	}
}

// deletes deletes the account that a browser is signed in to, as its owner would.
func deletes(t *testing.T, ctx context.Context) {
	t.Helper()
	do(t, ctx, chromedp.Navigate(app.URL+"/account"), fill("#confirm", "a long password"), Press(`form[action="/account/delete"] button`), chromedp.WaitReady("section.sign-in"))
	wants(t, ctx, "Your account is deleted")
}

// When either account is deleted, what was shared stays with the pupil under the coach's
// name, what was private stays with the coach, and the other side is told.
func TestAnAccountIsDeletedOnEitherSide(t *testing.T) {
	plays, pages, round := playing(t, "stays")
	goes, keeps := somebody(t, "goes"), somebody(t, "keeps")
	number := strings.TrimPrefix(round, "/rounds/")
	for _, c := range []person{goes, keeps} {
		c.send("/welcome", "skip", "yes")
		plays.letsIn(c, pages)
		c.send(pages+"/notes", "round", number, "on", "1", "body", "Shared by "+c.name+".")
		c.send(pages+"/notes", "round", number, "on", "1", "body", "Private to "+c.name+".", "private", "yes")
	}
	pupil, leaving, staying := plays.opened(360), goes.opened(1280), keeps.opened(360)
	deletes(t, leaving)
	do(t, pupil, chromedp.Navigate(app.URL+"/notices"))
	wants(t, pupil, "goes has deleted the account, and no longer sees your pages.")
	do(t, pupil, chromedp.Navigate(app.URL+round))
	wants(t, pupil, "Shared by goes.", "steinhausenWolfesch", "Shared by keeps.")
	for _, secret := range []string{"Private to goes.", "Private to keeps."} {
		if has(t, pupil, secret) {
			t.Errorf("the pupil reads %q", secret)
		}
	}
	deletes(t, pupil)
	do(t, staying, chromedp.Navigate(app.URL+"/notices"))
	wants(t, staying, "stays has deleted the account. Any private notes of yours are kept.")
	do(t, staying, Press(`main a[href="/coaching/kept"]`), chromedp.WaitReady(".private-note"))
	wants(t, staying, "Private to keeps.", "stays")
	for _, gone := range []string{"Shared by keeps.", "Private to goes."} {
		if has(t, staying, gone) {
			t.Errorf("the coach reads %q", gone)
		}
	}
	do(t, staying, chromedp.Navigate(app.URL+pages))
	wants(t, staying, "There is no such page, or you do not have access to it.")
}
