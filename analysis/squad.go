package analysis

import (
	"errors"
	"slices"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/parallel"
)

// SquadRounds is how many of a player's latest rounds count in a squad unless days are
// chosen: as many as a form is taken over.
const SquadRounds = compare.FormRounds

// Squad answers "where do these players lose most, each and together?".
type Squad struct {
	Rows     []SquadRow                // of every player, in their order
	Played   int                       // how many of them have a round
	Rounds   int                       // of all of them, with a hole whose strokes are known
	Together [golf.Putting + 1]float64 // plain average of those who played, strokes for 18 holes; everything at 0
	Most     golf.Category             // in which they lose most together; 0 when nobody played
}

// SquadRow is one player of a squad.
type SquadRow struct {
	Lost  compare.PartsLost // to the golfer of the player's target
	First golf.Date         // day of the earliest of the rounds; zero without one
	Worst golf.Category     // in which the player loses most; 0 when in none
}

// worthSaying is how much a part must lose to be named, in strokes for 18 holes:
// what is printed as at least a tenth.
const worthSaying = .05

// Squad sets players side by side. Targets outside golf.MinTarget to
// golf.MaxTarget are read as the nearer end. most is how many of the latest rounds of
// each count, 0 for all.
func (e *Engine) Squad(players []Player, most int) (Squad, error) {
	s := Squad{Rows: make([]SquadRow, len(players))}
	faults := make([]error, len(players))
	parallel.Do(len(players), func(i int) {
		s.Rows[i], faults[i] = e.squadRow(players[i], most)
	})
	s.together()
	return s, errors.Join(faults...)
}

// together fills in what the rows come to.
func (s *Squad) together() {
	for _, r := range s.Rows {
		if r.Lost.Rounds == 0 {
			continue
		}
		s.Played++
		s.Rounds += r.Lost.Rounds
		for c := range s.Together {
			s.Together[c] += r.Lost.Cells[c].Mean
		}
	}
	if s.Played == 0 {
		return
	}
	for c := range s.Together {
		s.Together[c] /= float64(s.Played)
	}
	s.Most = golf.Most(func(c golf.Category) float64 { return s.Together[c] })
}

// squadRow works out one player.
func (e *Engine) squadRow(p Player, most int) (r SquadRow, err error) {
	rounds, days, err := e.decoded(p.Rounds)
	if err != nil {
		return r, err
	}
	if most > 0 {
		rounds = rounds[:min(most, len(rounds))]
	}
	if len(rounds) > 0 {
		r.First = days[len(rounds)-1]
	}
	slices.Reverse(rounds) // the same draws of the same rounds then say the same everywhere
	r.Lost = e.ladder.PartsLost(rounds, p.Target, drawSeed)
	if worst := golf.Most(func(c golf.Category) float64 { return r.Lost.Cells[c].Mean }); r.Lost.Cells[worst].Mean > worthSaying {
		r.Worst = worst
	}
	return r, nil
}
