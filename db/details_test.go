package db_test

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/db"
)

// Day, course, target and card of a round can be corrected. A tee shot that was as
// long as the hole follows the hole's new length, others keep theirs.
func TestDetailsAreCorrected(t *testing.T) {
	p := newPair(t)
	second := entered(0)
	second.Number, second.Par, second.PickedUp = 2, 3, false
	second.Shots[0].Distance = 150 * golf.Yard // from a tee further forward
	p.must(p.SaveHole(p.ctx, p.pupil, p.round, second))
	id := p.write(p.coach, db.Note{Kind: db.KindNote, RoundID: &p.round, Body: "Safe side."})
	before, err := p.Round(p.ctx, p.pupil, p.round)
	p.must(err)
	p.must(p.SaveSummaries(p.ctx, p.pupil, p.pupil, []db.KeptSummary{{Round: before, MadeFor: "1", Summary: []byte("x")}}))
	to := db.Details{PlayedOn: time.Date(2026, 4, 30, 0, 0, 0, 0, time.UTC), Course: "Quarry Hill", Tee: "yellow", Target: 84, Par18: 71, Conditions: "wind", First: 2}
	for _, h := range before.Holes {
		card := h.Card()
		card.Par, card.Length, card.Index = card.Par+1, card.Length+10*golf.Yard, h.Number
		to.Holes = append(to.Holes, card)
	}
	p.refused(map[string]error{"a stranger": p.SaveDetails(p.ctx, p.stranger, p.round, to), "the coach": p.SaveDetails(p.ctx, p.coach, p.round, to)})
	p.must(p.SaveDetails(p.ctx, p.pupil, p.round, to))
	after, err := p.Round(p.ctx, p.pupil, p.round)
	p.must(err)
	want := before
	if want.ChangedAt = after.ChangedAt; !after.ChangedAt.After(before.ChangedAt) {
		t.Error("corrected details are no change of the round")
	}
	want.PlayedOn, want.Course, want.Tee, want.Target, want.Par18, want.Conditions, want.FirstHole = to.PlayedOn, to.Course, to.Tee, to.Target, to.Par18, to.Conditions, 2
	want.Holes = nil
	for i, h := range before.Holes {
		h.Par, h.Length, h.Index, h.Version = h.Par+1, h.Length+10*golf.Yard, i+1, h.Version+1
		if i == 0 {
			h.Shots[0].Distance += 10 * golf.Yard
		}
		want.Holes = append(want.Holes, h)
	}
	if diff := cmp.Diff(want, after); diff != "" {
		t.Error(diff)
	}
	if got, _ := p.reads(p.pupil); !got[id].Day.Equal(to.PlayedOn) {
		t.Errorf("the note stayed on %v", got[id].Day)
	}
	if rows, err := p.Summaries(p.ctx, p.coach, db.Chosen{}); err != nil || len(rows) != 1 || rows[0].MadeFor != "" {
		t.Errorf("a summary of the round as it was: %+v, %v", rows, err)
	}
}

// A round belongs to the shared course that is chosen for it, and to none once the
// name of its course changes.
func TestTheCourseOfARoundIsCorrected(t *testing.T) {
	p := newPair(t)
	course, err := p.SaveCourse(p.ctx, p.stranger, db.Course{Name: "Quarry Hill", Holes: threeHoles()})
	p.must(err)
	to := db.Details{PlayedOn: time.Date(2026, 5, 2, 0, 0, 0, 0, time.UTC), Course: "Quarry Hill", CourseID: &course, Target: 79, Par18: 72}
	for _, c := range []struct {
		name string
		id   *golf.CourseID
		want bool
	}{{"Quarry Hill", &course, true}, {"Quarry Hill", nil, true}, {"Quarry Hills", nil, false}} {
		to.Course, to.CourseID = c.name, c.id
		p.must(p.SaveDetails(p.ctx, p.pupil, p.round, to))
		if r, err := p.Round(p.ctx, p.pupil, p.round); err != nil || (r.CourseID != nil) != c.want {
			t.Errorf("%s: of course %v, %v", c.name, r.CourseID, err)
		}
	}
}
