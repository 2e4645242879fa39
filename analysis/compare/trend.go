package compare

import (
	"math"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
)

// trendRounds is over how many rounds the line of a season is smoothed.
const trendRounds = 8

// Point is a round on the line of a season.
type Point struct {
	ID    golf.RoundID
	Day   golf.Date // on which it was played
	Holes float64   // with their strokes known, more than 0
	Score float64   // of 18 holes on the course that the lens takes its level on

	// Mean is that of this round and the seven before it, weighted by holes,
	// from the fifth round on; with the interval of 95 %.
	HasMean   bool
	Mean      float64 // score of 18 holes, as Score
	Low, High float64 // ends of the interval
}

// Trend is the line of a season: rounds in the order of their days as the score
// they would be on one course of 18 holes, on which the lens takes level. Rounds
// without a hole whose strokes are known are left out.
func Trend(rounds []*Judged, level float64) []Point {
	var points []Point
	var played []*Judged
	reach := map[int]float64{} // by how many rounds are smoothed
	for _, r := range rounds {
		if r.Holes == 0 {
			continue
		}
		played = append(played, r)
		p := Point{ID: r.ID, Day: r.Round.Date, Holes: r.Holes, Score: level + wholeRound*r.lost[0]/r.Holes}
		if n := len(played); n >= MinRounds {
			latest := played[max(0, n-trendRounds):]
			if reach[len(latest)] == 0 {
				reach[len(latest)] = stat.TQuantile(.5+confidence/2, float64(len(latest)-1))
			}
			p.smooth(latest, level, reach[len(latest)])
		}
		points = append(points, p)
	}
	return points
}

// TrendThin says how many rounds are missing until a line has a mean.
func TrendThin(line []Point) golf.Thin { return golf.Enough(golf.ThinTrend, len(line), MinRounds) }

// smooth averages rounds weighted by holes; its error is that of a ratio to the
// first order, and its interval reaches so many of them.
func (p *Point) smooth(rounds []*Judged, level, errors float64) {
	n := float64(len(rounds))
	lost, holes, square := 0.0, 0.0, 0.0
	for _, r := range rounds {
		lost += r.lost[0]
		holes += r.Holes
	}
	for _, r := range rounds {
		away := r.lost[0] - lost/holes*r.Holes
		square += away * away
	}
	reach := errors * wholeRound * math.Sqrt(n/(n-1)*square) / holes
	p.HasMean, p.Mean = true, level+wholeRound*lost/holes
	p.Low, p.High = p.Mean-reach, p.Mean+reach
}
