package handlers

import (
	"fmt"
	"net/http"
	"strconv"
	"strings"

	"strokeledger/db"
	"strokeledger/web/entry"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

func (s *server) shots(w http.ResponseWriter, r *http.Request) error {
	at, err := s.ofHole(r)
	if err != nil {
		return err
	}
	return showShots(w, r, http.StatusOK, at, form.ShotDetailsOf(at.hole.Played()))
}

// showShots shows the clubs, misses and notes of a hole's shots as a form has
// them.
func showShots(w http.ResponseWriter, r *http.Request, status int, at holeOfRound, f form.ShotDetails) error {
	h, p := at.hole, me(r)
	q := entry.ShotsInput{Round: at.round.ID, Hole: h.Hole, Version: h.Version, Units: unitsOf(p), Clubs: strings.Fields(p.Clubs), Details: f}
	return show(w, r, status, entry.NewShotsPage(shell(r), q).View())
}

// saveShots saves the clubs, misses and notes of a hole's shots.
func (s *server) saveShots(w http.ResponseWriter, r *http.Request) error {
	at, err := s.ofHole(r)
	if err != nil {
		return err
	}
	h, units := at.hole, unitsOf(me(r))
	f := form.ParseShotDetails(r.Form, h.Played())
	if !f.Sound() {
		return showShots(w, r, http.StatusUnprocessableEntity, at, f)
	}
	f.AddTo(h.Shots)
	if version, err := strconv.Atoi(r.FormValue("version")); err == nil {
		h.Version = version
	}
	h.Line, h.Units = form.WriteLine(h.Hole, h.Card(), units), db.Units(units)
	if err := s.store.SaveHole(r.Context(), me(r).ID, at.round.ID, h); err != nil {
		return err
	}
	return saved(w, r, paths.Round(at.round.ID)+fmt.Sprintf("#h%d", h.Number), "shots")
}
