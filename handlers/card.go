package handlers

import (
	"net/http"

	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// saveConditions saves the conditions of a round and the score of each nine on its paper
// card. A form that asks only for the nines leaves the conditions as they are.
func (s *server) saveConditions(w http.ResponseWriter, r *http.Request) error {
	kept, err := s.ofRound(r)
	if err != nil {
		return err
	}
	f := form.ParseRoundCard(r.Form, keptCard(kept))
	if !f.Sound() {
		return s.showStatement(w, r, kept, myself(r), form.Returned{Card: &f})
	}
	card := db.Scorecard{Conditions: f.Conditions.Value, Out: f.Out.Value, In: f.In.Value}
	if err := s.store.SaveScorecard(r.Context(), me(r).ID, kept.ID, card); err != nil {
		return err
	}
	return saved(w, r, paths.Round(kept.ID), "card")
}

func keptCard(kept db.Round) form.RoundCard {
	return form.RoundCard{Conditions: form.TextOf(kept.Conditions), Out: form.WholeOf(kept.CardOut), In: form.WholeOf(kept.CardIn)}
}
