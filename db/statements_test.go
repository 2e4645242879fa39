package db_test

import (
	"regexp"
	"slices"
	"strings"
)

// ofSeveralPlayers are the statements that are about more than one player, so that a
// sharded server asks every shard, and why that is all right.
var ofSeveralPlayers = map[string]string{
	"Accounts":       "every account with its open link for a new password, for a steward",
	"pupilsOf":       "the pupils of a coach, when the account goes",
	"otherPupils":    "the other pupils of a coach, when one of them leaves",
	"DueDigests":     "everybody's mail that is due, every few minutes",
	"LatePractice":   "everybody's practice whose day has passed, every few minutes",
	"roster":         "the pupils of a coach",
	"endedCoachings": "the pupils whom a coach gave up within a day",
	"pupilRequests":  "the players who ask a coach",
	"openQuestions":  "the pupils of a coach",
	"nearLessons":    "the pupils of a coach",
	"unsentRounds":   "the pupils of a coach",
	"rosterLooks":    "the pupils of a coach",
	"summaries":      "the pupils of a coach",
	"PrivateNotes":   "the former pupils of a coach",
	"ownSecrets":     "what a coach kept private or removed at any pupil's, when the account goes",
	"signed":         "what a coach wrote to any pupil, when the account goes",
	"Removed":        "what a coach removed at any pupil's",
	"MergeCourse":    "everybody's rounds on a course, by a steward",
	"sweptKinds":     "the daily sweep",
	"othersPeers":    "what the rounds of others come to, without saying whose",
	"sizeable":       "the players with many rounds, daily",
	"otherPeers":     "what is kept of players without many rounds, daily",
}

// The rules that let a Postgres that shards by player take a statement. Plain
// Postgres has none of them, so that only this test notices. Source: what Citus
// 13.2.2 refused, or sent to every shard, when the tests of this package ran on it.
var (
	clock       = `(?:\b(?:now|clock_timestamp|statement_timestamp|transaction_timestamp|random|gen_random_uuid|nextval)\s*\(|\bcurrent_(?:date|time|timestamp)\b|\blocaltime)`
	clockOrStep = regexp.MustCompile(clock + `|[-+] interval`)
	anyClock    = regexp.MustCompile(clock)
	serversDay  = regexp.MustCompile(`\bcurrent_date\b|\blocaltime|\bdate_trunc\([^()]*\bnow\b|\bnow\(\)::date`)
	ourFunction = regexp.MustCompile(`\b(leave_from|access_from)\s*\(`)
	writes      = regexp.MustCompile(`(?:^|\()\s*(insert|update|delete)\s`)
	onConflict  = regexp.MustCompile(`do update set (.*?)(?: where | returning |$)`)
	lockedFirst = regexp.MustCompile(`\bas \(\s*select [^()]*\bfor (share|update|no key update)\b`)
	columnStep  = regexp.MustCompile(`^update .*_at [-+] interval`)
	changesAll  = regexp.MustCompile(`\b(?:update|delete from) (\w+) `)
	outerExists = regexp.MustCompile(`\b(?:left|right|full) join\b.*\b(?:where|and) exists \(\)`)
	untyped     = regexp.MustCompile(`@\w+ (=|<>|<|>|<=|>=) \d`)
	quoted      = regexp.MustCompile(`'[^']*'`)
	spaces      = regexp.MustCompile(`\s+`)
	tableNamed  = regexp.MustCompile(`\b(?:from|join|update|into)\s+([a-z_]+)(?:\s+([a-z_]+))?`)
	constant    = regexp.MustCompile(`\bplayer_id = @|@\w+ = (?:\w+\.)?player_id\b`)
	insertsOne  = regexp.MustCompile(`insert into \w+ \(player_id\b[^)]*\) (?:values \(@|select @|select (?:\w+\.)?player_id\b)`)
	idKey       = regexp.MustCompile(`(?:^|[^=<>] )(?:\w+\.)?\bid\b`)
	writtenRows = regexp.MustCompile(`\b(notes|note_replies|assignments|assignment_results)\b`)
)

// faults lists the rules that a statement breaks; sharded are the tables of a
// player's.
func faults(s statement, sharded []string) []string {
	sql := strings.TrimSpace(spaces.ReplaceAllString(quoted.ReplaceAllString(s.sql, "''"), " "))
	var broken []string
	add := func(rule string, when bool) {
		if when && !slices.Contains(broken, rule) {
			broken = append(broken, rule)
		}
	}
	add("calls a function of ours", ourFunction.MatchString(sql))
	add("takes the day from the server", serversDay.MatchString(sql)) // it is another day where the player is
	add("locks rows in a with before an insert", strings.Contains(sql, "insert into") && lockedFirst.MatchString(sql))
	add("compares an argument of no type with a number", untyped.MatchString(sql))
	if writes.MatchString(sql) {
		for _, span := range choices(sql) {
			add("has a clock in a case or coalesce of a write", anyClock.MatchString(span))
		}
	}
	add("changes a table on every node together with a player's", changesBoth(sql, sharded))
	_, several := ofSeveralPlayers[s.name]
	for _, part := range queries(sql) {
		if set := onConflict.FindStringSubmatch(part); set != nil {
			add("has a clock in do update set", clockOrStep.MatchString(set[1]))
		}
		_, returned, _ := strings.Cut(part, " returning ")
		add("has a clock in returning", anyClock.MatchString(returned))
		add("adds time to a column in an update", columnStep.MatchString(part))
		add("has exists beside an outer join", outerExists.MatchString(part))
		add("orders by number", ordersByNumber(part))
		add("does not name the player", !several && !namesPlayer(part, sharded))
	}
	return broken
}

