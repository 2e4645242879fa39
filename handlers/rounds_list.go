package handlers

import (
	"net/http"
	"time"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/figures"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/statement"
)

// roundsMost is the most rounds that the list shows.
const roundsMost = 500

func (s *server) rounds(w http.ResponseWriter, r *http.Request) error {
	of := statement.RoundsInput{Whose: mine(r)}
	page := shell(r)
	notice, err := s.store.PopNotice(r.Context(), me(r).ID)
	if err != nil {
		return err
	}
	if notice != "" {
		page.Flash = notice
	}
	if err := s.offerUndo(r, &page); err != nil {
		return err
	}
	if err := s.waiting(r, &of); err != nil {
		return err
	}
	return s.showRounds(w, r, page, of)
}

// waiting reads what needs the attention of the signed-in player.
func (s *server) waiting(r *http.Request, of *statement.RoundsInput) (err error) {
	if of.Unread, err = s.store.UnreadNotes(r.Context(), me(r).ID); err != nil {
		return err
	}
	coaches, err := s.store.Coaches(r.Context(), me(r).ID)
	if err != nil {
		return err
	}
	for _, c := range coaches {
		if !c.Confirmed {
			of.Waiting = append(of.Waiting, c.Name)
		}
	}
	first, err := s.assignments(r, of.Whose, 1)
	if err != nil {
		return err
	}
	if len(first) > 0 && !first[0].Done {
		of.Due, of.DueWhat = first[0].Due, first[0].What
	}
	of.Today = now()
	return nil
}

// seenRounds lists a player's rounds for anybody who may see them.
func (s *server) seenRounds(w http.ResponseWriter, r *http.Request) error {
	about, err := s.subject(r)
	if err != nil {
		return err
	}
	if about.pages.Own {
		return redirect(w, r, about.pages.Rounds())
	}
	if err := s.recordLook(r, about.pages, db.LookRounds, 0); err != nil {
		return err
	}
	return s.showRounds(w, r, shell(r), statement.RoundsInput{Whose: about.pages, Name: about.player.Name})
}

func (s *server) showRounds(w http.ResponseWriter, r *http.Request, page layout.Page, of statement.RoundsInput) error {
	chosen := db.Chosen{Course: r.FormValue("course"), Most: roundsMost}
	chosen.From, _ = golf.ParseDate(r.FormValue("from")) // what is not a day sets no limit
	chosen.To, _ = golf.ParseDate(r.FormValue("to"))
	listed, err := s.listed(r, of.Whose, chosen, time.Now())
	if err != nil {
		return err
	}
	courses, err := s.store.RoundCourses(r.Context(), me(r).ID, of.Whose.Player)
	if err != nil {
		return err
	}
	of.Rounds, of.Narrow = listed, statement.Narrow{Course: chosen.Course, From: chosen.From, To: chosen.To, Courses: courses}
	return show(w, r, http.StatusOK, statement.NewRoundsPage(page, of).View())
}

// listed works out some of a player's rounds for a list; those saved after newAfter
// are marked as new.
func (s *server) listed(r *http.Request, pages paths.Whose, chosen db.Chosen, newAfter time.Time) ([]figures.ListedRound, error) {
	all, err := s.store.Rounds(r.Context(), me(r).ID, pages.Player, chosen)
	if err != nil {
		return nil, err
	}
	listed := make([]figures.ListedRound, len(all))
	for i, kept := range all {
		l := figures.ListedRound{ID: kept.ID, Round: kept.Played(), Card: len(kept.Holes), Target: kept.Target, New: kept.ChangedAt.After(newAfter)}
		of, err := analysis.StatementOf(playedOf(kept), nil, golf.Yards.Of(kept.BoundaryYd))
		if err != nil {
			return nil, err
		}
		l.Account = of.Account
		listed[i] = l
	}
	return listed, nil
}
