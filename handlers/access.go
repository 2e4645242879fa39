package handlers

import (
	"net/http"

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
