package handlers

import (
	"errors"
	"fmt"
	"net/http"
	"strings"
	"time"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/site"
)

// removal identifies something that was removed.
type removal struct {
	kind   string // db.RemovedRound and the like
	player golf.PlayerID
	id     int64
}

func removalOf(x db.Removed) removal { return removal{x.Kind, x.PlayerID, x.ID} }

// String writes a removal as it stands in an address or a form.
func (x removal) String() string { return fmt.Sprintf("%s.%d.%d", x.kind, x.player, x.id) }

// redirectAfterRemoval sends the browser to a page that says what was removed and
// offers to undo it.
func redirectAfterRemoval(w http.ResponseWriter, r *http.Request, at string, x removal) error {
	at, _, _ = strings.Cut(at, "#") // the message is at the top of the page
	return redirect(w, r, saying(at, removedParam, x.String()))
}

// findRemoved finds a removal by its text among those that the reader can undo.
func findRemoved(all []db.Removed, text string) (db.Removed, bool) {
	for _, x := range all {
		if removalOf(x).String() == text {
			return x, true
		}
	}
	return db.Removed{}, false
}

// offerUndo makes a page offer to undo the removal that the reader just made.
func (s *server) offerUndo(r *http.Request, page *layout.Page) error {
	text := r.URL.Query().Get(removedParam)
	if r.Method != http.MethodGet || text == "" {
		return nil
	}
	all, err := s.store.Removed(r.Context(), me(r).ID)
	if err != nil {
		return err
	}
	if x, found := findRemoved(all, text); found {
		page.Undo = site.NewUndo(removedThing(x, me(r).ID, s.zoneOf(me(r))))
	}
	return nil
}

// removedThing is what was removed, for a reader, whose time zone its time is of.
func removedThing(x db.Removed, reader golf.PlayerID, zone *time.Location) site.RemovedThing {
	to := site.RemovedThing{Name: removalOf(x).String(), Kind: x.Kind, Day: golf.DateOf(x.Day), Text: x.Text, Removed: x.RemovedAt.In(zone)}
	if x.PlayerID != reader {
		to.Of = x.Player
	}
	return to
}

// removed lists what can be restored.
func (s *server) removed(w http.ResponseWriter, r *http.Request) error {
	kept, err := s.store.Removed(r.Context(), me(r).ID)
	if err != nil {
		return err
	}
	var all []site.RemovedThing
	for _, x := range kept {
		all = append(all, removedThing(x, me(r).ID, s.zoneOf(me(r))))
	}
	return show(w, r, http.StatusOK, site.NewRemovedPage(shell(r), all).View())
}

// restoreRemoved restores what the form names, and shows it.
func (s *server) restoreRemoved(w http.ResponseWriter, r *http.Request) error {
	reader := me(r).ID
	all, err := s.store.Removed(r.Context(), reader)
	if err != nil {
		return err
	}
	x, found := findRemoved(all, r.FormValue("what"))
	if !found {
		return golf.ErrNotFound
	}
	pages := paths.Whose{Player: x.PlayerID, Own: x.PlayerID == reader}
	at, err := s.restore(r, pages, x)
	if errors.Is(err, db.ErrFull) {
		err = &refusal{http.StatusConflict, "There is no room for it", "You have as many of these as are kept. Remove one first, and then restore this one."}
	}
	if err != nil {
		return err
	}
	if x.Kind == db.RemovedNote && !pages.Own {
		if at, err = s.noteAtOrKept(r, pages, at); err != nil {
			return err
		}
	}
	return saved(w, r, at, "back")
}

// restore undoes one removal, and returns the address of what it restored.
func (s *server) restore(r *http.Request, pages paths.Whose, x db.Removed) (at string, err error) {
	who := me(r).ID
	at = pages.Lessons()
	switch x.Kind {
	case db.RemovedRound:
		at, err = pages.Round(golf.RoundID(x.ID)), s.store.RestoreRound(r.Context(), who, golf.RoundID(x.ID))
	case db.RemovedNote:
		at, err = noteAt(pages, db.Note{ID: x.NoteID, RoundID: x.RoundID}), s.store.RestoreNote(r.Context(), who, x.PlayerID, x.ID)
	case db.RemovedReply:
		at, err = noteAt(pages, db.Note{ID: x.NoteID, RoundID: x.RoundID}), s.store.RestoreReply(r.Context(), who, x.PlayerID, x.ID)
	case db.RemovedAssignment:
		err = s.store.RestoreAssignment(r.Context(), who, x.PlayerID, x.ID)
	case db.RemovedResult:
		err = s.store.RestoreResult(r.Context(), who, x.ID)
	case db.RemovedCourse:
		at, err = paths.Course(golf.CourseID(x.ID)), s.store.RestoreCourse(r.Context(), who, golf.CourseID(x.ID))
	default:
		at, err = s.restorePractice(r, pages, x)
	}
	return at, err
}

// restorePractice does so for what belongs to practice, and for a coach's kept notes.
func (s *server) restorePractice(r *http.Request, pages paths.Whose, x db.Removed) (at string, err error) {
	who := me(r).ID
	switch x.Kind {
	case db.RemovedKept:
		return paths.CoachKept, s.store.RestoreKept(r.Context(), who, x.ID)
	case db.RemovedTrial:
		return pages.RunOut(), s.store.RestoreTrial(r.Context(), who, x.ID, analysis.RunBook)
	case db.RemovedSession:
		return pages.Log(), s.store.RestoreDrillSession(r.Context(), who, x.ID)
	case db.RemovedRange:
		return pages.Bag(), s.store.RestoreRange(r.Context(), who, x.ID)
	case db.RemovedLesson:
		return pages.NextLesson(), s.restoreLesson(r, pages, x.ID)
	case db.RemovedAdvice:
		return s.restoreAdvice(r, pages, x)
	case db.RemovedPhrase:
		return paths.Phrases, s.store.RestorePhrase(r.Context(), who, x.ID)
	case db.RemovedWalked:
		return pages.Walked(x.ID), s.store.RestoreWalked(r.Context(), who, x.PlayerID, x.ID)
	case db.RemovedPlan:
		return pages.TakenPlan(x.ID), s.store.RestorePlan(r.Context(), who, x.ID)
	default:
		return "", golf.ErrNotFound
	}
}

// noteAtOrKept is the address where a coach reads a note: on the pupil's pages, or
// in the coach's own list once access has ended.
func (s *server) noteAtOrKept(r *http.Request, pages paths.Whose, at string) (string, error) {
	_, err := s.store.Seen(r.Context(), me(r).ID, pages.Player)
	if errors.Is(err, golf.ErrNotFound) {
		return paths.CoachKept, nil
	}
	return at, err
}
