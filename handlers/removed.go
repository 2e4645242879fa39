package handlers

import (
	"errors"
	"fmt"
	"net/http"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/site"
)

// removal writes what was removed as an address or a form names it.
func removal(kind string, of golf.PlayerID, id int64) string {
	return fmt.Sprintf("%s.%d.%d", kind, of, id)
}

// gone sends the browser on after a removal, to a page that says so and undoes
// it.
func gone(w http.ResponseWriter, r *http.Request, at, kind string, of golf.PlayerID, id int64) error {
	at, _, _ = strings.Cut(at, "#") // what the page says stands at its top
	return then(w, r, saying(at, removedParam, removal(kind, of, id)))
}

// named finds what a name of removal names among what asker can bring back.
func named(all []db.Removed, name string) (db.Removed, bool) {
	for _, x := range all {
		if removal(x.Kind, x.PlayerID, x.ID) == name {
			return x, true
		}
	}
	return db.Removed{}, false
}

// offerUndo puts on a page the way back from the removal that led to it.
func (s *server) offerUndo(r *http.Request, page *layout.Page) error {
	name := r.URL.Query().Get(removedParam)
	if r.Method != http.MethodGet || name == "" {
		return nil
	}
	all, err := s.store.Removed(r.Context(), me(r).ID)
	if err != nil {
		return err
	}
	if x, there := named(all, name); there {
		page.Undo = site.NewUndo(removedThing(x, me(r).ID))
	}
	return nil
}

func removedThing(x db.Removed, reader golf.PlayerID) site.RemovedThing {
	to := site.RemovedThing{Name: removal(x.Kind, x.PlayerID, x.ID), Kind: x.Kind, Day: golf.DateOf(x.Day), Text: x.Text, Removed: x.RemovedAt}
	if x.PlayerID != reader {
		to.Of = x.Player
	}
	return to
}

// removed lists what can be brought back.
func (s *server) removed(w http.ResponseWriter, r *http.Request) error {
	kept, err := s.store.Removed(r.Context(), me(r).ID)
	if err != nil {
		return err
	}
	var all []site.RemovedThing
	for _, x := range kept {
		all = append(all, removedThing(x, me(r).ID))
	}
	return show(w, r, http.StatusOK, site.NewRemovedPage(shell(r), all).View())
}

// bringBack brings back what a form names, and shows it.
func (s *server) bringBack(w http.ResponseWriter, r *http.Request) error {
	who := me(r).ID
	all, err := s.store.Removed(r.Context(), who)
	if err != nil {
		return err
	}
	x, there := named(all, r.FormValue("what"))
	if !there {
		return golf.ErrNotFound
	}
	whose := paths.Whose{Player: x.PlayerID, Own: x.PlayerID == who}
	at, err := s.restore(r, whose, x)
	if err != nil {
		return err
	}
	if x.Kind == db.RemovedNote && !whose.Own {
		if at, err = s.keptOr(r, whose, at); err != nil {
			return err
		}
	}
	return saved(w, r, at, "back")
}

// restore brings one thing back, and returns the address of its page.
func (s *server) restore(r *http.Request, whose paths.Whose, x db.Removed) (at string, err error) {
	who := me(r).ID
	at = whose.Lessons()
	switch x.Kind {
	case db.RemovedRound:
		at, err = whose.Round(golf.RoundID(x.ID)), s.store.RestoreRound(r.Context(), who, golf.RoundID(x.ID))
	case db.RemovedNote:
		at, err = noteAt(whose, db.Note{ID: x.NoteID, RoundID: x.RoundID}), s.store.RestoreNote(r.Context(), who, x.PlayerID, x.ID)
	case db.RemovedReply:
		at, err = noteAt(whose, db.Note{ID: x.NoteID, RoundID: x.RoundID}), s.store.RestoreReply(r.Context(), who, x.PlayerID, x.ID)
	case db.RemovedAssignment:
		err = s.store.RestoreAssignment(r.Context(), who, x.PlayerID, x.ID)
	case db.RemovedResult:
		err = s.store.RestoreResult(r.Context(), who, x.ID)
	case db.RemovedCourse:
		at, err = paths.Course(golf.CourseID(x.ID)), s.store.RestoreCourse(r.Context(), who, golf.CourseID(x.ID))
	default:
		err = golf.ErrNotFound
	}
	return at, err
}

// keptOr is where a coach reads a note: an address among the pupil's pages, or
// once the coach's access has ended the coach's own list.
func (s *server) keptOr(r *http.Request, whose paths.Whose, at string) (string, error) {
	_, err := s.store.Seen(r.Context(), me(r).ID, whose.Player)
	if errors.Is(err, golf.ErrNotFound) {
		return paths.CoachKept, nil
	}
	return at, err
}
