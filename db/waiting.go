package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// OpenQuestion is a question of a pupil's that nobody has answered.
type OpenQuestion struct {
	PlayerID golf.PlayerID
	ID       int64
	RoundID  golf.RoundID
	Hole     *int // nil for the round as a whole
	Shot     *int
	Day      time.Time // of the round
}

var openQuestions = `
	select notes.player_id, notes.id, notes.round_id, notes.hole, notes.shot, notes.day
	from coachings m join notes on notes.player_id = m.player_id
	where m.coach_id = @coach and m.confirmed_at is not null and notes.removed_at is null and notes.day >= coalesce(m.shared_from, '-infinity')
		and ` + ofARound("notes.player_id") + ` and ` + openQuestion + `
	order by notes.written_at, notes.player_id, notes.id`

// NearLesson is a lesson of a coach's with one of the pupils.
type NearLesson struct {
	PlayerID golf.PlayerID // the pupil
	ID       int64
	Day      time.Time
	Starts   *int   // as Lesson has it
	Aim      string // may be empty
}

// nearLessons are those that the coach has not written up.
const nearLessons = `
	select l.player_id, l.id, l.day, l.starts, l.aim
	from coachings m join lessons l on l.player_id = m.player_id
	where m.coach_id = @coach and m.confirmed_at is not null and l.coach_id = @coach and l.removed_at is null and l.day >= coalesce(m.shared_from, '-infinity')
		and l.day >= @from and l.day <= @to and not exists (select 1 from notes n
			where n.player_id = l.player_id and n.kind = 'lesson' and n.day = l.day and n.removed_at is null and (not n.private or n.author_id = @coach))
	order by l.day, l.starts nulls last, l.player_id, l.id`

// UnsentRound is a round that a coach has begun to enter for a pupil and has not sent.
type UnsentRound struct {
	PlayerID golf.PlayerID // the pupil
	ID       int64
	PlayedOn time.Time
}

const unsentRounds = `
	select w.player_id, w.id, w.played_on
	from coachings m join walked_rounds w on w.player_id = m.player_id
	where m.coach_id = @coach and m.confirmed_at is not null and w.coach_id = @coach and w.sent_at is null and w.removed_at is null and w.played_on >= coalesce(m.shared_from, '-infinity')
	order by w.played_on, w.begun_at, w.id`

// Waiting is what waits for a coach besides what is new on the roster.
type Waiting struct {
	Questions []OpenQuestion // of the pupils, the earliest first
	Groups    []Grouped      // as Groups lists them
	Unsent    []UnsentRound  // the earliest first
	Lessons   []NearLesson   // between two days and not written up, the earliest first
}

// Waiting reads it in one trip to the database; from and to are the days of the lessons.
func (s *Store) Waiting(ctx context.Context, coach golf.PlayerID, from, to golf.Date) (w Waiting, err error) {
	batch, of := &pgx.Batch{}, pgx.StrictNamedArgs{"coach": coach}
	batch.Queue(openQuestions, of).Query(into(&w.Questions))
	batch.Queue(groups, of).Query(into(&w.Groups))
	batch.Queue(unsentRounds, of).Query(into(&w.Unsent))
	batch.Queue(nearLessons, pgx.StrictNamedArgs{"coach": coach, "from": day(from), "to": day(to)}).Query(into(&w.Lessons))
	err = translate(s.q.SendBatch(ctx, batch).Close())
	return w, err
}

// into collects the rows of one statement of a batch.
func into[T any](all *[]T) func(pgx.Rows) error {
	return func(rows pgx.Rows) (err error) {
		*all, err = pgx.CollectRows(rows, pgx.RowToStructByName[T])
		return err
	}
}
