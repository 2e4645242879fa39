package handlers

import (
	"crypto/rand"
	"encoding/hex"
	"errors"
	"net/http"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/paths"
	"strokeledger/web/site"
)

const invitationDays = 7

func (s *server) account(w http.ResponseWriter, r *http.Request) error {
	return s.showAccount(w, r, http.StatusOK, storedAccount(r))
}

// storedAccount is the form of the account as it is stored.
func storedAccount(r *http.Request) site.AccountInput {
	p := me(r)
	units := unitsOf(p)
	return site.AccountInput{Settings: form.Settings{Name: form.TextOf(p.Name), Target: form.NumberOf(p.Target), Boundary: form.NumberOf(p.BoundaryYd),
		Far: form.ChoiceOf(units.Far), Green: form.ChoiceOf(units.Green), Clubs: form.TextOf(p.Clubs), Zone: form.TextOf(p.Zone), Minutes: form.WholeOf(p.Minutes)}}
}

func (s *server) showAccount(w http.ResponseWriter, r *http.Request, status int, f site.AccountInput) error {
	p := me(r)
	devices, err := s.store.Sessions(r.Context(), p.ID)
	if err != nil {
		return err
	}
	_, this, _ := s.sessionOf(r)
	for _, d := range devices {
		f.Devices = append(f.Devices, site.Device{Name: site.DeviceName(d.Device), Seen: site.DeviceSeen(d.SeenAt, s.here(r, s.now())),
			Token: hex.EncodeToString(d.TokenHash), This: string(d.TokenHash) == string(this)})
	}
	if err := s.elsewhere(r, &f); err != nil {
		return err
	}
	f.Steward, f.Invites = p.Steward, p.Steward && s.options.SignUp == SignUpInvitation
	return show(w, r, status, site.NewAccountPage(shell(r), f).View())
}

func (s *server) saveSettings(w http.ResponseWriter, r *http.Request) error {
	f := form.ParseSettings(r.Form)
	if !f.Sound() {
		return s.showAccount(w, r, http.StatusUnprocessableEntity, site.AccountInput{Settings: f})
	}
	to := db.Settings{Name: f.Name.Value, Units: db.Units{Far: f.Far.Value, Green: f.Green.Value}, Target: f.Target.Value, BoundaryYd: f.Boundary.Value, Clubs: f.Clubs.Value, Zone: f.Zone.Value, Minutes: f.Minutes.Value}
	if err := s.store.SaveSettings(r.Context(), me(r).ID, to); err != nil {
		return err
	}
	return saved(w, r, paths.Account, "settings")
}

// savePassword changes the password and signs out every other device.
func (s *server) savePassword(w http.ResponseWriter, r *http.Request) error {
	p := me(r)
	f := storedAccount(r)
	old, password := r.FormValue("password"), r.FormValue("new")
	f.NewWrong = weakness(password, s.aboutPassword(r, p.Email, p.Name))
	if password != "" && password == old {
		f.NewWrong = "This is your current password."
	}
	ok, err := s.confirmed(r, old)
	if err != nil {
		return s.showUnconfirmed(w, r, &f, &f.OldWrong, err)
	}
	if !ok {
		f.OldWrong = notThePassword
	}
	if f.OldWrong != "" || f.NewWrong != "" {
		return s.showAccount(w, r, http.StatusUnprocessableEntity, f)
	}
	if err := s.renewPassword(w, r, p, password); err != nil {
		return err
	}
	return saved(w, r, paths.Account, "password")
}

// renewPassword stores a password, which ends every session, and begins a new
// session on this device.
func (s *server) renewPassword(w http.ResponseWriter, r *http.Request, p db.Player, password string) error {
	hash, err := s.hashing.hash(r.Context(), string(ownAccount(p.ID)), password)
	if err != nil {
		return err
	}
	if err := s.store.SavePassword(r.Context(), p.ID, hash); err != nil {
		return err
	}
	return s.begin(w, r, p)
}

const notThePassword = "This is not the password of your account."

// showUnconfirmed shows the account again when the password that should confirm a
// change was wrong, or was tried too often. wrong is the field that says so.
func (s *server) showUnconfirmed(w http.ResponseWriter, r *http.Request, f *site.AccountInput, wrong *string, err error) error {
	status := http.StatusUnprocessableEntity
	*wrong = notThePassword
	var slow *errSlowDown
	switch {
	case errors.As(err, &slow):
		slow.after(w)
		status, *wrong = http.StatusTooManyRequests, slow.text()
	case err != nil:
		return err
	}
	return s.showAccount(w, r, status, *f)
}

func (s *server) endDevice(w http.ResponseWriter, r *http.Request) error {
	token, err := hex.DecodeString(r.FormValue("device"))
	if err != nil {
		return golf.ErrNotFound
	}
	if err := s.store.EndSession(r.Context(), me(r).ID, token); err != nil {
		return err
	}
	return saved(w, r, paths.Account, "device")
}

// endOtherDevices signs out every device but this one.
func (s *server) endOtherDevices(w http.ResponseWriter, r *http.Request) error {
	_, keep, _ := s.sessionOf(r)
	if err := s.store.EndOtherSessions(r.Context(), me(r).ID, keep); err != nil {
		return err
	}
	return saved(w, r, paths.Account, "devices")
}

func (s *server) deleteAccount(w http.ResponseWriter, r *http.Request) error {
	f := storedAccount(r)
	if ok, err := s.confirmed(r, r.FormValue("confirm")); !ok {
		return s.showUnconfirmed(w, r, &f, &f.DeleteWrong, err)
	}
	err := s.store.DeletePlayer(r.Context(), me(r).ID)
	if errors.Is(err, db.ErrLastSteward) {
		f.DeleteWrong = "You are the only steward. Make another account a steward first, on the accounts page."
		return s.showAccount(w, r, http.StatusUnprocessableEntity, f)
	}
	if err != nil {
		return err
	}
	http.SetCookie(w, s.cookie(cookieName, "", -1))
	w.Header().Set("Clear-Site-Data", `"cache", "storage"`)
	return saved(w, r, paths.Front, "account")
}

// invite makes a link with which a new player can sign up.
func (s *server) invite(w http.ResponseWriter, r *http.Request) error {
	p := me(r)
	if !p.Steward || s.options.SignUp != SignUpInvitation {
		return golf.ErrNotFound
	}
	token := rand.Text()
	if err := s.store.NewInvitation(r.Context(), p.ID, hashed(token), invitationDays); err != nil {
		return err
	}
	f := storedAccount(r)
	f.Invited = s.absolute(r, paths.Invited(token))
	return s.showAccount(w, r, http.StatusOK, f)
}
