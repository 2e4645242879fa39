package browser

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// crowded makes a coach of 63 pupils, each with a name of 48 letters and rounds that
// are hard to show, and returns the pages of the first and the path of a round.
func crowded(t *testing.T) (coach person, pages, round string) {
	t.Helper()
	_, coach, pages, round = awkward(t, "many")
	first := strings.TrimPrefix(pages, "/players/")
	app.statement(t, `
		insert into players (email, name, password_hash, zone) select 'crowd' || i || '@example.org', right('`+longName+`' || i, 48), 'hash', 'Europe/Vienna' from generate_series(1, 62) i;
		insert into rounds (player_id, id, name, played_on, course, tee, target, boundary_yd, par18) overriding system value
			select p.id, r.id + p.id * 1000000, r.name, r.played_on, r.course, r.tee, r.target, r.boundary_yd, r.par18
			from rounds r, players p where r.player_id = `+first+` and p.email like 'crowd%';
		insert into holes (player_id, round_id, number, par, length_in, line, far_unit, green_unit, picked_up, score_only)
			select p.id, h.round_id + p.id * 1000000, h.number, h.par, h.length_in, h.line, h.far_unit, h.green_unit, h.picked_up, h.score_only
			from holes h, players p where h.player_id = `+first+` and p.email like 'crowd%';
		insert into shots (player_id, round_id, hole, number, lie, distance_in, unit, about, penalty, short_sided, green_in, club, miss, word)
			select p.id, s.round_id + p.id * 1000000, s.hole, s.number, s.lie, s.distance_in, s.unit, s.about, s.penalty, s.short_sided, s.green_in, s.club, s.miss, s.word
			from shots s, players p where s.player_id = `+first+` and p.email like 'crowd%';
		insert into coachings (player_id, coach_id, confirmed_at) select p.id, c.coach_id, now() from players p, coachings c where c.player_id = `+first+` and p.email like 'crowd%';`)
	return coach, pages, round
}

// needed is how many sheets of a paper what the page in a tab prints would fill, were
// it not cut into sheets.
func needed(t *testing.T, ctx context.Context, paper [2]float64) float64 {
	t.Helper()
	const inch, margins = 96, 2 * 14 / 25.4 // px and in; static/print.css
	do(t, ctx, Screen(int64((paper[0]-margins)*inch), 100, false), chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
		return err
	}))
	high, err := chromedp.Run(ctx, chromedp.Evaluate[float64](`document.body.getBoundingClientRect().height`))
	if err != nil {
		t.Fatal(err)
	}
	do(t, ctx, Screen(1280, 740, false))
	return high / ((paper[1] - margins) * inch)
}

// A coach of 63 pupils with long names can read, use and print every page. axe-core looks
// at those that other tests do not show it.
func TestACoachOfMany(t *testing.T) {
	t.Parallel()
	coach, pages, round := crowded(t)
	ctx := tab(t, 1280, true)
	coach.signedIn(ctx)
	if n := strings.Count(coach.body("/coaching", nil), `class="pupil-open"`); n != 63 {
		t.Fatalf("the coach has %d pupils", n)
	}
	axe := []string{"/coaching", "/coaching/squad?who=all", "/coaching/squad/sheet?who=all", "/coaching/kept", "/coaching/phrases", pages, pages + "/walked"}
	for _, path := range append(axe, "/coaching/squad", "/coaching/looks", "/notices", pages+"/beside", pages+"/lessons", pages+"/rounds", pages+round+"?on=1.2", pages+"/months", pages+"/handicap",
		pages+"/report", pages+"/plan", pages+"/log", pages+"/run-out?distance=23&edge=17&lie=fairway&speed=fast&slope=level", pages+"/start-line", pages+"/drills/bunker") {
		if slices.Contains(axe, path) {
			visit(t, ctx, path)
		} else {
			do(t, ctx, chromedp.Navigate(app.URL+path))
		}
		evaluates(t, ctx, `document.querySelectorAll("details").forEach((d) => { d.open = true; }); ""`)
		fits(t, ctx, path, 320)
		fits(t, ctx, path, 1024) // with everything open
		n, content := sheets(t, ctx, path, papers["A4"]), needed(t, ctx, papers["A4"])
		if most := int(math.Ceil(content*1.15)) + 1; n > most {
			t.Errorf("%s takes %d sheets; what it prints would fill %.1f", path, n, content)
		}
	}
}
