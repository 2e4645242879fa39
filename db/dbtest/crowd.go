package dbtest

import (
	"fmt"
	"testing"

	"github.com/jackc/pgx/v5"
)

// Crowd adds players to the database at a URL, each with a copy of every round of the
// first player, and lets Postgres collect its statistics.
func Crowd(t testing.TB, url string, players int) {
	t.Helper()
	c, err := pgx.Connect(t.Context(), url)
	if err != nil {
		t.Fatal(err)
	}
	defer c.Close(t.Context())
	for _, sql := range []string{
		`insert into players (email, name, password_hash) select 'crowd' || i || '@example.org', 'One of many', 'hash' from generate_series(1, $1::int) i`,
		`insert into rounds (player_id, id, name, played_on, course, tee, target, boundary_yd, par18) overriding system value
		 select p.id, r.id + p.id * 1000000, r.name, r.played_on, r.course, r.tee, r.target, r.boundary_yd, r.par18
		 from rounds r, players p where r.player_id = 1 and p.name = 'One of many' and $1::int > 0`,
		`insert into holes (player_id, round_id, number, par, length_in, line, far_unit, green_unit, picked_up, score_only)
		 select p.id, h.round_id + p.id * 1000000, h.number, h.par, h.length_in, h.line, h.far_unit, h.green_unit, h.picked_up, h.score_only
		 from holes h, players p where h.player_id = 1 and p.name = 'One of many' and $1::int > 0`,
		`insert into shots (player_id, round_id, hole, number, lie, distance_in, unit, about, penalty, short_sided, green_in, club, miss, word)
		 select p.id, s.round_id + p.id * 1000000, s.hole, s.number, s.lie, s.distance_in, s.unit, s.about, s.penalty, s.short_sided, s.green_in, s.club, s.miss, s.word
		 from shots s, players p where s.player_id = 1 and p.name = 'One of many' and $1::int > 0`,
	} {
		if _, err := c.Exec(t.Context(), sql, players); err != nil {
			t.Fatal(err)
		}
	}
	if _, err := c.Exec(t.Context(), "analyze"); err != nil {
		t.Fatal(err)
	}
}

// LetIn makes a player the coach of every other player of the database at a URL.
func LetIn(t testing.TB, url string, coach int) {
	t.Helper()
	Exec(t, url, fmt.Sprintf(`insert into coachings (player_id, coach_id, confirmed_at) select id, %d, now() from players where id <> %[1]d`, coach))
	Exec(t, url, fmt.Sprintf(`update players set teaches = true where id = %d`, coach))
}

// Exec runs a statement in the database at a URL.
func Exec(t testing.TB, url, sql string) {
	t.Helper()
	c, err := pgx.Connect(t.Context(), url)
	if err != nil {
		t.Fatal(err)
	}
	defer c.Close(t.Context())
	if _, err := c.Exec(t.Context(), sql); err != nil {
		t.Fatal(err)
	}
}

// Plan returns how Postgres would run a statement with named arguments.
func Plan(t testing.TB, url, sql string, args pgx.StrictNamedArgs) string {
	t.Helper()
	c, err := pgx.Connect(t.Context(), url)
	if err != nil {
		t.Fatal(err)
	}
	defer c.Close(t.Context())
	rows, err := c.Query(t.Context(), "explain "+sql, args)
	if err != nil {
		t.Fatal(err)
	}
	lines, err := pgx.CollectRows(rows, pgx.RowTo[string])
	if err != nil {
		t.Fatal(err)
	}
	plan := ""
	for _, l := range lines {
		plan += l + "\n"
	}
	return plan
}
