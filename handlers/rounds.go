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

// ofRound reads the round named in the address.
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
	return s.showStatement(w, r, kept, myself(r), form.Returned{})
}

// seenRound shows the statement of a round to anybody who may read and discuss it.
func (s *server) seenRound(w http.ResponseWriter, r *http.Request) error {
	about, err := s.subject(r)
	if err != nil {
		return err
	}
	n, err := id(r, "round")
	if err != nil {
		return err
	}
	kept, err := s.store.SeenRound(r.Context(), me(r).ID, about.player.ID, golf.RoundID(n))
	if err != nil {
		return err
	}
	return s.showStatement(w, r, kept, about, form.Returned{})
}

// roundCard is a round on a sheet that folds to a card, for its player.
func (s *server) roundCard(w http.ResponseWriter, r *http.Request) error {
	kept, err := s.ofRound(r)
	if err != nil {
		return err
	}
	q, err := accounted(statementInput(r, kept, myself(r), form.Returned{}), kept)
	if err != nil {
		return err
	}
	return show(w, r, http.StatusOK, statement.NewFoldPage(shell(r), q).View())
}

// accounted adds the account of the round to what a statement shows.
func accounted(q statement.RoundInput, kept db.Round) (statement.RoundInput, error) {
	of, err := analysis.StatementOf(playedOf(kept), nil, golf.Yards.Of(kept.BoundaryYd))
	if err != nil {
		return q, err
	}
	q.Account, q.Level = of.Account, of.Level
	return q, nil
}

// showStatement shows a player's round to the player or to a coach; back is a form
// that has problems, empty for none.
func (s *server) showStatement(w http.ResponseWriter, r *http.Request, kept db.Round, about subject, back form.Returned) (err error) {
	if err := s.recordLook(r, about, db.LookStatement, kept.ID); err != nil {
		return err
	}
	q := statementInput(r, kept, about, back)
	q.Today = s.today(r)
	if err := s.besideRound(r, about, kept, &q); err != nil {
		return err
	}
	if q, err = accounted(q, kept); err != nil {
		return err
	}
	page := s.shellOf(r, about)
	if err := s.turnRounds(r, about, kept, &page); err != nil {
		return err
	}
	if err := s.offerUndo(r, &page); err != nil {
		return err
	}
	return show(w, r, statusReturned(back), statement.NewRoundPage(page, q).View())
}

// besideRound reads what stands beside a round: its coach, its plan and its notes.
func (s *server) besideRound(r *http.Request, about subject, kept db.Round, q *statement.RoundInput) (err error) {
	if q.Coached, err = s.coached(r, about.pages); err != nil {
		return err
	}
	if q.Plan, err = s.planOf(r, about, kept); err != nil {
		return err
	}
	if !about.pages.Own {
		if q.Phrases, err = s.phrasesOf(r); err != nil {
			return err
		}
	}
	q.Notes, err = s.notes(r, about.pages, db.NotesOf{Round: kept.ID})
	return err
}

// statementInput is what the statement of a stored round shows.
func statementInput(r *http.Request, kept db.Round, about subject, back form.Returned) statement.RoundInput {
	q := statement.RoundInput{Whose: about.pages, ID: kept.ID, First: kept.FirstHole, Round: kept.Played(), Target: kept.Target, Bounds: golf.Yards.Of(kept.BoundaryYd), Units: unitsOf(me(r)), Conditions: kept.Conditions, EnteredBy: kept.EnteredBy,
		Nines: [2]int{kept.CardOut, kept.CardIn}, Returned: back, On: r.FormValue("on"), JustEntered: about.pages.Own && r.URL.Query().Get(savedParam) == savedRound}
	if !about.pages.Own {
		q.Of = about.player.Name
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
	return redirectAfterRemoval(w, r, paths.Rounds, removal{db.RemovedRound, me(r).ID, n})
}
