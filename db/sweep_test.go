package db_test

import (
	"bytes"
	"context"
	"errors"
	"log/slog"
	"maps"
	"strings"
	"testing"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// sweepRows are rows of each kind that a sweep deletes, and rows that it leaves. Their
// names say which.
const sweepRows = `
	insert into players (email, name, password_hash) values ('a@example.org', 'A', 'hash'), ('b@example.org', 'B', 'hash');
	insert into sessions (player_id, token_hash, device, created_at, seen_at) values
		(1, 'used', 'kept', now() - interval '179 days', now()),
		(1, 'idle', 'gone', now() - interval '61 days', now() - interval '61 days'),
		(1, 'resting', 'kept', now() - interval '59 days', now() - interval '59 days'),
		(1, 'used for half a year', 'gone', now() - interval '181 days', now());
	insert into tries (account, client, n, began_at) values ('gone', '', 1, now() - interval '16 minutes'), ('kept', '', 1, now());
	insert into asked_addresses (address_hash, n, began_at, refused_at) values ('gone', 1, now() - interval '25 hours', null), ('kept', 1, now() - interval '23 hours', null),
		('kept refused', 1, now() - interval '89 days', now() - interval '89 days'), ('gone too', 1, now() - interval '91 days', now() - interval '91 days');
	insert into devices (player_id, token_hash, seen_at) values (1, 'gone', now() - interval '367 days'), (1, 'kept', now() - interval '364 days');
	insert into invitations (token_hash, made_by, expires_at) values ('gone', 1, now() - interval '1 minute'), ('kept', 1, now() + interval '1 day');
	insert into coach_invitations (player_id, token_hash, expires_at) values (1, 'gone', now() - interval '31 days'), (1, 'kept', now() + interval '1 day');
	insert into resets (player_id, token_hash, expires_at) values (1, 'gone', now() - interval '1 minute'), (2, 'kept', now() + interval '1 day');
	insert into imports (player_id, file, created_at) values (1, 'gone', now() - interval '61 minutes'), (2, 'kept', now() - interval '59 minutes');
	insert into rounds (player_id, name, played_on, course, tee, target, boundary_yd, par18, removed_at) values
		(1, 'gone', '2026-05-02', 'Fen', '', 79, 50, 72, now() - interval '31 days'),
		(1, 'kept', '2026-05-02', 'Fen', '', 79, 50, 72, now() - interval '29 days'),
		(1, 'kept too', '2026-05-02', 'Fen', '', 79, 50, 72, null);
	insert into drill_sessions (player_id, entered_as, drill, name, day, removed_at) values
		(1, 'a', 'lag', 'gone', '2026-05-02', now() - interval '31 days'), (1, 'b', 'lag', 'kept', '2026-05-02', now() - interval '29 days');
	insert into runout_trials (player_id, entered_as, place, club, lie, green, carry, total, unit, day, removed_at) values
		(1, 'a', 1, 'gone', 'rough', 'slow', 12, 20, 'yd', '2026-05-02', now() - interval '31 days'), (1, 'a', 2, 'kept', 'rough', 'slow', 12, 20, 'yd', '2026-05-02', now() - interval '29 days')`

var sweptRows = db.Swept{"sessions": 2, "tries": 1, "asked addresses": 2, "devices": 1, "invitations": 1, "coach invitations": 1, "resets": 1, "imports": 1, "removed rounds": 1, "removed sessions of drills": 1, "removed trials": 1}

// leftAfter counts rows that should be gone, and rows that should be there.
const leftAfter = `
	with all_rows as (
		select device as name from sessions union all select convert_from(account, 'UTF8') from tries union all select convert_from(address_hash, 'UTF8') from asked_addresses union all select convert_from(token_hash, 'UTF8') from devices
		union all select convert_from(token_hash, 'UTF8') from invitations union all select convert_from(token_hash, 'UTF8') from coach_invitations
		union all select convert_from(token_hash, 'UTF8') from resets union all select convert_from(file, 'UTF8') from imports union all select name from rounds union all select name from drill_sessions union all select club from runout_trials)
	select count(*) filter (where name like 'gone%') || ' gone, ' || count(*) filter (where name like 'kept%') || ' kept' from all_rows`

// taken lists the kinds of which a sweep deleted any.
func taken(swept db.Swept) db.Swept {
	some := maps.Clone(swept)
	maps.DeleteFunc(some, func(_ string, n int64) bool { return n == 0 })
	return some
}

func TestTheSweepDeletesWhatHasExpired(t *testing.T) {
	url := dbtest.Clone(t)
	s, err := db.Open(t.Context(), url)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	for statement := range strings.SplitSeq(sweepRows, ";") {
		dbtest.Exec(t, url, statement)
	}
	swept, err := s.Sweep(t.Context())
	if err != nil || !maps.Equal(taken(swept), sweptRows) {
		t.Errorf("%v, %v", swept, err)
	}
	if left, err := db.Text(t.Context(), s, leftAfter); err != nil || left != "0 gone, 14 kept" {
		t.Errorf("%s, %v", left, err)
	}
	if swept, err = s.Sweep(t.Context()); err != nil || swept == nil || len(taken(swept)) != 0 {
		t.Errorf("again: %v, %v", swept, err)
	}
}

// A session ends after half a year however often it is used, before any sweep.
func TestASessionEndsAfterHalfAYear(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	who := newPlayer(t, s, "a@example.org")
	if err := errors.Join(s.NewSession(ctx, who, []byte("old"), "phone"), s.NewSession(ctx, who, []byte("new"), "laptop")); err != nil {
		t.Fatal(err)
	}
	for name, days := range map[string]string{"old": "181", "new": "179"} {
		if err := db.Change(ctx, s, `update sessions set created_at = now() - interval '`+days+` days' where token_hash = '`+name+`'`, nil); err != nil {
			t.Fatal(err)
		}
	}
	if _, _, err := s.SignedIn(ctx, who, []byte("old")); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("signed in: %v", err)
	}
	if p, _, err := s.SignedIn(ctx, who, []byte("new")); err != nil || p.ID != who {
		t.Errorf("%v, %v", p, err)
	}
	if all, err := s.Sessions(ctx, who); err != nil || len(all) != 1 || all[0].Device != "laptop" {
		t.Errorf("%v, %v", all, err)
	}
}

