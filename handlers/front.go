package handlers

import (
	"errors"
	"net/http"
	"net/mail"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/paths"
	"strokeledger/web/site"
)

func (s *server) front(w http.ResponseWriter, r *http.Request) error {
	if p, ok := playerOf(r); ok {
		return s.home(w, r, p)
	}
	return s.showFront(w, r, http.StatusOK, "", "")
}

func (s *server) showFront(w http.ResponseWriter, r *http.Request, status int, email, problem string) error {
	door, err := s.door(r)
	if err != nil {
		return err
	}
	page := shell(r)
	if r.Method == http.MethodGet && r.URL.Query().Has("again") {
		page.Flash = "You were signed out. Sign in, and the line that you typed is in its field again."
	}
	return show(w, r, status, site.NewFrontPage(page, email, problem, door).View())
}

func (s *server) help(w http.ResponseWriter, r *http.Request) error {
	return show(w, r, http.StatusOK, site.NewHelpPage(shell(r)).View())
}

// door is who may make an account now.
func (s *server) door(r *http.Request) (site.Door, error) {
	any, err := s.store.AnyPlayer(r.Context())
	switch {
	case err != nil:
		return 0, err
	case !any:
		return site.DoorFirst, nil
	case s.options.SignUp == SignUpOpen:
		return site.DoorOpen, nil
	case s.options.SignUp == SignUpInvitation:
		return site.DoorInvited, nil
	default:
		return site.DoorClosed, nil
	}
}

func (s *server) signIn(w http.ResponseWriter, r *http.Request) error {
	email, password := strings.TrimSpace(r.FormValue("email")), r.FormValue("password")
	p, err := s.store.PlayerByEmail(r.Context(), email)
	if err != nil && !errors.Is(err, golf.ErrNotFound) {
		return err
	}
	try, err := s.signInTry(r, email, p)
	if err != nil {
		return err
	}
	ok, err := s.tried(r.Context(), try, p, password)
	var slow *errSlowDown
	switch {
	case errors.As(err, &slow):
		slow.after(w)
		return s.showFront(w, r, http.StatusTooManyRequests, email, slow.text())
	case err != nil:
		return err
	case !ok:
		return s.showFront(w, r, http.StatusUnprocessableEntity, email, "Address and password do not belong together.")
	}
	if err := s.begin(w, r, p); err != nil {
		return err
	}
	return s.home(w, r, p)
}

// home sends somebody to the page that was asked for before signing in, or to
// the one to begin with: once the question for target and units, then the
// rounds, or for who coaches and has none the roster.
func (s *server) home(w http.ResponseWriter, r *http.Request, p db.Player) error {
	if at := s.remembered(w, r); at != "" {
		return then(w, r, at)
	}
	if !p.Greeted {
		return then(w, r, paths.Welcome)
	}
	at, err := s.homeOf(r, p)
	if err != nil {
		return err
	}
	return then(w, r, at)
}

// homeOf is the page that a player begins with.
func (s *server) homeOf(r *http.Request, p db.Player) (string, error) {
	coaches, err := s.store.OnlyCoaches(r.Context(), p.ID)
	if coaches {
		return paths.Coaching, err
	}
	return paths.Rounds, err
}

func (s *server) signOut(w http.ResponseWriter, r *http.Request) error {
	who, token, _ := s.sessionOf(r)
	if err := s.store.EndSession(r.Context(), who, token); err != nil && !errors.Is(err, golf.ErrNotFound) {
		return err
	}
	http.SetCookie(w, s.cookie(cookieName, "", -1))
	w.Header().Set("Clear-Site-Data", `"cache"`) // not the storage: another player's holes may wait there
	return then(w, r, paths.Front)
}

