package handlers

import (
	"bytes"
	"cmp"
	"compress/gzip"
	"context"
	"crypto/rand"
	"errors"
	"fmt"
	"io"
	"net/http"
	"time"

	"strokeledger/analysis"
	"strokeledger/analysis/accountfile"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/shotsfile"
	"strokeledger/db"
	"strokeledger/web/entry"
	"strokeledger/web/paths"
)

func (s *server) importForm(w http.ResponseWriter, r *http.Request) error {
	return show(w, r, http.StatusOK, entry.NewImportPage(shell(r), "", nil).View())
}

// importFile reads a file and shows a preview, and stores the file until the player
// confirms it.
func (s *server) importFile(w http.ResponseWriter, r *http.Request) error {
	var found entry.PreviewInput
	err := s.importing(w, r, func() (err error) {
		found, err = s.previewFile(r)
		return err
	})
	if err == nil {
		return show(w, r, http.StatusOK, entry.NewPreviewPage(shell(r), found).View())
	}
	if _, err := io.Copy(io.Discard, r.Body); err != nil {
		return unreadable(err)
	}
	return refuseFile(w, r, err)
}

// refuseFile shows what is wrong with a file.
func refuseFile(w http.ResponseWriter, r *http.Request, err error) error {
	var faults *shotsfile.Faults
	var limit *shotsfile.LimitError
	var fault *accountfile.Fault
	problem := ""
	switch {
	case errors.As(err, &faults):
	case errors.As(err, &limit):
		problem = limit.Error()
	case errors.As(err, &fault):
		problem = fault.Error()
	default:
		return err
	}
	return show(w, r, http.StatusUnprocessableEntity, entry.NewImportPage(shell(r), problem, faults).View())
}

// previewFile reads a file while it arrives, compares it with the stored rounds, and
// stores it.
func (s *server) previewFile(r *http.Request) (found entry.PreviewInput, err error) {
	sent, err := s.upload(r)
	if err != nil {
		return found, err
	}
	var kept bytes.Buffer
	packed := gzip.NewWriter(&kept)
	file := openFile(io.TeeReader(sent, packed), me(r))
	err = file.compared(r.Context(), s.store, me(r).ID, previewed(&found))
	if sent.err != nil {
		err = unreadable(sent.err)
	}
	if err != nil {
		return found, err
	}
	found.Unknown, found.Settings, found.Own = file.unknown(), settingsOf(file.settings()), ownOf(file.own(), len(file.balls()))
	if found.Settings != nil {
		found.Settings.Bag = len(file.own().Bag)
	}
	if err := packed.Close(); err != nil {
		return found, err
	}
	return found, s.store.SavePending(r.Context(), me(r).ID, kept.Bytes())
}

// previewed returns a function that adds rounds to a preview.
func previewed(found *entry.PreviewInput) func([]db.Round, []entry.There) error {
	return func(some []db.Round, there []entry.There) error {
		for i, round := range some {
			score, err := wholeScore(round)
			if err != nil {
				return err
			}
			found.Add(round.Name, round.Played(), score, there[i])
		}
		return nil
	}
}

// wholeScore is the score of a round in whole strokes. Only a hole that was picked up
// has to be worked out.
func wholeScore(round db.Round) (float64, error) {
	score, played := 0, round.Played()
	for _, h := range played.Holes {
		if h.PickedUp {
			of, err := analysis.StatementOf(playedOf(round), nil, golf.Yards.Of(round.BoundaryYd))
			return of.Account.Score, err
		}
		score += h.Strokes()
	}
	return float64(score), nil
}

// settingsOf are the settings of a file, nil for none.
func settingsOf(c *accountfile.Settings) *entry.SettingsInput {
	if c == nil {
		return nil
	}
	return &entry.SettingsInput{Name: c.Name, Far: c.Far, Green: c.Green, Target: c.Target, Clubs: c.Clubs, Zone: c.Zone}
}

// ownOf counts what else a file holds.
func ownOf(o accountfile.Own, trials int) entry.OwnInput {
	return entry.OwnInput{Trials: trials, Drawings: o.Pictures(), Courses: len(o.Drawn), Ranges: len(o.Ranges), Plans: len(o.Plans)}
}

// errNothingWaits is the answer when a file is confirmed twice, or too late.
var errNothingWaits = &refusal{http.StatusNotFound, "No file to import", "It was already imported, or you previewed it more than an hour ago. If its rounds are not in your list, upload the file again."}

