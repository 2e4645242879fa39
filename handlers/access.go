package handlers

import (
	"net/http"
	"slices"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/paths"
)

// whose is the player of the address, when who is signed in may look at the
// player's pages; otherwise there is no such page. It is the one place that
// decides; every read asks the database again.
func (s *server) whose(r *http.Request) (db.Player, paths.Whose, error) {
	n, err := id(r, "player")
	if err != nil {
		return db.Player{}, paths.Whose{}, err
	}
	p, err := s.store.Seen(r.Context(), me(r).ID, golf.PlayerID(n))
	return p, paths.Whose{Player: p.ID, Own: p.ID == me(r).ID}, err
}

// looked notes for the pupil what a coach opens. It is called once the page is
// found, since one that is refused shows nothing, and before it is shown, since
// what cannot be noted is not shown either.
func (s *server) looked(r *http.Request, whose paths.Whose, kind db.LookKind, about golf.RoundID) error {
	if whose.Own {
		return nil
	}
	return s.store.RecordLook(r.Context(), me(r).ID, whose.Player, kind, about)
}

// mine are the pages of who is signed in.
func mine(r *http.Request) paths.Whose { return paths.Whose{Player: me(r).ID, Own: true} }

// coached reports whether anybody but the player reads what is written: who
// looks is a coach, or the player has one.
func (s *server) coached(r *http.Request, whose paths.Whose) (bool, error) {
	if !whose.Own {
		return true, nil
	}
	coaches, err := s.store.Coaches(r.Context(), whose.Player)
	return slices.ContainsFunc(coaches, func(c db.Coach) bool { return c.Confirmed }), err
}
