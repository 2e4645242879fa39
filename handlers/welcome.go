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
	f := form.FirstSettings{Target: form.NumberOf(p.Target), Far: form.ChoiceOf(units.Far), Green: form.ChoiceOf(units.Green), Zone: form.TextOf(p.Zone)}
	return show(w, r, http.StatusOK, site.NewWelcomePage(shell(r), f).View())
}

// saveWelcome saves the answers, or the usual settings if the player skips them.
func (s *server) saveWelcome(w http.ResponseWriter, r *http.Request) error {
	p := me(r)
	if r.FormValue("skip") != "" {
		return s.greet(w, r, p.Target, p.Units(), form.ParseZone(r.FormValue("zone")).Value) // that of the device, not asked for
	}
	f := form.ParseFirstSettings(r.Form)
	if !f.Sound() {
		return show(w, r, http.StatusUnprocessableEntity, site.NewWelcomePage(shell(r), f).View())
	}
	return s.greet(w, r, f.Target.Value, db.Units{Far: f.Far.Value, Green: f.Green.Value}, f.Zone.Value)
}

func (s *server) greet(w http.ResponseWriter, r *http.Request, target float64, units db.Units, zone string) error {
	if err := s.store.Greet(r.Context(), me(r).ID, target, units, zone); err != nil {
		return err
	}
	at, err := s.homeOf(r, me(r))
	if err != nil {
		return err
	}
	return saved(w, r, at, "welcome")
}
