package handlers

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
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
	robin.mustSee(alone, "The last ten rounds, from ", "Usual", "so their figures are not shown")
	coach.mustSee(coach.get("/players/1"), `href="/players/1/beside"`)
	robin.mustSee(robin.get("/players/1/plan"), `href="/players/1/beside"`)
	for i := range 5 {
		s.member(fmt.Sprintf("peer%d", i))
		withSeason(t, s.store, golf.PlayerID(3+i), 84, "2026-03-01", 3, 11)
	}
	kept := func() []db.Peer {
		t.Helper()
		if err := s.server.keepPeers(t.Context()); err != nil {
			t.Fatal(err)
		}
		all, err := s.store.Peers(t.Context(), 1, 1, analysis.EngineVersion(), 0, 200)
		if err != nil {
			t.Fatal(err)
		}
		return all
	}
	all := kept()
	if len(all) != 5 {
		t.Fatalf("%d others are kept", len(all))
	}
	level := 0.
	if _, err := fmt.Sscanf(regexp.MustCompile(`a score of (\d+\.?\d*)`).FindString(alone.body), "a score of %g", &level); err != nil {
		t.Fatal(err)
	}
	for i, o := range all { // wherever luck has put them
		o.Level = level
		if err := s.store.SavePeer(t.Context(), golf.PlayerID(3+i), analysis.EngineVersion(), o); err != nil {
			t.Fatal(err)
		}
	}
	for _, seen := range []struct {
		by   visitor
		told string
	}{{robin, "Others here are five players who score "}, {coach, "robin not among them"}} {
		a := seen.by.get("/players/1/beside")
		seen.by.mustSee(a, seen.told, "Others here")
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
	if all := kept(); len(all) != 4 {
		t.Errorf("%d others are kept after one has nine rounds", len(all))
	}
	robin.mustSee(robin.get("/coaching/looks"), "Golfers of the same score")
}
