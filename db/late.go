package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// LatePractice is practice that a coach set for a day that has passed, or is about to
// where its player is, without being done.
type LatePractice struct {
	PlayerID golf.PlayerID
	Player   string // the name of who was to practise
	Zone     string // of that player
	CoachID  golf.PlayerID
	Coach    string
	ID       int64
	What     string
	DueOn    time.Time
}

// lateMost is how much late practice is told of at a time.
const lateMost = 500

// LatePractice lists the practice due before a day that nobody was told of: what a
// coach set who still sees that day of the player's.
func (s *Store) LatePractice(ctx context.Context, before golf.Date) ([]LatePractice, error) {
	return many(ctx, s.q, pgx.RowToStructByName[LatePractice], `
		select t.player_id, p.name as player, p.zone, t.author_id as coach_id, a.name as coach, t.id, t.what, t.due_on
		from assignments t
		join coachings c on c.player_id = t.player_id and c.coach_id = t.author_id
		join players p on p.id = t.player_id
		join players a on a.id = t.author_id
		where t.late_at is null and t.done_at is null and t.removed_at is null and t.due_on < @before
			and c.confirmed_at is not null and (c.shared_from is null or c.shared_from <= t.due_on)
		order by t.due_on, t.given_at limit @most`,
		pgx.StrictNamedArgs{"before": day(before), "most": lateMost})
}

// TellLate tells player and coach of practice whose day passed at a moment, and reports
// whether it did: of several who try, one tells.
func (s *Store) TellLate(ctx context.Context, l LatePractice, at time.Time) (told bool, err error) {
	err = s.Tx(ctx, func(tx *Store) error {
		n, err := change(ctx, tx.q, `
			update assignments set late_at = now()
			where player_id = @who and id = @id and late_at is null and done_at is null and removed_at is null`,
			pgx.StrictNamedArgs{"who": l.PlayerID, "id": l.ID})
		if err != nil || n == 0 {
			return err
		}
		told = true
		for _, to := range []struct {
			who golf.PlayerID
			by  string
		}{{l.PlayerID, l.Coach}, {l.CoachID, l.Player}} {
			if _, err := change(ctx, tx.q, `
				insert into notices (player_id, kind, by_name, of_id, practice_id, on_day, what, told_at)
				values (@to, @kind, @by, @of, @practice, @day, @what, @at)`,
				pgx.StrictNamedArgs{"to": to.who, "kind": NoticeLate, "by": to.by, "of": l.PlayerID, "practice": l.ID, "day": l.DueOn, "what": l.What, "at": at}); err != nil {
				return err
			}
		}
		return nil
	})
	return told && err == nil, err
}
