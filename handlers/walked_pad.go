package handlers

import (
	"errors"
	"net/http"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/words"
)

// walkedAt is a round that a coach enters, and whose it is to be.
type walkedAt struct {
	about subject
	kept  db.Walked
}

// ofWalkedRound reads the walked round named in the address as a round of the pupil's, for
// the coach who still enters it.
func (s *server) ofWalkedRound(r *http.Request) (at holeOfRound, err error) {
	about, k, err := s.ofWalked(r)
	if err != nil {
		return at, err
	}
	if about.pages.Own || k.SentAt != nil {
		return at, golf.ErrNotFound
	}
	at = holeOfRound{round: roundOfWalked(about.player, k), units: form.Units(k.Units()), pages: about.pages.HolesOfWalked(k.ID), walked: &walkedAt{about, k}}
	for i, h := range k.Holes {
		at.round.Holes[i].Version = h.Version
	}
	return at, nil
}

// putWalkedHole stores a hole of such a round whose line is sound.
func (s *server) putWalkedHole(w http.ResponseWriter, r *http.Request, at holeOfRound, read form.Line) error {
	h := db.WalkedHole{Number: at.hole.Number, Line: read.Text, Version: at.hole.Version}
	err := s.store.SaveWalked(r.Context(), me(r).ID, at.walked.about.player.ID, at.walked.kept.ID, []db.WalkedHole{h}, false)
	if errors.Is(err, golf.ErrConflict) { // between reading and saving
		return s.conflictAgain(w, r, read.Text)
	}
	if err != nil {
		return err
	}
	at.hole.Hole, at.hole.Line = read.Hole, read.Text
	at.hole.Version++
	return s.nextAfter(w, r, at)
}

// saveWalked stores what the coach typed a line a hole, and sends it to the pupil if that
// was pressed. Nothing is stored while a line cannot be read, or was saved in another
// window since this one showed it.
func (s *server) saveWalked(w http.ResponseWriter, r *http.Request) error {
	about, k, err := s.ofWalked(r)
	if err != nil {
		return err
	}
	if about.pages.Own || k.SentAt != nil {
		return golf.ErrNotFound
	}
	in, changed := typedWalked(r, k)
	typed := 0
	for _, l := range in.Round.Lines {
		if !l.Empty() && !l.Sound() {
			return s.showWalked(w, r, http.StatusUnprocessableEntity, about, in)
		}
		typed += words.Tally(!l.Empty())
	}
	switch {
	case in.Conflicts():
		return s.showWalked(w, r, http.StatusConflict, about, in)
	case in.ToSend && typed == 0:
		return s.showWalked(w, r, http.StatusUnprocessableEntity, about, in)
	}
	return s.keepWalked(w, r, about, k, changed, in.ToSend)
}
