package handlers

import (
	"fmt"
	"net/http"
	"strconv"
	"strings"

	"github.com/go-chi/chi/v5"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/pages"
	"strokeledger/web/paths"
)

func (s *server) courses(w http.ResponseWriter, r *http.Request) error {
	p := me(r)
	all, err := s.store.Courses(r.Context(), p.ID)
	if err != nil {
		return err
	}
	var listed []pages.ListedCourse
	for _, c := range all {
		listed = append(listed, pages.ListedCourse{ID: c.ID, Name: c.Name, Tee: c.Tee, Holes: c.Holes, Par: c.Par, Length: golf.Yards.Of(c.Yards), Mine: c.Mine})
	}
	return show(w, r, http.StatusOK, pages.NewCourses(shell(r), listed, unitsOf(p)).View())
}

func (s *server) newCourse(w http.ResponseWriter, r *http.Request) error {
	return show(w, r, http.StatusOK, pages.NewCoursePage(shell(r), pages.CourseForm{}, paths.NewCourse, true, unitsOf(me(r))).View())
}

func (s *server) course(w http.ResponseWriter, r *http.Request) error {
	n, err := id(r, "course")
	if err != nil {
		return err
	}
	c, err := s.store.Course(r.Context(), golf.CourseID(n))
	if err != nil {
		return err
	}
	p := me(r)
	f := pages.CourseForm{Name: c.Name, Tee: c.Tee, Rating: optional(c.Rating), Slope: optional(c.Slope),
		FrontRating: optional(c.FrontRating), FrontSlope: optional(c.FrontSlope), BackRating: optional(c.BackRating), BackSlope: optional(c.BackSlope), Card: form.WriteCard(c.Holes, unitsOf(p).Far)}
	mine := c.Owner != nil && *c.Owner == p.ID
	return show(w, r, http.StatusOK, pages.NewCoursePage(shell(r), f, paths.Course(c.ID), mine, unitsOf(p)).View())
}

func optional(x *float64) string {
	if x == nil {
		return ""
	}
	return number(*x)
}

// saveCourse makes a course, or changes one of the player's.
func (s *server) saveCourse(w http.ResponseWriter, r *http.Request) error {
	p := me(r)
	var c db.Course
	at := paths.NewCourse
	if chi.URLParam(r, "course") != "" {
		n, err := id(r, "course")
		if err != nil {
			return err
		}
		c.ID, at = golf.CourseID(n), paths.Course(golf.CourseID(n))
	}
	f := pages.CourseForm{Name: strings.TrimSpace(r.FormValue("name")), Tee: strings.TrimSpace(r.FormValue("tee")), Rating: r.FormValue("rating"),
		Slope: r.FormValue("slope"), Card: r.FormValue("card"), Problems: map[string]string{},
		FrontRating: r.FormValue("front_rating"), FrontSlope: r.FormValue("front_slope"), BackRating: r.FormValue("back_rating"), BackSlope: r.FormValue("back_slope")}
	readCourse(&c, f, unitsOf(p).Far)
	if len(f.Problems) > 0 {
		return show(w, r, http.StatusUnprocessableEntity, pages.NewCoursePage(shell(r), f, at, true, unitsOf(p)).View())
	}
	if _, err := s.store.SaveCourse(r.Context(), p.ID, c); err != nil {
		return err
	}
	return then(w, r, paths.Courses)
}

// readCourse reads what was typed into a course, and notes what is wrong.
func readCourse(c *db.Course, f pages.CourseForm, unit golf.Unit) {
	checkName(f.Name, f.Problems)
	if !sayable(f.Tee, 80) {
		f.Problems["tee"] = "Allowed: at most 80 letters, each of which can be seen."
	}
	c.Name, c.Tee = f.Name, f.Tee
	for _, x := range []struct {
		text, field string
		low, high   float64
		to          **float64
	}{
		{f.Rating, "rating", 20, 90, &c.Rating}, {f.Slope, "slope", 55, 155, &c.Slope},
		{f.FrontRating, "front_rating", 10, 50, &c.FrontRating}, {f.FrontSlope, "front_slope", 55, 155, &c.FrontSlope},
		{f.BackRating, "back_rating", 10, 50, &c.BackRating}, {f.BackSlope, "back_slope", 55, 155, &c.BackSlope},
	} {
		if *x.to = nil; x.text != "" {
			number := between(x.text, x.low, x.high, x.field, f.Problems)
			*x.to = &number
		}
	}
	holes, problem := form.ParseCard(f.Card, unit)
	if problem != "" {
		f.Problems["card"] = problem
	}
	c.Holes = holes
}

// choices are the courses to begin a round on.
func (s *server) choices(r *http.Request, chosen string) ([]pages.Choice, error) {
	all, err := s.store.Courses(r.Context(), me(r).ID)
	var choices []pages.Choice
	for _, c := range all {
		value := strconv.FormatInt(int64(c.ID), 10)
		name := c.Name
		if c.Tee != "" {
			name += ", " + c.Tee
		}
		choices = append(choices, pages.Choice{Value: value, Name: fmt.Sprintf("%s, %d holes, par %d", name, c.Holes, c.Par), Chosen: value == chosen})
	}
	return choices, err
}
