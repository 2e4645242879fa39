package db

import (
	"cmp"
	"context"
	"crypto/sha256"
	"slices"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// Pupil is a player who has given a coach access, with what is new for the coach.
type Pupil struct {
	ID         golf.PlayerID
	Name       string
	Target     float64
	BoundaryYd float64
	Zone       string     // of time, as Player has it
	SharedFrom *time.Time // nil for everything
	LookedAt   *time.Time
	Begun      time.Time     // when the pupil let the coach in
	Archived   bool          // the coach has put the pupil away
	Month      int           // rounds of this calendar month
	NewRounds  int           // entered since the coach's visit before, and not opened by the coach
	NewRound   *golf.RoundID // the latest of them
	Changed    int           // other rounds, saved again since then
	Questions  int           // of the pupil's that nobody has answered
	Unread     int           // other notes with something the coach has not read
	Results    int           // of practice, sessions of drills among them, recorded since the coach's visit before
	Due        *time.Time
	DueWhat    *string // the practice that is due first
	DueID      *int64
}

// rosterLooks records, for some pupils to read, that the coach opened a page about
// all of them.
const rosterLooks = `
	insert into coach_looks (player_id, coach_id, day, kind, name, last_at)
	select m.player_id, m.coach_id, @day::date, @kind, c.name, @at from coachings m join players c on c.id = m.coach_id
	where m.coach_id = @coach and m.player_id = any(@pupils) and m.confirmed_at is not null
	on conflict (player_id, coach_id, day, kind, about) do update set times = coach_looks.times + 1, last_at = excluded.last_at, name = excluded.name`

// sinceVisit is when the visit before the present one ended: what came later is
// new until the coach has gone, whichever page is opened first.
const sinceVisit = `coalesce(case when m.looked_at > now() - interval '` + visitGap + `' then m.before_at else m.looked_at end, '-infinity')`

var roster = `
	select p.id, p.name, p.target, p.boundary_yd, p.zone, m.shared_from, m.looked_at, m.confirmed_at as begun, m.archived_at is not null as archived,
		r.month, r.new_rounds, r.new_round, r.changed, n.questions, n.unread,
		(select count(*) from assignment_results a where a.player_id = m.player_id and a.removed_at is null and a.recorded_at > since.at and a.day >= coalesce(m.shared_from, '-infinity')
			and exists (select 1 from assignments t where t.player_id = a.player_id and t.id = a.assignment_id and t.removed_at is null))
			+ (select count(*) from drill_sessions s where s.player_id = m.player_id and s.removed_at is null and s.recorded_at > since.at and s.day >= coalesce(m.shared_from, '-infinity')) as results,
		d.due_on as due, d.what as due_what, d.id as due_id
	from coachings m
	join players p on p.id = m.player_id
	cross join lateral (select ` + sinceVisit + ` as at) since
	cross join lateral (
		select count(*) filter (where played_on >= @month) as month, count(*) filter (where fresh) as new_rounds,
			(array_agg(id order by played_on desc, id desc) filter (where fresh))[1] as new_round,
			count(*) filter (where changed_at > since.at and entered_at <= since.at) as changed
		from (
			select id, played_on, changed_at, entered_at, entered_at > since.at and not exists (select 1 from coach_looks l
				where l.player_id = rounds.player_id and l.coach_id = @coach and l.kind = 'statement' and l.about = rounds.id and l.last_at >= rounds.entered_at) as fresh
			from rounds where player_id = m.player_id and removed_at is null and played_on >= coalesce(m.shared_from, '-infinity')
				and (played_on >= @month or entered_at > since.at or changed_at > since.at)
				and exists (select 1 from holes h where h.player_id = rounds.player_id and h.round_id = rounds.id and h.line <> '')
		) played
	) r
	cross join lateral (
		select count(*) filter (where open) as questions, count(*) filter (where not open and unread) as unread
		from (
			select ` + openQuestion + ` as open, ` + unreadBy("notes.player_id", "@coach") + ` as unread
			from notes where player_id = m.player_id and removed_at is null and day >= coalesce(m.shared_from, '-infinity') and (not private or author_id = @coach) and ` + ofARound("notes.player_id") + `
		) visible
	) n
	left join lateral (
		select id, due_on, what from assignments where player_id = m.player_id and removed_at is null and done_at is null and due_on >= coalesce(m.shared_from, '-infinity')
		order by due_on, given_at, id limit 1
	) d on true
	where m.coach_id = @coach and m.confirmed_at is not null
	order by lower(p.name), p.id`

// openQuestion holds for questions that nobody but the pupil has answered.
const openQuestion = `notes.kind = 'question' and not exists (select 1 from note_replies r
	where r.player_id = notes.player_id and r.note_id = notes.id and r.author_id is distinct from notes.player_id and r.removed_at is null)`

// Roster lists the players who have given the coach access; month is the first day of
// the calendar month in which it is read.
func (s *Store) Roster(ctx context.Context, coach golf.PlayerID, month golf.Date) ([]Pupil, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Pupil], roster, pgx.StrictNamedArgs{"coach": coach, "month": day(month)})
}

