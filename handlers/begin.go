package handlers

import (
	"errors"
	"fmt"
	"net/http"
	"slices"
	"strconv"
	"strings"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/entry"
	"strokeledger/web/paths"
)

// lookBack is how many of the latest rounds may be gone on with.
const lookBack = 5

func (s *server) newRound(w http.ResponseWriter, r *http.Request) error {
	return s.showNewRound(w, r, http.StatusOK, entry.BeginInput{Values: map[string]string{"course": r.FormValue("course"), "date": now().String(), "first_hole": "1", "new_holes": "18"}})
}

func (s *server) showNewRound(w http.ResponseWriter, r *http.Request, status int, f entry.BeginInput) error {
	lately, err := s.store.Rounds(r.Context(), me(r).ID, me(r).ID, db.Chosen{Most: lookBack})
	if err != nil {
		return err
	}
	var open []entry.OpenRound
	for _, kept := range lately {
		left, holes := len(kept.Holes)-len(kept.Played().Holes), kept.InOrder()
		if i := slices.IndexFunc(holes, func(h db.Hole) bool { return h.Line == "" }); i >= 0 {
			open = append(open, entry.NewOpenRound(kept.ID, golf.DateOf(kept.PlayedOn), kept.Course, holes[i].Number, left))
		}
	}
	course := f.Values["course"]
	if course == "" && len(lately) > 0 && lately[0].CourseID != nil {
		course = strconv.FormatInt(int64(*lately[0].CourseID), 10)
	}
	if f.Courses, err = s.choices(r, course); err != nil {
		return err
	}
	return show(w, r, status, entry.NewBeginPage(shell(r), f, open).View())
}

// beginRound begins a round on a course that is there, or on a new one whose
// card is told hole by hole.
func (s *server) beginRound(w http.ResponseWriter, r *http.Request) error {
	p := me(r)
	f := entry.BeginInput{Values: map[string]string{}, Problems: map[string]string{}}
	for _, field := range []string{"course", "date", "note", "first_hole", "part", "new_course", "new_tee", "new_holes"} {
		f.Values[field] = strings.TrimSpace(r.FormValue(field))
	}
	f.New = r.Form.Has("new_course")
	date := dayOf(f.Values, "date", f.Problems)
	if !sayable(f.Values["note"], 300) {
		f.Problems["note"] = "Allowed: at most 300 letters, in one line."
	}
	c, err := s.courseToPlay(r, f)
	if err != nil {
		return err
	}
	kept := db.Round{Name: fmt.Sprintf("%s %s %s", date, c.Name, time.Now().Format("150405")), PlayedOn: date.Time(), Course: c.Name, Tee: c.Tee,
		Target: p.Target, BoundaryYd: p.BoundaryYd, Par18: golf.StandardPar, Conditions: f.Values["note"]}
	if len(c.Holes) == 18 {
		kept.Par18 = parOf(c.Holes)
	}
	kept.Holes, kept.FirstHole = holesToPlay(c.Card(), f)
	if len(f.Problems) > 0 {
		return s.showNewRound(w, r, http.StatusUnprocessableEntity, f)
	}
	if f.New {
		c.ID, err = s.store.SaveCourse(r.Context(), p.ID, c)
		if full := noRoom(err); full != "" {
			f.Problems["new_course"] = full
			return s.showNewRound(w, r, http.StatusUnprocessableEntity, f)
		}
		if err != nil {
			return err
		}
	}
	kept.CourseID = &c.ID
	id, err := s.store.NewRound(r.Context(), p.ID, kept)
	if err != nil {
		return err
	}
	return then(w, r, paths.Hole(id, kept.FirstHole))
}

// courseToPlay is the course that was chosen, or a new one, not yet saved.
func (s *server) courseToPlay(r *http.Request, f entry.BeginInput) (db.Course, error) {
	if f.New {
		c := db.Course{Name: f.Values["new_course"], Tee: f.Values["new_tee"]}
		if c.Name == "" || !sayable(c.Name, 80) {
			f.Problems["new_course"] = "Allowed: 1 to 80 letters, in one line."
		}
		if !sayable(c.Tee, 80) {
			f.Problems["new_tee"] = "Allowed: at most 80 letters, in one line."
		}
		if holes := whole(f.Values["new_holes"], 1, 18, "new_holes", f.Problems); f.Problems["new_holes"] == "" {
			c.Planned = holes // a card is made of as many, so it must be no other number
		}
		return c, nil
	}
	n, _ := strconv.ParseInt(f.Values["course"], 10, 64)
	c, err := s.store.Course(r.Context(), golf.CourseID(n))
	switch {
	case errors.Is(err, golf.ErrNotFound):
		f.Problems["course"] = "Choose a course."
		return c, nil
	case err == nil && c.Size() == 0:
		c.Planned = 18 // nobody has said how many it has
	}
	return c, err
}

// holesToPlay are the holes that were chosen of a card, and the one to begin
// with: hole 1 stands for the first of them.
func holesToPlay(card []golf.CardHole, f entry.BeginInput) (holes []db.Hole, first int) {
	for _, h := range card {
		if f.Values["part"] == entry.PartBack && h.Number < 10 || f.Values["part"] == entry.PartFront && h.Number > 9 {
			continue
		}
		holes = append(holes, db.Hole{Hole: golf.Hole{Number: h.Number, Par: h.Par}, Length: h.Length, Index: h.Index})
	}
	if len(holes) == 0 {
		if len(card) > 0 {
			f.Problems["part"] = "The course has no such holes."
		}
		return nil, 0
	}
	if text := f.Values["first_hole"]; text != "" && text != "1" {
		first = whole(text, 1, 18, "first_hole", f.Problems)
	}
	switch {
	case first == 0:
		first = holes[0].Number
	case !slices.ContainsFunc(holes, func(h db.Hole) bool { return h.Number == first }):
		f.Problems["first_hole"] = fmt.Sprintf("Allowed: %d to %d.", holes[0].Number, holes[len(holes)-1].Number)
	}
	return holes, first
}
