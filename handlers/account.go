package handlers

import (
	"crypto/rand"
	"encoding/hex"
	"errors"
	"net/http"
	"strconv"
	"strings"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/paths"
	"strokeledger/web/site"
)

const invitationDays = 7

func (s *server) account(w http.ResponseWriter, r *http.Request) error {
	p := me(r)
	return s.showAccount(w, r, http.StatusOK, site.AccountInput{Name: p.Name, Target: number(p.Target), Boundary: number(p.BoundaryYd), Far: p.FarUnit, Green: p.GreenUnit, Clubs: p.Clubs})
}

// showAccount shows the account with what was typed; a form that was not sent
// shows what is kept.
func (s *server) showAccount(w http.ResponseWriter, r *http.Request, status int, f site.AccountInput) error {
	p := me(r)
	if f.Name == "" && f.Target == "" {
		f.Name, f.Target, f.Boundary, f.Far, f.Green, f.Clubs = p.Name, number(p.Target), number(p.BoundaryYd), p.FarUnit, p.GreenUnit, p.Clubs
	}
	devices, err := s.store.Sessions(r.Context(), p.ID)
	if err != nil {
		return err
	}
	_, this, _ := s.sessionOf(r)
	for _, d := range devices {
		f.Devices = append(f.Devices, site.Device{Name: site.DeviceName(d.Device), Seen: site.DeviceSeen(d.SeenAt, time.Now()),
			Token: hex.EncodeToString(d.TokenHash), This: string(d.TokenHash) == string(this)})
	}
	f.Steward, f.Invites = p.Steward, p.Steward && s.options.SignUp == SignUpInvitation
	return show(w, r, status, site.NewAccountPage(shell(r), f).View())
}

func (s *server) saveSettings(w http.ResponseWriter, r *http.Request) error {
	f := site.AccountInput{Name: strings.TrimSpace(r.FormValue("name")), Target: r.FormValue("target"), Boundary: r.FormValue("boundary"),
		Far: r.FormValue("far"), Green: r.FormValue("green"), Clubs: strings.Join(strings.Fields(r.FormValue("clubs")), " "), Problems: map[string]string{}}
	checkName(f.Name, f.Problems)
	target := between(f.Target, 68, 110, "target", f.Problems)
	boundary := between(f.Boundary, golf.MinBoundary.Yards(), golf.MaxBoundary.Yards(), "boundary", f.Problems)
	if !sayable(f.Clubs, 200) || strings.Contains(f.Clubs, "/") {
		f.Problems["clubs"] = "Allowed: at most 200 letters, each of which can be seen, without a slash."
	}
	checkUnits(f.Far, f.Green, f.Problems)
	if len(f.Problems) > 0 {
		return s.showAccount(w, r, http.StatusUnprocessableEntity, f)
	}
	if err := s.store.SaveSettings(r.Context(), me(r).ID, db.Settings{Name: f.Name, FarUnit: f.Far, GreenUnit: f.Green, Target: target, BoundaryYd: boundary, Clubs: f.Clubs}); err != nil {
		return err
	}
	return saved(w, r, paths.Account, "settings")
}

// between reads a number of a form that must lie between two ends.
func between(text string, low, high float64, field string, problems map[string]string) float64 {
	x, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(text), ",", ".", 1), 64)
	if err != nil || !(x >= low && x <= high) {
		problems[field] = "Allowed: " + number(low) + " to " + number(high) + "."
	}
	return x
}

func number(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// savePassword changes the password and signs every device out; this one goes on
// with another token.
func (s *server) savePassword(w http.ResponseWriter, r *http.Request) error {
	p := me(r)
	f := site.AccountInput{Problems: map[string]string{}}
	old, password := r.FormValue("password"), r.FormValue("new")
	checkPassword("new", password, f.Problems, s.aboutPassword(r, p.Email, p.Name)...)
	if password != "" && password == old {
		f.Problems["new"] = "This is your current password."
	}
	ok, err := s.confirmed(r, old)
	if err != nil {
		return s.showUnconfirmed(w, r, "password", err)
	}
	if !ok {
		f.Problems["password"] = notThePassword
	}
	if len(f.Problems) > 0 {
		return s.showAccount(w, r, http.StatusUnprocessableEntity, f)
	}
	hash, err := s.hashing.hash(r.Context(), string(ownAccount(p.ID)), password)
	if err != nil {
		return err
	}
	if err := s.store.SavePassword(r.Context(), p.ID, hash); err != nil {
		return err
	}
	if err := s.begin(w, r, p); err != nil {
		return err
	}
	return saved(w, r, paths.Account, "password")
}

const notThePassword = "This is not the password of your account."

// showUnconfirmed shows the account again to who gave another password than its
// own, or gave it too often.
func (s *server) showUnconfirmed(w http.ResponseWriter, r *http.Request, field string, err error) error {
	status, problem := http.StatusUnprocessableEntity, notThePassword
	var slow *errSlowDown
	switch {
	case errors.As(err, &slow):
		slow.after(w)
		status, problem = http.StatusTooManyRequests, slow.text()
	case err != nil:
		return err
	}
	return s.showAccount(w, r, status, site.AccountInput{Problems: map[string]string{field: problem}})
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

// endOtherDevices signs every device out but this one.
func (s *server) endOtherDevices(w http.ResponseWriter, r *http.Request) error {
	_, keep, _ := s.sessionOf(r)
	if err := s.store.EndOtherSessions(r.Context(), me(r).ID, keep); err != nil {
		return err
	}
	return saved(w, r, paths.Account, "devices")
}

func (s *server) deleteAccount(w http.ResponseWriter, r *http.Request) error {
	if ok, err := s.confirmed(r, r.FormValue("confirm")); !ok {
		return s.showUnconfirmed(w, r, "confirm", err)
	}
	err := s.store.DeletePlayer(r.Context(), me(r).ID)
	if errors.Is(err, db.ErrLastSteward) {
		return s.showAccount(w, r, http.StatusUnprocessableEntity, site.AccountInput{Problems: map[string]string{
			"confirm": "You are the only steward. Make another account a steward first, on the accounts page."}})
	}
	if err != nil {
		return err
	}
	http.SetCookie(w, s.cookie(cookieName, "", -1))
	w.Header().Set("Clear-Site-Data", `"cache", "storage"`)
	return saved(w, r, paths.Front, "account")
}

// invite makes an invitation of the steward's.
func (s *server) invite(w http.ResponseWriter, r *http.Request) error {
	p := me(r)
	if !p.Steward || s.options.SignUp != SignUpInvitation {
		return golf.ErrNotFound
	}
	token := rand.Text()
	if err := s.store.NewInvitation(r.Context(), p.ID, hashed(token), invitationDays); err != nil {
		return err
	}
	return s.showAccount(w, r, http.StatusOK, site.AccountInput{Invited: s.absolute(r, paths.Invited(token))})
}
