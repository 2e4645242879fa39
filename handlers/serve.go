package handlers

import (
	"bytes"
	"net/http"
	"strconv"

	"github.com/a-h/templ"
	"github.com/go-chi/chi/v5"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/layout"
)

// handle answers a request, or returns the error that prevents it.
type handle func(w http.ResponseWriter, r *http.Request) error

// page turns a handle into a handler; errors of all of them are answered in one
// place.
func (s *server) page(h handle) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		if err := h(w, r); err != nil {
			s.answerError(w, r, err)
		}
	}
}

// response is how a page is sent: its status, and what it shares with every page.
type response struct {
	status int
	page   layout.Page
}

// show renders a whole page before it sends the first byte.
func show(w http.ResponseWriter, r *http.Request, status int, page templ.Component) error {
	var b bytes.Buffer
	if err := page.Render(r.Context(), &b); err != nil {
		return err
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	_, err := b.WriteTo(w)
	return err
}

// redirect sends the browser to another page, with GET.
func redirect(w http.ResponseWriter, r *http.Request, to string) error {
	http.Redirect(w, r, to, http.StatusSeeOther)
	return nil
}

// statusReturned is the status of a page that shows a form with problems, if one
// came back.
func statusReturned(back form.Returned) int {
	if back == (form.Returned{}) || back.Inserted {
		return http.StatusOK
	}
	return http.StatusUnprocessableEntity
}

// shell is what every page of this request shares.
func shell(r *http.Request) layout.Page {
	p, _ := playerOf(r)
	return layout.Page{Player: p.Name, ID: p.ID, Teaches: p.Teaches, Notices: p.Notices, Flash: savedText(r)}
}

// unitsOf are the units in which a player enters distances.
func unitsOf(p db.Player) form.Units { return form.Units(p.Units()) }

// id reads a number from the address; anything that is not a positive number is
// not found.
func id(r *http.Request, name string) (int64, error) {
	return parseID(chi.URLParam(r, name))
}

// parseID reads a number of something that is kept.
func parseID(text string) (int64, error) {
	n, err := strconv.ParseInt(text, 10, 64)
	if err != nil || n < 1 {
		return 0, golf.ErrNotFound
	}
	return n, nil
}
