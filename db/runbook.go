package db

import (
	"context"
	"encoding/json"
	"errors"
	"slices"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// RunBook is a player's run-out book as rounds are judged by it. It is kept beside
// the balls that it is made of, so that reading a round works nothing out.
type RunBook struct {
	Version int // counts its changes; 0 for a player who never had a ball in it
	Lines   golf.RunBook
}

// MakeRunBook is how the engine makes what rounds are judged by of a book's balls.
type MakeRunBook func([]golf.Trial) golf.RunBook

// runBookColumn is the column that holds the lines, as JSON.
type runBookColumn []struct {
	Club  string  `json:"club"`
	Lie   string  `json:"lie"`
	Start float64 `json:"start"`
	Slope float64 `json:"slope"`
	From  float64 `json:"from"`
	To    float64 `json:"to"`
}

type runBookRow struct {
	Version int
	Lines   []byte
}

// book reads the row.
func (r runBookRow) book() (RunBook, error) {
	var column runBookColumn
	err := json.Unmarshal(r.Lines, &column)
	book := RunBook{Version: r.Version}
	for _, l := range column {
		lie, bad := golf.ParseLie(l.Lie)
		err = errors.Join(err, bad)
		book.Lines = append(book.Lines, golf.RunLine{Club: l.Club, Lie: lie, Start: l.Start, Slope: l.Slope, From: l.From, To: l.To})
	}
	return book, err
}

// columnOf writes the lines of a book.
func columnOf(lines golf.RunBook) ([]byte, error) {
	column := make(runBookColumn, len(lines))
	for i, l := range lines {
		to := &column[i]
		to.Club, to.Lie, to.Start, to.Slope, to.From, to.To = l.Club, l.Lie.String(), l.Start, l.Slope, l.From, l.To
	}
	return json.Marshal(column)
}

const selectRunBook = `select version, lines from runout_books where player_id = @who`

// bookOf is the book of the rows that selectRunBook reads: one, or none.
func bookOf(rows []runBookRow) (RunBook, error) {
	if len(rows) == 0 {
		return RunBook{}, nil
	}
	return rows[0].book()
}

// runBook returns what the rounds of a player are judged by. Whoever may see a round
// sees it judged by the whole book, from whatever day on.
func (s *Store) runBook(ctx context.Context, who golf.PlayerID) (RunBook, error) {
	rows, err := many(ctx, s.q, pgx.RowToStructByName[runBookRow], selectRunBook, pgx.StrictNamedArgs{"who": who})
	if err != nil {
		return RunBook{}, err
	}
	return bookOf(rows)
}

// changeTrials changes the balls of the player's book, and makes anew what rounds
// are judged by. The new version comes first: it makes a change that is made at the
// same time wait, so that each is made of all balls.
func (s *Store) changeTrials(ctx context.Context, who golf.PlayerID, remake MakeRunBook, change func(tx *Store) error) error {
	return s.Tx(ctx, func(tx *Store) error {
		of := pgx.StrictNamedArgs{"who": who}
		if err := changeOne(ctx, tx.q, `
			insert into runout_books (player_id, version, lines) values (@who, 1, '[]'::jsonb)
			on conflict (player_id) do update set version = runout_books.version + 1`, of); err != nil {
			return err
		}
		if err := change(tx); err != nil {
			return err
		}
		kept, err := tx.Trials(ctx, who, who)
		trials := make([]golf.Trial, len(kept))
		for i := 0; err == nil && i < len(kept); i++ {
			trials[i], err = kept[i].Trial()
		}
		if err != nil {
			return err
		}
		lines, err := columnOf(remake(trials))
		if err != nil {
			return err
		}
		return changeOne(ctx, tx.q, `update runout_books set lines = @lines where player_id = @who`, pgx.StrictNamedArgs{"who": who, "lines": string(lines)})
	})
}

// bookAsked is the version of the book that a round is judged by; nil for a round
// that no book changes.
func (r Round) bookAsked() *int {
	for _, h := range r.Holes {
		if slices.ContainsFunc(h.Shots, golf.Shot.AsksBook) {
			return &r.RunBook.Version
		}
	}
	return nil
}
