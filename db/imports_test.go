package db_test

import (
	"errors"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/db"
)

// A waiting file belongs to its player, and can be imported once.
func TestAFileIsImportedOnce(t *testing.T) {
	p := newPair(t)
	p.must(p.SavePending(p.ctx, p.pupil, []byte("a file")))
	if _, err := p.PopPending(p.ctx, p.stranger); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("a stranger: %v", err)
	}
	failed := errors.New("failed")
	err := p.Tx(p.ctx, func(tx *db.Store) error {
		_, err := tx.PopPending(p.ctx, p.pupil)
		p.must(err)
		return failed
	})
	if err != failed {
		t.Fatal(err)
	}
	if file, err := p.PopPending(p.ctx, p.pupil); err != nil || string(file) != "a file" {
		t.Errorf("after a transaction that failed: %q %v", file, err)
	}
	if _, err := p.PopPending(p.ctx, p.pupil); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("a second time: %v", err)
	}
}

// Imported rounds are stored like rounds that were entered. Those they replace can be
// brought back, and a stranger sees none of them.
func TestRoundsAreReplaced(t *testing.T) {
	p := newPair(t)
	before, err := p.Round(p.ctx, p.pupil, p.round)
	p.must(err)
	p.must(p.ReplaceRounds(p.ctx, p.pupil, []db.Round{before}))
	ids, err := p.RoundIDs(p.ctx, p.pupil)
	p.must(err)
	if len(ids) != 1 || ids[0] == p.round {
		t.Fatalf("%v", ids)
	}
	for _, who := range []golf.PlayerID{p.stranger, p.coach} {
		none, err := p.RoundIDs(p.ctx, who)
		named, failed := p.RoundsNamed(p.ctx, who, []string{before.Name})
		if len(none) != 0 || len(named) != 0 || err != nil || failed != nil {
			t.Errorf("%d sees %v %v, %v %v", who, none, named, err, failed)
		}
	}
	named, err := p.RoundsNamed(p.ctx, p.pupil, []string{before.Name, "another"})
	p.must(err)
	if len(named) != 1 || len(named[0].Holes) != len(before.Holes) {
		t.Fatalf("%+v", named)
	}
	for i, h := range named[0].Holes {
		if was := before.Holes[i]; h.Line != was.Line || len(h.Shots) != len(was.Shots) || h.Units != was.Units || h.Length != was.Length {
			t.Errorf("%+v, was %+v", h, was)
		}
	}
	p.must(p.RestoreRound(p.ctx, p.pupil, p.round))
	if ids, err := p.RoundIDs(p.ctx, p.pupil); err != nil || len(ids) != 2 {
		t.Errorf("%v %v", ids, err)
	}
	twice := before
	twice.Holes = append(twice.Holes, twice.Holes[0])
	if _, err := p.AddRounds(p.ctx, p.pupil, []db.Round{before, twice}); err == nil {
		t.Error("a hole twice")
	}
	if ids, _ := p.RoundIDs(p.ctx, p.pupil); len(ids) != 2 {
		t.Errorf("half of it was kept: %v", ids)
	}
}
