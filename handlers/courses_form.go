package handlers

import (
	"errors"
	"fmt"
	"net/http"
	"strconv"
	"strings"

	"github.com/go-chi/chi/v5"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/entry"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// newCourse is an empty form, or one with the pars and indexes of other tees.
func (s *server) newCourse(w http.ResponseWriter, r *http.Request) error {
	f := entry.CourseFormInput{Card: form.Card{Holes: 18}}
	like, err := s.likeCourse(r)
	if err != nil {
		return err
	}
	if like.ID > 0 {
		f.Name, f.Card = like.Name, formOf(like, unitsOf(me(r))).Card
		for i := range f.Card.Rows {
			f.Card.Rows[i].Length = ""
		}
	}
	return s.showNewCourse(w, r, http.StatusOK, shell(r), f, like)
}

// likeCourse is the course whose other tees are added, empty for none.
func (s *server) likeCourse(r *http.Request) (db.Course, error) {
	from, err := strconv.ParseInt(r.URL.Query().Get("from"), 10, 64)
	if err != nil {
		return db.Course{}, nil
	}
	return s.store.Course(r.Context(), golf.CourseID(from))
}

func (s *server) showNewCourse(w http.ResponseWriter, r *http.Request, status int, page layout.Page, f entry.CourseFormInput, like db.Course) error {
	name := like.Name
	if like.Tee != "" {
		name += ", " + like.Tee
	}
	f.Before = formOf(like, unitsOf(me(r))).Card
	return show(w, r, status, entry.NewAddCoursePage(page, f, entry.LikeCourse{ID: like.ID, Name: name}, unitsOf(me(r))).View())
}

// saveCourse adds a course, changes one of the player's, or fills the rows of
// the form from pasted text.
func (s *server) saveCourse(w http.ResponseWriter, r *http.Request) error {
	var c db.Course
	if chi.URLParam(r, "course") != "" {
		var err error
		if c, err = s.ofCourse(r); err != nil {
			return err
		}
		if !isMine(r, c) {
			return golf.ErrNotFound
		}
	}
	kept, unit := c, unitsOf(me(r)).Far
	f := typedCourse(r)
	filled := fill(&f, unit, r.FormValue("fill") != "")
	readCourse(&c, &f, unit)
	if filled || !f.Sound() {
		status, page := http.StatusUnprocessableEntity, shell(r)
		if filled && len(f.PasteProblems) == 0 {
			status, page.Flash = http.StatusOK, "The rows are filled from the text. Check them, then save the course."
		}
		if c.ID == 0 {
			like, err := s.likeCourse(r)
			if err != nil && !errors.Is(err, golf.ErrNotFound) { // what is typed outlives its model
				return err
			}
			return s.showNewCourse(w, r, status, page, f, like)
		}
		return s.showCourse(w, r, status, page, kept, entry.CourseInput{Form: f})
	}
	id, err := s.store.SaveCourse(r.Context(), me(r).ID, c)
	if full := noRoom(err); full != "" {
		f.Problems["name"] = full
		return s.showNewCourse(w, r, http.StatusUnprocessableEntity, shell(r), f, db.Course{})
	}
	if err != nil {
		return err
	}
	return saved(w, r, paths.Course(id), "course")
}

// noRoom says why a player may not add another course, empty for another error
// or none.
func noRoom(err error) string {
	switch {
	case errors.Is(err, db.ErrCoursesOfADay):
		return fmt.Sprintf("You have added %d courses today, the most allowed in a day. Add this one tomorrow.", db.CoursesOfADay)
	case errors.Is(err, db.ErrCoursesInAll):
		return fmt.Sprintf("You have added %d courses, the most allowed. Remove one you do not play.", db.CoursesInAll)
	}
	return ""
}

// typedCourse is the form as it was sent.
func typedCourse(r *http.Request) entry.CourseFormInput {
	value := func(name string) string {
		text := []rune(strings.ToValidUTF8(strings.ReplaceAll(r.FormValue(name), "\x00", ""), ""))
		return strings.TrimSpace(string(text[:min(len(text), 120)]))
	}
	f := entry.CourseFormInput{Name: value("name"), Tee: value("tee"), Rating: value("rating"), Slope: value("slope"),
		FrontRating: value("front_rating"), FrontSlope: value("front_slope"), BackRating: value("back_rating"), BackSlope: value("back_slope"),
		Paste: r.FormValue("paste"), Problems: map[string]string{}}
	if strings.TrimSpace(f.Paste) == "" {
		f.Paste = ""
	}
	f.Card.Holes, _ = strconv.Atoi(value("holes"))
	for i := range f.Card.Rows {
		n := strconv.Itoa(i + 1)
		f.Card.Rows[i] = form.CardRow{Par: value("par-" + n), Length: value("length-" + n), Index: value("index-" + n)}
	}
	f.Agreed = r.Form["anyway"]
	if r.FormValue("anyway_all") != "" {
		f.Agreed = append(f.Agreed, r.Form["asked"]...)
	}
	return f
}

// fill puts pasted text into the rows when that was asked for, which it
// returns, or when nothing else was filled in. Text that is not used is a
// problem, since it would be lost.
func fill(f *entry.CourseFormInput, unit golf.Unit, asked bool) bool {
	if f.Paste == "" {
		return false
	}
	pasted := form.PasteCard(f.Paste, unit)
	card := pasted.Card
	if card.Rows[0].Empty() { // it begins after the first hole, so what stands before it stays
		card = f.Card
		for i, row := range pasted.Card.Rows {
			if !row.Empty() {
				card.Rows[i] = row
			}
		}
	}
	if n := pasted.Card.Holes; n == 9 || n > f.Card.Holes {
		card.Holes = n
	} else {
		card.Holes = f.Card.Holes
	}
	switch same := card == f.Card; {
	case asked || f.Card.Blank():
		f.Card, f.PasteProblems = card, pasted.Problems
	case !same:
		f.PasteProblems = []string{"The pasted text differs from the rows. Fill the rows from it, or clear it."}
	}
	if asked && len(f.PasteProblems) == 0 {
		f.Paste = ""
	}
	return asked
}

// A rating of a course: its field, what it may be, and where it is kept.
type rating struct {
	field, label string
	low, high    float64
	to           **float64
}

func ratingsOf(c *db.Course) []rating {
	return []rating{
		{"rating", "Course rating", 20, 90, &c.Rating}, {"slope", "Slope rating", 55, 155, &c.Slope},
		{"front_rating", "Rating of the front nine", 10, 50, &c.FrontRating}, {"front_slope", "Slope of the front nine", 55, 155, &c.FrontSlope},
		{"back_rating", "Rating of the back nine", 10, 50, &c.BackRating}, {"back_slope", "Slope of the back nine", 55, 155, &c.BackSlope},
	}
}

// readCourse reads what was typed into a course, and notes what is wrong.
func readCourse(c *db.Course, f *entry.CourseFormInput, unit golf.Unit) {
	before := form.KnownCard{Size: c.Size(), Holes: c.Holes}
	checkName(f.Name, f.Problems)
	if !sayable(f.Tee, 80) {
		f.Problems["tee"] = "Allowed: at most 80 letters."
	}
	c.Name, c.Tee = f.Name, f.Tee
	typed := map[string]string{"rating": f.Rating, "slope": f.Slope, "front_rating": f.FrontRating, "front_slope": f.FrontSlope,
		"back_rating": f.BackRating, "back_slope": f.BackSlope}
	for _, x := range ratingsOf(c) {
		if *x.to = nil; typed[x.field] != "" {
			number := between(typed[x.field], x.low, x.high, x.field, f.Problems)
			*x.to = &number
		}
	}
	c.Holes, f.CardSaid = f.Card.Read(unit, before)
	c.Planned = f.Card.Holes
}