func (s *server) joinForm(w http.ResponseWriter, r *http.Request) error {
	door, err := s.door(r)
	if err != nil {
		return err
	}
	f := site.JoinInput{Token: r.FormValue("token")}
	if door == site.DoorClosed || door == site.DoorInvited && f.Token == "" {
		return golf.ErrNotFound
	}
	return show(w, r, http.StatusOK, site.NewJoinPage(shell(r), f, door).View())
}

func (s *server) join(w http.ResponseWriter, r *http.Request) error {
	door, err := s.door(r)
	if err != nil {
		return err
	}
	if door == site.DoorClosed {
		return golf.ErrNotFound
	}
	f := site.JoinInput{Token: r.FormValue("token"), Name: strings.TrimSpace(r.FormValue("name")), Email: strings.TrimSpace(r.FormValue("email")), Problems: map[string]string{}}
	password := r.FormValue("password")
	checkName(f.Name, f.Problems)
	if at, err := mail.ParseAddress(f.Email); err != nil || at.Address != f.Email || len(f.Email) > 200 {
		f.Problems["email"] = "Not an address. Allowed: one as in name@example.org."
	}
	checkPassword("password", password, f.Problems, s.aboutPassword(r, f.Email, f.Name)...)
	if door == site.DoorFirst && (s.options.SetupToken == "" || f.Token != s.options.SetupToken) {
		f.Problems["token"] = "Not the setup token. The server printed it when it started."
	}
	if len(f.Problems) == 0 {
		p, err := s.newPlayer(r, door, f, password)
		var slow *errSlowDown
		switch {
		case errors.As(err, &slow):
			slow.after(w)
			return &refusal{http.StatusTooManyRequests, "Too many tries", slow.text()}
		case errors.Is(err, db.ErrTaken):
			f.Problems["email"] = takenText(door)
		case err != nil:
			return err
		default:
			if err := s.begin(w, r, p); err != nil {
				return err
			}
			return s.home(w, r, p)
		}
	}
	return show(w, r, http.StatusUnprocessableEntity, site.NewJoinPage(shell(r), f, door).View())
}

// newPlayer makes an account through the door that is open. Where no invitation is
// asked for, a network that keeps giving addresses which have accounts is refused
// for a while, so that nobody reads off who has one.
func (s *server) newPlayer(r *http.Request, door site.Door, f site.JoinInput, password string) (p db.Player, err error) {
	if door != site.DoorOpen {
		return s.throughDoor(r, door, f, password)
	}
	try := db.Try{Account: hashed("join"), Client: hashed("join " + network(r)), Known: true}
	n, err := s.store.CountTry(r.Context(), try, joinsMost)
	if err != nil {
		return p, err
	}
	if n.Own > joinsMost {
		return p, &errSlowDown{n.Wait}
	}
	if p, err = s.throughDoor(r, door, f, password); err != nil {
		return p, err
	}
	return p, s.store.TryPassed(r.Context(), try)
}

func (s *server) throughDoor(r *http.Request, door site.Door, f site.JoinInput, password string) (p db.Player, err error) {
	hash, err := s.hashing.hash(r.Context(), network(r), password)
	if err != nil {
		return p, err
	}
	if door == site.DoorFirst {
		return s.store.FirstPlayer(r.Context(), f.Email, f.Name, hash)
	}
	err = s.store.Tx(r.Context(), func(tx *db.Store) error {
		if door == site.DoorInvited {
			if err := tx.UseInvitation(r.Context(), hashed(f.Token)); err != nil {
				return err
			}
		}
		p, err = tx.NewPlayer(r.Context(), f.Email, f.Name, hash)
		return err
	})
	return p, err
}

func checkName(name string, problems map[string]string) {
	if name == "" || !sayable(name, 80) {
		problems["name"] = "Allowed: 1 to 80 letters, each of which can be seen."
	}
}

// takenText says that an address has an account: plainly to who was invited, and
// to a stranger no more than needed.
func takenText(door site.Door) string {
	if door == site.DoorOpen {
		return "That address cannot be used here. If it is yours, sign in."
	}
	return "There is an account with this address."
}
