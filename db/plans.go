package db

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// TakenPlan is a plan of practice as a player took it.
type TakenPlan struct {
	ID       int64
	Day      time.Time // on which it was taken
	FirstDay time.Time // of the rounds that it stands on
	LastDay  time.Time
	Rounds   int
	Target   float64
	Minutes  int    // a week
	Engine   string // that judged the rounds
	Figures  []byte // JSON, as the engine wrote it
}

const planColumns = `id, day, first_day, last_day, rounds, target, minutes, engine, figures`

// PlansInAll is how many plans a player may keep, as many as an account file holds.
const PlansInAll = 1000

// ErrPlansInAll says that a player has reached it.
var ErrPlansInAll = fmt.Errorf("plans: %w", ErrFull)

// TakePlan stores a plan of the player's together with what it sets to practise, and
// returns its number. A plan that is the same as one of the day, by its rounds, target
// and minutes, is not stored again.
func (s *Store) TakePlan(ctx context.Context, who golf.PlayerID, p TakenPlan, items []Assignment) (id int64, err error) {
	err = s.Tx(ctx, func(tx *Store) error {
		if id, err = tx.samePlan(ctx, who, p); !errors.Is(err, golf.ErrNotFound) {
			return err
		}
		n, err := one(ctx, tx.q, pgx.RowTo[int], `select count(*) from practice_plans where player_id = @who and removed_at is null`, pgx.StrictNamedArgs{"who": who})
		if err == nil && n >= PlansInAll {
			err = ErrPlansInAll
		}
		if err != nil {
			return err
		}
		id, err = one(ctx, tx.q, pgx.RowTo[int64], `
			insert into practice_plans (player_id, day, first_day, last_day, rounds, target, minutes, engine, figures)
			values (@who, @day, @first, @last, @rounds, @target, @minutes, @engine, @figures) returning id`,
			pgx.StrictNamedArgs{"who": who, "day": p.Day, "first": p.FirstDay, "last": p.LastDay, "rounds": p.Rounds, "target": p.Target, "minutes": p.Minutes,
				"engine": p.Engine, "figures": string(p.Figures)})
		for i := 0; err == nil && i < len(items); i++ {
			items[i].PlanID = &id
			err = tx.Assign(ctx, who, who, items[i])
		}
		return err
	})
	return id, err
}

// samePlan finds the plan that is the same as another. It locks the player's row, so
// that two requests at once do not both find none.
func (s *Store) samePlan(ctx context.Context, who golf.PlayerID, p TakenPlan) (id int64, err error) {
	if _, err := one(ctx, s.q, pgx.RowTo[golf.PlayerID], `select id from players where id = @who for update`, pgx.StrictNamedArgs{"who": who}); err != nil {
		return 0, err
	}
	return one(ctx, s.q, pgx.RowTo[int64], `
		select id from practice_plans
		where player_id = @who and removed_at is null and day = @day and last_day = @last and rounds = @rounds and target = @target and minutes = @minutes
		order by taken_at, id limit 1`,
		pgx.StrictNamedArgs{"who": who, "day": p.Day, "last": p.LastDay, "rounds": p.Rounds, "target": p.Target, "minutes": p.Minutes})
}

// TakenPlans lists the plans of the player that asker may see, the latest first.
func (s *Store) TakenPlans(ctx context.Context, asker, who golf.PlayerID) ([]TakenPlan, error) {
	return many(ctx, s.q, pgx.RowToStructByName[TakenPlan], `
		select `+planColumns+` from practice_plans
		where player_id = @who and removed_at is null and first_day >= `+accessFrom("@asker", "@who")+`
		order by day desc, taken_at desc, id desc`,
		pgx.StrictNamedArgs{"asker": asker, "who": who})
}

// TakenPlan returns a plan of the player that asker may see: a coach who is let in
// from a day on sees none that stands on earlier rounds.
func (s *Store) TakenPlan(ctx context.Context, asker, who golf.PlayerID, id int64) (TakenPlan, error) {
	return one(ctx, s.q, pgx.RowToStructByName[TakenPlan], `
		select `+planColumns+` from practice_plans
		where player_id = @who and id = @id and removed_at is null and first_day >= `+accessFrom("@asker", "@who"),
		pgx.StrictNamedArgs{"asker": asker, "who": who, "id": id})
}

// RemovePlan removes a plan of the player's with what it set to practise.
func (s *Store) RemovePlan(ctx context.Context, who golf.PlayerID, id int64) error {
	of := pgx.StrictNamedArgs{"who": who, "id": id}
	batch := &pgx.Batch{}
	batch.Queue(`update assignments set removed_at = now() where player_id = @who and plan_id = @id and removed_at is null`, of)
	batch.Queue(`update practice_plans set removed_at = now() where player_id = @who and id = @id and removed_at is null`, of)
	return changeAll(ctx, s.q, batch)
}

// RestorePlan brings it back, with what was removed together with it.
func (s *Store) RestorePlan(ctx context.Context, who golf.PlayerID, id int64) error {
	of := pgx.StrictNamedArgs{"who": who, "id": id}
	batch := &pgx.Batch{}
	batch.Queue(`
		update assignments set removed_at = null
		where player_id = @who and plan_id = @id and removed_at = (select p.removed_at from practice_plans p where p.player_id = @who and p.id = @id)`, of)
	batch.Queue(`update practice_plans set removed_at = null where player_id = @who and id = @id and `+back, of)
	return s.Tx(ctx, func(tx *Store) error {
		if err := changeAll(ctx, tx.q, batch); err != nil {
			return err
		}
		n, err := one(ctx, tx.q, pgx.RowTo[int], `select count(*) from practice_plans where player_id = @who and removed_at is null`, pgx.StrictNamedArgs{"who": who})
		if err == nil && n > PlansInAll {
			err = ErrPlansInAll
		}
		return err
	})
}
