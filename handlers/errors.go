package handlers

import (
	"context"
	"errors"
	"net/http"
	"net/url"

	"github.com/go-chi/chi/v5"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/site"
)

// errSignedOut says that a session has ended; pages redirect instead.
var errSignedOut = &refusal{http.StatusUnauthorized, "Signed out", "Sign in again."}

// errUnreadable says that a form lacks something that its page always sends.
var errUnreadable = &refusal{http.StatusBadRequest, "Not understood", "Part of the form was missing. Reload the page and try again."}

// statusClientGone is the answer to a client that has gone; nobody reads it.
const statusClientGone = 499

// refusal is an error that is the visitor's, with what its page says.
type refusal struct {
	status        int
	heading, text string
}

func (r *refusal) Error() string { return r.heading }

// answerError turns an error into a status, a page and a line of the log.
func (s *server) answerError(w http.ResponseWriter, r *http.Request, err error) {
	status, heading, text := explain(r, err)
	r = r.WithContext(context.WithoutCancel(r.Context())) // a page that tells of a deadline is made after it
	request := requestID(r)
	if status >= http.StatusInternalServerError {
		s.options.Log.ErrorContext(r.Context(), "failed", "request", request, "method", r.Method, "path", r.URL.Path, "error", err.Error())
	} else {
		request = ""
	}
	if status == statusClientGone {
		w.WriteHeader(status)
		return
	}
	if failed := showError(w, r, status, heading, text, request); failed != nil {
		s.options.Log.ErrorContext(r.Context(), "no answer for an error", "request", requestID(r), "error", failed.Error())
	}
}

// showError shows what went wrong to a browser, or says it to a script.
func showError(w http.ResponseWriter, r *http.Request, status int, heading, text, request string) error {
	if wantsJSON(r) {
		return answerJSON(w, status, scriptAnswer{Error: heading})
	}
	problem := site.NewProblemPage(shell(r), heading, text, request)
	if status == http.StatusServiceUnavailable {
		w.Header().Set("Retry-After", "5")
		problem = problem.Again(r.URL.RequestURI(), r.Method == http.MethodGet, sent(r))
	}
	return show(w, r, status, problem.View())
}

// explain says what an error means to the visitor.
func explain(r *http.Request, err error) (status int, heading, text string) {
	var tooLarge *http.MaxBytesError
	var refused *refusal
	switch {
	case errors.As(err, &refused):
		return refused.status, refused.heading, refused.text
	case errors.Is(err, golf.ErrNotFound):
		return http.StatusNotFound, "Not found", "There is no such page, or you do not have access to it."
	case errors.Is(err, golf.ErrConflict):
		return http.StatusConflict, "Changed in the meantime", "This was also saved in another window. Go back, reload the page and save again."
	case errors.As(err, &tooLarge):
		return http.StatusRequestEntityTooLarge, "Too large", "What you sent is larger than this page accepts."
	case r.Context().Err() == context.Canceled:
		return statusClientGone, "", ""
	case errors.Is(err, db.ErrUnavailable):
		return http.StatusServiceUnavailable, "Temporarily unavailable", "The database is busy or restarting."
	case errors.Is(err, context.DeadlineExceeded):
		return http.StatusServiceUnavailable, "Temporarily unavailable", "This took too long and was stopped."
	default:
		return http.StatusInternalServerError, "Something went wrong", "This is a fault on the server, not yours. Nothing was changed. Go back and try again."
	}
}

// sent is the form of a request, so that a page can offer to send it again; nil
// when there is none, or a file in it.
func sent(r *http.Request) url.Values {
	if r.ParseForm() != nil || r.MultipartForm != nil || len(r.PostForm) == 0 {
		return nil
	}
	return r.PostForm
}

func (s *server) notFound(http.ResponseWriter, *http.Request) error { return golf.ErrNotFound }

// notAllowed answers a method that a page does not have, with those it has.
func (s *server) notAllowed(w http.ResponseWriter, r *http.Request) error {
	routes := chi.RouteContext(r.Context()).Routes
	for _, method := range []string{http.MethodGet, http.MethodPost} {
		if routes.Match(chi.NewRouteContext(), method, r.URL.Path) {
			w.Header().Add("Allow", method)
		}
	}
	return &refusal{http.StatusMethodNotAllowed, "Not possible", "This page does not accept that kind of request."}
}

// tooOften answers a client that tried too often; how long it is to wait stands
// in the header already.
func (s *server) tooOften(w http.ResponseWriter, _ *http.Request) error {
	return &refusal{http.StatusTooManyRequests, "Too many tries", "Wait " + w.Header().Get("Retry-After") + " seconds and try again."}
}
