package db

import (
	"context"
	"errors"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// Picture is a version of what a player drew of a hole.
type Picture struct {
	Hole    int
	Version int            // 1 is the first of the hole
	DrawnBy *golf.PlayerID // nil when that account is gone
	DrawnAt time.Time
	Text    string // the picture as a file; empty when the drawing was removed
}

// PicturesOfADay is how many pictures a player may save in a day: every hole of four
// courses, each changed a few times. Common practice.
const PicturesOfADay = 400

// ErrPicturesOfADay says that a player has reached it.
var ErrPicturesOfADay = errors.New("no more pictures today")

// PictureBytes is how much a player may keep of drawings in all: thousands of holes, and
// half of what an account file holds.
const PictureBytes = 8 << 20

// ErrPictureBytes says that a player has reached it.
var ErrPictureBytes = errors.New("no more room for pictures")

// SavePicture keeps a new version of a hole's picture, which holds from then on, and
// returns its number. A picture that holds already is not kept again. What is saved
// on a course is saved one after the other.
func (s *Store) SavePicture(ctx context.Context, who golf.PlayerID, course golf.CourseID, hole int, text string) (version int, err error) {
	err = s.Tx(ctx, func(tx *Store) error {
		if err := tx.roomForAPicture(ctx, who, course, hole, len(text)); err != nil {
			return err
		}
		last, err := one(ctx, tx.q, pgx.RowToStructByName[Picture], pictureColumns+`
			where course_id = @course and hole = @hole order by version desc limit 1`, pgx.StrictNamedArgs{"course": course, "hole": hole})
		if err != nil && !errors.Is(err, golf.ErrNotFound) {
			return err
		}
		version = last.Version
		if last.Text == text {
			return nil
		}
		version++
		return changeOne(ctx, tx.q, `
			insert into hole_pictures (course_id, hole, version, drawn_by, picture) values (@course, @hole, @version, @who, @text)`,
			pgx.StrictNamedArgs{"course": course, "hole": hole, "version": version, "who": who, "text": text})
	})
	return version, err
}

// roomForAPicture returns an error when there is no such hole, or when the player may
// not save another picture of so many bytes. It locks the course.
func (s *Store) roomForAPicture(ctx context.Context, who golf.PlayerID, course golf.CourseID, hole, size int) error {
	if _, err := one(ctx, s.q, pgx.RowTo[golf.CourseID], `select id from courses where id = @course and removed_at is null for update`,
		pgx.StrictNamedArgs{"course": course}); err != nil {
		return err
	}
	if _, err := one(ctx, s.q, pgx.RowTo[int], `select number from course_holes where course_id = @course and number = @hole`,
		pgx.StrictNamedArgs{"course": course, "hole": hole}); err != nil {
		return err
	}
	return s.roomForPictures(ctx, who, 1, size)
}

// roomForPictures returns an error when a player may not save so many pictures today, of
// so many bytes.
func (s *Store) roomForPictures(ctx context.Context, who golf.PlayerID, adds, size int) error {
	kept, err := one(ctx, s.q, pgx.RowToStructByName[struct{ Today, Bytes int64 }], `
		select count(*) filter (where drawn_at > now() - interval '24 hours') as today, coalesce(sum(octet_length(picture)), 0) as bytes
		from hole_pictures where drawn_by = @who`, pgx.StrictNamedArgs{"who": who})
	switch {
	case err != nil:
		return err
	case adds > 0 && kept.Today+int64(adds) > PicturesOfADay:
		return ErrPicturesOfADay
	case kept.Bytes+int64(size) > PictureBytes:
		return ErrPictureBytes
	}
	return nil
}

const pictureColumns = `select hole, version, drawn_by, drawn_at, picture as text from hole_pictures`

// Pictures lists the pictures that hold for a course, in the order of its holes. A
// hole whose drawing was removed has none.
func (s *Store) Pictures(ctx context.Context, course golf.CourseID) ([]Picture, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Picture], `
		with newest as (
			select distinct on (hole) hole, version, drawn_by, drawn_at, picture as text from hole_pictures
			where course_id = @course order by hole, version desc
		)
		select hole, version, drawn_by, drawn_at, text from newest where text <> '' order by hole`, pgx.StrictNamedArgs{"course": course})
}

// PictureVersions lists the latest versions of a hole's picture, the newest first.
func (s *Store) PictureVersions(ctx context.Context, course golf.CourseID, hole, most int) ([]Picture, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Picture], pictureColumns+`
		where course_id = @course and hole = @hole order by version desc limit @most`,
		pgx.StrictNamedArgs{"course": course, "hole": hole, "most": limit(most)})
}

// PictureVersion is one version of a hole's picture.
func (s *Store) PictureVersion(ctx context.Context, course golf.CourseID, hole, version int) (Picture, error) {
	return one(ctx, s.q, pgx.RowToStructByName[Picture], pictureColumns+`
		where course_id = @course and hole = @hole and version = @version`,
		pgx.StrictNamedArgs{"course": course, "hole": hole, "version": version})
}

// DrawnCourse is how many holes of a course are drawn.
type DrawnCourse struct {
	CourseID golf.CourseID
	Holes    int
}

// DrawnCourses counts the holes that are drawn, by course.
func (s *Store) DrawnCourses(ctx context.Context) ([]DrawnCourse, error) {
	return many(ctx, s.q, pgx.RowToStructByName[DrawnCourse], `
		with newest as (
			select distinct on (course_id, hole) course_id, hole, picture <> '' as drawn from hole_pictures order by course_id, hole, version desc
		)
		select course_id, count(*) as holes from newest where drawn group by course_id order by course_id`, pgx.StrictNamedArgs{})
}
