package handlers

import (
	"bufio"
	"bytes"
	"context"
	"io"
	"iter"

	"strokeledger/analysis/accountfile"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/shotsfile"
	"strokeledger/db"
	"strokeledger/web/entry"
	"strokeledger/web/form"
)

// importRowsARound is how many rows, one a shot, the rounds of an import may have
// on average.
const importRowsARound = 100

// importLimits are the limits of a shots file.
var importLimits = shotsfile.Limits{Bytes: accountfile.MaxBytes, Rows: accountfile.MaxRounds * importRowsARound, Rounds: accountfile.MaxRounds}

// roundsFile is a shots file or an account file. Its settings, what is the account's
// own, its run-out book and unknown columns are known only after its rounds have been
// read.
type roundsFile struct {
	rounds   iter.Seq2[db.Round, error]
	same     func(a, b db.Round) bool // whether two rounds would be written the same
	settings func() *accountfile.Settings
	own      func() accountfile.Own
	balls    func() []accountfile.Ball
	unknown  func() []string
}

// openFile tells which kind of file it is, and reads its rounds as they would be
// stored for the player.
func openFile(from io.Reader, p db.Player) roundsFile {
	in := bufio.NewReader(from)
	head, _ := in.Peek(512) // an error is returned again when the file is read
	if bytes.HasPrefix(bytes.TrimSpace(head), []byte("{")) {
		return accountIn(accountfile.NewReader(in))
	}
	file := shotsfile.NewReader(in, importLimits)
	return roundsFile{
		rounds:   mapped(file.Rounds(), func(round golf.Round) db.Round { return imported(round, p) }),
		same:     func(a, b db.Round) bool { return shotsfile.Same(a.Played(), b.Played()) },
		settings: func() *accountfile.Settings { return nil },
		own:      func() accountfile.Own { return accountfile.Own{} },
		balls:    func() []accountfile.Ball { return nil },
		unknown:  file.Unknown,
	}
}

// accountIn is an account file.
func accountIn(file *accountfile.Reader) roundsFile {
	return roundsFile{
		rounds: mapped(file.Rounds(), keptOf),
		same:   func(a, b db.Round) bool { return accountfile.Same(fileOf(a), fileOf(b)) },
		settings: func() *accountfile.Settings {
			c := file.Settings()
			return &c
		},
		own:     file.Own,
		balls:   file.Balls,
		unknown: func() []string { return nil },
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

// imported is a round of a shots file as it is stored: with the player's target,
// and with a line for each hole.
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

// compared goes through the rounds of a file, a batch at a time, and says for each
// whether the player has a round of that name. What else the file holds is sound then.
func (f roundsFile) compared(ctx context.Context, store *db.Store, who golf.PlayerID, take func(some []db.Round, there []entry.There) error) error {
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
	if err := compare(); err != nil {
		return err
	}
	return soundOwn(f.own())
}

// there says for each round of a batch whether the player has a round of that name,
// and whether it is the same.
func (f roundsFile) there(ctx context.Context, store *db.Store, who golf.PlayerID, some []db.Round) ([]entry.There, error) {
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
