package handlers

import (
	"net/http"
	"slices"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/paths"
)

// whose is the player of the address, when who is signed in may look at the
// player's pages; otherwise there is no such page. It is the one place that
// decides, and that notes for the pupil what a coach opens; every read asks the
// database again.
func (s *server) whose(r *http.Request) (db.Player, paths.Whose, error) {
	n, err := id(r, "player")
	if err != nil {
		return db.Player{}, paths.Whose{}, err
	}
	page := ""
	if r.Method == http.MethodGet {
		_, page, _ = strings.Cut(strings.TrimPrefix(r.URL.Path, paths.Players+"/"), "/")
		page = "/" + page
	}
	p, err := s.store.Seen(r.Context(), me(r).ID, golf.PlayerID(n), page)
	return p, paths.Whose{Player: p.ID, Own: p.ID == me(r).ID}, err
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
