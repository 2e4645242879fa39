package db_test

import (
	"strings"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// A player's own rounds are found among those of many others by an index, never by
// reading a whole table.
func TestAPlayersRoundsAreFoundByIndex(t *testing.T) {
	url := dbtest.Clone(t)
	s, err := db.Open(t.Context(), url)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	a := newPlayer(t, s, "a@example.org")
	for range 40 {
		r := aRound()
		for i := range r.Holes {
			r.Holes[i] = entered(0)
			r.Holes[i].Number, r.Holes[i].Length = i+1, 384*golf.Yard
		}
		if _, err := s.NewRound(t.Context(), a, r); err != nil {
			t.Fatal(err)
		}
	}
	dbtest.Crowd(t, url, 50)
	for name, sql := range map[string]string{"rounds": db.PlayedRounds, "shots": db.PlayedShots} {
		plan := dbtest.Plan(t, url, sql, pgx.StrictNamedArgs{"asker": a, "who": a})
		if strings.Contains(plan, "Seq Scan") || !strings.Contains(plan, "player_id = ") {
			t.Errorf("%s:\n%s", name, plan)
		}
	}
}

// For a coach who has a few of many players as pupils, the roster finds rounds, holes
// and summaries by index.
func TestTheRosterIsFoundByIndex(t *testing.T) {
	url := dbtest.Clone(t)
	s, err := db.Open(t.Context(), url)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	pupil, coach := newPlayer(t, s, "a@example.org"), newPlayer(t, s, "b@example.org")
	for range 30 {
		r := aRound()
		r.Holes[0] = entered(0)
		r.Holes[0].Length = 384 * golf.Yard
		if _, err := s.NewRound(t.Context(), pupil, r); err != nil {
			t.Fatal(err)
		}
	}
	dbtest.Crowd(t, url, 300)
	dbtest.Exec(t, url, "insert into round_summaries (player_id, round_id, made_for, summary, digest) select player_id, id, '1', ''::bytea, ''::bytea from rounds")
	dbtest.Exec(t, url, "insert into coachings (player_id, coach_id, confirmed_at) select id, 2, now() from players where id <> 2 limit 10")
	dbtest.Exec(t, url, "analyze")
	for name, of := range map[string]struct {
		sql  string
		args pgx.StrictNamedArgs
	}{
		"roster":    {db.RosterStatement, pgx.StrictNamedArgs{"coach": coach, "month": time.Date(2026, 5, 1, 0, 0, 0, 0, time.UTC)}},
		"summaries": {db.SummariesStatement, pgx.StrictNamedArgs{"coach": coach, "from": nil, "to": nil, "most": 24, "pupils": nil, "bodies": false}},
	} {
		plan := dbtest.Plan(t, url, of.sql, of.args)
		for _, table := range []string{"rounds", "holes", "shots", "round_summaries"} {
			if strings.Contains(plan, "Seq Scan on "+table+" ") {
				t.Errorf("%s reads all of %s:\n%s", name, table, plan)
			}
		}
	}
}