// queries takes a statement apart into its selects and writes, each without those
// inside it.
func queries(sql string) []string {
	type level struct {
		text strings.Builder
		is   bool // a query, not some other parenthesis
	}
	open := []*level{{is: true}}
	var all []string
	for i, c := range sql {
		top := open[len(open)-1]
		switch {
		case c == '(':
			top.text.WriteRune(c)
			open = append(open, &level{is: startsStatement.MatchString(sql[i+1:])})
		case c == ')' && len(open) > 1:
			open = open[:len(open)-1]
			if top.is {
				all = append(all, strings.Split(top.text.String(), " union all ")...)
			} else {
				open[len(open)-1].text.WriteString(top.text.String())
			}
			open[len(open)-1].text.WriteRune(c)
		default:
			top.text.WriteRune(c)
		}
	}
	return append(all, strings.Split(open[0].text.String(), " union all ")...)
}

// namesPlayer reports whether a query on tables of a player's names the player as a
// constant, and joins its tables by player.
func namesPlayer(sql string, sharded []string) bool {
	joined := 0
	for _, m := range tableNamed.FindAllStringSubmatch(sql, -1) {
		table, alias := m[1], m[2]
		if !slices.Contains(sharded, table) {
			continue
		}
		if strings.Contains(sql, "insert into "+table+" (") {
			if !insertsOne.MatchString(sql) {
				return false
			}
			continue
		}
		if joined++; joined > 1 && !strings.Contains(sql, alias+".player_id = ") && !strings.Contains(sql, "= "+alias+".player_id") {
			return false
		}
	}
	return joined == 0 || constant.MatchString(sql)
}

// changesBoth reports whether a statement updates or deletes rows of a table that is
// on every node, and uses a table of a player's.
func changesBoth(sql string, sharded []string) bool {
	changes, uses := false, false
	for _, m := range changesAll.FindAllStringSubmatch(sql, -1) {
		changes = changes || m[1] != "set" && m[1] != "of" && !slices.Contains(sharded, m[1])
	}
	for _, m := range tableNamed.FindAllStringSubmatch(sql, -1) {
		uses = uses || slices.Contains(sharded, m[1])
	}
	return changes && uses
}

// choices lists what stands in the case expressions and coalesce calls of a
// statement.
func choices(sql string) []string {
	var all []string
	var begun []int
	for _, m := range regexp.MustCompile(`\bcase\b|\bend\b`).FindAllStringIndex(sql, -1) {
		if sql[m[0]:m[1]] == "case" {
			begun = append(begun, m[1])
		} else if len(begun) > 0 {
			all, begun = append(all, sql[begun[len(begun)-1]:m[0]]), begun[:len(begun)-1]
		}
	}
	for _, m := range regexp.MustCompile(`\bcoalesce\s*\(`).FindAllStringIndex(sql, -1) {
		all = append(all, upTo(sql[m[1]:]))
	}
	return all
}

// upTo is a text as far as the parenthesis that closes it.
func upTo(text string) string {
	depth := 0
	for i, c := range text {
		switch c {
		case '(':
			depth++
		case ')':
			depth--
		}
		if depth < 0 {
			return text[:i]
		}
	}
	return text
}

// ordersByNumber reports whether a query takes the numbers of rows for the order in
// which they were written: on several nodes they are not. A number may decide
// between equals, and give the order of locks.
func ordersByNumber(sql string) bool {
	for _, m := range regexp.MustCompile(`\border by `).FindAllStringIndex(sql, -1) {
		clause, lock, _ := strings.Cut(upTo(sql[m[1]:]), " for ")
		clause, _, _ = strings.Cut(clause, " limit ")
		keys := strings.Split(clause, ", ")
		for i, key := range keys {
			if !idKey.MatchString(key) || strings.Contains(key, " = ") {
				continue
			}
			first, last := i == 0, i == len(keys)-1
			timeless := writtenRows.MatchString(sql) && !strings.Contains(strings.Join(keys[:i], ", "), "_at")
			if first && lock == "" || !last || timeless && lock == "" {
				return true
			}
		}
	}
	return false
}
