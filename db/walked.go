package db

import (
	"context"
	"slices"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// Walked is a round that a coach entered for a pupil, before the pupil has accepted it.
type Walked struct {
	ID        int64
	CoachID   golf.PlayerID // 0 when that account is gone
	Coach     string        // name
	PlayedOn  time.Time
	Course    string
	Tee       string
	CourseID  *golf.CourseID
	Par18     int
	FirstHole int
	FarUnit   string // of the lines
	GreenUnit string
	Holes     []WalkedHole
	SentAt    *time.Time // nil while only the coach sees it
}

// WalkedHole is a hole of such a round as it was typed.
type WalkedHole struct {
	Number int     `json:"number"`
	Par    int     `json:"par"`
	Length float64 `json:"length_in"` // inches; 0 where it is not known
	Index  int     `json:"stroke_index"`
	Line   string  `json:"line"` // empty for one that was not played

	Version int `json:"version"` // counts its saves
}

// Card is the hole as the card has it.
func (h WalkedHole) Card() golf.CardHole {
	return golf.CardHole{Number: h.Number, Par: h.Par, Length: golf.Distance(h.Length), Index: h.Index}
}

// Units are those of the numbers in the lines that name none.
func (w Walked) Units() Units { return Player{FarUnit: w.FarUnit, GreenUnit: w.GreenUnit}.Units() }

var walkedColumns = `walked_rounds.id, coalesce(walked_rounds.coach_id, 0) as coach_id, coalesce((select a.name from players a where a.id = walked_rounds.coach_id), walked_rounds.coach_name) as coach,
	walked_rounds.played_on, walked_rounds.course, walked_rounds.tee, walked_rounds.course_id, walked_rounds.par18, walked_rounds.first_hole,
	walked_rounds.far_unit, walked_rounds.green_unit, walked_rounds.holes, walked_rounds.sent_at`

// walkedBy holds for the walked rounds that asker may read: those that asker entered and
// may still see the day of, and to the player those that were sent.
var walkedBy = `player_id = @who and (coach_id = @asker or @asker = player_id and sent_at is not null) and played_on >= ` + accessFrom("@asker", "@who")

// BeginWalked stores a round that a coach begins to enter for a pupil.
func (s *Store) BeginWalked(ctx context.Context, coach, who golf.PlayerID, w Walked) (int64, error) {
	return one(ctx, s.q, pgx.RowTo[int64], `
		insert into walked_rounds (player_id, coach_id, played_on, course, tee, course_id, par18, first_hole, far_unit, green_unit, holes)
		select @who, @coach, @day, @course, @tee, @course_id, @par18, @first, @far, @green, @holes
		where @coach::bigint <> @who::bigint and @day::date >= `+accessFrom("@coach", "@who")+`
		returning id`,
		pgx.StrictNamedArgs{"coach": coach, "who": who, "day": w.PlayedOn, "course": w.Course, "tee": w.Tee, "course_id": w.CourseID, "par18": w.Par18, "first": max(w.FirstHole, 1),
			"far": w.FarUnit, "green": w.GreenUnit, "holes": w.Holes})
}

// Walked returns one of a player's walked rounds that asker may read.
func (s *Store) Walked(ctx context.Context, asker, who golf.PlayerID, id int64) (Walked, error) {
	return one(ctx, s.q, pgx.RowToStructByName[Walked], `select `+walkedColumns+` from walked_rounds where id = @id and removed_at is null and `+walkedBy,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "id": id})
}

// WalkedRounds lists those of a player's walked rounds that asker may read, the latest
// first.
func (s *Store) WalkedRounds(ctx context.Context, asker, who golf.PlayerID) ([]Walked, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Walked], `
		select `+walkedColumns+` from walked_rounds where removed_at is null and `+walkedBy+` order by played_on desc, begun_at desc, id`,
		pgx.StrictNamedArgs{"asker": asker, "who": who})
}

// SaveWalked stores the lines of some holes that the coach typed of a round that is not
// sent yet, and sends it to the pupil if send says so. The version of each is the one that
// was read; golf.ErrConflict says that one of them has been saved since.
func (s *Store) SaveWalked(ctx context.Context, coach, who golf.PlayerID, id int64, typed []WalkedHole, send bool) error {
	return s.Tx(ctx, func(tx *Store) error {
		of := pgx.StrictNamedArgs{"asker": coach, "who": who, "id": id}
		holes, err := one(ctx, tx.q, pgx.RowTo[[]WalkedHole], `
			select holes from walked_rounds where id = @id and coach_id = @asker and sent_at is null and removed_at is null and `+walkedBy+` for update`, of)
		if err != nil {
			return err
		}
		for _, h := range typed {
			i := slices.IndexFunc(holes, func(kept WalkedHole) bool { return kept.Number == h.Number })
			switch {
			case i < 0:
				return golf.ErrNotFound
			case holes[i].Version != h.Version:
				return golf.ErrConflict
			}
			holes[i].Line, holes[i].Version = h.Line, h.Version+1
		}
		of["holes"] = holes
		if err := changeOne(ctx, tx.q, `update walked_rounds set holes = @holes where id = @id and `+walkedBy, of); err != nil || !send {
			return err
		}
		delete(of, "holes")
		return changeOne(ctx, tx.q, `update walked_rounds set sent_at = now() where id = @id and removed_at is null and `+walkedBy, of)
	})
}

// AcceptWalked makes a round of the player's of one that a coach sent.
func (s *Store) AcceptWalked(ctx context.Context, who golf.PlayerID, id int64, r Round) (golf.RoundID, error) {
	var round golf.RoundID
	err := s.Tx(ctx, func(tx *Store) error {
		err := changeOne(ctx, tx.q, `delete from walked_rounds where player_id = @who and id = @id and sent_at is not null and removed_at is null`,
			pgx.StrictNamedArgs{"who": who, "id": id})
		if err != nil {
			return err
		}
		round, err = tx.NewRound(ctx, who, r)
		return err
	})
	return round, err
}

// RemoveWalked removes a walked round: the coach takes it back, or the player declines it.
func (s *Store) RemoveWalked(ctx context.Context, asker, who golf.PlayerID, id int64) error {
	return changeOne(ctx, s.q, `update walked_rounds set removed_at = now(), removed_by = @asker where id = @id and removed_at is null and `+walkedBy,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "id": id})
}

// RestoreWalked brings it back, for who removed it.
func (s *Store) RestoreWalked(ctx context.Context, asker, who golf.PlayerID, id int64) error {
	return changeOne(ctx, s.q, `update walked_rounds set removed_at = null where id = @id and removed_by = @asker and `+back+` and `+walkedBy,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "id": id})
}
