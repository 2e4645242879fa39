package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// HoleAdvice is what a coach says of a hole for a pupil, and proposes there.
type HoleAdvice struct {
	ID        int64
	CourseID  golf.CourseID
	Hole      int
	CoachID   *golf.PlayerID // nil when that account is gone
	Coach     string         // the coach's name
	Note      string         // may be empty
	Proposes  bool           // there is a club or an aim
	Club      string         // empty on a par 3
	SideYd    float64        // yards right of the middle, or of the flag
	LongYd    float64        // yards beyond the flag
	Safe      string         // the side of the green that is proposed as the safe one: left, right, short or long; empty for none
	Answer    AdviceAnswer
	WrittenAt time.Time
}

// AdviceAnswer is what a pupil said to a proposal. The zero value is nothing yet.
type AdviceAnswer string

// The answers.
const (
	AdviceTaken    AdviceAnswer = "taken"
	AdviceDeclined AdviceAnswer = "declined"
)

const (
	ofAdvice = `player_id = @who and course_id = @course and hole = @hole and removed_at is null`
	byCoach  = `coach_id = @coach`
)

// Advise keeps what a coach says of a hole for a pupil, a note or a proposal or both, in
// place of what the same coach said before. Another proposal has to be answered anew. It
// reports whether anything changed.
func (s *Store) Advise(ctx context.Context, coach, who golf.PlayerID, a HoleAdvice) (changed bool, err error) {
	err = s.Tx(ctx, func(tx *Store) error {
		if err := tx.mayAdvise(ctx, coach, who, a); err != nil {
			return err
		}
		of := pgx.StrictNamedArgs{"coach": coach, "who": who, "course": a.CourseID, "hole": a.Hole}
		before, err := many(ctx, tx.q, pgx.RowToStructByName[HoleAdvice], `select `+adviceColumns+` from hole_advice where `+ofAdvice+` and `+byCoach, of)
		if err != nil {
			return err
		}
		there := len(before) > 0
		if changed = !there || !before[0].same(a); !changed {
			return nil
		}
		of["note"], of["proposes"], of["club"], of["side"], of["long"], of["safe"] = a.Note, a.Proposes, a.Club, a.SideYd, a.LongYd, a.Safe
		if !there {
			return changeOne(ctx, tx.q, `
				insert into hole_advice (player_id, course_id, hole, coach_id, note, proposes, club, side_yd, long_yd, safe)
				values (@who, @course, @hole, @coach, @note, @proposes, @club, @side, @long, @safe)`, of)
		}
		if of["answer"] = before[0].Answer; !before[0].sameProposal(a) {
			of["answer"] = AdviceAnswer("")
		}
		return changeOne(ctx, tx.q, `
			update hole_advice set note = @note, proposes = @proposes, club = @club, side_yd = @side, long_yd = @long, safe = @safe, written_at = now(), answer = @answer
			where `+ofAdvice+` and `+byCoach, of)
	})
	return changed, err
}

// mayAdvise returns an error when somebody is no coach of a player, or when there is no
// such hole. It locks the player.
func (s *Store) mayAdvise(ctx context.Context, coach, who golf.PlayerID, a HoleAdvice) error {
	if coach == who {
		return golf.ErrNotFound
	}
	if _, err := s.Seen(ctx, coach, who); err != nil {
		return err
	}
	if _, err := one(ctx, s.q, pgx.RowTo[golf.PlayerID], `select id from players where id = @who for update`, pgx.StrictNamedArgs{"who": who}); err != nil {
		return err
	}
	_, err := one(ctx, s.q, pgx.RowTo[int], `
		select h.number from course_holes h join courses c on c.id = h.course_id where h.course_id = @course and h.number = @hole and c.removed_at is null`,
		pgx.StrictNamedArgs{"course": a.CourseID, "hole": a.Hole})
	return err
}

// Asks reports whether there is something for the pupil to take or decline.
func (a HoleAdvice) Asks() bool { return a.Proposes || a.Safe != "" }

func (a HoleAdvice) same(b HoleAdvice) bool { return a.Note == b.Note && a.sameProposal(b) }

func (a HoleAdvice) sameProposal(b HoleAdvice) bool {
	return a.Proposes == b.Proposes && a.Club == b.Club && a.SideYd == b.SideYd && a.LongYd == b.LongYd && a.Safe == b.Safe
}

const adviceColumns = `id, course_id, hole, coach_id, coach_name as coach, note, proposes, club, side_yd, long_yd, safe, answer, written_at`

// Advice lists what coaches say of the holes of a course for a player, hole by hole.
// The player sees all of it, a coach the coach's own and what the player took.
func (s *Store) Advice(ctx context.Context, asker, who golf.PlayerID, course golf.CourseID) ([]HoleAdvice, error) {
	return many(ctx, s.q, pgx.RowToStructByName[HoleAdvice], `
		select a.id, a.course_id, a.hole, a.coach_id, coalesce(c.name, a.coach_name) as coach, a.note, a.proposes, a.club, a.side_yd, a.long_yd, a.safe, a.answer, a.written_at
		from hole_advice a left join players c on c.id = a.coach_id
		where a.player_id = @who and a.course_id = @course and a.removed_at is null and (@asker in (a.player_id, a.coach_id) or a.answer = 'taken') and `+accessFrom("@asker", "@who")+` is not null
		order by a.hole, a.written_at, a.id`, pgx.StrictNamedArgs{"asker": asker, "who": who, "course": course})
}

// CourseAdvice is what a coach says of a hole of a course.
type CourseAdvice struct {
	HoleAdvice
	Course, Tee string
}

// AllAdvice lists what coaches say of every hole for a player.
func (s *Store) AllAdvice(ctx context.Context, who golf.PlayerID) ([]CourseAdvice, error) {
	return many(ctx, s.q, pgx.RowToStructByName[CourseAdvice], `
		select course.name as course, course.tee, a.id, a.course_id, a.hole, a.coach_id, coalesce(c.name, a.coach_name) as coach, a.note, a.proposes, a.club, a.side_yd, a.long_yd, a.safe, a.answer, a.written_at
		from hole_advice a join courses course on course.id = a.course_id left join players c on c.id = a.coach_id
		where a.player_id = @who and a.removed_at is null order by a.course_id, a.hole, a.written_at, a.id`, pgx.StrictNamedArgs{"who": who})
}

// AnswerAdvice takes a proposal for a hole, so that it stands in the plan in place of
// any other, or declines it, before or after it was taken. written is when what the
// player was shown was written: what a coach has changed since then is not answered, and
// golf.ErrNotFound.
func (s *Store) AnswerAdvice(ctx context.Context, who golf.PlayerID, course golf.CourseID, hole int, id int64, written time.Time, take bool) (HoleAdvice, error) {
	var answered HoleAdvice
	err := s.Tx(ctx, func(tx *Store) error {
		args := pgx.StrictNamedArgs{"who": who, "course": course, "hole": hole, "id": id, "written": written, "answer": AdviceDeclined}
		if take {
			args["answer"] = AdviceTaken
		}
		var err error
		if answered, err = one(ctx, tx.q, pgx.RowToStructByName[HoleAdvice], `
			update hole_advice set answer = @answer, answered_at = now() where `+ofAdvice+` and id = @id and written_at = @written and (proposes or safe <> '')
			returning `+adviceColumns, args); err != nil || !take {
			return err
		}
		_, err = change(ctx, tx.q, `update hole_advice set answer = 'declined' where `+ofAdvice+` and id <> @id and answer = 'taken'`,
			pgx.StrictNamedArgs{"who": who, "course": course, "hole": hole, "id": id})
		return err
	})
	return answered, err
}
