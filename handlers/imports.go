package handlers

import (
	"bytes"
	"errors"
	"io"
	"net/http"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/shotsfile"
	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/pages"
	"strokeledger/web/paths"
)

// importLimits are the most that a file may have.
var importLimits = shotsfile.Limits{Bytes: 64 << 20, Rows: 200_000}

func (s *server) importForm(w http.ResponseWriter, r *http.Request) error {
	return show(w, r, http.StatusOK, pages.NewImport(shell(r), "", nil).View())
}

// importFile reads a file, and keeps it until it is confirmed.
func (s *server) importFile(w http.ResponseWriter, r *http.Request) error {
	refuse := func(problem string, faults *shotsfile.Faults) error {
		return show(w, r, http.StatusUnprocessableEntity, pages.NewImport(shell(r), problem, faults).View())
	}
	file, _, err := r.FormFile("file")
	if errors.Is(err, http.ErrMissingFile) || errors.Is(err, http.ErrNotMultipart) {
		return refuse("No file was given. Allowed: a shots file.", nil)
	}
	var tooLarge *http.MaxBytesError
	if errors.As(err, &tooLarge) || r.Context().Err() != nil {
		return err
	}
	if err != nil { // what the parts hold cannot be told apart
		return errForm
	}
	defer file.Close()
	data, err := io.ReadAll(file)
	if err != nil {
		return err
	}
	if bytes.HasPrefix(bytes.TrimSpace(data), []byte("{")) {
		return s.importEverything(w, r, data)
	}
	rounds, unknown, err := readRounds(data)
	var faults *shotsfile.Faults
	var limit *shotsfile.LimitError
	switch {
	case errors.As(err, &faults):
		return refuse("", faults)
	case errors.As(err, &limit):
		return refuse(limit.Error(), nil)
	case err != nil:
		return err
	}
	if err := s.store.SavePending(r.Context(), me(r).ID, data); err != nil {
		return err
	}
	there, err := s.store.RoundNames(r.Context(), me(r).ID)
	if err != nil {
		return err
	}
	return show(w, r, http.StatusOK, pages.NewPreview(shell(r), rounds, there, unknown).View())
}

func readRounds(data []byte) (rounds []golf.Round, unknown []string, err error) {
	reader := shotsfile.NewReader(bytes.NewReader(data), importLimits)
	for round, err := range reader.Rounds() {
		if err != nil {
			return nil, nil, err
		}
		rounds = append(rounds, round)
	}
	return rounds, reader.Unknown(), nil
}

// importConfirm takes in the file that waits.
func (s *server) importConfirm(w http.ResponseWriter, r *http.Request) error {
	p := me(r)
	data, err := s.store.Pending(r.Context(), p.ID)
	if err != nil {
		return err
	}
	rounds, _, err := readRounds(data)
	if err != nil {
		return err
	}
	var kept []db.Round
	for _, round := range rounds {
		kept = append(kept, imported(round, p))
	}
	if err := s.store.Import(r.Context(), p.ID, kept, r.FormValue("there") == "replace"); err != nil {
		return err
	}
	return then(w, r, paths.Rounds)
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