// RecordRosterLook records, for each of some pupils to read, that the coach opened a
// page about all of them: the roster, or pupils side by side. days has the pupils by
// the day that it was where they are.
func (s *Store) RecordRosterLook(ctx context.Context, coach golf.PlayerID, kind LookKind, days map[golf.Date][]golf.PlayerID, at time.Time) error {
	batch := &pgx.Batch{}
	for on, pupils := range days {
		batch.Queue(rosterLooks, pgx.StrictNamedArgs{"coach": coach, "kind": kind, "day": day(on), "pupils": pupils, "at": at})
	}
	return translate(s.q.SendBatch(ctx, batch).Close())
}

// SummaryRow is a pupil's round with its stored summary.
type SummaryRow struct {
	PlayerID golf.PlayerID
	RoundID  golf.RoundID
	PlayedOn time.Time
	MadeFor  string // empty without a summary, and when the run-out book it depends on has changed
	Digest   []byte // SHA-256 of the summary
	Summary  []byte // nil where only digests were asked for
}

// summaryMadeFor is what a summary s was made for; b is the player's run-out book.
const summaryMadeFor = `case when s.book is null or s.book = coalesce(b.version, 0) then coalesce(s.made_for, '') else '' end`

const summaries = `
	select r.player_id, r.id, r.played_on, ` + summaryMadeFor + `,
		s.digest, case when @bodies then s.summary end
	from coachings c
	cross join lateral (
		select player_id, id, played_on from rounds
		where player_id = c.player_id and removed_at is null and played_on >= coalesce(c.shared_from, '-infinity')
			and played_on >= coalesce(@from, '-infinity'::date) and played_on <= coalesce(@to, 'infinity'::date)
		order by played_on desc, id desc limit @most
	) r
	left join round_summaries s on s.player_id = r.player_id and s.round_id = r.id
	left join runout_books b on b.player_id = r.player_id
	where c.coach_id = @coach and c.confirmed_at is not null and (@pupils::bigint[] is null or c.player_id = any(@pupils))`

// Summaries lists the rounds that the coach may see, pupil by pupil and the latest
// first: those between two days, the latest c.Most of each pupil, or both.
func (s *Store) Summaries(ctx context.Context, coach golf.PlayerID, c Chosen) ([]SummaryRow, error) {
	return s.summaries(ctx, coach, c, pgx.StrictNamedArgs{"pupils": nil, "bodies": true})
}

// PupilSummaries is Summaries for some of the pupils.
func (s *Store) PupilSummaries(ctx context.Context, coach golf.PlayerID, pupils []golf.PlayerID, c Chosen) ([]SummaryRow, error) {
	return s.summaries(ctx, coach, c, pgx.StrictNamedArgs{"pupils": pupils, "bodies": true})
}

// Digests is Summaries without the summaries themselves: the digests are much shorter.
func (s *Store) Digests(ctx context.Context, coach golf.PlayerID, c Chosen) ([]SummaryRow, error) {
	return s.summaries(ctx, coach, c, pgx.StrictNamedArgs{"pupils": nil, "bodies": false})
}

func (s *Store) summaries(ctx context.Context, coach golf.PlayerID, c Chosen, args pgx.StrictNamedArgs) ([]SummaryRow, error) {
	args["coach"], args["from"], args["to"], args["most"] = coach, day(c.From), day(c.To), limit(c.Most)
	rows, err := s.q.Query(ctx, summaries, args)
	if err != nil {
		return nil, translate(err)
	}
	defer rows.Close()
	var all []SummaryRow
	var row SummaryRow // outside the loop, so that rows do not allocate
	to := []any{&row.PlayerID, &row.RoundID, &row.PlayedOn, &row.MadeFor, &row.Digest, &row.Summary}
	for rows.Next() {
		row.Digest, row.Summary = nil, nil
		if err := rows.Scan(to...); err != nil {
			return nil, translate(err)
		}
		all = append(all, row)
	}
	slices.SortFunc(all, func(a, b SummaryRow) int { // here, since the server would sort on disk
		return cmp.Or(cmp.Compare(a.PlayerID, b.PlayerID), b.PlayedOn.Compare(a.PlayedOn), cmp.Compare(b.RoundID, a.RoundID))
	})
	return all, translate(rows.Err())
}

// KeptSummary is a summary to store, with the round as it was read to make it.
type KeptSummary struct {
	Round   Round
	MadeFor string
	Summary []byte
}

// SaveSummaries stores summaries of a player's rounds that asker may see. It skips a
// round that has been saved again since it was read.
func (s *Store) SaveSummaries(ctx context.Context, asker, who golf.PlayerID, all []KeptSummary) error {
	batch := &pgx.Batch{}
	for _, k := range all {
		digest, saves := sha256.Sum256(k.Summary), 0
		for _, h := range k.Round.Holes {
			saves += h.Version
		}
		batch.Queue(`
			insert into round_summaries (player_id, round_id, made_for, summary, digest, book)
			select player_id, id, @made_for, @summary, @digest, @book::integer from rounds
			where player_id = @who and id = @round and played_on >= `+accessFrom("@asker", "@who")+`
				and (select coalesce(sum(card.version), 0) from (select version from holes where player_id = @who and round_id = @round for share) card) = @saves
			on conflict (player_id, round_id) do update set made_for = excluded.made_for, summary = excluded.summary, digest = excluded.digest, book = excluded.book`,
			pgx.StrictNamedArgs{"asker": asker, "who": who, "round": k.Round.ID, "made_for": k.MadeFor, "summary": k.Summary, "digest": digest[:], "saves": saves, "book": k.Round.bookAsked()})
	}
	return translate(s.q.SendBatch(ctx, batch).Close())
}
