package handlers

import (
	"errors"
	"net/http"

	"strokeledger/analysis/golf"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// keepWritten keeps what a coach was writing about a pupil who has ended the access
// meanwhile, as a private note of the coach's. Any other error is returned, and so is
// this one when the coach had not opened a page of the pupil's or wrote nothing.
func (s *server) keepWritten(w http.ResponseWriter, r *http.Request, refused error) error {
	f := form.ParseNote(r.Form)
	pupil, err := id(r, "player")
	if !errors.Is(refused, golf.ErrNotFound) || err != nil || !f.Sound() {
		return refused
	}
	err = s.store.KeepNote(r.Context(), me(r).ID, golf.PlayerID(pupil), s.today(r), f.Body.Value)
	if errors.Is(err, golf.ErrNotFound) {
		return refused
	}
	if err != nil {
		return err
	}
	return saved(w, r, paths.CoachKept, "kept")
}
