package db_test

import (
	"context"
	"os"
	"regexp"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/jackc/pgx/v5"

	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// classes says of each table where a sharded server keeps it: whole on every node,
// or by player. by_player has the column that a table of a player's is sharded by.
const classes = `
	with tables as (
		select c.oid as t, c.relname in ('players', 'courses', 'course_holes', 'hole_pictures', 'invitations', 'tries', 'asked_addresses', 'goose_db_version') as whole
		from pg_class c where c.relnamespace = 'public'::regnamespace and c.relkind in ('r', 'p')
	), by_player as (
		select t, (select attnum from pg_attribute where attrelid = t and attname = 'player_id' and atttypid = 'bigint'::regtype
			and attnotnull and attgenerated = '' and attidentity = '') as shard
		from tables where not whole
	)`

// catalogueRules let a Postgres that shards by player take the schema. Each query
// lists what breaks its rule.
var catalogueRules = map[string]string{
	"a table of a player's has an ordinary column player_id bigint not null": `
		select t::regclass::text from by_player where shard is null`,
	"a table of a player's has a primary key that begins with player_id": `
		select t::regclass::text from by_player
		where not exists (select 1 from pg_index where indrelid = t and indisprimary and indkey[0] = shard)`,
	"what is unique in a table of a player's is so for one player": `
		select indexrelid::regclass::text from pg_index join by_player on indrelid = t
		where (indisunique or indisexclusion) and not indisprimary and not coalesce(shard = any (indkey::int2[]), false)`,
	"between tables of players a foreign key pairs player_id with player_id": `
		select conname::text from pg_constraint f join by_player a on f.conrelid = a.t join by_player b on f.confrelid = b.t
		where f.contype = 'f' and not exists (
			select 1 from generate_subscripts(f.conkey, 1) i where f.conkey[i] = a.shard and f.confkey[i] = b.shard)`,
	"a table on every node refers only to tables on every node": `
		select conname::text from pg_constraint f join tables a on f.conrelid = a.t join tables b on f.confrelid = b.t
		where f.contype = 'f' and a.whole and not b.whole`,
	"no foreign key changes player_id": `
		select conname::text from pg_constraint f join by_player a on f.conrelid = a.t
		where f.contype = 'f' and a.shard = any (f.conkey) and (f.confupdtype in ('n', 'd', 'c')
			or f.confdeltype in ('n', 'd') and (f.confdelsetcols is null or a.shard = any (f.confdelsetcols)))`,
	"no trigger":      `select tgname::text from pg_trigger join tables on tgrelid = t where not tgisinternal`,
	"no rule":         `select rulename::text from pg_rewrite join tables on ev_class = t`,
	"no row security": `select t::regclass::text from tables join pg_class on oid = t where relrowsecurity`,
	"no function":     `select proname::text from pg_proc where pronamespace = 'public'::regnamespace`,
	"no view":         `select relname::text from pg_class where relnamespace = 'public'::regnamespace and relkind in ('v', 'm')`,
	"numbers that the server gives are bigint": `
		select attrelid::regclass || '.' || attname from pg_attribute join tables on attrelid = t
		where attidentity <> '' and atttypid <> 'bigint'::regtype and t::regclass::text <> 'goose_db_version'`,
	"no inheritance":                 `select t::regclass::text from tables join pg_inherits on inhrelid = t`,
	"every table is an ordinary one": `select t::regclass::text from tables join pg_class on oid = t where relpersistence <> 'p'`,
}

// broken lists the rules that the schema breaks, and what breaks them.
func broken(t *testing.T, c *pgx.Conn) map[string][]string {
	t.Helper()
	all := map[string][]string{}
	for rule, query := range catalogueRules {
		rows, err := c.Query(t.Context(), classes+query+" order by 1")
		if err != nil {
			t.Fatal(rule, err)
		}
		found, err := pgx.CollectRows(rows, pgx.RowTo[string])
		if err != nil {
			t.Fatal(rule, err)
		}
		if len(found) > 0 {
			all[rule] = found
		}
	}
	return all
}

// The script that spreads the tables keeps the same ones whole as the rules do.
func TestTheScriptSpreadsTheTablesOfTheRules(t *testing.T) {
	script, err := os.ReadFile("../migrations/sharding/spread.sql")
	if err != nil {
		t.Fatal(err)
	}
	lists := regexp.MustCompile(`(?:array\[|relname in \()([^\])]*)[\])]`)
	inScript, inRules := lists.FindSubmatch(script), lists.FindStringSubmatch(classes)
	if inScript == nil || inRules == nil || string(inScript[1]) != inRules[1] {
		t.Errorf("the script has %q, the rules %q", inScript, inRules)
	}
}

// A Postgres that shards by player takes the schema.
func TestShardedServersTakeTheSchema(t *testing.T) {
	c := connect(t)
	var tables int
	if err := c.QueryRow(t.Context(), classes+"select count(*) from by_player").Scan(&tables); err != nil || tables < 15 {
		t.Errorf("%d tables of players, %v", tables, err)
	}
	if diff := cmp.Diff(map[string][]string{}, broken(t, c)); diff != "" {
		t.Error(diff)
	}
}

// Each rule notices a schema that breaks it, and no other rule does.
func TestSchemasThatShardedServersRefuse(t *testing.T) {
	c := connect(t)
	for change, want := range map[string]string{
		"create table bad (id bigint primary key)":                                                                      "a table of a player's has an ordinary column player_id bigint not null",
		"create table bad (player_id bigint not null, id bigint primary key)":                                           "a table of a player's has a primary key that begins with player_id",
		"create table bad (player_id bigint not null)":                                                                  "a table of a player's has a primary key that begins with player_id",
		"create unique index bad on rounds (name)":                                                                      "what is unique in a table of a player's is so for one player",
		"create table bad (player_id bigint primary key, unlike bigint, foreign key (unlike) references imports)":       "between tables of players a foreign key pairs player_id with player_id",
		"alter table courses add bad bigint references imports":                                                         "a table on every node refers only to tables on every node",
		"create table bad (player_id bigint primary key references players on update cascade)":                          "no foreign key changes player_id",
		"create trigger bad before update on rounds for each row execute function suppress_redundant_updates_trigger()": "no trigger",
		"create rule bad as on delete to marks do nothing":                                                              "no rule",
		"alter table rounds enable row level security":                                                                  "no row security",
		"create function bad() returns int language sql as 'select 1'":                                                  "no function",
		"create view bad as select 1":                                                                                   "no view",
		"alter table rounds add bad int generated always as identity":                                                   "numbers that the server gives are bigint",
		"create table bad (primary key (player_id)) inherits (imports)":                                                 "no inheritance",
		"create unlogged table bad (player_id bigint primary key)":                                                      "every table is an ordinary one",
	} {
		tx, err := c.Begin(t.Context())
		if err != nil {
			t.Fatal(err)
		}
		if _, err := tx.Exec(t.Context(), change); err != nil {
			t.Fatal(change, err)
		}
		got := broken(t, c)
		if _, found := got[want]; !found || change != "create table bad (id bigint primary key)" && len(got) != 1 {
			t.Errorf("%s: %v", change, got)
		}
		if err := tx.Rollback(t.Context()); err != nil {
			t.Fatal(err)
		}
	}
}

// connect opens a connection to a database of the test's own, with the schema.
func connect(t *testing.T) *pgx.Conn {
	t.Helper()
	url := dbtest.Clone(t)
	s, err := db.Open(t.Context(), url)
	if err != nil {
		t.Fatal(err)
	}
	s.Close()
	c, err := pgx.Connect(t.Context(), url)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { c.Close(context.Background()) })
	return c
}
