package handlers

import (
	"errors"
	"fmt"
	"net/http"
	"strconv"

	"github.com/go-chi/chi/v5"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/entry"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// newCourse shows an empty form, or one with the pars and indexes of other tees.
func (s *server) newCourse(w http.ResponseWriter, r *http.Request) error {
	f := form.CourseForm{Card: form.Card{Holes: form.MostHoles}}
	like, err := s.likeCourse(r)
	if err != nil {
		return err
	}
	if like.ID > 0 {
		f.Name, f.Card = form.TextOf(like.Name), courseFormOf(like, unitsOf(me(r))).Card
		for i := range f.Card.Rows {
			f.Card.Rows[i].Length = ""
		}
	}
	return s.showNewCourse(w, r, response{http.StatusOK, shell(r)}, f, like)
}

// likeCourse is the course to which other tees are added, empty for none.
func (s *server) likeCourse(r *http.Request) (db.Course, error) {
	from, err := strconv.ParseInt(r.URL.Query().Get("from"), 10, 64)
	if err != nil {
		return db.Course{}, nil
	}
	return s.store.Course(r.Context(), golf.CourseID(from))
}

func (s *server) showNewCourse(w http.ResponseWriter, r *http.Request, a response, f form.CourseForm, like db.Course) error {
	name := like.Name
	if like.Tee != "" {
		name += ", " + like.Tee
	}
	before := courseFormOf(like, unitsOf(me(r))).Card
	return show(w, r, a.status, entry.NewAddCoursePage(a.page, f, entry.LikeCourse{ID: like.ID, Name: name, Card: before}, unitsOf(me(r))).View())
}

// saveCourse adds a course, changes one of the player's, or fills the rows of
// the form from pasted text.
func (s *server) saveCourse(w http.ResponseWriter, r *http.Request) error {
	c, err := s.courseToSave(r)
	if err != nil {
		return err
	}
	f := form.ParseCourseForm(r.Form, unitsOf(me(r)).Far, form.KnownCard{Size: c.Size(), Holes: c.Holes})
	if f.Filled() || !f.Sound() {
		return s.courseAgain(w, r, c, f)
	}
	id, err := s.store.SaveCourse(r.Context(), me(r).ID, asCourse(c, f))
	if full := noRoom(err); full != "" {
		f.Name.Problem = full
		return s.showNewCourse(w, r, response{http.StatusUnprocessableEntity, shell(r)}, f, db.Course{})
	}
	if err != nil {
		return err
	}
	return saved(w, r, paths.Course(id), "course")
}

// courseToSave is the course named in the address, if the player owns it, or a new
// course when none is named.
func (s *server) courseToSave(r *http.Request) (c db.Course, err error) {
	if chi.URLParam(r, "course") == "" {
		return c, nil
	}
	if c, err = s.ofCourse(r); err == nil && !isMine(r, c) {
		err = golf.ErrNotFound
	}
	return c, err
}

// courseAgain shows the form of a course again: to fix problems, or to check the
// rows that were filled from pasted text.
func (s *server) courseAgain(w http.ResponseWriter, r *http.Request, kept db.Course, f form.CourseForm) error {
	a := response{http.StatusUnprocessableEntity, shell(r)}
	if f.Filled() && len(f.PasteProblems) == 0 {
		a.status, a.page.Flash = http.StatusOK, "The rows are filled from the text. Check them, then save the course."
	}
	if kept.ID != 0 {
		return s.showCourse(w, r, a, kept, entry.CourseInput{Form: f})
	}
	like, err := s.likeCourse(r)
	if err != nil && !errors.Is(err, golf.ErrNotFound) { // keep what was typed even if that course is gone
		return err
	}
	return s.showNewCourse(w, r, a, f, like)
}

// noRoom says why a player may not add another course; it is empty for any other
// error or none.
func noRoom(err error) string {
	switch {
	case errors.Is(err, db.ErrCoursesOfADay):
		return fmt.Sprintf("You have added %d courses today, the most allowed in a day. Add this one tomorrow.", db.CoursesOfADay)
	case errors.Is(err, db.ErrCoursesInAll):
		return fmt.Sprintf("You have added %d courses, the most allowed. Remove one you do not play.", db.CoursesInAll)
	}
	return ""
}

// asCourse is a course with what was typed into its form.
func asCourse(c db.Course, f form.CourseForm) db.Course {
	c.Name, c.Tee = f.Name.Value, f.Tee.Value
	c.Rating, c.Slope = known(f.Whole.Rating.Value), known(f.Whole.Slope.Value)
	c.FrontRating, c.FrontSlope = known(f.Front.Rating.Value), known(f.Front.Slope.Value)
	c.BackRating, c.BackSlope = known(f.Back.Rating.Value), known(f.Back.Slope.Value)
	c.Holes, c.Planned = f.Holes, f.Card.Holes
	return c
}

// courseFormOf is the form of a course as it is stored.
func courseFormOf(c db.Course, units form.Units) form.CourseForm {
	ratings := func(rating, slope *float64) form.Ratings {
		return form.Ratings{Rating: numberOf(rating), Slope: numberOf(slope)}
	}
	return form.CourseForm{Name: form.TextOf(c.Name), Tee: form.TextOf(c.Tee), Whole: ratings(c.Rating, c.Slope),
		Front: ratings(c.FrontRating, c.FrontSlope), Back: ratings(c.BackRating, c.BackSlope), Card: form.WriteCard(c.Size(), c.Holes, units.Far)}
}

// numberOf is the field of a number that may not be known.
func numberOf(x *float64) form.Number {
	if x == nil {
		return form.Number{}
	}
	return form.NumberOf(*x)
}
