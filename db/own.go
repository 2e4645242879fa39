package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// OwnPicture is a version of a hole's picture that a player drew, on a course that is
// there.
type OwnPicture struct {
	CourseID golf.CourseID
	Hole     int
	DrawnAt  time.Time
	Text     string // empty when the drawing was removed
}

// OwnPictures lists everything that the player drew, the earliest courses first, and
// of a hole the earliest version first.
func (s *Store) OwnPictures(ctx context.Context, who golf.PlayerID) ([]OwnPicture, error) {
	return many(ctx, s.q, pgx.RowToStructByName[OwnPicture], `
		select p.course_id, p.hole, p.drawn_at, p.picture as text
		from hole_pictures p join courses c on c.id = p.course_id
		where p.drawn_by = @who and c.removed_at is null
		order by p.course_id, p.hole, p.version`, pgx.StrictNamedArgs{"who": who})
}

// AddPictures adds what a player drew elsewhere to the course of that name and tee;
// one that is not there is added as the player's. A hole that is not on its card, or
// of which anything was drawn before, is left alone.
func (s *Store) AddPictures(ctx context.Context, who golf.PlayerID, c Course, drawn []OwnPicture) error {
	return s.Tx(ctx, func(tx *Store) error {
		there, err := tx.courseNamed(ctx, c.Name, c.Tee)
		if err == nil && there == 0 {
			c.ID = 0
			there, err = tx.SaveCourse(ctx, who, c)
		}
		if err != nil {
			return err
		}
		free, err := many(ctx, tx.q, pgx.RowTo[int], `
			select h.number from course_holes h where h.course_id = @course
				and not exists (select 1 from hole_pictures p where p.course_id = h.course_id and p.hole = h.number)`,
			pgx.StrictNamedArgs{"course": there})
		if err != nil {
			return err
		}
		version := map[int]int{}
		for _, hole := range free {
			version[hole] = 1
		}
		batch := &pgx.Batch{}
		for _, p := range drawn {
			if n := version[p.Hole]; n > 0 {
				version[p.Hole]++
				batch.Queue(`
					insert into hole_pictures (course_id, hole, version, drawn_by, drawn_at, picture) values (@course, @hole, @version, @who, @at, @text)`,
					pgx.StrictNamedArgs{"course": there, "hole": p.Hole, "version": n, "who": who, "at": p.DrawnAt, "text": p.Text})
			}
		}
		return translate(tx.q.SendBatch(ctx, batch).Close())
	})
}

// courseNamed finds a course by name and tee, and locks it; 0 when there is none.
func (s *Store) courseNamed(ctx context.Context, name, tee string) (golf.CourseID, error) {
	found, err := many(ctx, s.q, pgx.RowTo[golf.CourseID], `
		select id from courses where lower(name) = lower(@name) and lower(tee) = lower(@tee) and removed_at is null
		order by id limit 1 for update`, pgx.StrictNamedArgs{"name": name, "tee": tee})
	if err != nil || len(found) == 0 {
		return 0, err
	}
	return found[0], nil
}

// AddRanges adds range sessions to the player's.
func (s *Store) AddRanges(ctx context.Context, who golf.PlayerID, all []RangeSession) error {
	return s.Tx(ctx, func(tx *Store) error {
		for _, r := range all {
			if _, err := tx.RecordRange(ctx, who, r); err != nil {
				return err
			}
		}
		return nil
	})
}

// AddPlans adds plans of practice to those that the player took. What they once set to
// practise is not among them.
func (s *Store) AddPlans(ctx context.Context, who golf.PlayerID, all []TakenPlan) error {
	return s.Tx(ctx, func(tx *Store) error {
		for _, p := range all {
			if _, err := tx.TakePlan(ctx, who, p, nil); err != nil {
				return err
			}
		}
		return nil
	})
}
