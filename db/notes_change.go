package db

import (
	"context"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// WriteNote stores a note about the player. asker must be allowed to see the round
// it is about or, for a lesson, the day. Only the player asks questions, and only
// others write private notes.
func (s *Store) WriteNote(ctx context.Context, asker, who golf.PlayerID, n Note) (int64, error) {
	return one(ctx, s.q, pgx.RowTo[int64], `
		insert into notes (player_id, author_id, kind, private, day, round_id, hole, shot, body)
		select @who, @asker, @kind, @private, about.day, @round, @hole, @shot, @body
		from (
			select r.played_on as day from rounds r where r.player_id = @who and r.id = @round and r.removed_at is null
				and (@hole::integer is null or exists (select 1 from holes h where h.player_id = r.player_id and h.player_id = @who and h.round_id = r.id and h.number = @hole))
				and (@shot::integer is null or exists (select 1 from shots s where s.player_id = r.player_id and s.player_id = @who and s.round_id = r.id and s.hole = @hole and s.number = @shot))
			union all
			select @day::date where @round::bigint is null
		) about
		where about.day >= `+accessFrom("@asker", "@who")+`
		returning id`,
		pgx.StrictNamedArgs{"who": who, "asker": asker, "kind": n.Kind, "private": n.Private, "day": n.Day, "round": n.RoundID, "hole": n.Hole, "shot": n.Shot, "body": n.Body})
}

// KeepNote stores a private note of a coach's about a pupil who has ended the coach's
// access, on the day that it is where the coach is. It returns golf.ErrNotFound unless
// the access has ended and the coach had opened a page of the pupil's.
func (s *Store) KeepNote(ctx context.Context, coach, pupil golf.PlayerID, on golf.Date, body string) error {
	return changeOne(ctx, s.q, `
		insert into notes (player_id, author_id, kind, private, day, body)
		select @who, @asker, 'lesson', true, @day::date, @body
		where exists (select 1 from coach_looks l where l.player_id = @who and l.coach_id = @asker)
			and `+accessFrom("@asker", "@who")+` is null`,
		pgx.StrictNamedArgs{"asker": coach, "who": pupil, "day": day(on), "body": body})
}

// EditNote changes the body of a note that asker wrote, and whether it is private.
// A note with a reply stays shared, even after the reply was removed, since a
// removed reply can be restored.
func (s *Store) EditNote(ctx context.Context, asker, who golf.PlayerID, n Note) error {
	return changeOne(ctx, s.q, `
		update notes set body = @body, edited_at = now(), private = @private and author_id <> player_id
			and not exists (select 1 from note_replies r where r.player_id = notes.player_id and r.player_id = @who and r.note_id = notes.id)
		where `+own+` and removed_at is null and (@private or `+accessFrom("@asker", "@who")+` is not null)`,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "id": n.ID, "body": n.Body, "private": n.Private})
}

// ReplyTo adds a reply to a note that asker may read and that is not private.
func (s *Store) ReplyTo(ctx context.Context, asker, who golf.PlayerID, note int64, body string) error {
	return changeOne(ctx, s.q, `
		insert into note_replies (player_id, note_id, author_id, body)
		select player_id, id, @asker, @body from notes where id = @note and not private and `+visible,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "note": note, "body": body})
}

// MarkRead records that asker has now read those of some notes of a player that
// are Unread.
func (s *Store) MarkRead(ctx context.Context, asker, who golf.PlayerID, notes []Note) error {
	var ids []int64
	for _, n := range notes {
		if n.Unread {
			ids = append(ids, n.ID)
		}
	}
	if len(ids) == 0 {
		return nil
	}
	_, err := change(ctx, s.q, `
		insert into note_reads (player_id, note_id, reader_id, read_at)
		select player_id, id, @asker, now() from notes where id = any(@ids) and `+visible+`
		on conflict (player_id, note_id, reader_id) do update set read_at = excluded.read_at`,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "ids": ids})
	return err
}
