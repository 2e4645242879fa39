package handlers

import (
	"fmt"
	"net/http"

	"strokeledger/db"
	"strokeledger/web/pages"
	"strokeledger/web/paths"
)

// looks lists for the player what coaches opened.
func (s *server) looks(w http.ResponseWriter, r *http.Request) error {
	kept, err := s.store.Looks(r.Context(), me(r).ID)
	if err != nil {
		return err
	}
	var all []pages.Look
	for _, k := range kept {
		all = append(all, pages.Look{Name: k.Name, Page: k.Page, Times: k.Times, Last: k.LastAt})
	}
	return show(w, r, http.StatusOK, pages.NewLooks(shell(r), all).View())
}

// keptNotes lists a coach's private notes on pupils of the past.
func (s *server) keptNotes(w http.ResponseWriter, r *http.Request) error {
	kept, err := s.store.PrivateNotes(r.Context(), me(r).ID, true)
	if err != nil {
		return err
	}
	var all []pages.KeptNote
	for _, k := range kept {
		all = append(all, pages.NewKeptNote(fmt.Sprint(k.PlayerID), fmt.Sprint(k.ID), k.Author, k.Day, k.Body))
	}
	page := shell(r)
	if err := s.offerUndo(r, &page); err != nil {
		return err
	}
	return show(w, r, http.StatusOK, pages.NewKeptNotes(page, all).View())
}

func (s *server) dropKeptNote(w http.ResponseWriter, r *http.Request) error {
	pupil, note := formID(r, "player"), int64(formID(r, "note"))
	if err := s.store.RemoveNote(r.Context(), me(r).ID, pupil, note); err != nil {
		return err
	}
	return gone(w, r, paths.CoachKept, db.RemovedNote, pupil, note)
}
