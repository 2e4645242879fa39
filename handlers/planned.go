package handlers

import (
	"errors"
	"net/http"
	"slices"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/components"
	"strokeledger/web/play"
	"strokeledger/web/words"
)

// planned sets a round beside the plan of its course, as far as that is worked out.
func (s *server) planned(w http.ResponseWriter, r *http.Request) error {
	p, err := s.playing(r)
	if err != nil {
		return err
	}
	kept, err := s.roundOn(r, p)
	if err != nil {
		return err
	}
	in := play.PlannedInput{ID: kept.ID, Round: kept.Played()}
	if in.RoundInput, err = s.roundPlan(r, p); err != nil {
		return err
	}
	if err := s.recordLook(r, p.about, db.LookStatement, kept.ID); err != nil {
		return err
	}
	if len(in.Plans) < in.Drawn {
		w.Header().Set("Refresh", "1")
	}
	return show(w, r, http.StatusOK, play.NewPlannedPage(s.shellOf(r, p.about), in).View())
}

// roundOn reads the round named in the address, which was played on the course there.
func (s *server) roundOn(r *http.Request, p playing) (db.Round, error) {
	n, err := id(r, "round")
	if err != nil {
		return db.Round{}, err
	}
	kept, err := s.store.SeenRound(r.Context(), me(r).ID, p.about.player.ID, golf.RoundID(n))
	if err != nil {
		return kept, err
	}
	if (kept.CourseID == nil || *kept.CourseID != p.course.ID) && !p.playedOn(kept.Played()) {
		return kept, golf.ErrNotFound
	}
	return kept, nil
}

// playedOn reports whether a round names the course and its tees.
func (p playing) playedOn(round golf.Round) bool {
	return strings.EqualFold(round.Course, p.course.Name) && strings.EqualFold(round.Tee, p.course.Tee)
}

// plannedMost is how many rounds the plan of a course can be compared with from its
// page.
const plannedMost = 5

// toCompare are the latest rounds on the course, the latest first.
func (p playing) toCompare() []components.Link {
	var all []components.Link
	for _, h := range slices.Backward(p.history) {
		if len(all) < plannedMost && p.playedOn(h.Round) {
			all = append(all, components.Link{Name: words.ShortDay(h.Round.Date), At: p.about.pages.Planned(p.course.ID, h.ID)})
		}
	}
	return all
}

// planOf is where a round can be compared with the plan of its course; empty when no
// hole of that is drawn. It works nothing out.
func (s *server) planOf(r *http.Request, about subject, kept db.Round) (string, error) {
	if kept.CourseID == nil {
		return "", nil
	}
	drawn, err := s.store.Pictures(r.Context(), *kept.CourseID)
	if err != nil || len(drawn) == 0 {
		return "", err
	}
	if _, err := s.store.Course(r.Context(), *kept.CourseID); err != nil {
		if errors.Is(err, golf.ErrNotFound) { // it was removed
			err = nil
		}
		return "", err
	}
	return about.pages.Planned(*kept.CourseID, kept.ID), nil
}
