package handlers

import (
	"net/http"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/figures"
	"strokeledger/web/months"
	"strokeledger/web/paths"
)

func (s *server) myMonths(w http.ResponseWriter, r *http.Request) error {
	return redirect(w, r, paths.Comparison{Whose: mine(r)}.Months())
}

// months compares spans of a player's rounds side by side.
func (s *server) months(w http.ResponseWriter, r *http.Request) error {
	about, err := s.subject(r)
	if err != nil {
		return err
	}
	at, changed, refused := readComparison(r, about.pages)
	if changed && refused.Sound() {
		return redirect(w, r, at.Months())
	}
	q, err := s.compared(r, about.player, at)
	if err != nil {
		return err
	}
	if err := s.recordLook(r, about, db.LookMonths, 0); err != nil {
		return err
	}
	q.Refused = refused
	return show(w, r, statusOf(refused), months.NewComparisonPage(s.shellOf(r, about), q).View())
}

// statusOf is the status of a page that shows a form.
func statusOf(typed interface{ Sound() bool }) int {
	if !typed.Sound() {
		return http.StatusUnprocessableEntity
	}
	return http.StatusOK
}

// compared reads a player's rounds and compares them.
func (s *server) compared(r *http.Request, p db.Player, at paths.Comparison) (q figures.ComparisonInput, err error) {
	history, err := s.store.History(r.Context(), me(r).ID, at.Player)
	if err != nil {
		return q, err
	}
	if q, err = s.comparisonInput(r, p, at); err != nil {
		return q, err
	}
	q.Months, err = s.engine.Months(analysis.MonthsInput{History: history, Choice: at.Comparison, Target: p.Target, Boundary: golf.Yards.Of(p.BoundaryYd)})
	q.At.Comparison = q.Choice
	return q, err
}

// comparisonInput is what a comparison needs besides the rounds.
func (s *server) comparisonInput(r *http.Request, p db.Player, at paths.Comparison) (figures.ComparisonInput, error) {
	marks, err := s.markedDays(r, at.Player)
	return figures.ComparisonInput{At: at, Name: p.Name, Target: p.Target, Units: unitsOf(me(r)), Marks: marks}, err
}

// markedDays are the days that a player marked.
func (s *server) markedDays(r *http.Request, who golf.PlayerID) ([]figures.MarkedDay, error) {
	kept, err := s.store.Marks(r.Context(), me(r).ID, who)
	var all []figures.MarkedDay
	for _, m := range kept {
		all = append(all, figures.MarkedDay{ID: m.ID, Day: golf.DateOf(m.MarkedOn), What: m.What})
	}
	return all, err
}
