package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// SetCoachCode gives an account another code, or none where it is empty; the old one no
// longer works. It returns ErrTaken when somebody has the code already.
func (s *Store) SetCoachCode(ctx context.Context, who golf.PlayerID, code string) error {
	return changeOne(ctx, s.q, `update players set coach_code = nullif(@code, '') where id = @who`, pgx.StrictNamedArgs{"who": who, "code": code})
}

// CodeOwner is whom a code belongs to, for the account that typed it.
type CodeOwner struct {
	ID      golf.PlayerID
	Name    string
	Email   string
	Own     bool // it is the asker's own code
	Waits   bool // the coach has accepted a link of the asker's, who has not approved yet
	Coaches bool // the coach has access to the asker
	Asked   bool // the asker has asked already, and the coach has not answered
}

// OwnerOfCode returns whom a code belongs to; golf.ErrNotFound for a code that is wrong
// and for one that is turned off.
func (s *Store) OwnerOfCode(ctx context.Context, asker golf.PlayerID, code string) (CodeOwner, error) {
	return one(ctx, s.q, pgx.RowToStructByName[CodeOwner], `
		select p.id, p.name, p.email, p.id = @asker as own,
			exists (select 1 from coachings c where c.player_id = @asker and c.coach_id = p.id and c.confirmed_at is null) as waits,
			exists (select 1 from coachings c where c.player_id = @asker and c.coach_id = p.id and c.confirmed_at is not null) as coaches,
			exists (select 1 from coach_requests q where q.player_id = @asker and q.coach_id = p.id) as asked
		from players p where p.coach_code = @code`, pgx.StrictNamedArgs{"asker": asker, "code": code})
}

// AskCoach asks the coach of a code to coach a pupil, who shares what was played from a
// day on; zero for everything. Asking again changes the day, and an access that ended is
// not taken up again from another day. It returns golf.ErrNotFound
// for a code that does not work, and for a coach who has access or has accepted a link.
func (s *Store) AskCoach(ctx context.Context, pupil golf.PlayerID, code string, from golf.Date) error {
	return changeOne(ctx, s.q, `
		with ended as (
			delete from ended_coachings where player_id = @pupil and coach_id in (select p.id from players p where p.coach_code = @code)
		)
		insert into coach_requests (player_id, coach_id, shared_from, asked_at)
		select @pupil, p.id, @from, now() from players p
		where p.coach_code = @code and p.id <> @pupil and not exists (select 1 from coachings c where c.player_id = @pupil and c.coach_id = p.id)
		on conflict (player_id, coach_id) do update set shared_from = excluded.shared_from, asked_at = excluded.asked_at`,
		pgx.StrictNamedArgs{"pupil": pupil, "code": code, "from": day(from)})
}

// CoachRequest is a pupil who has asked a coach.
type CoachRequest struct {
	ID         golf.PlayerID // of the other: the pupil to the coach, the coach to the pupil
	Name       string        // of the other
	Email      string        // of the other
	SharedFrom *time.Time    // nil for everything
	AskedAt    time.Time
}

// coachRequests lists whom a pupil asks, and pupilRequests who asks a coach.
const (
	coachRequests = `
		select p.id, p.name, p.email, q.shared_from, q.asked_at from coach_requests q join players p on p.id = q.coach_id
		where q.player_id = @who order by lower(p.name), p.id`
	pupilRequests = `
		select p.id, p.name, p.email, q.shared_from, q.asked_at from coach_requests q join players p on p.id = q.player_id
		where q.coach_id = @who order by q.asked_at, p.id`
)

// Codes is what an account's page shows of codes.
type Codes struct {
	Code  string         // the account's own; empty while it is turned off
	Asks  []CoachRequest // pupils who have asked the account and have no answer yet, who asked first before others
	Asked []CoachRequest // coaches whom the account has asked and who have not answered
}

// Codes reads them in one trip to the database.
func (s *Store) Codes(ctx context.Context, who golf.PlayerID) (c Codes, err error) {
	batch, of := &pgx.Batch{}, pgx.StrictNamedArgs{"who": who}
	batch.Queue(`select coalesce(coach_code, '') from players where id = @who`, of).QueryRow(func(row pgx.Row) error { return row.Scan(&c.Code) })
	batch.Queue(pupilRequests, of).Query(into(&c.Asks))
	batch.Queue(coachRequests, of).Query(into(&c.Asked))
	err = translate(s.q.SendBatch(ctx, batch).Close())
	return c, err
}

// DropRequest takes a request back; who is the pupil, or the coach who declines it.
func (s *Store) DropRequest(ctx context.Context, who, pupil, coach golf.PlayerID) error {
	return changeOne(ctx, s.q, `delete from coach_requests where player_id = @pupil and coach_id = @coach and @who in (player_id, coach_id)`,
		pgx.StrictNamedArgs{"who": who, "pupil": pupil, "coach": coach})
}

// TakeRequest gives a coach the access that a pupil asked the coach to take. A coach who
// has access already keeps it as it is: the pupil has settled the day since.
func (s *Store) TakeRequest(ctx context.Context, coach, pupil golf.PlayerID) error {
	of := pgx.StrictNamedArgs{"pupil": pupil, "coach": coach}
	return s.Tx(ctx, func(tx *Store) error {
		asked, err := one(ctx, tx.q, pgx.RowTo[bool], `select exists (select 1 from coach_requests where player_id = @pupil and coach_id = @coach)`, of)
		if err != nil {
			return err
		}
		if !asked {
			return golf.ErrNotFound
		}
		if err := changeOne(ctx, tx.q, `update players set teaches = true where id = @coach`, pgx.StrictNamedArgs{"coach": coach}); err != nil {
			return err
		}
		return changeOne(ctx, tx.q, `
			with asked as (
				delete from coach_requests where player_id = @pupil and coach_id = @coach returning player_id, coach_id, shared_from
			), ended as (
				delete from ended_coachings where player_id = @pupil and coach_id = @coach
			)
			insert into coachings (player_id, coach_id, shared_from, accepted_at, confirmed_at)
			select player_id, coach_id, shared_from, now(), now() from asked
			on conflict (player_id, coach_id) do update set
				shared_from = case when coachings.confirmed_at is null then excluded.shared_from else coachings.shared_from end,
				accepted_at = case when coachings.confirmed_at is null then excluded.accepted_at else coachings.accepted_at end,
				confirmed_at = coalesce(coachings.confirmed_at, excluded.confirmed_at)`, of)
	})
}
