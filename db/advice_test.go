package db_test

import (
	"slices"
	"testing"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// What a coach says of a hole is the pupil's and the coach's to read; what the pupil
// took, every coach's. Another proposal has to be answered anew.
func TestAdvice(t *testing.T) {
	p := newPair(t)
	course, err := p.SaveCourse(p.ctx, p.stranger, db.Course{Name: "Owl Fen", Tee: "white", Holes: threeHoles()})
	p.must(err)
	a := db.HoleAdvice{CourseID: course, Hole: 2, Note: "Left is dead.", Proposes: true, Club: "hybrid", SideYd: 6}
	advise := func(a db.HoleAdvice, want bool) {
		t.Helper()
		if changed, err := p.Advise(p.ctx, p.coach, p.pupil, a); err != nil || changed != want {
			t.Errorf("%v, %v", changed, err)
		}
	}
	var written time.Time
	sees := func(who golf.PlayerID, want ...db.AdviceAnswer) (id int64) {
		t.Helper()
		all, err := p.Advice(p.ctx, who, p.pupil, course)
		if err != nil || len(all) != len(want) {
			t.Fatalf("%d sees %+v, %v", who, all, err)
		}
		for i, one := range all {
			if one.Answer != want[i] || one.Coach == "" {
				t.Errorf("%d sees %+v", who, one)
			}
			id, written = one.ID, one.WrittenAt
		}
		return id
	}
	advise(a, true)
	advise(a, false)
	id := sees(p.pupil, "")
	sees(p.coach, "")
	sees(p.stranger)
	answer := func(take bool) {
		t.Helper()
		p.must(second(p.AnswerAdvice(p.ctx, p.pupil, course, 2, id, written, take)))
	}
	answer(true)
	sees(p.pupil, db.AdviceTaken)
	a.Note = "Left is water."
	advise(a, true)
	sees(p.coach, db.AdviceTaken)
	a.SideYd = 9
	shown := written
	advise(a, true)
	p.refused(map[string]error{
		"what is not there any more is taken":    second(p.AnswerAdvice(p.ctx, p.pupil, course, 2, id, shown, true)),
		"what is not there any more is declined": second(p.AnswerAdvice(p.ctx, p.pupil, course, 2, id, shown, false)),
	})
	sees(p.pupil, "")
	answer(false)
	sees(p.coach, db.AdviceDeclined)
	p.refused(map[string]error{
		"a stranger advises":         second(p.Advise(p.ctx, p.stranger, p.pupil, a)),
		"a player advises oneself":   second(p.Advise(p.ctx, p.pupil, p.pupil, a)),
		"the coach answers":          second(p.AnswerAdvice(p.ctx, p.coach, course, 2, id, written, true)),
		"a stranger answers":         second(p.AnswerAdvice(p.ctx, p.stranger, course, 2, id, written, true)),
		"another hole is answered":   second(p.AnswerAdvice(p.ctx, p.pupil, course, 1, id, written, true)),
		"a hole that is not there":   second(p.Advise(p.ctx, p.coach, p.pupil, db.HoleAdvice{CourseID: course, Hole: 9, Note: "x"})),
		"a course that is not there": second(p.Advise(p.ctx, p.coach, p.pupil, db.HoleAdvice{CourseID: course + 1, Hole: 1, Note: "x"})),
	})
	answer(true)
	a.Safe = "left"
	advise(a, true)
	sees(p.pupil, "")
	advise(db.HoleAdvice{CourseID: course, Hole: 2, Safe: "left"}, true)
	sees(p.pupil, "")
	answer(true)
	sees(p.coach, db.AdviceTaken)
	p.must(second(p.RemoveAdvice(p.ctx, p.coach, p.pupil, course, 2)))
	sees(p.pupil)
	advise(db.HoleAdvice{CourseID: course, Hole: 1, Note: "A note alone."}, true)
	p.refused(map[string]error{"a note is answered": second(p.AnswerAdvice(p.ctx, p.pupil, course, 1, sees(p.pupil, ""), written, true))})
	p.must(p.DeletePlayer(p.ctx, p.coach))
	if all, err := p.AllAdvice(p.ctx, p.pupil); err != nil || len(all) != 1 || all[0].Coach == "" || all[0].CoachID != nil {
		t.Errorf("what a coach said goes with the account: %+v, %v", all, err)
	}
	p.must(p.DeletePlayer(p.ctx, p.pupil))
}

// Of the proposals for a hole one is taken at most.
func TestOneProposalIsTaken(t *testing.T) {
	p := newPair(t)
	course, err := p.SaveCourse(p.ctx, p.pupil, db.Course{Name: "Owl Fen", Tee: "white", Holes: threeHoles()})
	p.must(err)
	other := newPlayer(t, p.Store, "other-coach@example.org")
	p.let(other, golf.Date{})
	for _, coach := range []golf.PlayerID{p.coach, other} {
		p.must(second(p.Advise(p.ctx, coach, p.pupil, db.HoleAdvice{CourseID: course, Hole: 1, Proposes: true, Club: "driver"})))
	}
	all, err := p.Advice(p.ctx, p.pupil, p.pupil, course)
	if err != nil || len(all) != 2 {
		t.Fatalf("%+v, %v", all, err)
	}
	for _, one := range all {
		p.must(second(p.AnswerAdvice(p.ctx, p.pupil, course, 1, one.ID, one.WrittenAt, true)))
	}
	all, err = p.Advice(p.ctx, p.pupil, p.pupil, course)
	if err != nil || all[0].Answer != db.AdviceDeclined || all[1].Answer != db.AdviceTaken {
		t.Errorf("%+v, %v", all, err)
	}
	if seen, err := p.Advice(p.ctx, p.coach, p.pupil, course); err != nil || len(seen) != 2 {
		t.Errorf("a coach does not see what was taken: %+v, %v", seen, err)
	}
}

// What a coach removed is nobody's to read or take; the coach can bring it back for
// thirty days, as it was answered, unless the coach has said something else since.
func TestRemovedAdviceComesBack(t *testing.T) {
	p := newPair(t)
	course, err := p.SaveCourse(p.ctx, p.pupil, db.Course{Name: "Owl Fen", Tee: "white", Holes: threeHoles()})
	p.must(err)
	other := newPlayer(t, p.Store, "other-coach@example.org")
	p.let(other, golf.Date{})
	a := db.HoleAdvice{CourseID: course, Hole: 2, Note: "Left is dead.", Proposes: true, Club: "hybrid", SideYd: 6}
	advised := func(want ...db.AdviceAnswer) []db.HoleAdvice {
		t.Helper()
		all, err := p.Advice(p.ctx, p.pupil, p.pupil, course)
		p.must(err)
		var got []db.AdviceAnswer
		for _, one := range all {
			got = append(got, one.Answer)
		}
		if !slices.Equal(got, want) {
			t.Errorf("%q, want %q", got, want)
		}
		return all
	}
	take := func(a db.HoleAdvice) {
		t.Helper()
		p.must(second(p.AnswerAdvice(p.ctx, p.pupil, course, 2, a.ID, a.WrittenAt, true)))
	}
	p.must(second(p.Advise(p.ctx, p.coach, p.pupil, a)))
	first := advised("")[0]
	id := first.ID
	take(first)
	p.refused(map[string]error{
		"another coach removes it": second(p.RemoveAdvice(p.ctx, other, p.pupil, course, 2)),
		"a stranger removes it":    second(p.RemoveAdvice(p.ctx, p.stranger, p.pupil, course, 2)),
		"the pupil removes it":     second(p.RemoveAdvice(p.ctx, p.pupil, p.pupil, course, 2)),
		"what is there comes back": second(p.RestoreAdvice(p.ctx, p.coach, p.pupil, id)),
	})
	remove := func() {
		t.Helper()
		gone, err := p.RemoveAdvice(p.ctx, p.coach, p.pupil, course, 2)
		if p.must(err); gone.ID != id || gone.Answer != db.AdviceTaken {
			t.Errorf("%+v", gone)
		}
	}
	remove()
	advised()
	if all, err := p.AllAdvice(p.ctx, p.pupil); err != nil || len(all) != 0 {
		t.Errorf("%+v, %v", all, err)
	}
	removed := func(want int) {
		t.Helper()
		gone, err := p.Removed(p.ctx, p.coach)
		if p.must(err); len(gone) != want || want == 1 && (gone[0].Kind != db.RemovedAdvice || gone[0].Text != "hole 2, Owl Fen, white" || gone[0].ID != id) {
			t.Errorf("%+v", gone)
		}
	}
	removed(1)
	p.refused(map[string]error{
		"removed twice":               second(p.RemoveAdvice(p.ctx, p.coach, p.pupil, course, 2)),
		"what is removed is answered": second(p.AnswerAdvice(p.ctx, p.pupil, course, 2, id, first.WrittenAt, true)),
		"another brings it back":      second(p.RestoreAdvice(p.ctx, other, p.pupil, id)),
	})
	p.must(second(p.RestoreAdvice(p.ctx, p.coach, p.pupil, id)))
	advised(db.AdviceTaken)
	// another coach's is taken meanwhile: of both, one is taken
	remove()
	p.must(second(p.Advise(p.ctx, other, p.pupil, a)))
	take(advised("")[0])
	p.must(second(p.RestoreAdvice(p.ctx, p.coach, p.pupil, id)))
	advised(db.AdviceDeclined, db.AdviceTaken)
	// the coach says something else meanwhile
	p.must(second(p.RemoveAdvice(p.ctx, p.coach, p.pupil, course, 2)))
	a.Note = "Right is dead."
	p.must(second(p.Advise(p.ctx, p.coach, p.pupil, a)))
	removed(0)
	p.refused(map[string]error{"beside what is said now": second(p.RestoreAdvice(p.ctx, p.coach, p.pupil, id))})
	dbtest.Exec(t, p.url, "update hole_advice set removed_at = now() - interval '40 days' where removed_at is not null")
	swept, err := p.Sweep(p.ctx)
	if p.must(err); swept["removed advice on holes"] != 1 {
		t.Errorf("%+v", swept)
	}
	p.must(second(p.RemoveAdvice(p.ctx, p.coach, p.pupil, course, 2)))
	p.must(p.DeletePlayer(p.ctx, p.coach))
	advised(db.AdviceTaken)
}
