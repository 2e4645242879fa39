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

// handle answers a request, or returns why it cannot.
type handle func(w http.ResponseWriter, r *http.Request) error

// page makes a handler of a handle; its errors end in one place.
func (s *server) page(h handle) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		if err := h(w, r); err != nil {
			s.answerError(w, r, err)
		}
	}
}

// show renders a page whole before the first byte is sent.
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

// then sends the browser to another page after a POST.
func then(w http.ResponseWriter, r *http.Request, to string) error {
	http.Redirect(w, r, to, http.StatusSeeOther)
	return nil
}

// shell is what every page of this request shares.
func shell(r *http.Request) layout.Page {
	p, _ := playerOf(r)
	return layout.Page{Player: p.Name, ID: p.ID, Teaches: p.Coaches, Flash: savedText(r)}
}

// unitsOf are the units in which a player writes.
func unitsOf(p db.Player) form.Units { return form.Units(p.Units()) }

// id reads a number of the address; one that is none is not found.
func id(r *http.Request, name string) (int64, error) {
	n, err := strconv.ParseInt(chi.URLParam(r, name), 10, 64)
	if err != nil || n < 1 {
		return 0, golf.ErrNotFound
	}
	return n, nil
}
