package handlers

import (
	"net/http"

	"strokeledger/analysis/golf"
	"strokeledger/web/paths"
)

// whose is the player of the address, when who is signed in may look at the
// player's pages; otherwise there is no such page.
func (s *server) whose(r *http.Request) (paths.Whose, error) {
	n, err := id(r, "player")
	if err != nil {
		return paths.Whose{}, err
	}
	if golf.PlayerID(n) != me(r).ID {
		return paths.Whose{}, golf.ErrNotFound
	}
	return paths.Whose{Player: golf.PlayerID(n), Own: true}, nil
}
