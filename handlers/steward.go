package handlers

import (
	"crypto/rand"
	"encoding/hex"
	"errors"
	"net/http"
	"strconv"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/paths"
	"strokeledger/web/site"
	"strokeledger/web/words"
)

// resetHours is how long a link for a new password works.
const resetHours = 24

func (s *server) accounts(w http.ResponseWriter, r *http.Request) error {
	return s.showAccounts(w, r, http.StatusOK, site.AccountsInput{})
}

// showAccounts shows the accounts to the steward.
func (s *server) showAccounts(w http.ResponseWriter, r *http.Request, status int, q site.AccountsInput) error {
	all, err := s.store.Accounts(r.Context(), me(r).ID)
	if err != nil {
		return err
	}
	if len(all) == 0 {
		return golf.ErrNotFound
	}
	for _, a := range all {
		l := site.ListedAccount{ID: a.ID, Name: a.Name, Email: a.Email, Since: words.ShortDay(golf.DateOf(s.here(r, a.CreatedAt))), Steward: a.Steward}
		if a.ResetEnds != nil {
			l.ResetUntil = words.Moment(s.here(r, *a.ResetEnds))
		}
		q.All = append(q.All, l)
	}
	invitations, err := s.store.Invitations(r.Context(), me(r).ID)
	if err != nil {
		return err
	}
	for _, i := range invitations {
		q.Invitations = append(q.Invitations, site.OpenInvitation{MadeBy: i.MadeBy, Until: words.Moment(s.here(r, i.ExpiresAt)), Token: hex.EncodeToString(i.TokenHash)})
	}
	return show(w, r, status, site.NewAccountsPage(shell(r), q).View())
}

// createReset creates a link with which a player who forgot the password can set a
// new one.
func (s *server) createReset(w http.ResponseWriter, r *http.Request) error {
	n, err := id(r, "player")
	if err != nil {
		return err
	}
	token := rand.Text()
	if err := s.store.NewReset(r.Context(), me(r).ID, golf.PlayerID(n), hashed(token), resetHours); err != nil {
		return err
	}
	return s.showAccounts(w, r, http.StatusOK, site.AccountsInput{For: golf.PlayerID(n), Link: s.absolute(r, paths.ResetLink(golf.PlayerID(n), token))})
}

// endReset revokes such a link.
func (s *server) endReset(w http.ResponseWriter, r *http.Request) error {
	n, err := id(r, "player")
	if err != nil {
		return err
	}
	if err := s.store.EndReset(r.Context(), me(r).ID, golf.PlayerID(n)); err != nil {
		return err
	}
	return saved(w, r, paths.Accounts, "link")
}

// endInvitation revokes an invitation.
func (s *server) endInvitation(w http.ResponseWriter, r *http.Request) error {
	token, err := hex.DecodeString(r.FormValue("invitation"))
	if err != nil {
		return golf.ErrNotFound
	}
	if err := s.store.EndInvitation(r.Context(), me(r).ID, token); err != nil {
		return err
	}
	return saved(w, r, paths.Accounts, "invitation")
}

// makeSteward makes another account a steward.
func (s *server) makeSteward(w http.ResponseWriter, r *http.Request) error {
	n, err := id(r, "player")
	if err != nil {
		return err
	}
	if err := s.store.MakeSteward(r.Context(), me(r).ID, golf.PlayerID(n)); err != nil {
		return err
	}
	return saved(w, r, paths.Accounts, "steward")
}

// leaveOffice makes a steward an ordinary account, if another steward remains.
func (s *server) leaveOffice(w http.ResponseWriter, r *http.Request) error {
	err := s.store.LeaveStewards(r.Context(), me(r).ID)
	if errors.Is(err, db.ErrLastSteward) {
		return s.showAccounts(w, r, http.StatusUnprocessableEntity, site.AccountsInput{Problem: "You are the only steward. Make another account a steward first."})
	}
	if err != nil {
		return err
	}
	return saved(w, r, paths.Account, "left")
}

// resetForm asks for the new password; opening a link changes nothing.
func (s *server) resetForm(w http.ResponseWriter, r *http.Request) error {
	return show(w, r, http.StatusOK, site.NewResetPage(shell(r), r.FormValue("player"), r.FormValue("token"), "").View())
}

// reset sets the new password. It forgets the tries of strangers, and from now on
// the account knows this browser.
func (s *server) reset(w http.ResponseWriter, r *http.Request) error {
	player, token := r.FormValue("player"), r.FormValue("token")
	n, _ := strconv.ParseInt(player, 10, 64) // 0, which no player has, if it is not a number
	p, err := s.store.Resetting(r.Context(), golf.PlayerID(n), hashed(token))
	if err != nil && !errors.Is(err, golf.ErrNotFound) {
		return err
	}
	if wrong := weakness(r.FormValue("password"), s.aboutPassword(r, p.Email, p.Name)); wrong != "" {
		return show(w, r, http.StatusUnprocessableEntity, site.NewResetPage(shell(r), player, token, wrong).View())
	}
	if p.ID == 0 {
		return golf.ErrNotFound
	}
	if err := s.useReset(r, p, token); err != nil {
		return err
	}
	if err := s.rememberDevice(w, r, p.ID); err != nil {
		return err
	}
	return saved(w, r, paths.Front, "reset")
}

// useReset sets a new password with a token, and forgets the tries of the old one.
func (s *server) useReset(r *http.Request, p db.Player, token string) error {
	hash, err := s.hashing.hash(r.Context(), network(r), r.FormValue("password"))
	if err != nil {
		return err
	}
	if err := s.store.UseReset(r.Context(), p.ID, hashed(token), hash); err != nil {
		return err
	}
	for _, account := range [][]byte{signInAccount(p.Email), ownAccount(p.ID)} {
		if err := s.store.ForgetTries(r.Context(), account); err != nil {
			return err
		}
	}
	return nil
}
