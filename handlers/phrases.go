package handlers

import (
	"errors"
	"fmt"
	"net/http"
	"slices"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/coach"
	"strokeledger/web/form"
	"strokeledger/web/notes"
	"strokeledger/web/paths"
)

// phrasesOf reads the signed-in player's phrases.
func (s *server) phrasesOf(r *http.Request) (all []notes.Phrase, err error) {
	kept, err := s.store.Phrases(r.Context(), me(r).ID)
	for _, k := range kept {
		all = append(all, notes.Phrase(k))
	}
	return all, err
}

func (s *server) phrases(w http.ResponseWriter, r *http.Request) error {
	return s.showPhrases(w, r, http.StatusOK, form.Text{})
}

func (s *server) showPhrases(w http.ResponseWriter, r *http.Request, status int, typed form.Text) error {
	all, err := s.phrasesOf(r)
	if err != nil {
		return err
	}
	page := shell(r)
	if err := s.offerUndo(r, &page); err != nil {
		return err
	}
	return show(w, r, status, coach.NewPhrasesPage(page, all, typed).View())
}

// keepPhrase keeps a phrase, typed or from a note.
func (s *server) keepPhrase(w http.ResponseWriter, r *http.Request) error {
	body := form.ParseBody(r.FormValue("body"), golf.MaxNote)
	if !body.Sound() {
		return s.showPhrases(w, r, http.StatusUnprocessableEntity, body)
	}
	err := s.store.KeepPhrase(r.Context(), me(r).ID, body.Value)
	if errors.Is(err, db.ErrFull) {
		body.Problem = fmt.Sprintf("You have %d phrases; remove one first.", db.MostPhrases)
		return s.showPhrases(w, r, http.StatusUnprocessableEntity, body)
	}
	if err != nil {
		return err
	}
	return saved(w, r, paths.Phrases, "phrase")
}

func (s *server) removePhrase(w http.ResponseWriter, r *http.Request) error {
	number, err := id(r, "phrase")
	if err != nil {
		return err
	}
	if err := s.store.RemovePhrase(r.Context(), me(r).ID, number); err != nil {
		return err
	}
	return redirectAfterRemoval(w, r, paths.Phrases, removal{db.RemovedPhrase, me(r).ID, number})
}

// putPhrase puts the phrase of the key that was pressed behind what was written so far,
// and reports whether one was pressed.
func (s *server) putPhrase(r *http.Request, body *form.Text) (pressed bool, err error) {
	key := r.FormValue("phrase")
	if key == "" {
		return false, nil
	}
	all, err := s.store.Phrases(r.Context(), me(r).ID)
	if i := slices.IndexFunc(all, func(p db.Phrase) bool { return fmt.Sprint(p.ID) == key }); i >= 0 {
		*body = form.TextOf(strings.TrimSpace(strings.TrimSpace(body.Text) + " " + all[i].Body))
	}
	return true, err
}
