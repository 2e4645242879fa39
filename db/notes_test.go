package db_test

import (
	"context"
	"crypto/rand"
	"errors"
	"testing"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// pair is a pupil with a round on 2 May, two coaches who have access, and a stranger.
type pair struct {
	*db.Store
	t                             *testing.T
	ctx                           context.Context
	pupil, coach, other, stranger golf.PlayerID
	round                         golf.RoundID
	url                           string
}

func newPair(t *testing.T) pair {
	t.Helper()
	p := pair{url: dbtest.Copy(t), t: t, ctx: t.Context()} // not one transaction, in which the clock would stand still
	var err error
	p.Store, err = db.Open(p.ctx, p.url)
	p.must(err)
	t.Cleanup(p.Close)
	p.pupil, p.coach = newPlayer(t, p.Store, "a@example.org"), newPlayer(t, p.Store, "b@example.org")
	p.other, p.stranger = newPlayer(t, p.Store, "c@example.org"), newPlayer(t, p.Store, "d@example.org")
	r := aRound()
	r.Holes[0] = entered(0)
	r.Holes[0].Length = 384 * golf.Yard
	p.round, err = p.NewRound(p.ctx, p.pupil, r)
	p.must(err)
	p.let(p.coach, golf.Date{})
	p.let(p.other, golf.Date{})
	return p
}

// let gives a coach access from a day on.
func (p pair) let(coach golf.PlayerID, from golf.Date) {
	p.t.Helper()
	token := []byte(rand.Text()) // a used one stays known
	p.must(p.NewCoachInvitation(p.ctx, p.pupil, token, from, 7))
	p.must(p.AcceptCoaching(p.ctx, coach, p.pupil, token))
	p.must(p.ConfirmCoach(p.ctx, p.pupil, coach))
}

func (p pair) must(err error) {
	p.t.Helper()
	if err != nil {
		p.t.Fatal(err)
	}
}

// refused fails unless every error is golf.ErrNotFound.
func (p pair) refused(all map[string]error) {
	p.t.Helper()
	for what, err := range all {
		if !errors.Is(err, golf.ErrNotFound) {
			p.t.Errorf("%s: %v", what, err)
		}
	}
}

func (p pair) write(who golf.PlayerID, n db.Note) int64 {
	p.t.Helper()
	id, err := p.WriteNote(p.ctx, who, p.pupil, n)
	p.must(err)
	return id
}

// reads lists the pupil's notes that somebody can read, counts those that are new,
// and marks them as read.
func (p pair) reads(who golf.PlayerID) (ids map[int64]db.Note, unread int) {
	p.t.Helper()
	all, err := p.Notes(p.ctx, who, p.pupil, db.NotesOf{})
	p.must(err)
	ids = map[int64]db.Note{}
	for _, n := range all {
		ids[n.ID] = n
		if n.Unread {
			unread++
		}
	}
	p.must(p.MarkRead(p.ctx, who, p.pupil, all))
	return ids, unread
}

func at(n int) *int { return &n }

// Only its author reads a private note. Everybody who can see the round reads a shared
// one. A stranger reads and writes nothing.
func TestWhoReadsANote(t *testing.T) {
	p := newPair(t)
	shared := p.write(p.coach, db.Note{Kind: db.KindNote, RoundID: &p.round, Hole: at(1), Shot: at(2), Body: "Take the safe side."})
	private := p.write(p.coach, db.Note{Kind: db.KindNote, RoundID: &p.round, Private: true, Body: "Grip."})
	question := p.write(p.pupil, db.Note{Kind: db.KindQuestion, RoundID: &p.round, Hole: at(1), Body: "Was that the club?"})
	lesson := p.write(p.coach, db.Note{Kind: db.KindLesson, Day: time.Date(2026, 5, 4, 0, 0, 0, 0, time.UTC), Body: "Run-outs."})
	for who, want := range map[golf.PlayerID][]int64{
		p.coach: {shared, private, question, lesson}, p.pupil: {shared, question, lesson}, p.other: {shared, question, lesson}, p.stranger: {},
	} {
		got, _ := p.reads(who)
		for _, id := range want {
			if _, there := got[id]; !there {
				t.Errorf("%d does not read note %d", who, id)
			}
		}
		if len(got) != len(want) {
			t.Errorf("%d reads %d notes, want %d", who, len(got), len(want))
		}
	}
	note := func(n db.Note) error { _, err := p.WriteNote(p.ctx, p.stranger, p.pupil, n); return err }
	noSuch := func(n db.Note) error { _, err := p.WriteNote(p.ctx, p.coach, p.pupil, n); return err }
	none := p.round + 9
	p.refused(map[string]error{
		"a stranger on a round":       note(db.Note{Kind: db.KindNote, RoundID: &p.round, Body: "x"}),
		"a stranger on a day":         note(db.Note{Kind: db.KindLesson, Day: time.Now(), Body: "x"}),
		"no such round":               noSuch(db.Note{Kind: db.KindNote, RoundID: &none, Body: "x"}),
		"no such hole":                noSuch(db.Note{Kind: db.KindNote, RoundID: &p.round, Hole: at(7), Body: "x"}),
		"no such shot":                noSuch(db.Note{Kind: db.KindNote, RoundID: &p.round, Hole: at(1), Shot: at(9), Body: "x"}),
		"a stranger reads one":        second(p.Note(p.ctx, p.stranger, p.pupil, shared)),
		"the pupil reads a private":   second(p.Note(p.ctx, p.pupil, p.pupil, private)),
		"another coach a private":     second(p.Note(p.ctx, p.other, p.pupil, private)),
		"a stranger replies":          p.ReplyTo(p.ctx, p.stranger, p.pupil, shared, "x"),
		"the pupil to a private":      p.ReplyTo(p.ctx, p.pupil, p.pupil, private, "x"),
		"the coach to a private":      p.ReplyTo(p.ctx, p.coach, p.pupil, private, "x"),
		"the pupil edits a coach's":   p.EditNote(p.ctx, p.pupil, p.pupil, db.Note{ID: shared, Body: "x"}),
		"another coach edits":         p.EditNote(p.ctx, p.other, p.pupil, db.Note{ID: shared, Body: "x"}),
		"another coach removes":       p.RemoveNote(p.ctx, p.other, p.pupil, shared),
		"the pupil removes a coach's": p.RemoveNote(p.ctx, p.pupil, p.pupil, shared),
	})
	if _, err := p.WriteNote(p.ctx, p.coach, p.pupil, db.Note{Kind: db.KindQuestion, RoundID: &p.round, Body: "x"}); err == nil {
		t.Error("a coach asks the pupil's question")
	}
	p.must(p.EditNote(p.ctx, p.coach, p.pupil, db.Note{ID: private, Body: "Grip, shared."}))
	if got, _ := p.reads(p.pupil); got[private].Body != "Grip, shared." || got[private].EditedAt == nil {
		t.Error("a private note that is shared now does not reach the pupil")
	}
}

// What somebody else writes is new until it is read, and its author sees when that
// was.
func TestReadMarks(t *testing.T) {
	p := newPair(t)
	id := p.write(p.coach, db.Note{Kind: db.KindNote, RoundID: &p.round, Body: "Safe side."})
	if _, n := p.reads(p.coach); n != 0 {
		t.Error("the coach's own note is new to the coach")
	}
	if n, err := p.UnreadNotes(p.ctx, p.pupil); n != 1 || err != nil {
		t.Errorf("%d new, %v", n, err)
	}
	p.reads(p.other)
	all, err := p.Notes(p.ctx, p.pupil, p.pupil, db.NotesOf{})
	p.must(err)
	p.must(p.MarkRead(p.ctx, p.stranger, p.pupil, all))
	if got, _ := p.reads(p.coach); got[id].ReadAt != nil {
		t.Error("the pupil has not marked the note as read, but it is")
	}
	for i, want := range []int{1, 0} {
		if _, n := p.reads(p.pupil); n != want {
			t.Errorf("look %d: %d new, want %d", i+1, n, want)
		}
	}
	if got, _ := p.reads(p.coach); got[id].ReadAt == nil || got[id].Answered {
		t.Error("the coach does not see that it was read")
	}
	p.must(p.ReplyTo(p.ctx, p.pupil, p.pupil, id, "Which side is that?"))
	got, n := p.reads(p.coach)
	if n != 1 || len(got[id].Replies) != 1 || !got[id].Answered {
		t.Errorf("%d new, %+v", n, got[id])
	}
	reply := got[id].Replies[0].ID
	p.refused(map[string]error{"the coach removes the pupil's": p.RemoveReply(p.ctx, p.coach, p.pupil, reply), "a stranger does": p.RemoveReply(p.ctx, p.stranger, p.pupil, reply)})
	p.must(p.EditNote(p.ctx, p.coach, p.pupil, db.Note{ID: id, Body: "Left.", Private: true}))
	if _, n := p.reads(p.pupil); n != 1 {
		t.Error("an edited note is not new, or one that was answered is private now")
	}
	p.must(p.RemoveReply(p.ctx, p.pupil, p.pupil, reply))
	p.must(p.RemoveNote(p.ctx, p.coach, p.pupil, id))
	if got, _ := p.reads(p.pupil); len(got) != 0 {
		t.Error("a removed note is still there")
	}
}

// When a coach's access ends, shared notes stay with the pupil and private ones with
// the coach. When an account is deleted, so are the notes it wrote.
func TestNotesAfterTheEnd(t *testing.T) {
	p := newPair(t)
	shared := p.write(p.coach, db.Note{Kind: db.KindNote, RoundID: &p.round, Body: "shared"})
	private := p.write(p.coach, db.Note{Kind: db.KindNote, RoundID: &p.round, Private: true, Body: "private"})
	if kept, err := p.PrivateNotes(p.ctx, p.coach, true); err != nil || len(kept) != 0 {
		t.Errorf("kept although the coach has access: %+v, %v", kept, err)
	}
	if all, err := p.PrivateNotes(p.ctx, p.coach, false); err != nil || len(all) != 1 {
		t.Errorf("private while the coach has access: %+v, %v", all, err)
	}
	p.must(p.ProposeTarget(p.ctx, p.coach, p.pupil, 82))
	p.must(p.EndCoaching(p.ctx, p.pupil, p.pupil, p.coach))
	if got, _ := p.reads(p.pupil); len(got) != 1 || got[shared].Author != "Robin" {
		t.Errorf("the pupil keeps %+v", got)
	}
	if got, _ := p.reads(p.coach); len(got) != 0 {
		t.Errorf("the coach still reads %+v", got)
	}
	kept, err := p.PrivateNotes(p.ctx, p.coach, true)
	if err != nil || len(kept) != 1 || kept[0].ID != private || kept[0].Body != "private" {
		t.Errorf("the coach keeps %+v, %v", kept, err)
	}
	if all, err := p.Proposals(p.ctx, p.pupil, p.pupil); err != nil || len(all) != 0 {
		t.Errorf("a proposal outlives the access: %+v, %v", all, err)
	}
	p.refused(map[string]error{
		"a shared one is edited":  p.EditNote(p.ctx, p.coach, p.pupil, db.Note{ID: shared, Body: "x"}),
		"a private one is shared": p.EditNote(p.ctx, p.coach, p.pupil, db.Note{ID: private, Body: "x"}),
		"a shared one is removed": p.RemoveNote(p.ctx, p.coach, p.pupil, shared),
		"another keeps it":        p.RemoveNote(p.ctx, p.other, p.pupil, private),
	})
	p.must(p.EditNote(p.ctx, p.coach, p.pupil, db.Note{ID: private, Body: "mine", Private: true}))
	p.must(p.RemoveNote(p.ctx, p.coach, p.pupil, private))
}

// A coach with access from a day on sees no note about an earlier day, and a round
// that is imported again keeps its notes.
func TestNotesFollowTheirRound(t *testing.T) {
	p := newPair(t)
	id := p.write(p.pupil, db.Note{Kind: db.KindQuestion, RoundID: &p.round, Hole: at(1), Body: "Why?"})
	p.must(p.EndCoaching(p.ctx, p.pupil, p.pupil, p.coach))
	p.let(p.coach, golf.Date{Year: 2026, Month: 5, Day: 3})
	if got, _ := p.reads(p.coach); len(got) != 0 {
		t.Errorf("the coach reads of 2 May: %+v", got)
	}
	p.refused(map[string]error{
		"on the round before": second(p.WriteNote(p.ctx, p.coach, p.pupil, db.Note{Kind: db.KindNote, RoundID: &p.round, Body: "x"})),
		"on the day before":   second(p.WriteNote(p.ctx, p.coach, p.pupil, db.Note{Kind: db.KindLesson, Day: time.Date(2026, 5, 2, 0, 0, 0, 0, time.UTC), Body: "x"})),
	})
	p.must(p.ReplaceRounds(p.ctx, p.pupil, []db.Round{aRound()}))
	got, _ := p.reads(p.pupil)
	if got[id].RoundID == nil || *got[id].RoundID == p.round {
		t.Errorf("after its round was imported again: %+v", got)
	}
	later := aRound()
	later.PlayedOn = later.PlayedOn.AddDate(0, 0, 1)
	p.must(p.ReplaceRounds(p.ctx, p.pupil, []db.Round{later}))
	if got, _ := p.reads(p.coach); got[id].Day != later.PlayedOn {
		t.Errorf("imported again on a shared day: %+v", got)
	}
	p.must(p.ReplaceRounds(p.ctx, p.pupil, []db.Round{aRound()}))
	if got, _ := p.reads(p.coach); len(got) != 0 {
		t.Errorf("imported again on a day that is not shared: %+v", got)
	}
	got, _ = p.reads(p.pupil)
	p.must(p.RemoveRound(p.ctx, p.pupil, *got[id].RoundID))
	if got, _ := p.reads(p.pupil); len(got) != 0 {
		t.Error("a note on a removed round is shown")
	}
}
