package handlers

import (
	"net/http"
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/pages"
	"strokeledger/web/paths"
)

// Limits of what may be said of a shot, in bytes.
const (
	clubMost = 40
	wordMost = golf.MaxWord
)

func (s *server) shots(w http.ResponseWriter, r *http.Request) error {
	kept, h, err := s.ofHole(r)
	if err != nil {
		return err
	}
	return show(w, r, http.StatusOK, pages.NewShotNotes(shell(r), kept.ID, h.Hole, h.Version, unitsOf(me(r)), strings.Fields(me(r).Clubs), "").View())
}

// saveShots keeps what was said of the shots of a hole.
func (s *server) saveShots(w http.ResponseWriter, r *http.Request) error {
	kept, h, err := s.ofHole(r)
	if err != nil {
		return err
	}
	if err := r.ParseForm(); err != nil {
		return err
	}
	if problem := say(&h, r.Form["club"], r.Form["miss"], r.Form["word"]); problem != "" {
		return show(w, r, http.StatusUnprocessableEntity, pages.NewShotNotes(shell(r), kept.ID, h.Hole, h.Version, unitsOf(me(r)), strings.Fields(me(r).Clubs), problem).View())
	}
	if version, err := strconv.Atoi(r.FormValue("version")); err == nil {
		h.Version = version
	}
	h.Line, h.Units = form.WriteLine(h.Hole, h.Card(), unitsOf(me(r))), db.Units(unitsOf(me(r)))
	if err := s.store.SaveHole(r.Context(), me(r).ID, kept.ID, h); err != nil {
		return err
	}
	return then(w, r, paths.Round(kept.ID))
}

// say puts what was said into the shots, and returns what is not allowed.
func say(h *db.Hole, clubs, misses, words []string) (problem string) {
	n := len(h.Played())
	if n == 0 || len(clubs) != n || len(misses) != n || len(words) != n {
		return "The hole has other shots than these. Load the page again."
	}
	for i := range n {
		shot := &h.Shots[i]
		club, word := strings.TrimSpace(clubs[i]), strings.TrimSpace(words[i])
		miss, err := golf.ParseMiss(misses[i])
		if shot.Miss = miss; err != nil {
			problem = "Shot " + strconv.Itoa(i+1) + ": " + err.Error() + "."
		}
		if !sayable(club, clubMost) || strings.ContainsAny(club, " /") {
			problem = "Shot " + strconv.Itoa(i+1) + ": a club is at most 40 letters, without a space or a slash."
		}
		if !sayable(word, wordMost) {
			problem = "Shot " + strconv.Itoa(i+1) + ": a word is at most 200 letters in one line."
		}
		shot.Club, shot.Word = club, word
	}
	return problem
}
