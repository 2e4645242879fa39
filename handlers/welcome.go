package handlers

import (
	"net/http"

	"strokeledger/web/site"
)

// welcome asks a new player for target and units.
func (s *server) welcome(w http.ResponseWriter, r *http.Request) error {
	p := me(r)
	return show(w, r, http.StatusOK, site.NewWelcomePage(shell(r), site.WelcomeInput{Target: number(p.Target), Far: p.FarUnit, Green: p.GreenUnit}).View())
}

// saveWelcome keeps the answers, or the usual settings for who skips them.
func (s *server) saveWelcome(w http.ResponseWriter, r *http.Request) error {
	p := me(r)
	if r.FormValue("skip") != "" {
		return s.greet(w, r, p.Target, p.FarUnit, p.GreenUnit)
	}
	f := site.WelcomeInput{Target: r.FormValue("target"), Far: r.FormValue("far"), Green: r.FormValue("green"), Problems: map[string]string{}}
	target := between(f.Target, 68, 110, "target", f.Problems)
	checkUnits(f.Far, f.Green, f.Problems)
	if len(f.Problems) > 0 {
		return show(w, r, http.StatusUnprocessableEntity, site.NewWelcomePage(shell(r), f).View())
	}
	return s.greet(w, r, target, f.Far, f.Green)
}

func (s *server) greet(w http.ResponseWriter, r *http.Request, target float64, far, green string) error {
	if err := s.store.Greet(r.Context(), me(r).ID, target, far, green); err != nil {
		return err
	}
	at, err := s.homeOf(r, me(r))
	if err != nil {
		return err
	}
	return saved(w, r, at, "welcome")
}

// checkUnits refuses units that there are none of.
func checkUnits(far, green string, problems map[string]string) {
	if far != "yd" && far != "m" {
		problems["far"] = "Choose yards or metres."
	}
	if green != "ft" && green != "m" {
		problems["green"] = "Choose feet or metres."
	}
}
