package db_test

import (
	"os"
	"regexp"
	"slices"
	"testing"
)

// shardedTables reads from the schema which tables hold the data of a player.
func shardedTables(t *testing.T) []string {
	t.Helper()
	schema, err := os.ReadFile("testdata/schema.txt")
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	for _, m := range regexp.MustCompile(`(?m)^(\w+)\.player_id `).FindAllStringSubmatch(string(schema), -1) {
		all = append(all, m[1])
	}
	return all
}

// A Postgres that shards by player takes every statement of this package.
func TestShardedServersTakeEveryStatement(t *testing.T) {
	sharded, names := shardedTables(t), map[string]bool{}
	all := readSource(t).statements(t)
	for _, s := range all {
		names[s.name] = true
		for _, fault := range faults(s, sharded) {
			t.Errorf("%s %s:\n%s", s.name, fault, s.sql)
		}
	}
	if len(all) < 120 || len(sharded) < 15 {
		t.Errorf("only %d statements and %d tables were found", len(all), len(sharded))
	}
	for name := range ofSeveralPlayers {
		if !names[name] {
			t.Errorf("%s, listed as about several players, has no statement", name)
		}
	}
}

// Each rule notices a statement that breaks it, and only that rule.
func TestStatementsThatShardedServersRefuse(t *testing.T) {
	sharded := shardedTables(t)
	for rule, all := range map[string][]string{
		"calls a function of ours": {
			`select id from marks where player_id = @who and marked_on >= leave_from(@asker, @who)`,
		},
		"has a clock in do update set": {
			`insert into imports (player_id, file) values (@who, @file) on conflict (player_id) do update set file = excluded.file, created_at = now()`,
			`insert into devices (player_id, token_hash) values (@who, @token) on conflict (player_id, token_hash) do update set seen_at = current_timestamp returning seen_at`,
			`insert into resets (player_id, token_hash, expires_at) values (@who, @token, now()) on conflict (player_id) do update set expires_at = excluded.expires_at + interval '1 hour'`,
			`with own as (insert into tries (account, client, n) values (@a, @c, 1) on conflict (account, client) do update set began_at = now() returning n) select n from own`,
		},
		"has a clock in a case or coalesce of a write": {
			`update assignments set done_at = case when @done then now() end where player_id = @who and id = @id`,
			`update players set greeted_at = coalesce(greeted_at, now()) where id = @who`,
			`update courses set removed_at = null where id = @id and coalesce(removed_at, now()) > now() - interval '30 days'`,
			`with looked as (update coachings set before_at = case when looked_at < now() - interval '3 hours' then looked_at else before_at end where player_id = @pupil returning player_id) select player_id from looked`,
			`insert into marks (player_id, what) values (@who, coalesce(@what, random()::text))`,
		},
		"locks rows in a with before an insert": {
			`with card as (select version from holes where player_id = @who and round_id = @round for share)
				insert into round_summaries (player_id, round_id, made_for) select player_id, id, @made_for from rounds where player_id = @who and id = @round and (select sum(version) from card) = @saves`,
		},
		"changes a table on every node together with a player's": {
			`with ended as (delete from sessions where player_id = @who) update players set password_hash = @hash where id = @who`,
			`delete from courses c where c.id = @id and not exists (select 1 from rounds r where r.player_id = @who and r.course_id = c.id)`,
		},
		"takes the day from the server": {
			`insert into coach_looks (player_id, day) values (@who, current_date)`,
			`select id from rounds where player_id = @who and played_on >= date_trunc('month', now())`,
			`select id from rounds where player_id = @who and played_on >= now()::date`,
		},
		"has a clock in returning": {
			`insert into tries (account, client, n) values (@account, @client, 1) returning now() - began_at`,
		},
		"adds time to a column in an update": {
			`update sessions set created_at = created_at - interval '1 day' where player_id = @who`,
			`update devices set seen_at = now() where player_id = @who and seen_at + interval '1 year' > now()`,
		},
		"has exists beside an outer join": {
			`select r.id from rounds r left join courses c on c.id = r.course_id where r.player_id = @who and exists (select 1 from players p where p.id = @asker and p.steward)`,
		},
		"compares an argument of no type with a number": {
			`select id from notes where player_id = @who and (@round = 0 or round_id = @round)`,
		},
		"orders by number": {
			`select id from rounds where player_id = @who order by id desc limit 1`,
			`select r.id from note_replies r where r.player_id = @who order by r.id`,
			`select id from notes where player_id = @who order by case when @round::bigint > 0 then notes.id end, written_at`,
			`select id from assignment_results where player_id = @who order by day, id`,
			`select c.id from courses c order by c.id limit 1`,
		},
		"does not name the player": {
			`select id from rounds where id = @id`,
			`delete from sessions where token_hash = @token`,
			`update notes set body = @body where id = @id and author_id = @asker`,
			`insert into marks (what, player_id) values (@what, @who)`,
			`select id, (select count(*) from holes h where h.player_id = rounds.player_id and h.round_id = rounds.id) as holes from rounds where player_id = @who`,
			`select id from rounds where player_id = @who and exists (select 1 from notes n where n.player_id = rounds.player_id and n.round_id = rounds.id)`,
			`select r.id from rounds r join holes h on h.round_id = r.id where r.player_id = @who`,
			`with gone as (delete from resets where token_hash = @token returning player_id) insert into marks (player_id, what) select player_id, @what from gone`,
			`select id from rounds where player_id = @who union all select id from notes where author_id = @who`,
		},
	} {
		for _, sql := range all {
			if got := faults(statement{"planted", sql}, sharded); !slices.Equal(got, []string{rule}) {
				t.Errorf("%q, want %q:\n%s", got, rule, sql)
			}
		}
	}
}

// What the rules allow: a number between equals, a clock outside of a choice, and
// any statement about players alone, who are on every node.
func TestStatementsThatShardedServersTake(t *testing.T) {
	sharded := shardedTables(t)
	for _, sql := range []string{
		`select id from rounds where player_id = @who order by played_on desc, id desc limit @most`,
		`select r.id from note_replies r where r.player_id = @who order by r.written_at, r.id`,
		`select id from players where steward order by id for no key update`,
		`insert into imports (player_id, file, created_at) values (@who, @file, now()) on conflict (player_id) do update set created_at = excluded.created_at`,
		`select coalesce(max(seen_at), now()) from sessions where player_id = @who`,
		`update players set greeted_at = now() where id = @who`,
		`select r.id from rounds r join holes h on h.player_id = r.player_id and h.round_id = r.id where r.player_id = @who`,
	} {
		if got := faults(statement{"planted", sql}, sharded); got != nil {
			t.Errorf("%q:\n%s", got, sql)
		}
	}
}
