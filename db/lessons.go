package db

import (
	"context"
	"errors"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// Lesson is a lesson that a pupil and a coach have arranged.
type Lesson struct {
	ID      int64
	CoachID golf.PlayerID // 0 when that account is gone
	Coach   string        // name
	Day     time.Time
	Starts  *int   // minutes after midnight, where it takes place; nil where no time is set
	Place   string // may be empty
	Aim     string // may be empty
	Agreed  string // may be empty
	Changes int    // how often it was changed
	Written bool   // the asker can read a note on a lesson of that day
}

// coachOf is the name of the coach of a lesson, also after that account has gone.
const coachOf = `coalesce((select a.name from players a where a.id = lessons.coach_id), lessons.coach_name)`

// lessonColumns are the columns of a lesson of a player.
var lessonColumns = `lessons.id, coalesce(lessons.coach_id, 0) as coach_id, ` + coachOf + ` as coach, lessons.day, lessons.starts, lessons.place, lessons.aim, lessons.agreed, lessons.changes,
	exists (select 1 from notes where ` + visible + ` and notes.kind = 'lesson' and notes.day = lessons.day) as written`

// Arrange stores a lesson of a pupil with a coach; asker is one of the two. The coach
// must have access to the day.
func (s *Store) Arrange(ctx context.Context, asker, who golf.PlayerID, l Lesson) (int64, error) {
	return one(ctx, s.q, pgx.RowTo[int64], `
		insert into lessons (player_id, coach_id, day, starts, place, aim, agreed)
		select @who, @coach, @day, @starts, @place, @aim, @agreed
		where @asker::bigint in (@who::bigint, @coach::bigint) and @who::bigint <> @coach::bigint and @day::date >= `+accessFrom("@coach", "@who")+`
		returning id`,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "coach": l.CoachID, "day": l.Day, "starts": l.Starts, "place": l.Place, "aim": l.Aim, "agreed": l.Agreed})
}

// arranger holds for the lessons that asker may change: the pupil and, on days that
// the coach sees, the coach with whom they are.
var arranger = `player_id = @who and id = @id and @asker in (player_id, coach_id) and day >= ` + accessFrom("@asker", "@who")

// Rearrange changes a lesson, but not whom it is with, and not to a day that asker does
// not see. l.Changes is how often it had been changed when it was read; golf.ErrConflict
// says that it has been changed since.
func (s *Store) Rearrange(ctx context.Context, asker, who golf.PlayerID, l Lesson) error {
	err := changeOne(ctx, s.q, `
		update lessons set day = @day, starts = @starts, place = @place, aim = @aim, agreed = @agreed, changes = changes + 1
		where removed_at is null and changes = @changes and `+arranger+` and @day::date >= `+accessFrom("@asker", "@who"),
		pgx.StrictNamedArgs{"asker": asker, "who": who, "id": l.ID, "changes": l.Changes, "day": l.Day, "starts": l.Starts, "place": l.Place, "aim": l.Aim, "agreed": l.Agreed})
	if errors.Is(err, golf.ErrNotFound) {
		if kept, found := s.Lesson(ctx, asker, who, l.ID); found == nil && kept.Changes != l.Changes {
			return golf.ErrConflict
		}
	}
	return err
}

// Lesson returns a lesson of a player's that asker may see.
func (s *Store) Lesson(ctx context.Context, asker, who golf.PlayerID, id int64) (Lesson, error) {
	return one(ctx, s.q, pgx.RowToStructByName[Lesson], `
		select `+lessonColumns+` from lessons
		where player_id = @who and id = @id and removed_at is null and day >= `+accessFrom("@asker", "@who"),
		pgx.StrictNamedArgs{"asker": asker, "who": who, "id": id})
}

// Lessons lists the lessons of a player from a day on that asker may see, the earliest
// first; a zero day is the first of all.
func (s *Store) Lessons(ctx context.Context, asker, who golf.PlayerID, from golf.Date) ([]Lesson, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Lesson], `
		select `+lessonColumns+` from lessons
		where player_id = @who and removed_at is null and day >= `+accessFrom("@asker", "@who")+` and (@from::date is null or day >= @from)
		order by day, starts nulls last, coach_id, aim`,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "from": day(from)})
}

// CancelLesson removes a lesson.
func (s *Store) CancelLesson(ctx context.Context, asker, who golf.PlayerID, id int64) error {
	return changeOne(ctx, s.q, `update lessons set removed_at = now() where removed_at is null and `+arranger,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "id": id})
}

// RestoreLesson brings it back.
func (s *Store) RestoreLesson(ctx context.Context, asker, who golf.PlayerID, id int64) error {
	return changeOne(ctx, s.q, `update lessons set removed_at = null, changes = changes + 1 where `+back+` and `+arranger,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "id": id})
}
