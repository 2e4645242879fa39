package db

import (
	"context"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"
)

// CheckMigrations takes a database up, down and up again, and compares its
// schema with the one written down. It is called from a test outside, which has
// the database.
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
		t.Errorf("up again is another schema: %s", diff)
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
		t.Errorf("the schema is another than written down: %s", diff)
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
