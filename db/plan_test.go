package db_test

import (
	"strings"
	"testing"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// Among many others' rounds a player's own are found by an index, never by
// reading all of a table.
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
