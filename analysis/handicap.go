package analysis

import (
	"math"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/handicap"
)

// Rating is a course rating with its slope; the zero value is not known.
type Rating struct{ Course, Slope float64 }

// Rated is a round with what is known of its course.
type Rated struct {
	golf.Played
	Size               int    // holes of the course, 0 when there is none
	Whole, Front, Back Rating // of the course and of its nines
	Indexes            []int  // stroke indexes of holes 1 to 18, 0 where not known
}

// Handicap answers "what would my Handicap Index be?", unofficially, from rounds
// in any order. Targets outside golf.MinTarget to golf.MaxTarget are an error.
func (e *Engine) Handicap(rounds []Rated) (handicap.Record, error) {
	scores := make([]handicap.Score, len(rounds))
	for i, r := range rounds {
		s, err := r.score()
		if err != nil {
			return handicap.Record{}, err
		}
		scores[i] = s
	}
	return handicap.Estimate(scores), nil
}

// score is a round as the Rules of Handicapping see it. A picked-up hole counts
// the strokes still to come of the golfer of the round's target, rounded.
func (r Rated) score() (handicap.Score, error) {
	fixed, err := expect.Level(r.Target)
	if err != nil {
		return handicap.Score{}, err
	}
	s := handicap.Score{Round: r.ID, Date: r.Round.Date}
	for _, hole := range r.Round.Holes {
		strokes := hole.Strokes()
		if hole.PickedUp {
			strokes += int(math.Round(fixed.Shot(hole.Shots[len(hole.Shots)-1])))
		}
		index := 0
		if n := hole.Number - 1; n >= 0 && n < len(r.Indexes) {
			index = r.Indexes[n]
		}
		s.Holes = append(s.Holes, handicap.Hole{Par: hole.Par, Index: index, Strokes: strokes})
	}
	rating := r.ofHoles()
	s.Rating, s.Slope = rating.Course, rating.Slope
	return s, nil
}

// ofHoles is the rating of the holes played: of nine those of one nine, or of a
// course that has no more.
func (r Rated) ofHoles() Rating {
	if len(r.Round.Holes) != 9 || r.Size == 9 && r.Whole != (Rating{}) {
		return r.Whole
	}
	first, last := golf.MaxHole, 1
	for _, h := range r.Round.Holes {
		first, last = min(first, h.Number), max(last, h.Number)
	}
	switch {
	case last <= 9:
		return r.Front
	case first > 9:
		return r.Back
	default:
		return Rating{}
	}
}
