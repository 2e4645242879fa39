package handlers

import (
	"bufio"
	"bytes"
	"compress/gzip"
	"context"
	"errors"
	"io"
	"iter"
	"net/http"

	"strokeledger/analysis/accountfile"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/shotsfile"
	"strokeledger/db"
	"strokeledger/web/entry"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// importLimits are the most that a shots file may have.
var importLimits = shotsfile.Limits{Bytes: accountfile.MaxBytes, Rows: accountfile.MaxRounds * 100, Rounds: accountfile.MaxRounds}

// aFile is a file of rounds of either kind. What follows the rounds is known
// once they were ranged over.
type aFile struct {
	rounds   iter.Seq2[db.Round, error]
	same     func(a, b db.Round) bool // whether two rounds say the same in it
	settings func() *accountfile.Settings
	unknown  func() []string
}

// openFile finds out what kind of file it is, and reads its rounds as the player
// would keep them.
func openFile(from io.Reader, p db.Player) aFile {
	in := bufio.NewReader(from)
	head, _ := in.Peek(512) // an error comes again
	if bytes.HasPrefix(bytes.TrimSpace(head), []byte("{")) {
		file := accountfile.NewReader(in)
		return aFile{
			rounds: mapped(file.Rounds(), keptOf),
			same:   func(a, b db.Round) bool { return accountfile.Same(fileOf(a), fileOf(b)) },
			settings: func() *accountfile.Settings {
				c := file.Settings()
				return &c
			},
			unknown: func() []string { return nil },
		}
	}
	file := shotsfile.NewReader(in, importLimits)
	return aFile{
		rounds:   mapped(file.Rounds(), func(round golf.Round) db.Round { return imported(round, p) }),
		same:     func(a, b db.Round) bool { return shotsfile.Same(a.Played(), b.Played()) },
		settings: func() *accountfile.Settings { return nil },
		unknown:  file.Unknown,
	}
}

func mapped[T any](rounds iter.Seq2[T, error], kept func(T) db.Round) iter.Seq2[db.Round, error] {
	return func(yield func(db.Round, error) bool) {
		for round, err := range rounds {
			if err != nil {
				yield(db.Round{}, err)
				return
			}
			if !yield(kept(round), nil) {
				return
			}
		}
	}
}

// imported is a round of a file as it is kept: played for the player's target,
// each hole with the line that says it.
func imported(round golf.Round, p db.Player) db.Round {
	kept := db.Round{Name: round.ID, PlayedOn: round.Date.Time(), Course: round.Course, Tee: round.Tee, Target: p.Target, BoundaryYd: p.BoundaryYd, Par18: golf.StandardPar}
	if len(round.Holes) == 18 {
		kept.Par18 = round.Par()
	}
	for i, h := range round.Holes {
		card := round.Card()[i]
		kept.Holes = append(kept.Holes, db.Hole{Hole: h, Length: card.Length, Line: form.WriteLine(h, card, unitsOf(p)), Units: db.Units(unitsOf(p))})
	}
	return kept
}

// compared goes through the rounds of a file, some at a time, and says of each
// what the player has of its name.
func (f aFile) compared(ctx context.Context, store *db.Store, who golf.PlayerID, take func(some []db.Round, there []entry.There) error) error {
	var some []db.Round
	compare := func() error {
		there, err := f.there(ctx, store, who, some)
		if err == nil {
			err = take(some, there)
		}
		some = some[:0]
		return err
	}
	for round, err := range f.rounds {
		if err != nil {
			return err
		}
		if some = append(some, round); len(some) == atOnce {
			if err := compare(); err != nil {
				return err
			}
		}
	}
	return compare()
}

// there says of rounds of a file what the player has of their names.
func (f aFile) there(ctx context.Context, store *db.Store, who golf.PlayerID, some []db.Round) ([]entry.There, error) {
	names := make([]string, len(some))
	for i, r := range some {
		names[i] = r.Name
	}
	kept, err := store.RoundsNamed(ctx, who, names)
	there := make([]entry.There, len(some))
	for i, r := range some {
		for _, k := range kept {
			if k.Name == r.Name && there[i] != entry.ThereSame {
				there[i] = entry.ThereOther
				if f.same(k, r) {
					there[i] = entry.ThereSame
				}
			}
		}
	}
	return there, err
}

func (s *server) importForm(w http.ResponseWriter, r *http.Request) error {
	return show(w, r, http.StatusOK, entry.NewImportPage(shell(r), "", nil).View())
}

// importFile reads a file, and keeps it until it is confirmed.
func (s *server) importFile(w http.ResponseWriter, r *http.Request) error {
	var found entry.PreviewInput
	err := s.importing(w, r, func() (err error) {
		found, err = s.lookAt(r)
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

// refuseFile says what is wrong with a file.
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

// lookAt reads a file while it arrives, compares it with what is there, and
// keeps it.
func (s *server) lookAt(r *http.Request) (found entry.PreviewInput, err error) {
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
	found.Unknown, found.Settings = file.unknown(), settingsOf(file.settings())
	if err := packed.Close(); err != nil {
		return found, err
	}
	return found, s.store.SavePending(r.Context(), me(r).ID, kept.Bytes())
}

// previewed adds rounds to what a preview shows.
func previewed(found *entry.PreviewInput) func([]db.Round, []entry.There) error {
	return func(some []db.Round, there []entry.There) error {
		for i, round := range some {
			found.Add(round.Name, round.Played(), there[i])
		}
		return nil
	}
}

// settingsOf are the settings of a file, nil for none.
func settingsOf(c *accountfile.Settings) *entry.SettingsInput {
	if c == nil {
		return nil
	}
	return &entry.SettingsInput{Name: c.Name, Far: c.Far, Green: c.Green, Target: c.Target, Clubs: c.Clubs}
}

// errNothingWaits answers a file that is confirmed twice, or too late.
var errNothingWaits = &refusal{http.StatusNotFound, "No file to import", "It was already imported, or you previewed it more than an hour ago. If its rounds are not in your list, upload the file again."}

// importConfirm takes in the file that waits, once and whole. It goes on when the
// browser has gone, since somebody who taps twice gives the first tap up.
func (s *server) importConfirm(w http.ResponseWriter, r *http.Request) error {
	ctx, cancel := context.WithTimeout(context.WithoutCancel(r.Context()), fileTime)
	defer cancel()
	replaced := 0
	err := s.importing(w, r, func() error {
		return s.store.Tx(ctx, func(tx *db.Store) (err error) {
			replaced, err = takeIn(ctx, tx, me(r), r.FormValue("there") == "replace", r.FormValue("settings") == "yes")
			return err
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

// takeIn takes in the player's file that waits: the rounds that are new and,
// where they replace what is there, those that are other than that.
func takeIn(ctx context.Context, tx *db.Store, p db.Player, replace, settings bool) (replaced int, err error) {
	waiting, err := popPending(ctx, tx, p.ID)
	if err != nil {
		return 0, err
	}
	file := openFile(waiting, p)
	err = file.compared(ctx, tx, p.ID, func(some []db.Round, there []entry.There) error {
		fresh, other := sorted(some, there)
		if !replace {
			other = nil
		}
		replaced += len(other)
		if _, err := tx.AddRounds(ctx, p.ID, fresh); err != nil {
			return err
		}
		return tx.ReplaceRounds(ctx, p.ID, other)
	})
	if c := file.settings(); err == nil && c != nil && settings {
		far, green := c.Units()
		err = tx.SaveSettings(ctx, p.ID, db.Settings{Name: c.Name, Units: db.Units{Far: far, Green: green}, Target: c.Target, BoundaryYd: c.BoundaryYd, Clubs: c.Clubs})
	}
	return replaced, err
}

// sorted are the rounds that are new, and those that are not what is there.
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

// popPending takes the player's file that waits.
func popPending(ctx context.Context, tx *db.Store, who golf.PlayerID) (io.Reader, error) {
	packed, err := tx.PopPending(ctx, who)
	if errors.Is(err, golf.ErrNotFound) {
		return nil, errNothingWaits
	}
	if err != nil {
		return nil, err
	}
	unpacked, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		return nil, errNothingWaits // kept by an earlier version of this program
	}
	return unpacked, nil
}
