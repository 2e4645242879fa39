package db_test

import (
	"fmt"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/db"
)

// There is one Look for each day, coach and kind of page. All the statements that a
// coach opens in a day are one Look, which names every round.
func TestLooksAreGrouped(t *testing.T) {
	p := newPair(t)
	p.must(p.RecordLook(p.ctx, p.other, p.pupil, looked(db.LookLessons, 0)))
	p.must(p.RecordLook(p.ctx, p.coach, p.pupil, looked(db.LookMonths, 0)))
	var rounds []golf.RoundID
	for n := range 12 {
		r := aRound()
		r.Name = fmt.Sprintf("round %d", n)
		id, err := p.NewRound(p.ctx, p.pupil, r)
		p.must(err)
		rounds = append(rounds, id)
	}
	for range 2 {
		for _, id := range rounds {
			p.must(p.RecordLook(p.ctx, p.coach, p.pupil, looked(db.LookStatement, id)))
		}
	}
	p.must(p.RemoveRound(p.ctx, p.pupil, rounds[10]))
	looks, err := p.Looks(p.ctx, p.pupil, 0, 9)
	if err != nil || len(looks) != 3 {
		t.Fatalf("%+v, %v", looks, err)
	}
	first := looks[0]
	if first.Kind != db.LookStatement || first.Times != 24 || len(first.Rounds) != 12 || first.Rounds[0].ID != rounds[11] || first.Rounds[0].Times != 2 || *first.Rounds[0].Course != aRound().Course {
		t.Errorf("%+v", first)
	}
	if first.Rounds[0].Removed || !first.Rounds[1].Removed {
		t.Errorf("what is removed: %+v", first.Rounds)
	}
	if looks[1].Kind != db.LookMonths || looks[2].Kind != db.LookLessons || looks[1].Rounds != nil {
		t.Errorf("%+v", looks)
	}
	if rest, err := p.Looks(p.ctx, p.pupil, 1, 1); err != nil || len(rest) != 1 || rest[0].Kind != db.LookMonths {
		t.Errorf("the second line: %+v, %v", rest, err)
	}
	if err := p.RecordLook(p.ctx, p.coach, p.pupil, looked(db.LookStatement, 0)); err == nil {
		t.Error("a statement of no round is recorded")
	}
	if err := p.RecordLook(p.ctx, p.coach, p.pupil, looked("You owe me", 0)); err == nil {
		t.Error("a text of the coach's is recorded")
	}
}
