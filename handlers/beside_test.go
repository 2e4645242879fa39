package handlers

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"strokeledger/analysis/golf"
)

// A player and the coach see the player beside golfers of the same score; other players
// are told of when there are five, all together, and none of them is named.
func TestBesideOthersOfTheSameScore(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	robin, coach := s.member("robin"), s.member("ines")
	coach.letIn(robin, 1, 2, "")
	robin.mustSee(robin.get("/players/1/beside"), "It takes five rounds")
	withSeason(t, s.store, 1, 84, "2026-03-01", 3, 11)
	alone := robin.get("/players/1/beside")
	robin.mustSee(alone, "The last ten rounds, from ", "Usual", "so nothing is told of them")
	coach.mustSee(coach.get("/players/1"), `href="/players/1/beside"`)
	robin.mustSee(robin.get("/players/1/plan"), `href="/players/1/beside"`)
	for i := range 5 {
		s.member(fmt.Sprintf("peer%d", i))
		withSeason(t, s.store, golf.PlayerID(3+i), 84, "2026-03-01", 3, 11)
	}
	if err := s.server.keepPeers(t.Context()); err != nil {
		t.Fatal(err)
	}
	for who, told := range map[visitor]string{robin: "Others here are five players who score ", coach: "robin not among them"} {
		a := who.get("/players/1/beside")
		who.mustSee(a, told, "Others here")
		if strings.Contains(a.body, "peer") {
			t.Error("another player is named")
		}
	}
	latest, err := s.store.SummariesOf(t.Context(), 3, 3, 2) // of eleven
	for _, r := range latest {
		err = errors.Join(err, s.store.RemoveRound(t.Context(), 3, r.RoundID))
	}
	if err != nil {
		t.Fatal(err)
	}
	if err := s.server.keepPeers(t.Context()); err != nil {
		t.Fatal(err)
	}
	robin.mustSee(robin.get("/players/1/beside"), "so nothing is told of them")
	robin.mustSee(robin.get("/coaching/looks"), "Golfers of the same score")
}
