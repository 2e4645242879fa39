package db

import (
	"context"
	"errors"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// Course is one set of tees of a course. Everybody on the server can use it.
type Course struct {
	ID     golf.CourseID
	Owner  *golf.PlayerID // the player who added it and can edit it; nil when that account is gone
	Name   string
	Tee    string
	Rating *float64
	Slope  *float64

	FrontRating, FrontSlope *float64 // of the front nine alone
	BackRating, BackSlope   *float64

	Planned int             // how many holes it will have; 0 when it has only the known ones
	Holes   []golf.CardHole `db:"-"`
}

// Size is how many holes the course has, known or still to come.
func (c Course) Size() int { return max(c.Planned, len(c.Holes)) }

// Card returns every hole of the course; a hole that is not known yet has par 4 and
// no length.
func (c Course) Card() []golf.CardHole {
	var card []golf.CardHole
	known := map[int]golf.CardHole{}
	last := c.Planned
	for _, h := range c.Holes {
		known[h.Number], last = h, max(last, h.Number)
	}
	for n := 1; n <= last; n++ {
		h, found := known[n]
		if !found && c.Planned == 0 {
			continue
		}
		if !found {
			h = golf.CardHole{Number: n, Par: 4}
		}
		card = append(card, h)
	}
	return card
}

// CourseLine is a course as a list shows it.
type CourseLine struct {
	ID    golf.CourseID
	Name  string
	Tee   string
	Holes int // known so far
	Size  int // holes it has, known or still to come
	Par   int
	Yards float64
	Mine  bool
	Times int // how many rounds the asking player began on it, or imported with its name and tees
}

type holeRow struct {
	Number      int
	Par         int
	LengthIn    float64
	StrokeIndex int
}

func (r holeRow) card() golf.CardHole {
	return golf.CardHole{Number: r.Number, Par: r.Par, Length: golf.Distance(r.LengthIn), Index: r.StrokeIndex}
}

// Courses lists the courses of the server by name.
func (s *Store) Courses(ctx context.Context, who golf.PlayerID) ([]CourseLine, error) {
	return many(ctx, s.q, pgx.RowToStructByName[CourseLine], `
		select c.id, c.name, c.tee, count(h.number) as holes, greatest(c.holes_planned, count(h.number)) as size, coalesce(sum(h.par), 0) as par, coalesce(sum(h.length_in) / 36, 0) as yards,
		       coalesce(c.owner_id = @who, false) as mine,
		       (select count(*) from rounds r where r.player_id = @who and r.removed_at is null
		          and (r.course_id = c.id or r.course_id is null and lower(r.course) = lower(c.name) and lower(r.tee) = lower(c.tee))) as times
		from courses c left join course_holes h on h.course_id = c.id
		where c.removed_at is null
		group by c.id order by lower(c.name), lower(c.tee), c.id`, pgx.StrictNamedArgs{"who": who})
}

// Course returns a course with its holes in order.
func (s *Store) Course(ctx context.Context, id golf.CourseID) (Course, error) {
	c, err := one(ctx, s.q, pgx.RowToStructByName[Course],
		`select id, owner_id as owner, name, tee, rating, slope, front_rating, front_slope, back_rating, back_slope, holes_planned as planned
		from courses where id = @id and removed_at is null`, pgx.StrictNamedArgs{"id": id})
	if err != nil {
		return c, err
	}
	rows, err := many(ctx, s.q, pgx.RowToStructByName[holeRow],
		`select number, par, length_in, stroke_index from course_holes where course_id = @id order by number`, pgx.StrictNamedArgs{"id": id})
	for _, r := range rows {
		c.Holes = append(c.Holes, r.card())
	}
	return c, err
}

// How many courses a player may add in a day, and in total. There is a limit because
// everybody has to choose from them.
const (
	CoursesOfADay = 50
	CoursesInAll  = 300
)

// ErrCoursesOfADay and ErrCoursesInAll say that a player has reached one of the
// limits.
var (
	ErrCoursesOfADay = errors.New("no more courses today")
	ErrCoursesInAll  = errors.New("no more courses")
)

// roomForACourse returns an error when a player may not add another course. It locks
// the player, so that requests at the same moment count one after the other.
func (s *Store) roomForACourse(ctx context.Context, who golf.PlayerID) error {
	of := pgx.StrictNamedArgs{"who": who}
	if _, err := one(ctx, s.q, pgx.RowTo[golf.PlayerID], `select id from players where id = @who for update`, of); err != nil {
		return err
	}
	n, err := one(ctx, s.q, pgx.RowToStructByName[struct{ Today, All int }], `
		select count(*) filter (where created_at > now() - interval '24 hours') as today, count(*) filter (where removed_at is null) as all
		from courses where owner_id = @who`, of)
	switch {
	case err != nil:
		return err
	case n.Today >= CoursesOfADay:
		return ErrCoursesOfADay
	case n.All >= CoursesInAll:
		return ErrCoursesInAll
	}
	return nil
}

// SaveCourse adds a course when its ID is 0, and otherwise changes one that the
// player added. It returns the ID.
func (s *Store) SaveCourse(ctx context.Context, who golf.PlayerID, c Course) (golf.CourseID, error) {
	err := s.Tx(ctx, func(tx *Store) error {
		args := pgx.StrictNamedArgs{"who": who, "name": c.Name, "tee": c.Tee, "rating": c.Rating, "slope": c.Slope,
			"front_rating": c.FrontRating, "front_slope": c.FrontSlope, "back_rating": c.BackRating, "back_slope": c.BackSlope, "planned": c.Planned}
		var err error
		if c.ID == 0 {
			if err := tx.roomForACourse(ctx, who); err != nil {
				return err
			}
			c.ID, err = one(ctx, tx.q, pgx.RowTo[golf.CourseID], `
				insert into courses (owner_id, name, tee, rating, slope, front_rating, front_slope, back_rating, back_slope, holes_planned)
				values (@who, @name, @tee, @rating, @slope, @front_rating, @front_slope, @back_rating, @back_slope, @planned) returning id`, args)
		} else {
			args["id"] = c.ID
			err = changeOne(ctx, tx.q, `
				update courses set name = @name, tee = @tee, rating = @rating, slope = @slope, front_rating = @front_rating,
					front_slope = @front_slope, back_rating = @back_rating, back_slope = @back_slope, holes_planned = @planned
				where id = @id and owner_id = @who and removed_at is null`, args)
		}
		if err != nil {
			return err
		}
		return tx.saveCourseHoles(ctx, c)
	})
	return c.ID, err
}

func (s *Store) saveCourseHoles(ctx context.Context, c Course) error {
	batch := &pgx.Batch{}
	batch.Queue(`delete from course_holes where course_id = @id`, pgx.StrictNamedArgs{"id": c.ID})
	for _, h := range c.Holes {
		batch.Queue(`insert into course_holes (course_id, number, par, length_in, stroke_index) values (@id, @number, @par, @length, @index)`,
			pgx.StrictNamedArgs{"id": c.ID, "number": h.Number, "par": h.Par, "length": float64(h.Length), "index": h.Index})
	}
	return translate(s.q.SendBatch(ctx, batch).Close())
}