// importConfirm imports the whole of the file that waits, once. It goes on after the
// browser has left, since a second tap on the button cancels the first request.
func (s *server) importConfirm(w http.ResponseWriter, r *http.Request) error {
	ctx, cancel := context.WithTimeout(context.WithoutCancel(r.Context()), fileTime)
	defer cancel()
	replaced := 0
	err := s.importing(w, r, func() error {
		return s.store.Tx(ctx, func(tx *db.Store) (err error) {
			replaced, err = importWaiting(ctx, tx, importTerms{me(r), r.FormValue("there") == "replace", r.FormValue("settings") == "yes", s.now()})
			return refusedOwn(err)
		})
	})
	switch {
	case err != nil:
		return err
	case replaced > 0:
		return saved(w, r, paths.Removed, "replaced")
	}
	return saved(w, r, paths.Rounds, "imported")
}

// importTerms say for whom a file is imported, and what of it.
type importTerms struct {
	of       db.Player
	replace  bool // the rounds that differ from the stored ones too
	settings bool // and the settings with the bag
	now      time.Time
}

// importWaiting imports the player's file that waits: the rounds that are new and, with
// replace, those that differ from the stored ones; then what else is new in it.
func importWaiting(ctx context.Context, tx *db.Store, terms importTerms) (replaced int, err error) {
	p := terms.of
	waiting, err := takeWaitingFile(ctx, tx, p.ID)
	if err != nil {
		return 0, err
	}
	file := openFile(waiting, p)
	err = file.compared(ctx, tx, p.ID, func(some []db.Round, there []entry.There) error {
		fresh, other := sorted(some, there)
		if !terms.replace {
			other = nil
		}
		replaced += len(other)
		if _, err := tx.AddRounds(ctx, p.ID, fresh); err != nil {
			return err
		}
		return tx.ReplaceRounds(ctx, p.ID, other)
	})
	if err == nil {
		err = takeRest(ctx, tx, terms, file)
	}
	return replaced, err
}

// takeRest imports what a file has besides rounds.
func takeRest(ctx context.Context, tx *db.Store, terms importTerms, file roundsFile) error {
	o := file.own()
	if terms.settings {
		if err := takeSettings(ctx, tx, terms.of, file.settings()); err != nil {
			return err
		}
		if err := takeBag(ctx, tx, terms.of, o.Bag); err != nil {
			return err
		}
	}
	if err := takeOwn(ctx, tx, terms.of, o, terms.now); err != nil {
		return err
	}
	return takeBook(ctx, tx, terms.of.ID, file.balls())
}

// takeSettings makes the settings of a file, if it has any, those of the player.
func takeSettings(ctx context.Context, tx *db.Store, p db.Player, c *accountfile.Settings) error {
	if c == nil {
		return nil
	}
	far, green := c.Units()
	return tx.SaveSettings(ctx, p.ID, db.Settings{Name: c.Name, Units: db.Units{Far: far, Green: green}, Target: c.Target, BoundaryYd: c.BoundaryYd, Clubs: c.Clubs, Zone: cmp.Or(c.Zone, p.Zone)})
}

// errBookFull is the answer to a file whose run-out book does not fit.
var errBookFull = &refusal{http.StatusUnprocessableEntity, "Nothing was imported", fmt.Sprintf("With the trials in the file, your run-out book would have more than %d. Remove some of yours and upload the file again.", golf.MaxTrials)}

// takeBook adds the run-out book of a file to the player's.
func takeBook(ctx context.Context, tx *db.Store, who golf.PlayerID, balls []accountfile.Ball) error {
	if len(balls) == 0 {
		return nil
	}
	all := make([]db.Ball, len(balls))
	for i, b := range balls {
		all[i] = db.Ball(b)
	}
	err := tx.TakeBalls(ctx, who, rand.Text(), all, analysis.RunBook)
	if errors.Is(err, db.ErrFull) {
		return errBookFull
	}
	return err
}

// sorted returns the rounds that are new, and those that differ from the stored
// ones.
func sorted(some []db.Round, there []entry.There) (fresh, other []db.Round) {
	for i, round := range some {
		switch there[i] {
		case entry.ThereNot:
			fresh = append(fresh, round)
		case entry.ThereOther:
			other = append(other, round)
		}
	}
	return fresh, other
}

// takeWaitingFile reads and removes the player's file that waits.
func takeWaitingFile(ctx context.Context, tx *db.Store, who golf.PlayerID) (io.Reader, error) {
	packed, err := tx.PopPending(ctx, who)
	if errors.Is(err, golf.ErrNotFound) {
		return nil, errNothingWaits
	}
	if err != nil {
		return nil, err
	}
	unpacked, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		return nil, errNothingWaits // stored by an earlier version of this program
	}
	return unpacked, nil
}
