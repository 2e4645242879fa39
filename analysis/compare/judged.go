package compare

import (
	"strokeledger/analysis/account"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/parallel"
)

// Judged is a round worked out for a comparison: its shots charged against one
// golfer, whatever the course, and its doubles judged by the golfer of its own
// target, so that a double is the same double as on its statement.
type Judged struct {
	golf.Played
	Account account.Account // against the lens
	Holes   float64         // with their strokes known, 0 to 18

	lost  []float64 // strokes, by row of a sheet
	shots []int     // how many, by row of a sheet
}

// Judge works out rounds against a lens, on all cores. Targets outside 68 to
// 110 are an error.
func Judge(rounds []golf.Played, lens *expect.Baseline, boundary golf.Distance) ([]*Judged, error) {
	fixed, err := golfersOf(rounds)
	if err != nil {
		return nil, err
	}
	rows := rowsOf(boundary)
	place := map[account.Band]int{}
	for i, r := range rows {
		if r.Band != (account.Band{}) {
			place[r.Band] = i
		}
	}
	all := make([]*Judged, len(rounds))
	parallel.Do(len(rounds), func(i int) {
		j := &Judged{Played: rounds[i], lost: make([]float64, len(rows)), shots: make([]int, len(rows))}
		j.Account = account.Of(j.Round, account.Terms{Lens: lens, Fixed: fixed[j.Target], Boundary: boundary})
		j.Holes = float64(j.Account.Counts.Holes)
		j.sum(place)
		all[i] = j
	})
	return all, nil
}

// Lost is what the round lost in a row of a sheet, in strokes.
func (j *Judged) Lost(row int) float64 { return j.lost[row] }

// golfersOf makes the golfer of every target that rounds were played for, each
// once.
func golfersOf(rounds []golf.Played) (map[float64]*expect.Baseline, error) {
	all := map[float64]*expect.Baseline{}
	for _, r := range rounds {
		if all[r.Target] == nil {
			b, err := expect.Level(r.Target)
			if err != nil {
				return nil, err
			}
			all[r.Target] = b
		}
	}
	return all, nil
}

// sum adds up the shots by row: everything, the part of the game and the band.
// place is the row of each band.
func (j *Judged) sum(place map[account.Band]int) {
	for _, h := range j.Account.Holes {
		for _, s := range h.Shots {
			for _, row := range [...]int{0, int(s.Band.Category), place[s.Band]} {
				j.lost[row] += s.Lost
				j.shots[row]++
			}
		}
	}
}
