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
// of which anything was drawn before, is left alone. What is drawn on a course of
// somebody else's is drawn today, so that it counts as what is drawn here does.
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
		return tx.addPicturesOn(ctx, who, there, drawn)
	})
}

// addPicturesOn adds them to a course that is there.
func (s *Store) addPicturesOn(ctx context.Context, who golf.PlayerID, course golf.CourseID, drawn []OwnPicture) error {
	free, err := many(ctx, s.q, pgx.RowToStructByName[struct {
		Number int
		Own    bool
	}], `
		select h.number, coalesce(c.owner_id = @who, false) as own from course_holes h join courses c on c.id = h.course_id where h.course_id = @course
			and not exists (select 1 from hole_pictures p where p.course_id = h.course_id and p.hole = h.number)`,
		pgx.StrictNamedArgs{"course": course, "who": who})
	if err != nil || len(free) == 0 {
		return err
	}
	version := map[int]int{}
	for _, hole := range free {
		version[hole.Number] = 1
	}
	insert := `insert into hole_pictures (course_id, hole, version, drawn_by, drawn_at, picture) values (@course, @hole, @version, @who, @at, @text)`
	if !free[0].Own {
		insert = `insert into hole_pictures (course_id, hole, version, drawn_by, drawn_at, picture) select @course, @hole, @version, @who, now(), @text where @at::timestamptz is not null`
	}
	batch, others, size := &pgx.Batch{}, 0, 0
	for _, p := range drawn {
		n := version[p.Hole]
		if n == 0 {
			continue
		}
		version[p.Hole]++
		batch.Queue(insert, pgx.StrictNamedArgs{"course": course, "hole": p.Hole, "version": n, "who": who, "at": p.DrawnAt, "text": p.Text})
		if size += len(p.Text); !free[0].Own {
			others++
		}
	}
	if err := s.roomForPictures(ctx, who, others, size); err != nil {
		return err
	}
	return translate(s.q.SendBatch(ctx, batch).Close())
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
