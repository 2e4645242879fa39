package analysis

import (
	"cmp"
	"errors"
	"slices"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/parallel"
	"strokeledger/analysis/practice"
)

// Shared answers "who of these players loses more than is usual at their score, and
// where?".
type Shared struct {
	Told int         // players with rounds enough to say
	Rows []SharedRow // in which somebody does: part by part, the dearest first
}

// SharedRow is a part of the game, or a band, with who loses more there than is usual.
type SharedRow struct {
	compare.Row
	Who  []Unusual // the most first
	Much float64   // strokes for 18 holes that they lose together beyond what is usual
	band int       // by the list of bands; -1 for a part
}

// Unusual is what a player loses beside what is usual at the player's score.
type Unusual struct {
	Player int // by the list that was asked about
	practice.Estimate
}

// Shared looks for it in the latest rounds of each player, at most so many; 0 for all.
// Players with fewer than practice.MinRounds of them are left out. A target outside
// golf.MinTarget to golf.MaxTarget is an error where there are rounds enough.
func (e *Engine) Shared(players []Player, most int) (Shared, error) {
	games, err := e.games(players, most)
	var s Shared
	for _, g := range games {
		if g != nil {
			s.Told++
		}
	}
	for _, row := range lessonRows() {
		row.add(games, practice.Estimate.Named)
		if len(row.Who) > 0 {
			s.Rows = append(s.Rows, row)
		}
	}
	s.order()
	return s, err
}

// games are the games of players, nil of one with too few rounds.
func (e *Engine) games(players []Player, most int) ([]*practice.Game, error) {
	games, faults := make([]*practice.Game, len(players)), make([]error, len(players))
	parallel.Do(len(players), func(i int) { games[i], faults[i] = e.gameOf(players[i], most) })
	return games, errors.Join(faults...)
}

// gameOf is the game of a player; nil with too few rounds.
func (e *Engine) gameOf(p Player, most int) (*practice.Game, error) {
	rounds, _, err := e.decoded(p.Rounds)
	if err != nil {
		return nil, err
	}
	var sums []practice.Sums
	for _, r := range rounds {
		if r.Holes > 0 && (most == 0 || len(sums) < most) {
			sums = append(sums, practice.Sums{Holes: r.Holes, Bands: r.Bands()})
		}
	}
	if len(sums) < practice.MinRounds {
		return nil, nil
	}
	g, err := practice.Committed().Sum(sums, p.Target)
	return &g, err
}

// lessonRows are the parts of the game and the bands, without anybody in them.
func lessonRows() []SharedRow {
	var rows []SharedRow
	for _, c := range golf.Categories {
		rows = append(rows, SharedRow{Row: compare.Row{Category: c}, band: -1})
		for i, b := range practice.Bands() {
			if b.Category == c {
				rows = append(rows, SharedRow{Row: compare.Row{Category: c, Band: b}, band: i})
			}
		}
	}
	return rows
}

// of is what a game says of the row.
func (r *SharedRow) of(g *practice.Game) practice.Estimate {
	if r.band < 0 {
		return g.Parts[r.Category]
	}
	return practice.Committed().BandUsual(g, r.band)
}

// add adds the players for whom something holds of the row.
func (r *SharedRow) add(games []*practice.Game, holds func(practice.Estimate) bool) {
	for i, g := range games {
		if g == nil {
			continue
		}
		if e := r.of(g); holds(e) {
			r.Who, r.Much = append(r.Who, Unusual{i, e}), r.Much+e.Excess()
		}
	}
	slices.SortStableFunc(r.Who, func(a, b Unusual) int { return cmp.Compare(b.Excess(), a.Excess()) })
}

// order puts the part first of whose rows one is the dearest; in each part, that as a
// whole comes first, then the bands, the dearest first.
func (s *Shared) order() {
	dearest := map[golf.Category]float64{}
	for _, r := range s.Rows {
		dearest[r.Category] = max(dearest[r.Category], r.Much)
	}
	slices.SortStableFunc(s.Rows, func(a, b SharedRow) int {
		return cmp.Or(cmp.Compare(dearest[b.Category], dearest[a.Category]), cmp.Compare(a.Category, b.Category),
			cmp.Compare(tallyOf(b.Whole()), tallyOf(a.Whole())), cmp.Compare(b.Much, a.Much))
	})
}

func tallyOf(holds bool) int {
	if holds {
		return 1
	}
	return 0
}
