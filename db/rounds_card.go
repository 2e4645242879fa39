package db

import (
	"context"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// SetHoleCard sets par, length and stroke index of a hole whose length is not known
// yet: in the round and, when the player added the course it is played on, there too.
func (s *Store) SetHoleCard(ctx context.Context, who golf.PlayerID, round golf.RoundID, card golf.CardHole) error {
	return s.Tx(ctx, func(tx *Store) error {
		args := pgx.StrictNamedArgs{"who": who, "round": round, "number": card.Number, "par": card.Par, "length": float64(card.Length), "index": card.Index}
		if err := changeOne(ctx, tx.q, `
			update holes set par = @par, length_in = @length, stroke_index = @index
			where player_id = @who and round_id = @round and number = @number and length_in = 0`, args); err != nil {
			return err
		}
		_, err := change(ctx, tx.q, `
			insert into course_holes (course_id, number, par, length_in, stroke_index)
			select c.id, @number, @par, @length, @index
			from rounds r join courses c on c.id = r.course_id and c.owner_id = @who
			where r.player_id = @who and r.id = @round
			on conflict (course_id, number) do nothing`, args)
		if err != nil {
			return err
		}
		_, err = change(ctx, tx.q, `delete from round_summaries where player_id = @who and round_id = @round`, pgx.StrictNamedArgs{"who": who, "round": round})
		return err
	})
}

// Scorecard is what the player's paper card says of a round as a whole.
type Scorecard struct {
	Conditions string
	Out, In    int // score of each nine, 0 when not known
}

// SaveScorecard changes what the card of a round says of it as a whole.
func (s *Store) SaveScorecard(ctx context.Context, who golf.PlayerID, id golf.RoundID, card Scorecard) error {
	return changeOne(ctx, s.q, `
		update rounds set conditions = @conditions, card_out = @out, card_in = @in
		where player_id = @who and id = @id and removed_at is null`,
		pgx.StrictNamedArgs{"who": who, "id": id, "conditions": card.Conditions, "out": card.Out, "in": card.In})
}
