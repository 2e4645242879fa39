package db_test

import (
	"errors"
	"testing"

	"strokeledger/analysis/golf"
)

// A feed belongs to its account: it opens with its own secret only, keeps its name when
// the secret changes, and ends with the account.
func TestFeeds(t *testing.T) {
	p := newPair(t)
	gone := func(who golf.PlayerID, secret string) {
		t.Helper()
		if _, _, err := p.FeedReader(p.ctx, who, []byte(secret)); !errors.Is(err, golf.ErrNotFound) {
			t.Errorf("%d with %q: %v", who, secret, err)
		}
	}
	gone(p.pupil, "first")
	p.must(p.OpenFeed(p.ctx, p.pupil, []byte("first"), [16]byte{1}))
	p.must(p.OpenFeed(p.ctx, p.coach, []byte("other"), [16]byte{2}))
	gone(p.coach, "first")
	gone(p.stranger, "first")
	p.must(p.OpenFeed(p.ctx, p.pupil, []byte("second"), [16]byte{3}))
	gone(p.pupil, "first")
	if who, f, err := p.FeedReader(p.ctx, p.pupil, []byte("second")); err != nil || who.ID != p.pupil || f.Name != [16]byte{1} {
		t.Errorf("%+v %+v, %v", who, f, err)
	}
	if f, err := p.Feed(p.ctx, p.coach); err != nil || f.Name != [16]byte{2} {
		t.Errorf("%+v, %v", f, err)
	}
	if _, err := p.Feed(p.ctx, p.stranger); !errors.Is(err, golf.ErrNotFound) {
		t.Error(err)
	}
	p.must(p.CloseFeed(p.ctx, p.pupil))
	gone(p.pupil, "second")
	p.must(p.DeletePlayer(p.ctx, p.coach))
	gone(p.coach, "other")
}
