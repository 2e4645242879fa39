package db_test

import (
	"errors"
	"fmt"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// proved makes an account one whose address is confirmed, with mail due at a moment.
func (p pair) proved(who golf.PlayerID, due time.Time) {
	p.t.Helper()
	d, err := p.Digest(p.ctx, who)
	p.must(err)
	asked, err := p.AskProof(p.ctx, d, []byte("link"), 3, false)
	p.must(err)
	if !asked {
		p.t.Fatal("not asked")
	}
	p.must(p.Prove(p.ctx, d, []byte("link"), due))
}

// Mail that is due is claimed by one, says what was neither read nor in a letter, and
// ends for its own account alone.
func TestDigests(t *testing.T) {
	p := newPair(t)
	due := time.Now().Add(-time.Hour).Truncate(time.Microsecond)
	p.must(p.ChooseDigest(p.ctx, p.pupil, "daily", "secret", due))
	p.must(p.Tell(p.ctx, p.coach, p.pupil, db.Notice{Kind: db.NoticeNote, OfID: p.pupil, What: "before"}))
	p.proved(p.pupil, due)
	p.must(p.Tell(p.ctx, p.coach, p.pupil, db.Notice{Kind: db.NoticeNote, OfID: p.pupil, What: "after"}))
	p.must(p.ChooseDigest(p.ctx, p.pupil, "weekly", "another", due))
	all, err := p.DueDigests(p.ctx, time.Now())
	if err != nil || len(all) != 1 || all[0].PlayerID != p.pupil || all[0].Every != "weekly" || all[0].Token != "secret" || all[0].ProvedAt == nil {
		t.Fatalf("%+v, %v", all, err)
	}
	again := time.Now().Add(time.Hour)
	for i, want := range []bool{true, false} {
		if mine, err := p.ClaimDigest(p.ctx, all[0], again); err != nil || mine != want {
			t.Errorf("claim %d: %v, %v", i, mine, err)
		}
	}
	if all, err := p.DueDigests(p.ctx, time.Now()); err != nil || len(all) != 0 {
		t.Errorf("claimed, and due: %+v, %v", all, err)
	}
	news, err := p.Unmailed(p.ctx, p.pupil)
	if err != nil || len(news) != 1 || news[0].What != "after" {
		t.Fatalf("%+v, %v", news, err)
	}
	p.must(p.EndDigest(p.ctx, p.stranger))
	for _, wrong := range []struct {
		who   golf.PlayerID
		token string
	}{{p.pupil, ""}, {p.pupil, "secret2"}, {p.stranger, "secret"}} {
		if _, err := p.DigestOf(p.ctx, wrong.who, wrong.token); !errors.Is(err, golf.ErrNotFound) {
			t.Errorf("%+v: %v", wrong, err)
		}
	}
	p.must(p.NextDigest(p.ctx, p.pupil, again))
	if d, err := p.DigestOf(p.ctx, p.pupil, "secret"); err != nil || d.Tries != 0 {
		t.Errorf("%+v, %v", d, err)
	}
	p.must(p.EndDigest(p.ctx, p.pupil))
	if _, err := p.Digest(p.ctx, p.pupil); !errors.Is(err, golf.ErrNotFound) {
		t.Error(err)
	}
}

// A letter that was begun stays as it is, with its notices in no other, until the server
// took it or refused it; a refused one gives its notices back, an ended mail forgets it.
func TestBegunLetters(t *testing.T) {
	p := newPair(t)
	due := time.Now().Truncate(time.Microsecond)
	if err := p.BeginLetter(p.ctx, p.pupil, db.DigestLetter{ID: "A", WrittenAt: due, Notices: []int64{}}); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("without mail: %v", err)
	}
	p.must(p.ChooseDigest(p.ctx, p.pupil, "daily", "secret", due))
	p.proved(p.pupil, due)
	p.must(p.Tell(p.ctx, p.coach, p.pupil, db.Notice{Kind: db.NoticeNote, OfID: p.pupil}))
	unmailed := func(want int) []int64 {
		t.Helper()
		news, err := p.Unmailed(p.ctx, p.pupil)
		if err != nil || len(news) != want {
			t.Fatalf("%+v, %v", news, err)
		}
		ids := make([]int64, len(news))
		for i, n := range news {
			ids[i] = n.ID
		}
		return ids
	}
	l := db.DigestLetter{ID: "A", Subject: "News", Body: "One.", WrittenAt: due, Notices: unmailed(1)}
	p.must(p.BeginLetter(p.ctx, p.pupil, l))
	unmailed(0)
	kept, err := p.BegunLetter(p.ctx, p.pupil)
	if kept.WrittenAt = kept.WrittenAt.In(due.Location()); err != nil || !cmp.Equal(kept, l) {
		t.Errorf("%+v, %v", kept, err)
	}
	if err := p.BeginLetter(p.ctx, p.pupil, db.DigestLetter{ID: "B", WrittenAt: due, Notices: []int64{}}); !errors.Is(err, db.ErrTaken) {
		t.Errorf("a second letter: %v", err)
	}
	for _, err := range []error{p.LetterTaken(p.ctx, p.pupil, "B", due), p.LetterTaken(p.ctx, p.coach, "A", due), p.LetterRefused(p.ctx, p.coach, l)} {
		if !errors.Is(err, golf.ErrNotFound) {
			t.Errorf("another letter: %v", err)
		}
	}
	p.must(p.LetterRefused(p.ctx, p.pupil, l))
	unmailed(1)
	p.must(p.BeginLetter(p.ctx, p.pupil, l))
	p.must(p.LetterTaken(p.ctx, p.pupil, "A", due))
	unmailed(0)
	p.must(p.BeginLetter(p.ctx, p.pupil, db.DigestLetter{ID: "C", WrittenAt: due, Notices: []int64{}}))
	p.must(p.EndDigest(p.ctx, p.pupil))
	if _, err := p.BegunLetter(p.ctx, p.pupil); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("after the end: %v", err)
	}
}

