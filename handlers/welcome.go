package handlers

import (
	"net/http"

	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/site"
)

// welcome asks a new player for target and units.
func (s *server) welcome(w http.ResponseWriter, r *http.Request) error {
	p := me(r)
	units := unitsOf(p)
	f := form.FirstSettings{Target: form.NumberOf(p.Target), Far: form.ChoiceOf(units.Far), Green: form.ChoiceOf(units.Green)}
	return show(w, r, http.StatusOK, site.NewWelcomePage(shell(r), f).View())
}

// saveWelcome saves the answers, or the usual settings if the player skips them.
func (s *server) saveWelcome(w http.ResponseWriter, r *http.Request) error {
	p := me(r)
	if r.FormValue("skip") != "" {
		return s.greet(w, r, p.Target, p.Units())
	}
	f := form.ParseFirstSettings(r.Form)
	if !f.Sound() {
		return show(w, r, http.StatusUnprocessableEntity, site.NewWelcomePage(shell(r), f).View())
	}
	return s.greet(w, r, f.Target.Value, db.Units{Far: f.Far.Value, Green: f.Green.Value})
}

func (s *server) greet(w http.ResponseWriter, r *http.Request, target float64, units db.Units) error {
	if err := s.store.Greet(r.Context(), me(r).ID, target, units); err != nil {
		return err
	}
	at, err := s.homeOf(r, me(r))
	if err != nil {
		return err
	}
	return saved(w, r, at, "welcome")
}
