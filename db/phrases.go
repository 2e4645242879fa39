package db

import (
	"context"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// Phrase is something that a coach writes again and again.
type Phrase struct {
	ID   int64
	Body string
}

// MostPhrases is how many phrases a coach keeps at most.
const MostPhrases = 100

// KeepPhrase keeps a phrase of a coach's, once. It returns ErrFull when there are
// MostPhrases already.
func (s *Store) KeepPhrase(ctx context.Context, who golf.PlayerID, body string) error {
	there, err := s.Phrases(ctx, who)
	if err != nil {
		return err
	}
	for _, p := range there {
		if p.Body == body {
			return nil
		}
	}
	if len(there) >= MostPhrases {
		return ErrFull
	}
	return changeOne(ctx, s.q, `insert into phrases (player_id, body) values (@who, @body)`, pgx.StrictNamedArgs{"who": who, "body": body})
}

// Phrases lists the phrases of a coach by their words.
func (s *Store) Phrases(ctx context.Context, who golf.PlayerID) ([]Phrase, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Phrase], `select id, body from phrases where player_id = @who and removed_at is null order by lower(body), kept_at`,
		pgx.StrictNamedArgs{"who": who})
}

// RemovePhrase removes a phrase.
func (s *Store) RemovePhrase(ctx context.Context, who golf.PlayerID, id int64) error {
	return changeOne(ctx, s.q, `update phrases set removed_at = now() where player_id = @who and id = @id and removed_at is null`, pgx.StrictNamedArgs{"who": who, "id": id})
}

// RestorePhrase brings it back.
func (s *Store) RestorePhrase(ctx context.Context, who golf.PlayerID, id int64) error {
	return changeOne(ctx, s.q, `update phrases set removed_at = null where player_id = @who and id = @id and `+back, pgx.StrictNamedArgs{"who": who, "id": id})
}