// Mail waits for the reader of the address: a link works once, for its own account, for
// the address that it went to, until it expires or another replaces it.
func TestMailWaitsForItsReader(t *testing.T) {
	p := newPair(t)
	now := time.Now().Truncate(time.Microsecond)
	p.must(p.ChooseDigest(p.ctx, p.pupil, "daily", "secret", now.Add(-time.Hour)))
	due := func(want int) {
		t.Helper()
		if all, err := p.DueDigests(p.ctx, time.Now()); err != nil || len(all) != want {
			t.Errorf("%+v, %v", all, err)
		}
	}
	read := func() db.Digest {
		t.Helper()
		d, err := p.Digest(p.ctx, p.pupil)
		p.must(err)
		return d
	}
	ask := func(token string, again, want bool) {
		t.Helper()
		if asked, err := p.AskProof(p.ctx, read(), []byte(token), 3, again); err != nil || asked != want {
			t.Errorf("%s: %v, %v", token, asked, err)
		}
	}
	due(1) // a letter is owed
	ask("first", false, true)
	due(0)
	ask("second", false, false)
	p.must(p.ProofNotSent(p.ctx, p.pupil, []byte("wrong"), now.Add(-time.Minute)))
	due(0)
	p.must(p.ProofNotSent(p.ctx, p.pupil, []byte("first"), now.Add(-time.Minute)))
	due(1)
	ask("third", false, true)
	ask("fourth", true, true)
	if d := read(); d.ProvedAt != nil || d.AskedAt == nil || !d.Open {
		t.Errorf("%+v", d)
	}
	good := read()
	wrong := func(why string, who golf.PlayerID, token string) {
		t.Helper()
		if _, err := p.ProofOf(p.ctx, who, []byte(token)); !errors.Is(err, golf.ErrNotFound) {
			t.Errorf("%s: %v", why, err)
		}
		d := good
		d.PlayerID = who
		if err := p.Prove(p.ctx, d, []byte(token), now); !errors.Is(err, golf.ErrNotFound) {
			t.Errorf("%s: %v", why, err)
		}
	}
	wrong("a link that was replaced", p.pupil, "third")
	wrong("another account", p.coach, "fourth")
	wrong("no link", p.pupil, "")
	dbtest.Exec(t, p.url, `update digests set asked_until = now() - interval '1 second'`)
	wrong("a link that has expired", p.pupil, "fourth")
	if d := read(); d.AskedAt == nil || d.Open {
		t.Errorf("%+v", d)
	}
	due(0)
	ask("fifth", true, true)
	dbtest.Exec(t, p.url, `update players set email = 'elsewhere@example.org' where id = `+fmt.Sprint(p.pupil))
	if _, err := p.ProofOf(p.ctx, p.pupil, []byte("fifth")); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("another address: %v", err)
	}
	due(1) // the new address is owed a letter of its own
	ask("sixth", false, true)
	good = read()
	if d, err := p.ProofOf(p.ctx, p.pupil, []byte("sixth")); err != nil || d.Email != "elsewhere@example.org" {
		t.Errorf("%+v, %v", d, err)
	}
	p.must(p.Prove(p.ctx, good, []byte("sixth"), now.Add(-time.Minute)))
	wrong("a link that was used", p.pupil, "sixth")
	ask("seventh", true, false)
	due(1)
	dbtest.Exec(t, p.url, `update players set email = 'third@example.org' where id = `+fmt.Sprint(p.pupil))
	if d := read(); d.ProvedAt != nil {
		t.Errorf("%+v", d)
	}
}

// Letters that ask are counted by address for a day; a reader who refuses them ends the
// mail, and gets no more for a while, whatever account asks.
func TestAskedAddresses(t *testing.T) {
	p := newPair(t)
	may := func(address string, want bool) {
		t.Helper()
		if got, err := p.CountAsked(p.ctx, []byte(address), 2); err != nil || got != want {
			t.Errorf("%s: %v, %v", address, got, err)
		}
	}
	may("one", true)
	may("one", true)
	may("one", false)
	may("two", true)
	dbtest.Exec(t, p.url, `update asked_addresses set began_at = now() - interval '25 hours'`)
	may("one", true)
	p.must(p.ChooseDigest(p.ctx, p.pupil, "daily", "secret", time.Now()))
	d, err := p.Digest(p.ctx, p.pupil)
	p.must(err)
	p.must(p.RefuseProof(p.ctx, d, []byte("two")))
	if _, err := p.Digest(p.ctx, p.pupil); !errors.Is(err, golf.ErrNotFound) {
		t.Error(err)
	}
	may("two", false)
	dbtest.Exec(t, p.url, `update asked_addresses set began_at = now() - interval '25 hours'`)
	may("two", false)
}
