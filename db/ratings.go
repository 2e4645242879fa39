package db

import (
	"context"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// Rated is what is known about the course that a round was played on.
type Rated struct {
	RoundID golf.RoundID
	Course  *golf.CourseID // nil when there is none, or it was removed
	Size    int            // holes of the course, 0 when there is none

	Rating, Slope           *float64
	FrontRating, FrontSlope *float64
	BackRating, BackSlope   *float64

	Indexes []int // stroke indexes of holes 1 to 18, 0 for not known
}

// Ratings returns the course of each of the player's rounds that asker may see: the
// one it was begun on, or else the oldest course with the same name and tees that
// the player added. A course that somebody else adds under that name rates nobody
// else's rounds.
func (s *Store) Ratings(ctx context.Context, asker, who golf.PlayerID) ([]Rated, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Rated], `
		select r.id as round_id, case when c.removed_at is null then c.id end as course, coalesce(c.size, 0) as size, c.rating, c.slope, c.front_rating, c.front_slope, c.back_rating, c.back_slope,
		       array(select coalesce(greatest(h.stroke_index, ch.stroke_index), 0) from generate_series(1, 18) n
		             left join holes h on h.player_id = r.player_id and h.player_id = @who and h.round_id = r.id and h.number = n
		             left join course_holes ch on ch.course_id = c.id and ch.number = n order by n) as indexes
		from rounds r
		left join lateral (
			select c.*, greatest(c.holes_planned, (select count(*) from course_holes ch where ch.course_id = c.id)) as size
			from courses c
			where c.id = r.course_id or c.owner_id = r.player_id and c.removed_at is null and lower(c.name) = lower(r.course) and lower(c.tee) = lower(r.tee)
			order by c.id = r.course_id desc nulls last, c.created_at, c.id limit 1
		) c on true
		where r.player_id = @who and r.removed_at is null and r.played_on >= `+accessFrom("@asker", "@who"), pgx.StrictNamedArgs{"asker": asker, "who": who})
}
