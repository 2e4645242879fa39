package db

import (
	"context"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// oneByOne makes a sharded server change its shards one after the other until the
// transaction ends: after changes side by side it refuses to change the accounts, which
// are on every node. Any other server takes it for a setting without a meaning.
const oneByOne = `select set_config('citus.multi_shard_modify_mode', 'sequential', true)`

// signed leaves the name of an author whose account is about to go with what the author
// wrote to others.
var signed = []string{
	`update notes set author_name = @name where author_id = @who and player_id <> @who`,
	`update note_replies set author_name = @name where author_id = @who and player_id <> @who`,
	`update assignments set author_name = @name where author_id = @who and player_id <> @who`,
	`update walked_rounds set coach_name = @name where coach_id = @who and player_id <> @who`,
	`update lessons set coach_name = @name where coach_id = @who and player_id <> @who`,
	`update hole_advice set coach_name = @name where coach_id = @who`,
}

// ownSecrets deletes what nobody but an author could read or bring back.
var ownSecrets = []string{
	`delete from note_replies where author_id = @who and removed_at is not null`,
	`delete from hole_advice where coach_id = @who and removed_at is not null`,
	`delete from walked_rounds where coach_id = @who and (sent_at is null or removed_at is not null)`,
	`delete from notes where author_id = @who and (private or removed_at is not null)`,
}

// leavesWritten parts an account that is about to go from what was written: what it
// shared stays with its readers, under its name, what others kept private about it
// stays with them, and what only it could read goes.
func (s *Store) leavesWritten(ctx context.Context, who golf.PlayerID) error {
	if _, err := one(ctx, s.q, pgx.RowTo[string], oneByOne, pgx.StrictNamedArgs{}); err != nil {
		return err
	}
	name, err := one(ctx, s.q, pgx.RowTo[string], `select name from players where id = @who for update`, pgx.StrictNamedArgs{"who": who}) // nobody writes about it meanwhile
	if err != nil {
		return err
	}
	if err := s.keepForWriters(ctx, who); err != nil {
		return err
	}
	for _, statement := range ownSecrets {
		if _, err := change(ctx, s.q, statement, pgx.StrictNamedArgs{"who": who}); err != nil {
			return err
		}
	}
	for _, statement := range signed {
		if _, err := change(ctx, s.q, statement, pgx.StrictNamedArgs{"who": who, "name": name}); err != nil {
			return err
		}
	}
	return nil
}

// pupilsOf are the pupils of a coach whose account is about to go.
const pupilsOf = `select player_id from coachings where coach_id = @who and confirmed_at is not null order by player_id`

// tellsOfGoing tells the coaches and pupils of an account that it goes. It has to be
// done before the access between them goes with it.
func (s *Store) tellsOfGoing(ctx context.Context, who golf.PlayerID) error {
	coaches, err := many(ctx, s.q, pgx.RowTo[golf.PlayerID], `select coach_id from coachings where player_id = @who and confirmed_at is not null order by coach_id`,
		pgx.StrictNamedArgs{"who": who})
	if err != nil {
		return err
	}
	pupils, err := many(ctx, s.q, pgx.RowTo[golf.PlayerID], pupilsOf, pgx.StrictNamedArgs{"who": who})
	if err != nil {
		return err
	}
	for _, to := range coaches {
		if err := s.Tell(ctx, who, to, Notice{Kind: NoticeGone, OfID: who}); err != nil {
			return err
		}
	}
	for _, to := range pupils {
		if err := s.Tell(ctx, who, to, Notice{Kind: NoticeGone, OfID: to}); err != nil {
			return err
		}
	}
	return nil
}

// keepForWriters hands the private notes about a player, whose account is about to go,
// to those who wrote them.
func (s *Store) keepForWriters(ctx context.Context, who golf.PlayerID) error {
	notes, err := many(ctx, s.q, pgx.RowToStructByName[Note], `
		select `+noteText+`, p.name as author, null::timestamptz as read_at, false as answered, false as unread
		from notes join players p on p.id = notes.player_id
		where notes.player_id = @who and notes.private and notes.removed_at is null`, pgx.StrictNamedArgs{"who": who})
	for _, n := range notes {
		err := changeOne(ctx, s.q, `
			insert into kept_notes (player_id, pupil, kind, day, hole, shot, body, written_at, edited_at)
			values (@coach, @pupil, @kind, @day, @hole, @shot, @body, @written, @edited)`,
			pgx.StrictNamedArgs{"coach": n.AuthorID, "pupil": n.Author, "kind": n.Kind, "day": n.Day, "hole": n.Hole, "shot": n.Shot, "body": n.Body, "written": n.WrittenAt, "edited": n.EditedAt})
		if err != nil {
			return err
		}
	}
	return err
}

// keptNotes lists the private notes of a coach about players whose accounts have gone.
func (s *Store) keptNotes(ctx context.Context, coach golf.PlayerID) ([]Note, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Note], `
		select player_id, id, player_id as author_id, pupil as author, kind, true as private, day, null::bigint as round_id, hole, shot, body, written_at, edited_at,
			null::timestamptz as read_at, false as answered, false as unread
		from kept_notes where player_id = @coach and removed_at is null
		order by lower(pupil), day desc, written_at desc, id`, pgx.StrictNamedArgs{"coach": coach})
}

// RemoveKept removes a private note of a coach about a player whose account has gone.
func (s *Store) RemoveKept(ctx context.Context, coach golf.PlayerID, id int64) error {
	return changeOne(ctx, s.q, `update kept_notes set removed_at = now() where player_id = @coach and id = @id and removed_at is null`,
		pgx.StrictNamedArgs{"coach": coach, "id": id})
}

// RestoreKept brings it back.
func (s *Store) RestoreKept(ctx context.Context, coach golf.PlayerID, id int64) error {
	return changeOne(ctx, s.q, `update kept_notes set removed_at = null where player_id = @coach and id = @id and `+back,
		pgx.StrictNamedArgs{"coach": coach, "id": id})
}
