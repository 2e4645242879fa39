package handlers

import (
	"errors"
	"fmt"
	"net/http"
	"slices"
	"strconv"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/entry"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// lookBack is how many of the latest rounds the player can continue.
const lookBack = 5

func (s *server) newRound(w http.ResponseWriter, r *http.Request) error {
	f := form.RoundStart{Course: form.Course{Text: r.FormValue("course")}, Date: form.DayOf(s.today(r)), First: form.WholeOf(1), NewHoles: form.WholeOf(form.MostHoles)}
	return s.showNewRound(w, r, http.StatusOK, f)
}

func (s *server) showNewRound(w http.ResponseWriter, r *http.Request, status int, f form.RoundStart) error {
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
	course := f.Course.Text
	if course == "" && len(lately) > 0 && lately[0].CourseID != nil {
		course = strconv.FormatInt(int64(*lately[0].CourseID), 10)
	}
	courses, err := s.choices(r, course)
	if err != nil {
		return err
	}
	return show(w, r, status, entry.NewBeginPage(shell(r), f, courses, open).View())
}

// beginRound begins a round on a course of the server, or on a new one whose card
// is entered hole by hole.
func (s *server) beginRound(w http.ResponseWriter, r *http.Request) error {
	p := me(r)
	f := form.ParseRoundStart(r.Form)
	c, err := s.courseToPlay(r, &f)
	if err != nil {
		return err
	}
	round := roundOn(c, p, &f, s.now().In(s.zoneOf(p)))
	if !f.Sound() {
		return s.showNewRound(w, r, http.StatusUnprocessableEntity, f)
	}
	if f.Fresh {
		c.ID, err = s.store.SaveCourse(r.Context(), p.ID, c)
	}
	if full := noRoom(err); full != "" {
		f.NewName.Problem = full
		return s.showNewRound(w, r, http.StatusUnprocessableEntity, f)
	}
	if err != nil {
		return err
	}
	round.CourseID = &c.ID
	return s.storeRound(w, r, round)
}

// storeRound stores a round and sends the player to its first hole.
func (s *server) storeRound(w http.ResponseWriter, r *http.Request, round db.Round) error {
	id, err := s.store.NewRound(r.Context(), me(r).ID, round)
	if err != nil {
		return err
	}
	return redirect(w, r, paths.Hole(id, round.FirstHole))
}

// roundOn is the round of a player on a course that a form begins; at makes its name
// another than that of the player's other rounds of the day.
func roundOn(c db.Course, p db.Player, f *form.RoundStart, at time.Time) db.Round {
	round := db.Round{Name: fmt.Sprintf("%s %s %s", f.Date.Value, c.Name, at.Format("150405")), PlayedOn: f.Date.Value.Time(), Course: c.Name, Tee: c.Tee,
		Target: p.Target, BoundaryYd: p.BoundaryYd, Par18: golf.StandardPar, Conditions: f.Conditions.Value}
	if len(c.Holes) == form.MostHoles {
		round.Par18 = parOf(c.Holes)
	}
	holes, first := f.ChooseHoles(c.Card())
	for _, h := range holes {
		round.Holes = append(round.Holes, db.Hole{Hole: golf.Hole{Number: h.Number, Par: h.Par}, Length: h.Length, Index: h.Index})
	}
	round.FirstHole = first
	return round
}

// courseToPlay is the course that was chosen, or a new one that is not saved yet.
func (s *server) courseToPlay(r *http.Request, f *form.RoundStart) (db.Course, error) {
	if f.Fresh {
		return db.Course{Name: f.NewName.Value, Tee: f.NewTee.Value, Planned: f.NewHoles.Value}, nil
	}
	if !f.Course.Sound() {
		return db.Course{}, nil
	}
	c, err := s.store.Course(r.Context(), f.Course.Value)
	switch {
	case errors.Is(err, golf.ErrNotFound):
		f.Course.Problem = "Choose a course."
		return c, nil
	case err == nil && c.Size() == 0:
		c.Planned = form.MostHoles // it is not known how many holes it has
	}
	return c, err
}
