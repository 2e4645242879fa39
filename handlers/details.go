package handlers

import (
	"errors"
	"net/http"
	"slices"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/entry"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

func (s *server) details(w http.ResponseWriter, r *http.Request) error {
	kept, err := s.ofRound(r)
	if err != nil {
		return err
	}
	f := form.RoundDetails{Day: form.DayOf(golf.DateOf(kept.PlayedOn)), Course: form.TextOf(kept.Course), Tee: form.TextOf(kept.Tee), Target: form.NumberOf(kept.Target),
		Par18: form.WholeOf(kept.Par18), First: form.WholeOf(kept.FirstHole), Conditions: form.TextOf(kept.Conditions)}
	for _, h := range kept.Holes {
		f.Holes = append(f.Holes, form.HoleCardOf(h.Card(), unitsOf(me(r)).Far))
	}
	return s.showDetails(w, r, http.StatusOK, kept, f)
}

func (s *server) showDetails(w http.ResponseWriter, r *http.Request, status int, kept db.Round, f form.RoundDetails) error {
	courses, err := s.choices(r, f.Take.Text)
	if err != nil {
		return err
	}
	return show(w, r, status, entry.NewDetailsPage(shell(r), kept.ID, f, courses, unitsOf(me(r)).Far).View())
}

// saveDetails corrects the day, course, target and card of a round.
func (s *server) saveDetails(w http.ResponseWriter, r *http.Request) error {
	kept, err := s.ofRound(r)
	if err != nil {
		return err
	}
	course, err := s.takenOver(r)
	if err != nil && !errors.Is(err, golf.ErrNotFound) {
		return err
	}
	f := form.ParseRoundDetails(r.Form, knownRound(kept), takenCard(course), unitsOf(me(r)).Far)
	if err != nil {
		f.Take.Problem = "That course is gone. Choose another."
	}
	if !f.Sound() {
		return s.showDetails(w, r, http.StatusUnprocessableEntity, kept, f)
	}
	to := db.Details{PlayedOn: f.Day.Value.Time(), Course: f.Course.Value, Tee: f.Tee.Value, Target: f.Target.Value, Par18: f.Par18.Value,
		First: f.First.Value, Conditions: f.Conditions.Value, Holes: f.Card(), CourseID: known(course.ID)}
	if err := s.store.SaveDetails(r.Context(), me(r).ID, kept.ID, to); err != nil {
		return err
	}
	return saved(w, r, paths.Round(kept.ID), "details")
}

// knownRound is what is known of a round before its details are entered.
func knownRound(kept db.Round) form.KnownRound {
	known := form.KnownRound{First: kept.FirstHole}
	for _, h := range kept.Holes {
		known.Holes = append(known.Holes, h.Card())
	}
	return known
}

// takenOver is the course whose card the round takes over; its ID is 0 if the form
// names none.
func (s *server) takenOver(r *http.Request) (db.Course, error) {
	take := form.ParseTake(r.Form)
	if take.Value == 0 {
		return db.Course{}, nil
	}
	return s.store.Course(r.Context(), take.Value)
}

// takenCard is what a round takes over from a course, nil if the course has no ID.
func takenCard(c db.Course) *form.TakenCourse {
	if c.ID == 0 {
		return nil
	}
	measured := slices.DeleteFunc(slices.Clone(c.Holes), func(h golf.CardHole) bool { return h.Length == 0 })
	return &form.TakenCourse{Name: c.Name, Tee: c.Tee, Holes: measured}
}
