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

// The most bytes of a club and of a note.
const (
	clubMost = 40
	wordMost = golf.MaxWord
)

func (s *server) shots(w http.ResponseWriter, r *http.Request) error {
	kept, h, err := s.ofHole(r)
	if err != nil {
		return err
	}
	return show(w, r, http.StatusOK, entry.NewShotsPage(shell(r), shotsInput(r, kept.ID, h, nil)).View())
}

// shotsInput is what the page of a hole's shots is made of.
func shotsInput(r *http.Request, id golf.RoundID, h db.Hole, problems map[string]string) entry.ShotsInput {
	p := me(r)
	return entry.ShotsInput{Round: id, Hole: h.Hole, Version: h.Version, Units: unitsOf(p), Clubs: strings.Fields(p.Clubs), Problems: problems}
}

// saveShots saves the clubs, misses and notes of a hole's shots.
func (s *server) saveShots(w http.ResponseWriter, r *http.Request) error {
	kept, h, err := s.ofHole(r)
	if err != nil {
		return err
	}
	if err := r.ParseForm(); err != nil {
		return err
	}
	if problems := say(&h, r.Form["club"], r.Form["miss"], r.Form["word"]); len(problems) > 0 {
		return show(w, r, http.StatusUnprocessableEntity, entry.NewShotsPage(shell(r), shotsInput(r, kept.ID, h, problems)).View())
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
		return map[string]string{entry.ShotField("club", 1): "The shots of this hole have changed since you opened the page. Check them and enter this again."}
	}
	for i := range n {
		shot := &h.Shots[i]
		club, word := strings.TrimSpace(clubs[i]), strings.TrimSpace(words[i])
		miss, err := golf.ParseMiss(misses[i])
		if shot.Miss = miss; err != nil {
			problems[entry.ShotField("miss", i+1)] = capitalized(err.Error()) + "."
		}
		if !sayable(club, clubMost) || strings.ContainsAny(club, " /") {
			problems[entry.ShotField("club", i+1)] = "Allowed: up to 40 characters, without spaces or slashes."
		}
		if !sayable(word, wordMost) {
			problems[entry.ShotField("word", i+1)] = "Allowed: up to 200 characters, in one line."
		}
		shot.Club, shot.Word = club, word
	}
	return problems
}
