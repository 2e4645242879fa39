package handlers

import (
	"fmt"
	"net/http"
	"strconv"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/coach"
	"strokeledger/web/paths"
)

// looks shows the player what coaches opened, a page at a time.
func (s *server) looks(w http.ResponseWriter, r *http.Request) error {
	number := 1
	if text := r.FormValue("page"); text != "" {
		var err error
		if number, err = strconv.Atoi(text); err != nil || number < 1 || number > looksPages {
			return golf.ErrNotFound
		}
	}
	kept, err := s.store.Looks(r.Context(), me(r).ID, (number-1)*coach.LooksPerPage, coach.LooksPerPage+1)
	if err != nil {
		return err
	}
	more := len(kept) > coach.LooksPerPage
	if more {
		kept = kept[:coach.LooksPerPage]
	}
	all := make([]coach.Look, len(kept))
	for i, k := range kept {
		all[i] = lookOf(k)
		all[i].Last = s.here(r, k.LastAt)
	}
	return show(w, r, http.StatusOK, coach.NewLooksPage(shell(r), all, number, more).View())
}

// looksPages is the highest page of looks that an address may ask for.
const looksPages = 1_000_000

func lookOf(k db.Look) coach.Look {
	to := coach.Look{Name: k.Name, Kind: string(k.Kind), Times: k.Times, Last: k.LastAt}
	for _, r := range k.Rounds {
		at := coach.LookedRound{ID: r.ID, Times: r.Times, Removed: r.Removed}
		if r.PlayedOn != nil {
			at.Day, at.Course = golf.DateOf(*r.PlayedOn), *r.Course
		}
		to.Rounds = append(to.Rounds, at)
	}
	return to
}

// keptNotes lists a coach's private notes on former pupils.
func (s *server) keptNotes(w http.ResponseWriter, r *http.Request) error {
	kept, err := s.store.PrivateNotes(r.Context(), me(r).ID, true)
	if err != nil {
		return err
	}
	var all []coach.FormerNote
	for _, k := range kept {
		all = append(all, coach.NewFormerNote(fmt.Sprint(k.PlayerID), fmt.Sprint(k.ID), k.Author, k.Day, k.Body))
	}
	page := shell(r)
	if err := s.offerUndo(r, &page); err != nil {
		return err
	}
	return show(w, r, http.StatusOK, coach.NewFormerNotesPage(page, all).View())
}

func (s *server) removeKeptNote(w http.ResponseWriter, r *http.Request) error {
	pupil, note := formID(r, "player"), int64(formID(r, "note"))
	kind, err := db.RemovedNote, error(nil)
	if pupil == me(r).ID { // the pupil's account has gone
		kind, err = db.RemovedKept, s.store.RemoveKept(r.Context(), me(r).ID, note)
	} else {
		err = s.store.RemoveNote(r.Context(), me(r).ID, pupil, note)
	}
	if err != nil {
		return err
	}
	return redirectAfterRemoval(w, r, paths.CoachKept, removal{kind, pupil, note})
}
