package handlers

import (
	"net/http"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/practice"
)

// planMinutes is how many minutes a week a plan shares out.
const planMinutes = 180

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
	return show(w, r, http.StatusOK, practice.NewPlanPage(s.shellOf(r, about), practice.PlanInput{Whose: about.pages, Name: about.player.Name, Target: about.player.Target,
		Minutes: planMinutes, Units: unitsOf(me(r)), Today: s.today(r), Span: in.Span, Plan: plan}).View())
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
	return about, analysis.PlanInput{History: history, Target: about.player.Target, Minutes: planMinutes}, err
}
