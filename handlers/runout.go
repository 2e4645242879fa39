package handlers

import (
	"cmp"
	"crypto/rand"
	"errors"
	"net/http"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/practice"
)

// runOut shows a player's run-out book and, when one is asked about, what to do with
// a chip.
func (s *server) runOut(w http.ResponseWriter, r *http.Request) error {
	about, err := s.subject(r)
	if err != nil {
		return err
	}
	chip := form.ParseChip(r.URL.Query(), unitsOf(me(r)).Far)
	return s.showRunOut(w, r, about, practice.RunOutInput{Chip: chip}, statusOf(chip))
}

// showRunOut shows the book with a chip that is asked about, or with balls that were
// refused.
func (s *server) showRunOut(w http.ResponseWriter, r *http.Request, about subject, q practice.RunOutInput, status int) error {
	q.Whose, q.Name, q.Units, q.Clubs, q.Today = about.pages, about.player.Name, unitsOf(me(r)), strings.Fields(about.player.Clubs), s.today(r)
	if err := s.readBook(r, about, &q); err != nil {
		return err
	}
	q.Entered = rand.Text()
	if q.Typed != nil && q.Typed.Entered != "" {
		q.Entered = q.Typed.Entered
	}
	if err := s.recordLook(r, about, db.LookRunOut, 0); err != nil {
		return err
	}
	page := s.shellOf(r, about)
	if err := s.offerUndo(r, &page); err != nil {
		return err
	}
	return show(w, r, status, practice.NewRunOutPage(page, q).View())
}

// readBook reads the trials, and works out the book. The rounds are read only for a
// chip, whose strokes depend on the player's level.
func (s *server) readBook(r *http.Request, about subject, q *practice.RunOutInput) (err error) {
	if q.Trials, err = s.trials(r, about); err != nil {
		return err
	}
	in := analysis.RunOutInput{Chip: q.Chip.Ahead(), Target: about.player.Target}
	for _, t := range q.Trials {
		in.Trials = append(in.Trials, t.Trial)
	}
	if in.Chip != nil {
		if in.History, err = s.store.History(r.Context(), me(r).ID, about.player.ID); err != nil {
			return err
		}
	}
	q.RunOut, err = s.engine.RunOut(in)
	return err
}

// trials are the balls of a player's book that the reader may see.
func (s *server) trials(r *http.Request, about subject) (all []practice.BookTrial, err error) {
	kept, err := s.store.Trials(r.Context(), me(r).ID, about.player.ID)
	for _, k := range kept {
		t, bad := k.Trial()
		err = errors.Join(err, bad)
		all = append(all, practice.BookTrial{ID: k.ID, Day: golf.DateOf(k.Day), Trial: t})
	}
	return all, err
}

// addTrials adds balls to the player's book.
func (s *server) addTrials(w http.ResponseWriter, r *http.Request) error {
	about, err := s.ownSubject(r)
	if err != nil {
		return err
	}
	f := form.ParseTrials(r.Form)
	if !f.Sound() {
		return s.showRunOut(w, r, about, practice.RunOutInput{Typed: &f}, http.StatusUnprocessableEntity)
	}
	err = s.store.NewTrials(r.Context(), about.player.ID, f.Day.Value, cmp.Or(f.Entered, rand.Text()), f.Pairs.Value, analysis.RunBook)
	if errors.Is(err, db.ErrFull) {
		f.Pairs.Problem = practice.BookFull
		return s.showRunOut(w, r, about, practice.RunOutInput{Typed: &f}, http.StatusUnprocessableEntity)
	}
	if err != nil {
		return err
	}
	return saved(w, r, about.pages.RunOut(), "trials")
}

// removeTrial removes a ball from the player's book.
func (s *server) removeTrial(w http.ResponseWriter, r *http.Request) error {
	about, err := s.ownSubject(r)
	if err != nil {
		return err
	}
	n, err := id(r, "trial")
	if err != nil {
		return err
	}
	if err := s.store.RemoveTrial(r.Context(), about.player.ID, n, analysis.RunBook); err != nil {
		return err
	}
	return redirectAfterRemoval(w, r, about.pages.RunOut(), removal{db.RemovedTrial, about.player.ID, n})
}

// runOutCSV sends the book as a file, which the command reads too.
func (s *server) runOutCSV(w http.ResponseWriter, r *http.Request) error {
	about, err := s.subject(r)
	if err != nil {
		return err
	}
	all, err := s.trials(r, about)
	if err != nil {
		return err
	}
	if err := s.recordLook(r, about, db.LookRunOut, 0); err != nil {
		return err
	}
	rows := [][]string{practice.FileHead}
	for _, t := range all {
		rows = append(rows, practice.FileRow(t))
	}
	return sendTable(w, "run-out.csv", rows)
}
