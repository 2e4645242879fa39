package handlers

import (
	"net/http"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// scoreMost is the most that a card can say of a nine.
const scoreMost = golf.MaxNine

// saveNote keeps the note of a round and what its card says of each nine. A form
// that asks for the nines alone leaves the note as it is.
func (s *server) saveNote(w http.ResponseWriter, r *http.Request) error {
	kept, err := s.ofRound(r)
	if err != nil {
		return err
	}
	typed := form.Typed{Form: form.FormCard, Values: map[string]string{}, Problems: map[string]string{}}
	for _, field := range []string{"note", "out", "in"} {
		typed.Values[field] = strings.TrimSpace(r.FormValue(field))
	}
	if !r.Form.Has("note") {
		typed.Values["note"] = kept.Conditions
	}
	if !sayable(typed.Values["note"], 300) {
		typed.Problems["note"] = "Allowed: at most 300 letters, in one line."
	}
	nine := func(name string, before int) int {
		switch {
		case !r.Form.Has(name):
			return before
		case typed.Values[name] == "":
			return 0
		default:
			return whole(typed.Values[name], 1, scoreMost, name, typed.Problems)
		}
	}
	out, in := nine("out", kept.CardOut), nine("in", kept.CardIn)
	if len(typed.Problems) > 0 {
		return s.showStatement(w, r, http.StatusUnprocessableEntity, kept, me(r), mine(r), typed)
	}
	if err := s.store.SaveConditions(r.Context(), me(r).ID, kept.ID, typed.Values["note"], out, in); err != nil {
		return err
	}
	return saved(w, r, paths.Round(kept.ID), "card")
}
