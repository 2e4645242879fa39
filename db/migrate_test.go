package db

import (
	"context"
	"errors"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"

	"strokeledger/analysis/golf"
)

// CheckMigrations takes a database up, down and up again, and compares its schema
// with testdata/schema.txt. A test outside the package calls it, since only there is
// a database.
func CheckMigrations(t *testing.T, url string, update bool) {
	ctx := context.Background()
	pool, err := pgxpool.New(ctx, url)
	if err != nil {
		t.Fatal(err)
	}
	defer pool.Close()
	provider, closeDB, err := migrator(pool)
	if err != nil {
		t.Fatal(err)
	}
	defer closeDB()
	if _, err := provider.Up(ctx); err != nil {
		t.Fatal(err)
	}
	first := schema(t, pool)
	if _, err := provider.DownTo(ctx, 0); err != nil {
		t.Fatal(err)
	}
	if left := schema(t, pool); strings.Contains(left, "players") {
		t.Errorf("down leaves\n%s", left)
	}
	if _, err := provider.Up(ctx); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(first, schema(t, pool)); diff != "" {
		t.Errorf("up again makes another schema: %s", diff)
	}
	const name = "testdata/schema.txt"
	if update {
		if err := os.WriteFile(name, []byte(first), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), first); diff != "" {
		t.Errorf("the schema differs from testdata/schema.txt: %s", diff)
	}
}

// CheckOldLines migrates a database with lines from before lines had units of their
// own: they get the units of their player's settings.
func CheckOldLines(t *testing.T, url string) {
	checkOld(t, url, 13, `
		insert into players (email, name, password_hash, far_unit, green_unit) values ('a@example.org', 'a', '', 'm', 'm'), ('b@example.org', 'b', '', 'yd', 'ft');
		insert into rounds (player_id, name, played_on, course, tee, target, boundary_yd, par18) select id, 'r', '2026-05-02', '', '', 79, 50, 72 from players;
		insert into holes (player_id, round_id, number, par, length_in, line) select player_id, id, 1, 4, 13824, 'r150 g8' from rounds`,
		`select p.name || ' ' || h.far_unit || ' ' || h.green_unit from holes h join players p on p.id = h.player_id order by 1`,
		"a m m", "b yd ft")
}

// CheckOldLooks migrates a database whose looks are addresses: those of existing pages
// and rounds stay.
func CheckOldLooks(t *testing.T, url string) {
	checkOld(t, url, 17, `
		insert into players (email, name, password_hash) values ('a@example.org', 'a', ''), ('b@example.org', 'b', '');
		insert into rounds (player_id, id, name, played_on, course, tee, target, boundary_yd, par18) overriding system value
			values (1, 7, 'r', '2026-05-02', '', '', 79, 50, 72), (2, 8, 'r', '2026-05-02', '', '', 79, 50, 72);
		insert into coach_looks (player_id, coach_id, day, page, name) select 1, 2, '2026-05-03', page, 'b'
			from unnest(array['/months', '/months.csv', '/months/behind', '/handicap', '/rounds', '/lessons', '/report', '/coaching', '/coaching/squad',
				'/rounds/7', '/rounds/8', '/rounds/07', '/rounds/n1', '/rounds/You owe me', '/nothing', '/rounds/99999999999999999999']) page`,
		`select kind || ' ' || about from coach_looks order by 1`,
		"behind 0", "handicap 0", "lessons 0", "months 0", "months_file 0", "report 0", "roster 0", "rounds 0", "squad 0", "statement 7")
}

