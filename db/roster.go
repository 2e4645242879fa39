package db

import (
	"cmp"
	"context"
	"slices"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// Pupil is a player who has let a coach in, with what waits for the coach.
type Pupil struct {
	ID         golf.PlayerID
	Name       string
	Target     float64
	BoundaryYd float64
	SharedFrom *time.Time // nil for everything
	LookedAt   *time.Time
	Month      int // rounds of this calendar month
	NewRounds  int // entered or changed since the coach last looked
	Questions  int // of the pupil's that nobody has answered
	Unread     int // notes with something the coach has not read, but for those
	Results    int // of practice, recorded since the coach last looked
	Due        *time.Time
	DueWhat    *string // the practice that is due first
}

var roster = `
	with mine as (
		select player_id, coalesce(shared_from, '-infinity') as from_day, shared_from, looked_at
		from coachings where coach_id = @coach and confirmed_at is not null
	), noted as (
		insert into coach_looks (player_id, coach_id, day, kind, name)
		select m.player_id, c.id, current_date, @kind, c.name from mine m, players c where c.id = @coach
		on conflict (player_id, coach_id, day, kind, about) do update set times = coach_looks.times + 1, last_at = now(), name = excluded.name
	)
	select p.id, p.name, p.target, p.boundary_yd, m.shared_from, m.looked_at, r.month, r.new_rounds, n.questions, n.unread,
		(select count(*) from assignment_results a where a.player_id = p.id and a.removed_at is null and a.recorded_at > coalesce(m.looked_at, '-infinity') and a.day >= m.from_day
			and exists (select 1 from assignments t where t.player_id = a.player_id and t.id = a.assignment_id and t.removed_at is null)) as results,
		d.due_on as due, d.what as due_what
	from mine m
	join players p on p.id = m.player_id
	cross join lateral (
		select count(*) filter (where played_on >= date_trunc('month', now())) as month,
			count(*) filter (where changed_at > coalesce(m.looked_at, '-infinity')) as new_rounds
		from rounds where player_id = p.id and removed_at is null and played_on >= m.from_day
			and exists (select 1 from holes h where h.player_id = p.id and h.round_id = rounds.id and h.line <> '')
	) r
	cross join lateral (
		select count(*) filter (where open) as questions, count(*) filter (where not open and unread) as unread
		from (
			select notes.kind = 'question' and not exists (select 1 from note_replies r where r.player_id = p.id and r.note_id = notes.id and r.author_id <> p.id and r.removed_at is null) as open,
				` + unreadBy("@coach") + ` as unread
			from notes where player_id = p.id and removed_at is null and day >= m.from_day and (not private or author_id = @coach) and ` + ofARound + `
		) visible
	) n
	left join lateral (
		select due_on, what from assignments where player_id = p.id and removed_at is null and done_at is null and due_on >= m.from_day order by due_on, id limit 1
	) d on true
	order by lower(p.name), p.id`

// Roster lists the players who have let the coach in, and notes for each that
// the coach opened the page: the roster, or pupils side by side.
func (s *Store) Roster(ctx context.Context, coach golf.PlayerID, kind LookKind) ([]Pupil, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Pupil], roster, pgx.StrictNamedArgs{"coach": coach, "kind": kind})
}

// SummaryRow is a pupil's round with the summary that is kept of it.
type SummaryRow struct {
	PlayerID golf.PlayerID
	RoundID  golf.RoundID
	PlayedOn time.Time
	MadeFor  string // empty without a summary
	Summary  []byte
}

const summaries = `
	select r.player_id, r.id, r.played_on, coalesce(s.made_for, ''), s.summary
	from coachings c
	cross join lateral (
		select player_id, id, played_on from rounds
		where player_id = c.player_id and removed_at is null and played_on >= coalesce(c.shared_from, '-infinity')
			and played_on >= coalesce(@from, '-infinity'::date) and played_on <= coalesce(@to, 'infinity'::date)
		order by played_on desc, id desc limit @most
	) r
	left join round_summaries s on s.player_id = r.player_id and s.round_id = r.id
	where c.coach_id = @coach and c.confirmed_at is not null`

// Summaries lists the rounds of every pupil that the coach may see, pupil by
// pupil and the latest first: those of some days, or the latest so many of each.
func (s *Store) Summaries(ctx context.Context, coach golf.PlayerID, c Chosen) ([]SummaryRow, error) {
	rows, err := s.q.Query(ctx, summaries, pgx.StrictNamedArgs{"coach": coach, "from": day(c.From), "to": day(c.To), "most": limit(c.Most)})
	if err != nil {
		return nil, told(err)
	}
	defer rows.Close()
	var all []SummaryRow
	var row SummaryRow // outside the loop, so that no row makes a new one
	to := []any{&row.PlayerID, &row.RoundID, &row.PlayedOn, &row.MadeFor, &row.Summary}
	for rows.Next() {
		row.Summary = nil
		if err := rows.Scan(to...); err != nil {
			return nil, told(err)
		}
		all = append(all, row)
	}
	slices.SortFunc(all, func(a, b SummaryRow) int { // here, since the server would sort on its disk
		return cmp.Or(cmp.Compare(a.PlayerID, b.PlayerID), b.PlayedOn.Compare(a.PlayedOn), cmp.Compare(b.RoundID, a.RoundID))
	})
	return all, told(rows.Err())
}

// KeptSummary is a summary of a round as it was read.
type KeptSummary struct {
	Round   Round
	MadeFor string
	Summary []byte
}

// SaveSummaries keeps summaries of a player's rounds, by who may see them; a
// round that has been saved since it was read keeps none.
func (s *Store) SaveSummaries(ctx context.Context, asker, who golf.PlayerID, all []KeptSummary) error {
	batch := &pgx.Batch{}
	for _, k := range all {
		saves := 0
		for _, h := range k.Round.Holes {
			saves += h.Version
		}
		batch.Queue(`
			with card as (
				select version from holes where player_id = @who and round_id = @round for share
			)
			insert into round_summaries (player_id, round_id, made_for, summary)
			select player_id, id, @made_for, @summary from rounds
			where player_id = @who and id = @round and played_on >= leave_from(@asker, @who) and (select coalesce(sum(version), 0) from card) = @saves
			on conflict (player_id, round_id) do update set made_for = excluded.made_for, summary = excluded.summary`,
			pgx.StrictNamedArgs{"asker": asker, "who": who, "round": k.Round.ID, "made_for": k.MadeFor, "summary": k.Summary, "saves": saves})
	}
	return told(s.q.SendBatch(ctx, batch).Close())
}
