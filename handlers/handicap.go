package handlers

import (
	"math"
	"net/http"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/handicap"
	"strokeledger/db"
	"strokeledger/web/months"
)

// handicap shows the unofficial estimate of a player's Index.
func (s *server) handicap(w http.ResponseWriter, r *http.Request) error {
	player, whose, err := s.whose(r)
	if err != nil {
		return err
	}
	history, err := s.store.History(r.Context(), me(r).ID, whose.Player)
	if err != nil {
		return err
	}
	ratings, err := s.store.Ratings(r.Context(), me(r).ID, whose.Player)
	if err != nil {
		return err
	}
	rated := map[golf.RoundID]db.Rated{}
	for _, c := range ratings {
		rated[c.RoundID] = c
	}
	var scores []handicap.Score
	courses := map[golf.RoundID]months.RatedCourse{}
	for _, h := range history {
		if _, known := rated[h.ID]; !known {
			continue // removed between the two questions
		}
		score, err := scoreOf(h, rated[h.ID])
		if err != nil {
			return err
		}
		scores = append(scores, score)
		courses[h.ID] = months.RatedCourse{Name: h.Round.Course, Course: rated[h.ID].Course}
	}
	if err := s.looked(r, whose, db.LookHandicap, 0); err != nil {
		return err
	}
	return show(w, r, http.StatusOK, months.NewHandicapPage(shell(r), whose, player.Name, handicap.Estimate(scores), courses).View())
}

// scoreOf is a round as the rules of handicapping see it. A picked-up hole
// counts the strokes still to come of the golfer of its target, rounded.
func scoreOf(h db.PlayedRound, c db.Rated) (handicap.Score, error) {
	fixed, err := expect.Level(h.Target)
	if err != nil {
		return handicap.Score{}, err
	}
	s := handicap.Score{Round: h.ID, Date: h.Round.Date}
	first, last := 18, 1
	for _, hole := range h.Round.Holes {
		first, last = min(first, hole.Number), max(last, hole.Number)
		strokes := hole.Strokes()
		if hole.PickedUp {
			strokes += int(math.Round(fixed.Shot(hole.Shots[len(hole.Shots)-1])))
		}
		s.Holes = append(s.Holes, handicap.Hole{Par: hole.Par, Index: c.Indexes[hole.Number-1], Strokes: strokes})
	}
	rating, slope := c.Rating, c.Slope
	if len(s.Holes) == 9 {
		switch {
		case c.Size == 9 && rating != nil && slope != nil:
			// the ratings of a nine-hole course are those of its nine
		case last <= 9:
			rating, slope = c.FrontRating, c.FrontSlope
		case first > 9:
			rating, slope = c.BackRating, c.BackSlope
		default:
			rating, slope = nil, nil
		}
	}
	if rating != nil && slope != nil {
		s.Rating, s.Slope = *rating, *slope
	}
	return s, nil
}
