package db

import (
	"context"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// SummariesOf lists the player's latest rounds that asker may see, at most so many and
// the latest first.
func (s *Store) SummariesOf(ctx context.Context, asker, who golf.PlayerID, most int) ([]SummaryRow, error) {
	return many(ctx, s.q, pgx.RowToStructByName[SummaryRow], `
		select r.player_id, r.id as round_id, r.played_on, `+summaryMadeFor+` as made_for, s.digest, s.summary
		from rounds r
		left join round_summaries s on s.player_id = r.player_id and s.player_id = @who and s.round_id = r.id
		left join runout_books b on b.player_id = r.player_id and b.player_id = @who
		where r.player_id = @who and r.removed_at is null and r.played_on >= `+accessFrom("@asker", "@who")+`
		order by r.played_on desc, r.id desc limit @most`,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "most": most})
}

// Peer is what a player's latest rounds come to when others are set beside them.
type Peer struct {
	Level  float64
	Beyond []byte // as the engine writes it
}

// Peers lists what the rounds of other players come to whose levels lie from one and
// below another, without saying whose they are, for asker to set beside a player whom
// asker may see. madeFor names the engine.
func (s *Store) Peers(ctx context.Context, asker, who golf.PlayerID, madeFor string, from, below float64) ([]Peer, error) {
	if _, err := s.Seen(ctx, asker, who); err != nil {
		return nil, err
	}
	return many(ctx, s.q, pgx.RowToStructByName[Peer], othersPeers,
		pgx.StrictNamedArgs{"who": who, "made_for": madeFor, "from": from, "below": below})
}

const othersPeers = `select level, beyond from peers where player_id <> @who and made_for = @made_for and level >= @from and level < @below order by level, beyond`

// Sizeable lists the players with so many rounds or more, with what their summaries
// depend on.
func (s *Store) Sizeable(ctx context.Context, rounds int) ([]Player, error) {
	return many(ctx, s.q, pgx.RowToStructByNameLax[Player], sizeable, pgx.StrictNamedArgs{"rounds": rounds})
}

const sizeable = `
	select r.player_id as id, p.target, p.boundary_yd from rounds r join players p on p.id = r.player_id
	where r.removed_at is null group by r.player_id, p.target, p.boundary_yd having count(*) >= @rounds::bigint order by r.player_id`

// SavePeer keeps what a player's own rounds come to, in place of what was kept.
func (s *Store) SavePeer(ctx context.Context, who golf.PlayerID, madeFor string, p Peer) error {
	return changeOne(ctx, s.q, `
		insert into peers (player_id, made_for, level, beyond) values (@who, @made_for, @level, @beyond)
		on conflict (player_id) do update set made_for = excluded.made_for, level = excluded.level, beyond = excluded.beyond`,
		pgx.StrictNamedArgs{"who": who, "made_for": madeFor, "level": p.Level, "beyond": p.Beyond})
}

// KeepPeers forgets what is kept of all players but some.
func (s *Store) KeepPeers(ctx context.Context, who []golf.PlayerID) error {
	_, err := change(ctx, s.q, otherPeers, pgx.StrictNamedArgs{"who": who})
	return err
}

const otherPeers = `delete from peers where not (player_id = any(@who))`
