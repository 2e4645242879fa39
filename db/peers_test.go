package db_test

import (
	"errors"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/db"
)

// What is kept of a player is told to others without a name and never to the player;
// to set it beside somebody one must be allowed to see them.
func TestPeersAreOthers(t *testing.T) {
	p := newPair(t)
	keep := func(who golf.PlayerID, level float64) {
		t.Helper()
		p.must(p.SavePeer(p.ctx, who, "1", db.Peer{Level: level, Beyond: []byte{byte(level)}}))
	}
	keep(p.pupil, 84)
	keep(p.coach, 82)
	keep(p.coach, 83)
	keep(p.stranger, 86)
	levels := func(asker golf.PlayerID, madeFor string) (all []float64) {
		t.Helper()
		peers, err := p.Peers(p.ctx, asker, p.pupil, madeFor, 80, 86)
		p.must(err)
		for _, o := range peers {
			all = append(all, o.Level)
		}
		return all
	}
	for _, asker := range []golf.PlayerID{p.pupil, p.coach} {
		if got := levels(asker, "1"); len(got) != 1 || got[0] != 83 {
			t.Errorf("player %d is told of %v", asker, got)
		}
	}
	if got := levels(p.pupil, "2"); got != nil {
		t.Errorf("by another engine: %v", got)
	}
	if _, err := p.Peers(p.ctx, p.stranger, p.pupil, "1", 0, 200); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("a stranger: %v", err)
	}
	p.must(p.KeepPeers(p.ctx, []golf.PlayerID{p.pupil}))
	if got := levels(p.pupil, "1"); got != nil {
		t.Errorf("after the others were forgotten: %v", got)
	}
	many, err := p.Sizeable(p.ctx, 1)
	p.must(err)
	if len(many) != 1 || many[0].ID != p.pupil || many[0].Target == 0 || many[0].BoundaryYd == 0 {
		t.Errorf("with a round: %+v", many)
	}
	if many, err := p.Sizeable(p.ctx, 99); err != nil || len(many) != 0 {
		t.Errorf("with 99 rounds: %+v, %v", many, err)
	}
}

func TestSummariesOfOnePlayer(t *testing.T) {
	p := newPair(t)
	for asker, want := range map[golf.PlayerID]int{p.pupil: 1, p.coach: 1, p.stranger: 0} {
		rows, err := p.SummariesOf(p.ctx, asker, p.pupil, 10)
		p.must(err)
		if len(rows) != want {
			t.Errorf("player %d reads %d", asker, len(rows))
		}
	}
}
