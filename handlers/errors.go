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

// errSignedOut means that a session has ended. Scripts get it; pages redirect.
var errSignedOut = &refusal{http.StatusUnauthorized, "Signed out", "Sign in again."}

// errUnreadable means that a form lacks a field that its page always sends.
var errUnreadable = &refusal{http.StatusBadRequest, "Not understood", "Part of the form was missing. Reload the page and try again."}

// statusClientGone is the status of a request whose client has gone, for the log.
const statusClientGone = 499

// refusal is what an error page says. As an error it has a page of its own, for
// something that the visitor can put right.
type refusal struct {
	status        int
	heading, text string
}

func (r *refusal) Error() string { return r.heading }

// answerError turns an error into a status, a page and, for a fault of ours, a
// line in the log.
func (s *server) answerError(w http.ResponseWriter, r *http.Request, err error) {
	problem := explain(r, err)
	r = r.WithContext(context.WithoutCancel(r.Context())) // the page about a deadline is made after the deadline
	request := requestID(r)
	if problem.status >= http.StatusInternalServerError {
		s.options.Log.ErrorContext(r.Context(), "failed", "request", request, "method", r.Method, "path", r.URL.Path, "error", err.Error())
	} else {
		request = ""
	}
	if problem.status == statusClientGone {
		w.WriteHeader(problem.status)
		return
	}
	if failed := showError(w, r, problem, request); failed != nil {
		s.options.Log.ErrorContext(r.Context(), "no answer for an error", "request", requestID(r), "error", failed.Error())
	}
}

// showError shows a browser what went wrong, or answers a script with it. request
// is the ID under which the log has it, empty when the log has nothing to add.
func showError(w http.ResponseWriter, r *http.Request, problem refusal, request string) error {
	if wantsJSON(r) {
		return answerJSON(w, problem.status, scriptAnswer{Error: problem.heading})
	}
	page := site.NewProblemPage(shell(r), problem.heading, problem.text, request)
	if problem.status == http.StatusServiceUnavailable {
		w.Header().Set("Retry-After", "5")
		page = page.Again(r.URL.RequestURI(), r.Method == http.MethodGet, sent(r))
	}
	return show(w, r, problem.status, page.View())
}

// explain turns an error into what the visitor is shown.
func explain(r *http.Request, err error) refusal {
	var tooLarge *http.MaxBytesError
	var refused *refusal
	switch {
	case errors.As(err, &refused):
		return *refused
	case errors.Is(err, golf.ErrNotFound):
		return refusal{http.StatusNotFound, "Not found", "There is no such page, or you do not have access to it."}
	case errors.Is(err, golf.ErrConflict):
		return refusal{http.StatusConflict, "Changed in the meantime", "This was also saved in another window. Go back, reload the page and save again."}
	case errors.As(err, &tooLarge):
		return refusal{http.StatusRequestEntityTooLarge, "Too large", "What you sent is larger than this page accepts."}
	case r.Context().Err() == context.Canceled:
		return refusal{statusClientGone, "", ""}
	case errors.Is(err, db.ErrUnavailable):
		return refusal{http.StatusServiceUnavailable, "Temporarily unavailable", "The database is busy or restarting."}
	case errors.Is(err, context.DeadlineExceeded):
		return refusal{http.StatusServiceUnavailable, "Temporarily unavailable", "This took too long and was stopped."}
	default:
		return refusal{http.StatusInternalServerError, "Something went wrong", "This is a fault on the server, not yours. Nothing was changed. Go back and try again."}
	}
}

// sent is the form of a request, so that a page can offer to send it again. It is
// nil without a form, or if the form has a file.
func sent(r *http.Request) url.Values {
	if r.ParseForm() != nil || r.MultipartForm != nil || len(r.PostForm) == 0 {
		return nil
	}
	return r.PostForm
}

func (s *server) notFound(http.ResponseWriter, *http.Request) error { return golf.ErrNotFound }

// notAllowed refuses a method that a page does not accept, and lists those it
// does.
func (s *server) notAllowed(w http.ResponseWriter, r *http.Request) error {
	routes := chi.RouteContext(r.Context()).Routes
	for _, method := range []string{http.MethodGet, http.MethodPost} {
		if routes.Match(chi.NewRouteContext(), method, r.URL.Path) {
			w.Header().Add("Allow", method)
		}
	}
	return &refusal{http.StatusMethodNotAllowed, "Not possible", "This page does not accept that kind of request."}
}

// tooOften refuses a client that has tried too often. The header already says how
// long to wait.
func (s *server) tooOften(w http.ResponseWriter, _ *http.Request) error {
	return &refusal{http.StatusTooManyRequests, "Too many tries", "Wait " + w.Header().Get("Retry-After") + " seconds and try again."}
}