// CheckOldBooks migrates a database with balls of run-out books. Rounds are then
// judged as they are once the engine makes the books anew, but for the last digits: a
// straight line for five balls over 3 yd or more, the mean otherwise, nothing for two
// balls, and none of what was removed. A summary that was made without a book is gone.
func CheckOldBooks(t *testing.T, url string, remake MakeRunBook) {
	checkOld(t, url, 38, `
		insert into players (email, name, password_hash) values ('a@example.org', 'a', ''), ('b@example.org', 'b', ''), ('c@example.org', 'c', '');
		insert into rounds (player_id, id, name, played_on, course, tee, target, boundary_yd, par18) overriding system value
			values (1, 7, 'r', '2026-05-02', '', '', 79, 50, 72), (3, 8, 'r', '2026-05-02', '', '', 79, 50, 72);
		insert into round_summaries (player_id, round_id, made_for, summary) values (1, 7, '1', ''), (3, 8, '1', '');
		insert into runout_trials (player_id, entered_as, place, club, lie, green, carry, total, unit, day, removed_at)
			select case club when '5i' then 2 else 1 end, 'page', row_number() over (), club, lie, green, carry, total, unit, '2026-05-02', removed
			from (values ('PW', 'fairway', 'slow', 12, 21, 'yd', null), ('pw', 'fairway', 'fast', 13, 23, 'paces', null), ('pw', 'fairway', 'fast', 12, 20, 'yd', null),
				('pw', 'fairway', 'fast', 12, 50, 'yd', now()), ('8i', 'fairway', 'slow', 8, 20, 'yd', null), ('8i', 'fairway', 'slow', 8, 20, 'yd', null),
				('sw', 'rough', 'slow', 8, 11.5, 'yd', null), ('sw', 'rough', 'slow', 10, 15, 'yd', null), ('sw', 'rough', 'slow', 12, 18.5, 'yd', null),
				('sw', 'rough', 'slow', 14, 21.5, 'yd', null), ('sw', 'rough', 'slow', 16, 25, 'yd', null),
				('lw', 'rough', 'slow', 8, 14, 'm', null), ('lw', 'rough', 'slow', 10, 15, 'm', null), ('lw', 'rough', 'slow', 12, 16, 'm', null),
				('lw', 'rough', 'slow', 14, 17, 'm', null), ('lw', 'rough', 'slow', 16, 18, 'm', null), ('5i', 'rough', 'slow', 12, 30, 'yd', null)
			) balls (club, lie, green, carry, total, unit, removed)`,
		`select 'book ' || player_id || ' ' || jsonb_array_length(lines) from runout_books union all select 'summary ' || player_id from round_summaries order by 1`,
		"book 1 3", "book 2 0", "summary 3")
	s, err := Open(t.Context(), url)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	for _, who := range []golf.PlayerID{1, 2} {
		migrated, err := s.runBook(t.Context(), who)
		made := s.changeTrials(t.Context(), who, remake, func(*Store) error { return nil })
		anew, failed := s.runBook(t.Context(), who)
		if diff := cmp.Diff(anew.Lines, migrated.Lines, cmpopts.EquateApprox(0, 1e-9), cmpopts.EquateEmpty(), cmpopts.SortSlices(func(a, b golf.RunLine) bool { return a.Club < b.Club })); diff != "" || errors.Join(err, made, failed) != nil || migrated.Version != 1 || anew.Version != 2 {
			t.Errorf("%v %+v %+v %s", errors.Join(err, made, failed), migrated, anew, diff)
		}
	}
}

// checkOld fills a database of an earlier version, migrates it, and compares the rows
// of a query.
func checkOld(t *testing.T, url string, version int64, fill, query string, want ...string) {
	t.Helper()
	ctx := context.Background()
	pool, err := pgxpool.New(ctx, url)
	if err != nil {
		t.Fatal(err)
	}
	defer pool.Close()
	provider, closeDB, err := migrator(pool)
	if err != nil {
		t.Fatal(err)
	}
	defer closeDB()
	if _, err := provider.UpTo(ctx, version); err != nil {
		t.Fatal(err)
	}
	if _, err := pool.Exec(ctx, fill); err != nil {
		t.Fatal(err)
	}
	if _, err := provider.Up(ctx); err != nil {
		t.Fatal(err)
	}
	rows, err := pool.Query(ctx, query)
	if err != nil {
		t.Fatal(err)
	}
	got, err := pgx.CollectRows(rows, pgx.RowTo[string])
	if diff := cmp.Diff(want, got); diff != "" || err != nil {
		t.Errorf("%v %s", err, diff)
	}
}

// schema lists columns and constraints.
func schema(t *testing.T, pool *pgxpool.Pool) string {
	rows, err := pool.Query(context.Background(), `
		select table_name || '.' || column_name || ' ' || data_type || case is_nullable when 'NO' then ' not null' else '' end
		from information_schema.columns where table_schema = 'public' and table_name not like 'goose%'
		union all
		select conrelid::regclass || ': ' || conname || ' ' || pg_get_constraintdef(oid)
		from pg_constraint where connamespace = 'public'::regnamespace and conrelid::regclass::text not like 'goose%'
		union all
		select indexdef from pg_indexes where schemaname = 'public' and tablename not like 'goose%'
		order by 1`)
	if err != nil {
		t.Fatal(err)
	}
	lines, err := pgx.CollectRows(rows, pgx.RowTo[string])
	if err != nil {
		t.Fatal(err)
	}
	return fmt.Sprintln(strings.Join(lines, "\n"))
}
