package handlers

import (
	"fmt"
	"net/http"
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/entry"
	"strokeledger/web/form"
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
	return show(w, r, http.StatusOK, entry.NewShotsPage(shell(r), kept.ID, h.Hole, h.Version, unitsOf(me(r)), strings.Fields(me(r).Clubs), nil).View())
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
	if problems := say(&h, r.Form["club"], r.Form["miss"], r.Form["word"]); len(problems) > 0 {
		return show(w, r, http.StatusUnprocessableEntity, entry.NewShotsPage(shell(r), kept.ID, h.Hole, h.Version, unitsOf(me(r)), strings.Fields(me(r).Clubs), problems).View())
	}
	if version, err := strconv.Atoi(r.FormValue("version")); err == nil {
		h.Version = version
	}
	h.Line, h.Units = form.WriteLine(h.Hole, h.Card(), unitsOf(me(r))), db.Units(unitsOf(me(r)))
	if err := s.store.SaveHole(r.Context(), me(r).ID, kept.ID, h); err != nil {
		return err
	}
	return saved(w, r, paths.Round(kept.ID)+fmt.Sprintf("#h%d", h.Number), "shots")
}

// say puts what was said into the shots, and returns what is not allowed by the
// id of its field.
func say(h *db.Hole, clubs, misses, words []string) map[string]string {
	problems := map[string]string{}
	n := len(h.Played())
	if n == 0 || len(clubs) != n || len(misses) != n || len(words) != n {
		return map[string]string{entry.ShotField("club", 1): "The hole has other shots by now than the page had. Look at them, and say it again."}
	}
	for i := range n {
		shot := &h.Shots[i]
		club, word := strings.TrimSpace(clubs[i]), strings.TrimSpace(words[i])
		miss, err := golf.ParseMiss(misses[i])
		if shot.Miss = miss; err != nil {
			problems[entry.ShotField("miss", i+1)] = capitalized(err.Error()) + "."
		}
		if !sayable(club, clubMost) || strings.ContainsAny(club, " /") {
			problems[entry.ShotField("club", i+1)] = "Allowed: at most 40 letters, without a space or a slash."
		}
		if !sayable(word, wordMost) {
			problems[entry.ShotField("word", i+1)] = "Allowed: at most 200 letters, in one line."
		}
		shot.Club, shot.Word = club, word
	}
	return problems
}
