package db_test

import (
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// What a coach shared stays with the pupil when the coach's account goes, under the
// coach's name; what the coach kept private or had removed goes.
func TestWhatWasSharedStays(t *testing.T) {
	p := newPair(t)
	dbtest.Exec(t, p.url, "update players set name = 'Ines' where email = 'b@example.org'")
	note := func(body string, private bool) int64 {
		return p.write(p.coach, db.Note{Kind: db.KindNote, RoundID: &p.round, Body: body, Private: private})
	}
	shared, private, removed := note("shared", false), note("private", true), note("removed", false)
	p.must(p.RemoveNote(p.ctx, p.coach, p.pupil, removed))
	question := p.write(p.pupil, db.Note{Kind: db.KindQuestion, RoundID: &p.round, Body: "Which club?"})
	p.must(p.ReplyTo(p.ctx, p.coach, p.pupil, question, "The seven."))
	p.must(p.ReplyTo(p.ctx, p.pupil, p.pupil, shared, "Thanks."))
	p.must(p.DeletePlayer(p.ctx, p.coach))
	got, unread := p.reads(p.pupil)
	if len(got) != 2 || unread != 2 || got[shared].Author != "Ines" || got[shared].AuthorID != 0 || got[shared].Body != "shared" || len(got[shared].Replies) != 1 || !got[shared].Answered {
		t.Fatalf("%d unread of %+v", unread, got)
	}
	if q := got[question]; !q.Answered || len(q.Replies) != 1 || q.Replies[0].Author != "Ines" || q.Replies[0].AuthorID != 0 {
		t.Errorf("the answer: %+v", q)
	}
	if n, err := p.Note(p.ctx, p.pupil, p.pupil, shared); err != nil || n.Author != "Ines" || !n.Answered {
		t.Errorf("%+v, %v", n, err)
	}
	if waits, err := p.Waiting(p.ctx, p.other, golf.Date{}, golf.Date{}); err != nil || len(waits.Questions) != 0 {
		t.Errorf("an answered question waits again: %+v, %v", waits, err)
	}
	if to, err := p.TalkedTo(p.ctx, p.pupil, shared); err != nil || len(to) != 1 || to[0] != p.pupil {
		t.Errorf("talked to %v, %v", to, err)
	}
	if _, unread := p.reads(p.pupil); unread != 0 {
		t.Errorf("%d unread after reading", unread)
	}
	for _, id := range []int64{private, removed} {
		if _, found := got[id]; found {
			t.Errorf("note %d stays", id)
		}
	}
	p.refused(map[string]error{
		"another coach removes it": p.RemoveNote(p.ctx, p.other, p.pupil, shared),
		"the pupil removes it":     p.RemoveNote(p.ctx, p.pupil, p.pupil, shared),
	})
	p.must(p.RemoveRound(p.ctx, p.pupil, p.round))
	dbtest.Exec(t, p.url, "update rounds set removed_at = now() - interval '40 days'")
	swept, err := p.Sweep(p.ctx)
	if p.must(err); swept["removed rounds"] != 0 {
		t.Error("the notes go with a removed round")
	}
}

// What a coach kept private about a pupil stays with the coach when the pupil's
// account goes, and with nobody else.
func TestWhatWasPrivateStays(t *testing.T) {
	p := newPair(t)
	dbtest.Exec(t, p.url, "update players set name = 'Ann' where email = 'a@example.org'")
	hole, shot := 1, 1
	p.write(p.coach, db.Note{Kind: db.KindNote, RoundID: &p.round, Hole: &hole, Shot: &shot, Body: "private", Private: true})
	p.write(p.coach, db.Note{Kind: db.KindNote, RoundID: &p.round, Body: "shared"})
	gone := p.write(p.coach, db.Note{Kind: db.KindNote, RoundID: &p.round, Body: "gone", Private: true})
	p.must(p.RemoveNote(p.ctx, p.coach, p.pupil, gone))
	p.must(p.DeletePlayer(p.ctx, p.pupil))
	var id int64
	for _, ended := range []bool{false, true} {
		kept, err := p.PrivateNotes(p.ctx, p.coach, ended)
		if p.must(err); len(kept) != 1 || kept[0].Body != "private" || kept[0].Author != "Ann" || kept[0].PlayerID != p.coach || *kept[0].Hole != 1 || *kept[0].Shot != 1 || !kept[0].Private {
			t.Fatalf("the coach keeps %+v", kept)
		}
		id = kept[0].ID
	}
	if kept, err := p.PrivateNotes(p.ctx, p.other, false); err != nil || len(kept) != 0 {
		t.Errorf("another coach has %+v, %v", kept, err)
	}
	p.refused(map[string]error{"another coach removes it": p.RemoveKept(p.ctx, p.other, id), "another brings it back": p.RestoreKept(p.ctx, p.other, id)})
	p.must(p.RemoveKept(p.ctx, p.coach, id))
	if kept, err := p.PrivateNotes(p.ctx, p.coach, true); err != nil || len(kept) != 0 {
		t.Errorf("removed: %+v, %v", kept, err)
	}
	if all, err := p.Removed(p.ctx, p.coach); err != nil || len(all) != 1 || all[0].Kind != db.RemovedKept || all[0].Text != "private" {
		t.Errorf("to bring back: %+v, %v", all, err)
	}
	p.must(p.RestoreKept(p.ctx, p.coach, id))
	p.must(p.RemoveKept(p.ctx, p.coach, id))
	dbtest.Exec(t, p.url, "update kept_notes set removed_at = now() - interval '31 days'")
	if swept, err := p.Sweep(p.ctx); err != nil || swept["removed kept notes"] != 1 {
		t.Errorf("swept %v, %v", swept, err)
	}
	p.refused(map[string]error{"for good": p.RestoreKept(p.ctx, p.coach, id)})
	p.must(p.DeletePlayer(p.ctx, p.coach))
}
