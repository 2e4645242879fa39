package handlers

import (
	"net/http"
	"slices"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/play"
)

// playIndex lists the courses, those that the player plays first.
func (s *server) playIndex(w http.ResponseWriter, r *http.Request) error {
	about, err := s.subject(r)
	if err != nil {
		return err
	}
	in := play.IndexInput{Whose: about.pages, Player: about.player.Name, Target: about.player.Target}
	history, err := s.store.History(r.Context(), me(r).ID, about.player.ID)
	if err != nil {
		return err
	}
	if in.Courses, err = s.playedCourses(r, history); err != nil {
		return err
	}
	if err := s.recordLook(r, about, db.LookPlay, 0); err != nil {
		return err
	}
	return show(w, r, http.StatusOK, play.NewIndexPage(s.shellOf(r, about), in).View())
}

// playedCourses are the courses of the server with how often they were played and how
// many of their holes are drawn.
func (s *server) playedCourses(r *http.Request, history []golf.Played) ([]play.PlayedCourse, error) {
	all, err := s.store.Courses(r.Context(), me(r).ID)
	if err != nil {
		return nil, err
	}
	drawn, err := s.store.DrawnCourses(r.Context())
	if err != nil {
		return nil, err
	}
	var courses []play.PlayedCourse
	for _, c := range all {
		played := play.PlayedCourse{ID: c.ID, Name: courseName(db.Course{Name: c.Name, Tee: c.Tee}), Holes: c.Holes}
		if i := slices.IndexFunc(drawn, func(d db.DrawnCourse) bool { return d.CourseID == c.ID }); i >= 0 {
			played.Drawn = drawn[i].Holes
		}
		for _, h := range history {
			if strings.EqualFold(h.Round.Course, c.Name) && strings.EqualFold(h.Round.Tee, c.Tee) {
				played.Times++
			}
		}
		courses = append(courses, played)
	}
	return courses, nil
}
