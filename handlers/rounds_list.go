package handlers

import (
	"net/http"
	"time"

	"github.com/go-chi/chi/v5"

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
	return s.ahead(r, of)
}

// ahead reads the next lesson of the signed-in player and what is due first.
func (s *server) ahead(r *http.Request, of *statement.RoundsInput) (err error) {
	if of.Lesson, err = s.nextLesson(r); err != nil {
		return err
	}
	walked, err := s.store.WalkedRounds(r.Context(), me(r).ID, me(r).ID)
	if err != nil {
		return err
	}
	of.Walked = len(walked)
	first, err := s.assignments(r, of.Whose, 1)
	if err != nil {
		return err
	}
	if len(first) > 0 && !first[0].Done {
		of.Due, of.DueWhat = first[0].Due, first[0].What
	}
	of.Today = s.today(r)
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
	if err := s.recordLook(r, about, db.LookRounds, 0); err != nil {
		return err
	}
	return s.showRounds(w, r, s.shellOf(r, about), statement.RoundsInput{Whose: about.pages, Name: about.player.Name})
}

func (s *server) showRounds(w http.ResponseWriter, r *http.Request, page layout.Page, of statement.RoundsInput) (err error) {
	if of.Narrow, err = s.narrowed(r, of.Whose); err != nil {
		return err
	}
	of.Leaf = statement.LeafOf(of.Narrow)
	if !of.Leaf.First.IsZero() {
		chosen := db.Chosen{Course: of.Narrow.Course, From: of.Leaf.From, To: of.Leaf.To, Most: roundsMost}
		if of.Rounds, err = s.listed(r, of.Whose, chosen, time.Time{}); err != nil {
			return err
		}
	}
	of.Cut = len(of.Rounds) == roundsMost
	return show(w, r, http.StatusOK, statement.NewRoundsPage(page, of).View())
}

// narrowed reads how the list is narrowed, and what there is to choose from.
func (s *server) narrowed(r *http.Request, whose paths.Whose) (n statement.Narrow, err error) {
	n = statement.Narrow{Course: r.FormValue("course"), From: monthOf(r.FormValue("since")), To: monthOf(r.FormValue("until")), Before: monthOf(r.FormValue("before"))}
	if n.Courses, err = s.store.RoundCourses(r.Context(), me(r).ID, whose.Player); err != nil {
		return n, err
	}
	months, err := s.store.RoundMonths(r.Context(), me(r).ID, whose.Player, n.Course)
	for _, m := range months {
		n.Months = append(n.Months, statement.MonthRounds{Month: golf.DateOf(m.Month), Rounds: m.Rounds, Chosen: m.Chosen})
	}
	return n, err
}

// monthOf reads a month of an address, 2026-08, as its first day; what is none
// sets no end.
func monthOf(text string) golf.Date {
	day, err := golf.ParseDate(text + "-01")
	if err != nil {
		return golf.Date{}
	}
	return day
}

// yearBook is the book of a year of who is signed in.
func (s *server) yearBook(w http.ResponseWriter, r *http.Request) error {
	return s.showYearBook(w, r, shell(r), statement.YearBookInput{Whose: mine(r), Name: me(r).Name})
}

// seenYearBook is the book of a player's year for a coach.
func (s *server) seenYearBook(w http.ResponseWriter, r *http.Request) error {
	about, err := s.subject(r)
	if err != nil {
		return err
	}
	if !about.pages.Own {
		err = s.recordLook(r, about, db.LookRounds, 0)
	}
	if err != nil {
		return err
	}
	return s.showYearBook(w, r, s.shellOf(r, about), statement.YearBookInput{Whose: about.pages, Name: about.player.Name})
}

func (s *server) showYearBook(w http.ResponseWriter, r *http.Request, page layout.Page, of statement.YearBookInput) error {
	first, err := golf.ParseDate(chi.URLParam(r, "year") + "-01-01")
	if err != nil {
		return golf.ErrNotFound
	}
	of.Year = first.Year
	chosen := db.Chosen{From: first, To: golf.Date{Year: first.Year, Month: time.December, Day: 31}, Most: roundsMost}
	if of.Rounds, err = s.listed(r, of.Whose, chosen, time.Time{}); err != nil {
		return err
	}
	of.Cut = len(of.Rounds) == roundsMost
	return show(w, r, http.StatusOK, statement.NewYearBookPage(page, of).View())
}

// listed works out some of a player's rounds for a list; those entered or corrected
// after newAfter say so, none when that is zero.
func (s *server) listed(r *http.Request, pages paths.Whose, chosen db.Chosen, newAfter time.Time) ([]figures.ListedRound, error) {
	all, err := s.store.Rounds(r.Context(), me(r).ID, pages.Player, chosen)
	if err != nil {
		return nil, err
	}
	listed := make([]figures.ListedRound, len(all))
	for i, kept := range all {
		l := figures.ListedRound{ID: kept.ID, Round: kept.Played(), Card: len(kept.Holes), Target: kept.Target}
		l.New, l.NewDay = s.freshness(r, kept, newAfter)
		of, err := analysis.StatementOf(playedOf(kept), nil, golf.Yards.Of(kept.BoundaryYd))
		if err != nil {
			return nil, err
		}
		l.Account = of.Account
		listed[i] = l
	}
	return listed, nil
}

// freshness is what happened to a round after a moment, and on which day where the
// reader is.
func (s *server) freshness(r *http.Request, kept db.Round, after time.Time) (figures.Freshness, golf.Date) {
	switch {
	case after.IsZero():
		return 0, golf.Date{}
	case kept.EnteredAt.After(after):
		return figures.Entered, golf.DateOf(s.here(r, kept.EnteredAt))
	case kept.ChangedAt.After(after):
		return figures.Corrected, golf.DateOf(s.here(r, kept.ChangedAt))
	}
	return 0, golf.Date{}
}