// One process sweeps at a time; another gets nil.
func TestOneProcessSweepsAtATime(t *testing.T) {
	url := dbtest.Clone(t)
	one, err := db.Open(t.Context(), url)
	if err != nil {
		t.Fatal(err)
	}
	defer one.Close()
	two, err := db.Open(t.Context(), url)
	if err != nil {
		t.Fatal(err)
	}
	defer two.Close()
	err = one.Tx(t.Context(), func(tx *db.Store) error {
		if swept, err := tx.Sweep(t.Context()); err != nil || swept == nil {
			t.Errorf("%v, %v", swept, err)
		}
		swept, err := two.Sweep(t.Context())
		if swept != nil {
			t.Errorf("two sweep: %v", swept)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	if swept, err := two.Sweep(t.Context()); err != nil || swept == nil {
		t.Errorf("%v, %v", swept, err)
	}
}

func TestTheSweepIsLogged(t *testing.T) {
	s := dbtest.Open(t)
	ctx, stop := context.WithCancel(t.Context())
	said := make(lines, 10)
	done := make(chan struct{})
	go func() { s.SweepDaily(ctx, slog.New(slog.NewTextHandler(said, nil))); close(done) }()
	select {
	case line := <-said:
		if !strings.Contains(line, "the daily sweep deleted") || !strings.Contains(line, `sessions=0`) || !strings.Contains(line, `"removed rounds"=0`) {
			t.Error(line)
		}
	case <-time.After(time.Minute):
		t.Error("nothing was logged")
	}
	stop()
	<-done
}

// lines is a log that is read line by line.
type lines chan string

func (l lines) Write(b []byte) (int, error) {
	l <- string(bytes.TrimSpace(b))
	return len(b), nil
}
