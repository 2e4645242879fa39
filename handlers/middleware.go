package handlers

import (
	"context"
	"crypto/rand"
	"errors"
	"fmt"
	"net/http"
	"runtime/debug"
	"time"

	"github.com/go-chi/chi/v5"
	"github.com/go-chi/chi/v5/middleware"

	"strokeledger/analysis/golf"
	"strokeledger/static"
	"strokeledger/web/paths"
)

type contextKey int

const (
	requestKey contextKey = iota
	playerKey
)

// largestForm is how many bytes a form may have, and largestFile a form with a file.
// The file itself is limited where it is read.
const (
	largestForm = 1 << 20
	largestFile = 65 << 20
)

// identify gives each request an ID, which the log has and an error page shows.
func (s *server) identify(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		next.ServeHTTP(w, r.WithContext(context.WithValue(r.Context(), requestKey, rand.Text()[:10])))
	})
}

func requestID(r *http.Request) string {
	id, _ := r.Context().Value(requestKey).(string)
	return id
}

// logged logs each request, without its query, which may hold a token.
func (s *server) logged(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		began := time.Now()
		seen := middleware.NewWrapResponseWriter(w, r.ProtoMajor)
		next.ServeHTTP(seen, r)
		s.options.Log.InfoContext(r.Context(), "request", "request", requestID(r), "method", r.Method, "path", r.URL.Path,
			"status", seen.Status(), "bytes", seen.BytesWritten(), "took", time.Since(began).Round(time.Microsecond).String())
	})
}

// recovered turns a panic into an error page. A panic that is meant to abort the
// answer is left to the server.
func (s *server) recovered(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		defer func() {
			switch v := recover(); v {
			case nil:
			case http.ErrAbortHandler:
				panic(v)
			default:
				s.answerError(w, r, fmt.Errorf("panic: %v\n%s", v, debug.Stack()))
			}
		}()
		next.ServeHTTP(w, r)
	})
}

// How long a page may take, and an upload or download, which may be large on a slow
// line.
const (
	pageTime = 20 * time.Second
	fileTime = 5 * time.Minute
	sendTime = 2 * time.Minute  // for an upload to arrive, since other imports wait for it
	lateTime = 10 * time.Second // to answer that it took too long
)

// timed cancels a request that takes too long: what it was waiting for fails, and
// the visitor gets a page that says so.
func (s *server) timed(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		limit := s.options.PageTime
		switch r.URL.Path {
		case paths.Import, paths.ImportConfirm, paths.Export, paths.Everything:
			limit = fileTime
			connection, end := http.NewResponseController(w), time.Now().Add(fileTime+lateTime)
			if err := errors.Join(connection.SetReadDeadline(time.Now().Add(sendTime)), connection.SetWriteDeadline(end)); err != nil {
				s.answerError(w, r, err)
				return
			}
		}
		ctx, cancel := context.WithTimeout(r.Context(), limit)
		defer cancel()
		next.ServeHTTP(w, r.WithContext(ctx))
	})
}

// headers tell browsers to load nothing from other sites, to show no page in a
// frame, and to stay on TLS if the site has it.
func (s *server) headers(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; connect-src 'self'; manifest-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'")
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "same-origin")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cache-Control", "no-store")
		if s.options.Secure {
			h.Set("Strict-Transport-Security", "max-age=31536000; includeSubDomains")
		}
		next.ServeHTTP(w, r)
	})
}

func bounded(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		most := int64(largestForm)
		if r.URL.Path == paths.Import {
			most = largestFile
		}
		r.Body = http.MaxBytesReader(w, r.Body, most)
		next.ServeHTTP(w, r)
	})
}

func (s *server) healthy(w http.ResponseWriter, _ *http.Request) error {
	_, err := w.Write([]byte("ok\n"))
	return err
}

func (s *server) ready(w http.ResponseWriter, r *http.Request) error {
	if err := s.store.Ping(r.Context()); err != nil {
		return err
	}
	return s.healthy(w, r)
}

// file serves a static file, which never changes: its address has a hash of its
// content.
func (s *server) file(w http.ResponseWriter, r *http.Request) error {
	name := chi.URLParam(r, "file")
	data, found := static.File(name)
	if !found {
		return golf.ErrNotFound
	}
	w.Header().Set("Cache-Control", "public, max-age=31536000, immutable")
	w.Header().Set("Content-Type", static.ContentType(name))
	_, err := w.Write(data)
	return err
}
