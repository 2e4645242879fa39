package handlers

import (
	"net/http"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/months"
	"strokeledger/web/paths"
)

// handicap shows an unofficial estimate of a player's Handicap Index.
func (s *server) handicap(w http.ResponseWriter, r *http.Request) error {
	about, err := s.subject(r)
	if err != nil {
		return err
	}
	rounds, courses, err := s.ratedRounds(r, about.pages)
	if err != nil {
		return err
	}
	record, err := s.engine.Handicap(rounds)
	if err != nil {
		return err
	}
	if err := s.recordLook(r, about, db.LookHandicap, 0); err != nil {
		return err
	}
	return show(w, r, http.StatusOK, months.NewHandicapPage(s.shellOf(r, about), months.HandicapInput{Whose: about.pages, Name: about.player.Name, Record: record, Courses: courses}).View())
}

// ratedRounds reads a player's rounds with what is known of their courses.
func (s *server) ratedRounds(r *http.Request, pages paths.Whose) ([]analysis.Rated, map[golf.RoundID]months.RatedCourse, error) {
	history, err := s.store.History(r.Context(), me(r).ID, pages.Player)
	if err != nil {
		return nil, nil, err
	}
	ratings, err := s.store.Ratings(r.Context(), me(r).ID, pages.Player)
	if err != nil {
		return nil, nil, err
	}
	of := make(map[golf.RoundID]db.Rated, len(ratings))
	for _, c := range ratings {
		of[c.RoundID] = c
	}
	var rounds []analysis.Rated
	courses := map[golf.RoundID]months.RatedCourse{}
	for _, h := range history {
		if c, known := of[h.ID]; known { // not known if it was removed between the two queries
			rounds = append(rounds, ratedOf(h, c))
			courses[h.ID] = months.RatedCourse{Name: h.Round.Course, Course: c.Course}
		}
	}
	return rounds, courses, nil
}

func ratedOf(h golf.Played, c db.Rated) analysis.Rated {
	return analysis.Rated{Played: h, Size: c.Size, Indexes: c.Indexes,
		Whole: ratingOf(c.Rating, c.Slope), Front: ratingOf(c.FrontRating, c.FrontSlope), Back: ratingOf(c.BackRating, c.BackSlope)}
}

// ratingOf is the rating that two numbers make, empty unless both are known.
func ratingOf(course, slope *float64) analysis.Rating {
	if course == nil || slope == nil {
		return analysis.Rating{}
	}
	return analysis.Rating{Course: *course, Slope: *slope}
}
