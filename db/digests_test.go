package db_test

import (
	"errors"
	"testing"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
)

// Mail that is due is claimed by one, says what was neither read nor in a letter, and
// ends for its own account alone.
func TestDigests(t *testing.T) {
	p := newPair(t)
	due := time.Now().Add(-time.Hour).Truncate(time.Microsecond)
	p.must(p.Tell(p.ctx, p.coach, p.pupil, db.Notice{Kind: db.NoticeNote, OfID: p.pupil, What: "before"}))
	p.must(p.ChooseDigest(p.ctx, p.pupil, "daily", "secret", due))
	p.must(p.Tell(p.ctx, p.coach, p.pupil, db.Notice{Kind: db.NoticeNote, OfID: p.pupil, What: "after"}))
	p.must(p.ChooseDigest(p.ctx, p.pupil, "weekly", "another", due))
	all, err := p.DueDigests(p.ctx, time.Now())
	if err != nil || len(all) != 1 || all[0].PlayerID != p.pupil || all[0].Every != "weekly" || all[0].Token != "secret" {
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
	p.must(p.DigestSent(p.ctx, p.stranger, news, again))
	if news, err := p.Unmailed(p.ctx, p.pupil); err != nil || len(news) != 1 {
		t.Errorf("a stranger's letter: %+v, %v", news, err)
	}
	p.must(p.DigestSent(p.ctx, p.pupil, news, again))
	if news, err := p.Unmailed(p.ctx, p.pupil); err != nil || len(news) != 0 {
		t.Errorf("sent: %+v, %v", news, err)
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
	if d, err := p.DigestOf(p.ctx, p.pupil, "secret"); err != nil || d.Tries != 0 {
		t.Errorf("%+v, %v", d, err)
	}
	p.must(p.EndDigest(p.ctx, p.pupil))
	if _, err := p.Digest(p.ctx, p.pupil); !errors.Is(err, golf.ErrNotFound) {
		t.Error(err)
	}
}
