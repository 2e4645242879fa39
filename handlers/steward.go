package handlers

import (
	"crypto/rand"
	"net/http"
	"strconv"

	"strokeledger/analysis/golf"
	"strokeledger/web/pages"
	"strokeledger/web/paths"
)

// resetHours is how long a link for a new password works.
const resetHours = 24

func (s *server) accounts(w http.ResponseWriter, r *http.Request) error {
	return s.showAccounts(w, r, 0, "")
}

// showAccounts shows the accounts to the steward; link is one that was just
// made for a player.
func (s *server) showAccounts(w http.ResponseWriter, r *http.Request, player golf.PlayerID, link string) error {
	all, err := s.store.Accounts(r.Context(), me(r).ID)
	if err != nil {
		return err
	}
	if len(all) == 0 {
		return golf.ErrNotFound
	}
	var listed []pages.ListedAccount
	name := ""
	for _, a := range all {
		listed = append(listed, pages.ListedAccount{ID: a.ID, Name: a.Name, Email: a.Email, Since: a.CreatedAt.Format("2 Jan 2006"), Steward: a.Steward})
		if a.ID == player {
			name = a.Name
		}
	}
	return show(w, r, http.StatusOK, pages.NewAccounts(shell(r), listed, link, name).View())
}

// makeReset makes a link with which a player who forgot the password sets
// another.
func (s *server) makeReset(w http.ResponseWriter, r *http.Request) error {
	n, err := id(r, "player")
	if err != nil {
		return err
	}
	token := rand.Text()
	if err := s.store.NewReset(r.Context(), me(r).ID, golf.PlayerID(n), hashed(token), resetHours); err != nil {
		return err
	}
	return s.showAccounts(w, r, golf.PlayerID(n), s.absolute(r, paths.ResetLink(golf.PlayerID(n), token)))
}

// resetForm asks for the new password; opening a link changes nothing.
func (s *server) resetForm(w http.ResponseWriter, r *http.Request) error {
	return show(w, r, http.StatusOK, pages.NewReset(shell(r), r.FormValue("player"), r.FormValue("token"), "").View())
}

func (s *server) reset(w http.ResponseWriter, r *http.Request) error {
	player, token, problems := r.FormValue("player"), r.FormValue("token"), map[string]string{}
	checkPassword("password", r.FormValue("password"), problems)
	if len(problems) > 0 {
		return show(w, r, http.StatusUnprocessableEntity, pages.NewReset(shell(r), player, token, problems["password"]).View())
	}
	n, err := strconv.ParseInt(player, 10, 64)
	if err != nil {
		return golf.ErrNotFound
	}
	hash, err := s.hash(r.Context(), r.FormValue("password"))
	if err != nil {
		return err
	}
	if err := s.store.UseReset(r.Context(), golf.PlayerID(n), hashed(token), hash); err != nil {
		return err
	}
	return saved(w, r, paths.Front, "reset")
}
