package handlers

import (
	"net/http"
	"slices"
	"strconv"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/components"
	"strokeledger/web/entry"
	"strokeledger/web/paths"
)

func (s *server) courses(w http.ResponseWriter, r *http.Request) error {
	listed, err := s.listedCourses(r)
	if err != nil {
		return err
	}
	page := shell(r)
	if err := s.offerUndo(r, &page); err != nil {
		return err
	}
	return show(w, r, http.StatusOK, entry.NewCoursesPage(page, listed, unitsOf(me(r))).View())
}

func (s *server) listedCourses(r *http.Request) ([]entry.ListedCourse, error) {
	all, err := s.store.Courses(r.Context(), me(r).ID)
	var listed []entry.ListedCourse
	for _, c := range all {
		listed = append(listed, entry.ListedCourse{ID: c.ID, Name: c.Name, Tee: c.Tee, Holes: c.Holes, Size: c.Size, Par: c.Par,
			Length: golf.Yards.Of(c.Yards), Mine: c.Mine, Times: c.Times})
	}
	return listed, err
}

// choices lists the courses to choose from.
func (s *server) choices(r *http.Request, chosen string) ([]components.Choice, error) {
	listed, err := s.listedCourses(r)
	var choices []components.Choice
	for _, c := range listed {
		choices = append(choices, entry.CourseChoice(c, strconv.FormatInt(int64(c.ID), 10) == chosen))
	}
	return choices, err
}

// ofCourse reads the course named in the address.
func (s *server) ofCourse(r *http.Request) (db.Course, error) {
	n, err := id(r, "course")
	if err != nil {
		return db.Course{}, err
	}
	return s.store.Course(r.Context(), golf.CourseID(n))
}

func isMine(r *http.Request, c db.Course) bool { return c.Owner != nil && *c.Owner == me(r).ID }

func (s *server) course(w http.ResponseWriter, r *http.Request) error {
	c, err := s.ofCourse(r)
	if err != nil {
		return err
	}
	strip, err := s.strip(r, c)
	if err != nil {
		return err
	}
	return s.showCourse(w, r, response{http.StatusOK, shell(r)}, c, entry.CourseInput{Form: courseFormOf(c, unitsOf(me(r))), Strip: strip, Target: me(r).Target})
}

// stripMost is how many rounds the strip of a hole looks back, the latest ones.
const stripMost = 100

// strip is how who is signed in played a hole of the course.
func (s *server) strip(r *http.Request, c db.Course) (analysis.Strip, error) {
	rounds, err := s.store.Rounds(r.Context(), me(r).ID, me(r).ID, db.Chosen{CourseID: c.ID, Most: stripMost})
	if err != nil {
		return analysis.Strip{}, err
	}
	hole, _ := strconv.Atoi(r.FormValue("hole")) // what is no number chooses none
	in := analysis.StripInput{Card: c.Holes, Par18: parOf(c.Holes), Target: me(r).Target, Boundary: golf.Yards.Of(me(r).BoundaryYd), Hole: hole}
	for _, kept := range rounds {
		in.History = append(in.History, playedOf(kept))
	}
	return analysis.NewStrip(in), nil
}

// showCourse shows a course with its form, as stored or as typed.
func (s *server) showCourse(w http.ResponseWriter, r *http.Request, a response, c db.Course, seen entry.CourseInput) error {
	p := me(r)
	seen.ID, seen.Name, seen.Tee, seen.Size, seen.Holes = c.ID, c.Name, c.Tee, c.Size(), c.Holes
	seen.Mine, seen.Steward = isMine(r, c), p.Steward
	seen.Kept = courseFormOf(c, unitsOf(p))
	other, err := s.store.OtherCards(r.Context(), p.ID, c.ID)
	if err != nil {
		return err
	}
	for _, o := range other {
		seen.OtherCard = append(seen.OtherCard, entry.OtherCard{ID: o.Round, Day: o.PlayedOn, Holes: o.Holes})
	}
	if p.Steward {
		if seen.Others, err = s.choices(r, r.FormValue("same")); err != nil {
			return err
		}
		own := strconv.FormatInt(int64(c.ID), 10)
		seen.Others = slices.DeleteFunc(seen.Others, func(o components.Choice) bool { return o.Value == own })
	}
	return show(w, r, a.status, entry.NewCoursePage(a.page, seen, unitsOf(p)).View())
}

// useCard gives the selected rounds of the player the card of the course.
func (s *server) useCard(w http.ResponseWriter, r *http.Request) error {
	c, err := s.ofCourse(r)
	if err != nil {
		return err
	}
	other, err := s.store.OtherCards(r.Context(), me(r).ID, c.ID)
	if err != nil {
		return err
	}
	if err := r.ParseForm(); err != nil {
		return err
	}
	for _, o := range other {
		if !slices.Contains(r.PostForm["round"], strconv.FormatInt(int64(o.Round), 10)) {
			continue
		}
		if err := s.store.UseCard(r.Context(), me(r).ID, o.Round, c.Holes); err != nil {
			return err
		}
	}
	return saved(w, r, paths.Course(c.ID), "used")
}

func (s *server) removeCourse(w http.ResponseWriter, r *http.Request) error {
	n, err := id(r, "course")
	if err != nil {
		return err
	}
	if err := s.store.RemoveCourse(r.Context(), me(r).ID, golf.CourseID(n)); err != nil {
		return err
	}
	return redirectAfterRemoval(w, r, paths.Courses, removal{db.RemovedCourse, me(r).ID, n})
}

// mergeCourse lets a steward merge a duplicate into another course: its rounds move,
// and it is removed.
func (s *server) mergeCourse(w http.ResponseWriter, r *http.Request) error {
	if !me(r).Steward {
		return golf.ErrNotFound
	}
	c, err := s.ofCourse(r)
	if err != nil {
		return err
	}
	kept, err := strconv.ParseInt(r.FormValue("same"), 10, 64)
	if err != nil || golf.CourseID(kept) == c.ID {
		return s.showCourse(w, r, response{http.StatusUnprocessableEntity, shell(r)}, c, entry.CourseInput{Form: courseFormOf(c, unitsOf(me(r))), MergeSaid: "Choose another course."})
	}
	if err := s.store.MergeCourse(r.Context(), me(r).ID, c.ID, golf.CourseID(kept)); err != nil {
		return err
	}
	return saved(w, r, paths.Course(golf.CourseID(kept)), "merged")
}
