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
// to golf.MaxTarget are read as the nearer end. The players need the digests of their
// summaries alone: read is asked for those, by their places, whose rows are not kept,
// and answers with their summaries in the same order.
func (e *Engine) Roster(players []Player, read func(places []int) ([]Player, error)) ([]RosterRow, error) {
	rows := make([]RosterRow, len(players))
	var places []int
	for i, p := range players {
		row, kept := e.rows.find(keyOf(p))
		if rows[i] = row; !kept {
			places = append(places, i)
		}
	}
	if len(places) == 0 {
		return rows, nil
	}
	whole, err := read(places)
	if err != nil {
		return nil, err
	}
	faults := make([]error, len(places))
	parallel.Do(len(places), func(i int) { rows[places[i]], faults[i] = e.rosterRow(whole[i]) })
	return rows, errors.Join(faults...)
}

// rosterRow works out the row of a player and keeps it.
func (e *Engine) rosterRow(p Player) (RosterRow, error) {
	entered, days, err := e.decoded(p.Rounds)
	if err != nil {
		return RosterRow{}, err
	}
	row := RosterRow{Form: e.ladder.Form(entered, p.Target, drawSeed)}
	if len(entered) > 0 {
		row.Last, row.From = days[0], days[min(compare.FormRounds, len(days))-1]
		row.Score, row.HolesTarget, row.Lifted, row.Holes = entered[0].Score, entered[0].Target, entered[0].PickedUp, entered[0].Entered
	}
	e.rows.keep(keyOf(p), row)
	return row, nil
}
