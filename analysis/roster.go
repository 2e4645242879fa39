package analysis

import (
	"errors"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/parallel"
)

// RosterRounds is how many of a player's latest rounds a row of a roster needs:
// those of the form and a few that were begun and not entered.
const RosterRounds = 2*compare.FormRounds + 4

// RosterRow answers "how does this player play, and has it changed?" in a row.
type RosterRow struct {
	Last        golf.Date // day of the latest round with a hole; the zero value without one
	Score       float64   // of that round, in whole strokes
	HolesTarget float64   // the target of its holes
	Lifted      bool      // one of them was picked up
	Holes       int       // of that round; 0 without one
	From        golf.Date // day of the earliest round of the form; zero without one
	Form        compare.Form
}

// Roster works out a row for each of many players. Targets outside golf.MinTarget
// to golf.MaxTarget are read as the nearer end.
func (e *Engine) Roster(players []Player) ([]RosterRow, error) {
	rows, faults := make([]RosterRow, len(players)), make([]error, len(players))
	parallel.Do(len(players), func(i int) { rows[i], faults[i] = e.rosterRow(players[i]) })
	return rows, errors.Join(faults...)
}

// rosterRow works out the row of a player, unless it is kept.
func (e *Engine) rosterRow(p Player) (RosterRow, error) {
	key := keyOf(p)
	if row, ok := e.rows.find(key); ok {
		return row, nil
	}
	entered, days, err := e.decoded(p.Rounds)
	if err != nil {
		return RosterRow{}, err
	}
	row := RosterRow{Form: e.ladder.Form(entered, p.Target, drawSeed)}
	if len(entered) > 0 {
		row.Last, row.From = days[0], days[min(compare.FormRounds, len(days))-1]
		row.Score, row.HolesTarget, row.Lifted, row.Holes = entered[0].Score, entered[0].Target, entered[0].PickedUp, entered[0].Entered
	}
	e.rows.keep(key, row)
	return row, nil
}
