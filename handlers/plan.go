package handlers

import (
	"net/http"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/practice"
)

// plan says what a player should practise.
func (s *server) plan(w http.ResponseWriter, r *http.Request) error {
	about, in, err := s.planInput(r)
	if err != nil {
		return err
	}
	if in.Span, err = planSpan(r); err != nil {
		return err
	}
	plan, err := s.engine.Plan(in)
	if err != nil {
		return err
	}
	if err := s.recordLook(r, about, db.LookPlan, 0); err != nil {
		return err
	}
	to := practice.PlanInput{Whose: about.pages, Name: about.player.Name, Target: about.player.Target, Minutes: about.player.Minutes, Units: unitsOf(me(r)), Today: s.today(r), Span: in.Span, Plan: plan}
	if to.Taken, err = s.plansTaken(r, about); err != nil {
		return err
	}
	page := s.shellOf(r, about)
	if err := s.offerUndo(r, &page); err != nil {
		return err
	}
	return show(w, r, http.StatusOK, practice.NewPlanPage(page, to).View())
}

// plansTaken are the plans that a player took, the latest first.
func (s *server) plansTaken(r *http.Request, about subject) ([]practice.TakenDay, error) {
	taken, err := s.store.TakenPlans(r.Context(), me(r).ID, about.player.ID)
	all := make([]practice.TakenDay, len(taken))
	for i, t := range taken {
		all[i] = practice.TakenDay{ID: t.ID, Day: golf.DateOf(t.Day), Rounds: t.Rounds}
	}
	return all, err
}

// planSpan is the span of rounds that a plan is asked for; zero for all. One that
// cannot be read is not found.
func planSpan(r *http.Request) (golf.Span, error) {
	text := r.URL.Query().Get("span")
	if text == "" {
		return golf.Span{}, nil
	}
	span, err := golf.ParseSpan(text)
	if err != nil {
		err = golf.ErrNotFound
	}
	return span, err
}

// planInput reads a player's rounds for a plan.
func (s *server) planInput(r *http.Request) (about subject, in analysis.PlanInput, err error) {
	if about, err = s.subject(r); err != nil {
		return about, in, err
	}
	history, err := s.store.History(r.Context(), me(r).ID, about.player.ID)
	return about, analysis.PlanInput{History: history, Target: about.player.Target, Minutes: about.player.Minutes}, err
}
