package db_test

import (
	"errors"
	"slices"
	"testing"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// A lesson is arranged, moved and called off by the pupil and its coach, read by every
// coach who sees its day, and closed to everybody else.
func TestLessons(t *testing.T) {
	p := newPair(t)
	at := 17*60 + 30
	l := db.Lesson{CoachID: p.coach, Day: time.Date(2026, 6, 9, 0, 0, 0, 0, time.UTC), Starts: &at, Place: "The range", Aim: "Start line", Agreed: "Forty putts before."}
	id, err := p.Arrange(p.ctx, p.coach, p.pupil, l)
	p.must(err)
	later := l
	later.Day, later.Starts, later.Aim = l.Day.AddDate(0, 0, 7), nil, ""
	second, err := p.Arrange(p.ctx, p.pupil, p.pupil, later)
	p.must(err)
	read := func(asker golf.PlayerID, from golf.Date) []db.Lesson {
		t.Helper()
		all, err := p.Lessons(p.ctx, asker, p.pupil, from)
		p.must(err)
		return all
	}
	for _, asker := range []golf.PlayerID{p.pupil, p.coach, p.other} {
		all := read(asker, golf.Date{})
		if len(all) != 2 || all[0].ID != id || *all[0].Starts != at || all[0].Place != l.Place || all[0].Agreed != l.Agreed || all[0].CoachID != p.coach || all[0].Written || all[1].ID != second {
			t.Errorf("%d reads %+v", asker, all)
		}
	}
	if all := read(p.pupil, golf.DateOf(later.Day)); len(all) != 1 || all[0].ID != second {
		t.Errorf("from the second on: %+v", all)
	}
	if all := read(p.stranger, golf.Date{}); len(all) != 0 {
		t.Errorf("a stranger reads %+v", all)
	}
	l.ID, l.Place = id, "The putting green"
	stranger := db.Lesson{ID: id, CoachID: p.stranger, Day: l.Day}
	_, unseen := p.Lesson(p.ctx, p.stranger, p.pupil, id)
	_, forOther := p.Arrange(p.ctx, p.other, p.pupil, l)
	_, byStranger := p.Arrange(p.ctx, p.stranger, p.pupil, stranger)
	_, withStranger := p.Arrange(p.ctx, p.pupil, p.pupil, stranger)
	_, withSelf := p.Arrange(p.ctx, p.pupil, p.pupil, db.Lesson{CoachID: p.pupil, Day: l.Day})
	p.refused(map[string]error{"a stranger reads it": unseen, "another coach arranges it in the name of the first": forOther, "a stranger arranges one": byStranger,
		"with a stranger": withStranger, "with oneself": withSelf,
		"another coach moves it": p.Rearrange(p.ctx, p.other, p.pupil, l), "a stranger moves it": p.Rearrange(p.ctx, p.stranger, p.pupil, l),
		"another coach calls it off": p.CancelLesson(p.ctx, p.other, p.pupil, id), "a stranger calls it off": p.CancelLesson(p.ctx, p.stranger, p.pupil, id)})
	p.must(p.Rearrange(p.ctx, p.coach, p.pupil, l))
	if err := p.Rearrange(p.ctx, p.pupil, p.pupil, l); !errors.Is(err, golf.ErrConflict) {
		t.Errorf("changed twice from the same reading: %v", err)
	}
	if got, err := p.Lesson(p.ctx, p.pupil, p.pupil, id); err != nil || got.Place != l.Place || got.Changes != 1 {
		t.Errorf("%+v, %v", got, err)
	}
	p.write(p.coach, db.Note{Kind: db.KindLesson, Day: l.Day, Body: "The gate.", Private: true})
	if !read(p.coach, golf.Date{})[0].Written || read(p.pupil, golf.Date{})[0].Written {
		t.Error("written up for who can read the note, and for nobody else")
	}
	p.must(p.ShareFrom(p.ctx, p.pupil, p.other, golf.DateOf(later.Day)))
	if all := read(p.other, golf.Date{}); len(all) != 1 || all[0].ID != second {
		t.Errorf("let in from a later day, a coach reads %+v", all)
	}
}

// A lesson that was called off can be brought back, by whoever arranged it, for thirty
// days; it stays with the pupil when the coach's account goes, and goes with the pupil's.
func TestLessonsRemoved(t *testing.T) {
	p := newPair(t)
	dbtest.Exec(t, p.url, "update players set name = 'Ines' where email = 'b@example.org'")
	id, err := p.Arrange(p.ctx, p.coach, p.pupil, db.Lesson{CoachID: p.coach, Day: time.Date(2026, 6, 9, 0, 0, 0, 0, time.UTC), Aim: "Start line"})
	p.must(err)
	p.must(p.CancelLesson(p.ctx, p.pupil, p.pupil, id))
	p.refused(map[string]error{"twice": p.CancelLesson(p.ctx, p.pupil, p.pupil, id), "another coach": p.RestoreLesson(p.ctx, p.other, p.pupil, id)})
	for asker, n := range map[golf.PlayerID]int{p.pupil: 1, p.coach: 1, p.other: 0, p.stranger: 0} {
		gone, err := p.Removed(p.ctx, asker)
		if p.must(err); len(gone) != n || n > 0 && (gone[0].Kind != db.RemovedLesson || gone[0].Text != "Start line" || gone[0].ID != id) {
			t.Errorf("%d can bring back %+v", asker, gone)
		}
	}
	p.must(p.RestoreLesson(p.ctx, p.coach, p.pupil, id))
	p.must(p.DeletePlayer(p.ctx, p.coach))
	if l, err := p.Lesson(p.ctx, p.pupil, p.pupil, id); err != nil || l.Coach != "Ines" || l.CoachID != 0 || l.Changes != 1 {
		t.Errorf("%+v, %v", l, err)
	}
	p.must(p.CancelLesson(p.ctx, p.pupil, p.pupil, id))
	dbtest.Exec(t, p.url, "update lessons set removed_at = now() - interval '40 days'")
	swept, err := p.Sweep(p.ctx)
	if p.must(err); swept["removed lessons"] != 1 {
		t.Errorf("%+v", swept)
	}
	_, err = p.Arrange(p.ctx, p.other, p.pupil, db.Lesson{CoachID: p.other, Day: time.Date(2026, 6, 9, 0, 0, 0, 0, time.UTC)})
	p.must(err)
	p.must(p.DeletePlayer(p.ctx, p.pupil))
}

// A coach changes lessons of the days that the coach sees, and moves them to no other;
// the pupil does with every one of them.
func TestLessonsBeforeTheFirstSharedDay(t *testing.T) {
	p := newPair(t)
	first := golf.Date{Year: 2026, Month: time.June, Day: 10}
	arrange := func(day golf.Date) db.Lesson {
		t.Helper()
		l := db.Lesson{CoachID: p.coach, Day: day.Time(), Aim: "Start line"}
		id, err := p.Arrange(p.ctx, p.coach, p.pupil, l)
		p.must(err)
		l.ID = id
		return l
	}
	before, gone, after := arrange(first.AddDays(-1)), arrange(first.AddDays(-2)), arrange(first)
	p.must(p.CancelLesson(p.ctx, p.coach, p.pupil, gone.ID))
	p.must(p.ShareFrom(p.ctx, p.pupil, p.coach, first))
	earlier, later := after, before
	earlier.Day, later.Day = first.AddDays(-1).Time(), first.AddDays(1).Time()
	p.refused(map[string]error{"moves one from an earlier day": p.Rearrange(p.ctx, p.coach, p.pupil, later), "moves one to an earlier day": p.Rearrange(p.ctx, p.coach, p.pupil, earlier),
		"calls an earlier one off": p.CancelLesson(p.ctx, p.coach, p.pupil, before.ID), "brings an earlier one back": p.RestoreLesson(p.ctx, p.coach, p.pupil, gone.ID)})
	for asker, n := range map[golf.PlayerID]int{p.pupil: 1, p.coach: 0} {
		if all, err := p.Removed(p.ctx, asker); err != nil || len(all) != n {
			t.Errorf("%d can bring back %+v, %v", asker, all, err)
		}
	}
	after.Place = "The range"
	p.must(p.Rearrange(p.ctx, p.coach, p.pupil, after))
	p.must(p.CancelLesson(p.ctx, p.coach, p.pupil, after.ID))
	p.must(p.RestoreLesson(p.ctx, p.coach, p.pupil, after.ID))
	p.must(p.Rearrange(p.ctx, p.pupil, p.pupil, later))
	p.must(p.RestoreLesson(p.ctx, p.pupil, p.pupil, gone.ID))
}

// A coach hears of the own lessons of some days that are not written up, with the pupils
// who still share the day; nobody else hears of them.
func TestLessonsThatAreNear(t *testing.T) {
	p := newPair(t)
	day, at := golf.Date{Year: 2026, Month: time.June, Day: 9}, 9*60
	var kept []int64
	for _, l := range []db.Lesson{{CoachID: p.coach, Day: day.Time()}, {CoachID: p.coach, Day: day.Time(), Starts: &at, Aim: "Start line"}, {CoachID: p.coach, Day: day.AddDays(1).Time()},
		{CoachID: p.coach, Day: day.AddDays(2).Time()}, {CoachID: p.coach, Day: day.AddDays(-1).Time()}, {CoachID: p.other, Day: day.Time()}} {
		id, err := p.Arrange(p.ctx, p.pupil, p.pupil, l)
		p.must(err)
		kept = append(kept, id)
	}
	near := func(coach golf.PlayerID) (all []int64) {
		t.Helper()
		w, err := p.Waiting(p.ctx, coach, day, day.AddDays(1))
		p.must(err)
		for _, l := range w.Lessons {
			if all = append(all, l.ID); l.PlayerID != p.pupil {
				t.Errorf("%+v", l)
			}
		}
		return all
	}
	check := func(what string, coach golf.PlayerID, want ...int64) {
		t.Helper()
		if got := near(coach); !slices.Equal(got, want) {
			t.Errorf("%s: %v, want %v", what, got, want)
		}
	}
	check("the coach", p.coach, kept[1], kept[0], kept[2])
	check("another coach", p.other, kept[5])
	check("a stranger", p.stranger)
	check("the pupil", p.pupil)
	p.write(p.other, db.Note{Kind: db.KindLesson, Day: day.Time(), Body: "Mine.", Private: true})
	check("what another keeps private", p.coach, kept[1], kept[0], kept[2])
	p.write(p.coach, db.Note{Kind: db.KindLesson, Day: day.Time(), Body: "The gate."})
	check("written up", p.coach, kept[2])
	p.must(p.CancelLesson(p.ctx, p.coach, p.pupil, kept[2]))
	check("called off", p.coach)
	p.must(p.EndCoaching(p.ctx, p.pupil, p.pupil, p.other))
	check("after the end", p.other)
}
