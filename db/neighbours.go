package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// Neighbour is the round before or after another.
type Neighbour struct {
	ID       golf.RoundID
	PlayedOn time.Time
	After    bool
}

// Neighbours are the rounds of a player, of which a hole is entered, right before and
// right after another, as far as asker may see them.
func (s *Store) Neighbours(ctx context.Context, asker, who golf.PlayerID, round golf.RoundID, playedOn golf.Date) ([]Neighbour, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Neighbour], `
		(select id, played_on, false as after from rounds
		where player_id = @who and removed_at is null and played_on >= `+accessFrom("@asker", "@who")+` and (played_on, id) < (@day::date, @round::bigint) and `+begun+`
		order by played_on desc, id desc limit 1)
		union all
		(select id, played_on, true as after from rounds
		where player_id = @who and removed_at is null and played_on >= `+accessFrom("@asker", "@who")+` and (played_on, id) > (@day::date, @round::bigint) and `+begun+`
		order by played_on, id limit 1)`,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "round": round, "day": day(playedOn)})
}

// begun holds for rounds of which a hole is entered.
const begun = `exists (select 1 from holes h where h.player_id = rounds.player_id and h.player_id = @who and h.round_id = rounds.id and h.line <> '')`
