package handlers

import (
	"net/http"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/paths"
	"strokeledger/web/statement"
)

// ofRound reads the round of the address.
func (s *server) ofRound(r *http.Request) (db.Round, error) {
	n, err := id(r, "round")
	if err != nil {
		return db.Round{}, err
	}
	return s.store.Round(r.Context(), me(r).ID, golf.RoundID(n))
}

func (s *server) round(w http.ResponseWriter, r *http.Request) error {
	kept, err := s.ofRound(r)
	if err != nil {
		return err
	}
	return s.showStatement(w, r, http.StatusOK, kept, me(r), mine(r), form.Returned{})
}

// seenRound is the statement of a round for whoever may see it, to read and to
// write about.
func (s *server) seenRound(w http.ResponseWriter, r *http.Request) error {
	player, whose, err := s.whose(r)
	if err != nil {
		return err
	}
	n, err := id(r, "round")
	if err != nil {
		return err
	}
	kept, err := s.store.SeenRound(r.Context(), me(r).ID, whose.Player, golf.RoundID(n))
	if err != nil {
		return err
	}
	return s.showStatement(w, r, http.StatusOK, kept, player, whose, form.Returned{})
}

// showStatement shows a round of a player's: to the player, or to a coach.
func (s *server) showStatement(w http.ResponseWriter, r *http.Request, status int, kept db.Round, player db.Player, whose paths.Whose, back form.Returned) (err error) {
	if err := s.looked(r, whose, db.LookStatement, kept.ID); err != nil {
		return err
	}
	q := statementInput(r, kept, player, whose, back)
	if q.Coached, err = s.coached(r, whose); err != nil {
		return err
	}
	if q.Notes, err = s.notes(r, whose, db.NotesOf{Round: kept.ID}); err != nil {
		return err
	}
	of, err := analysis.StatementOf(playedOf(kept), nil, golf.Yards.Of(kept.BoundaryYd))
	if err != nil {
		return err
	}
	q.Account, q.Level = of.Account, of.Level
	page := shell(r)
	if err := s.offerUndo(r, &page); err != nil {
		return err
	}
	return show(w, r, status, statement.NewRoundPage(page, q).View())
}

// statementInput is what a statement shows of a stored round.
func statementInput(r *http.Request, kept db.Round, player db.Player, whose paths.Whose, back form.Returned) statement.RoundInput {
	q := statement.RoundInput{Whose: whose, ID: kept.ID, First: kept.FirstHole, Round: kept.Played(), Target: kept.Target, Bounds: golf.Yards.Of(kept.BoundaryYd), Units: unitsOf(me(r)), Note: kept.Conditions,
		Nines: [2]int{kept.CardOut, kept.CardIn}, Returned: back, On: r.FormValue("on"), JustEntered: whose.Own && r.URL.Query().Get(savedParam) == savedRound}
	if !whose.Own {
		q.Of = player.Name
	}
	for _, h := range kept.Holes {
		q.Card = append(q.Card, h.Card())
	}
	return q
}

func parOf(card []golf.CardHole) int {
	par := 0
	for _, h := range card {
		par += h.Par
	}
	return par
}

func (s *server) removeRound(w http.ResponseWriter, r *http.Request) error {
	n, err := id(r, "round")
	if err != nil {
		return err
	}
	if err := s.store.RemoveRound(r.Context(), me(r).ID, golf.RoundID(n)); err != nil {
		return err
	}
	return gone(w, r, paths.Rounds, db.RemovedRound, me(r).ID, n)
}
