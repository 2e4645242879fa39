package dbtest

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// Digest returns a function that makes one short text from all rows of a player in the
// database at a URL. The text changes when any of the rows does.
func Digest(t testing.TB, url string) func(golf.PlayerID) string {
	t.Helper()
	c, err := pgx.Connect(t.Context(), url)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { c.Close(context.Background()) })
	rows, err := c.Query(t.Context(), `select table_name from information_schema.columns where table_schema = 'public' and column_name = 'player_id' order by 1`)
	if err != nil {
		t.Fatal(err)
	}
	tables, err := pgx.CollectRows(rows, pgx.RowTo[string])
	if err != nil || len(tables) < 10 {
		t.Fatalf("%q, %v", tables, err)
	}
	parts := []string{
		`(select string_agg(x::text, '|' order by x::text) from players x where id = $1)`,
		`(select string_agg(x::text, '|' order by x::text) from courses x where owner_id = $1)`,
		`(select string_agg(h::text, '|' order by h::text) from course_holes h join courses c on c.id = h.course_id where c.owner_id = $1)`,
		`(select string_agg(x::text, '|' order by x::text) from hole_pictures x where drawn_by = $1)`,
	}
	for _, table := range tables {
		parts = append(parts, fmt.Sprintf(`(select string_agg(x::text, '|' order by x::text) from %s x where player_id = $1)`, pgx.Identifier{table}.Sanitize()))
	}
	sql := `select md5(concat_ws('/', ` + strings.Join(parts, ", ") + `))`
	return func(player golf.PlayerID) string {
		t.Helper()
		var sum string
		if err := c.QueryRow(t.Context(), sql, player).Scan(&sum); err != nil {
			t.Fatal(err)
		}
		return sum
	}
}
