package handlers

import (
	"errors"
	"net/http"
	"strings"

	"github.com/go-chi/chi/v5"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/paths"
	"strokeledger/web/site"
)

func (s *server) front(w http.ResponseWriter, r *http.Request) error {
	if p, ok := playerOf(r); ok {
		return s.redirectHome(w, r, p)
	}
	return s.showFront(w, r, http.StatusOK, "", "")
}

func (s *server) showFront(w http.ResponseWriter, r *http.Request, status int, email, problem string) error {
	door, err := s.door(r)
	if err != nil {
		return err
	}
	page := shell(r)
	if again := r.URL.Query(); r.Method == http.MethodGet && again.Has("again") {
		page.Flash = "You were signed out. Sign in, and the line that you typed is in its field again."
		if again.Get("again") == "form" {
			page.Flash = "You were signed out, so nothing was saved. Signing in leads back to the page."
		}
	}
	return show(w, r, status, site.NewFrontPage(page, email, problem, door).View())
}

func (s *server) help(w http.ResponseWriter, r *http.Request) error {
	return show(w, r, http.StatusOK, site.NewHelpPage(shell(r)).View())
}

func (s *server) guide(w http.ResponseWriter, r *http.Request) error {
	page, ok := site.NewGuidePage(shell(r), chi.URLParam(r, "guide"))
	if !ok {
		return golf.ErrNotFound
	}
	return show(w, r, http.StatusOK, page.View())
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
	return s.beginAndRedirect(w, r, p)
}

// beginAndRedirect begins a session and sends the player to its first page.
func (s *server) beginAndRedirect(w http.ResponseWriter, r *http.Request, p db.Player) error {
	if err := s.begin(w, r, p); err != nil {
		return err
	}
	return s.redirectHome(w, r, p)
}

// redirectHome sends a player to the page that they asked for before they signed in,
// or else to a first page: target and units the first time, later the rounds, or
// the roster for a coach without rounds.
func (s *server) redirectHome(w http.ResponseWriter, r *http.Request, p db.Player) error {
	if at := s.remembered(w, r); at != "" {
		return redirect(w, r, at)
	}
	if !p.Greeted {
		return redirect(w, r, paths.Welcome)
	}
	at, err := s.homeOf(r, p)
	if err != nil {
		return err
	}
	return redirect(w, r, at)
}

// homeOf is the address of the page that a player starts from.
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
	w.Header().Set("Clear-Site-Data", `"cache"`) // not the storage: holes of another player may wait there
	return redirect(w, r, paths.Front)
}
