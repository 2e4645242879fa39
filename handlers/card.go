package handlers

import (
	"net/http"

	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// saveNote keeps the note of a round and what its card says of each nine. A form
// that asks for the nines alone leaves the note as it is.
func (s *server) saveNote(w http.ResponseWriter, r *http.Request) error {
	kept, err := s.ofRound(r)
	if err != nil {
		return err
	}
	f := form.ParseRoundCard(r.Form, keptCard(kept))
	if !f.Sound() {
		return s.showStatement(w, r, http.StatusUnprocessableEntity, kept, me(r), mine(r), form.Returned{Card: &f})
	}
	if err := s.store.SaveConditions(r.Context(), me(r).ID, kept.ID, f.Note.Value, f.Out.Value, f.In.Value); err != nil {
		return err
	}
	return saved(w, r, paths.Round(kept.ID), "card")
}

func keptCard(kept db.Round) form.RoundCard {
	return form.RoundCard{Note: form.TextOf(kept.Conditions), Out: form.WholeOf(kept.CardOut), In: form.WholeOf(kept.CardIn)}
}
