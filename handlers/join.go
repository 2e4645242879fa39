package handlers

import (
	"errors"
	"net/http"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/site"
)

// door says who may create an account now.
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

// openDoor is the door unless it is closed: then the page is not found.
func (s *server) openDoor(r *http.Request) (site.Door, error) {
	door, err := s.door(r)
	if err == nil && door == site.DoorClosed {
		err = golf.ErrNotFound
	}
	return door, err
}

func (s *server) joinForm(w http.ResponseWriter, r *http.Request) error {
	door, err := s.openDoor(r)
	if err != nil {
		return err
	}
	f := form.Join{Token: r.FormValue("token")}
	if door == site.DoorInvited && f.Token == "" {
		return golf.ErrNotFound
	}
	return show(w, r, http.StatusOK, site.NewJoinPage(shell(r), f, door).View())
}

func (s *server) join(w http.ResponseWriter, r *http.Request) error {
	door, err := s.openDoor(r)
	if err != nil {
		return err
	}
	f := s.readJoin(r, door)
	if !f.Sound() {
		return showJoin(w, r, f, door)
	}
	p, err := s.newPlayer(r, door, f, r.FormValue("password"))
	var slow *errSlowDown
	switch {
	case errors.As(err, &slow):
		slow.after(w)
		return &refusal{http.StatusTooManyRequests, "Too many tries", slow.text()}
	case errors.Is(err, db.ErrTaken):
		f.Email.Problem = takenText(door)
		return showJoin(w, r, f, door)
	case err != nil:
		return err
	}
	return s.beginAndRedirect(w, r, p)
}

// readJoin reads and checks the form for a new account.
func (s *server) readJoin(r *http.Request, door site.Door) form.Join {
	f := form.ParseJoin(r.Form)
	f.Password.Problem = weakness(r.FormValue("password"), s.aboutPassword(r, f.Email.Text, f.Name.Text))
	if door == site.DoorFirst && (s.options.SetupToken == "" || f.Token != s.options.SetupToken) {
		f.TokenWrong = "Not the setup token. The server printed it when it started."
	}
	return f
}

// showJoin shows the form for a new account again, with its problems.
func showJoin(w http.ResponseWriter, r *http.Request, f form.Join, door site.Door) error {
	return show(w, r, http.StatusUnprocessableEntity, site.NewJoinPage(shell(r), f, door).View())
}

// newPlayer creates an account. Where no invitation is needed, a network that keeps
// entering addresses which have accounts is refused for a while, so that nobody can
// find out who has one.
func (s *server) newPlayer(r *http.Request, door site.Door, f form.Join, password string) (p db.Player, err error) {
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

func (s *server) throughDoor(r *http.Request, door site.Door, f form.Join, password string) (p db.Player, err error) {
	hash, err := s.hashing.hash(r.Context(), network(r), password)
	if err != nil {
		return p, err
	}
	if door == site.DoorFirst {
		return s.store.FirstPlayer(r.Context(), f.Email.Value, f.Name.Value, hash)
	}
	err = s.store.Tx(r.Context(), func(tx *db.Store) error {
		if door == site.DoorInvited {
			if err := tx.UseInvitation(r.Context(), hashed(f.Token)); err != nil {
				return err
			}
		}
		p, err = tx.NewPlayer(r.Context(), f.Email.Value, f.Name.Value, hash)
		return err
	})
	return p, err
}

// takenText says that an address has an account: plainly to somebody who was
// invited, and no more than necessary to a stranger.
func takenText(door site.Door) string {
	if door == site.DoorOpen {
		return "That address cannot be used here. If it is yours, sign in."
	}
	return "There is an account with this address."
}
