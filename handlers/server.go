// Package handlers answers requests: it reads what was asked, asks the store
// and the engine, and answers with a page. Every handler returns an error or
// nil; one place turns errors into answers.
//
// It refuses to compute anything about golf and to know any SQL.
package handlers

import (
	"log/slog"
	"net/http"
	"time"

	"strokeledger/db"
)

// Options are how a server is run.
type Options struct {
	SignUp     SignUp
	SetupToken string // makes the first account of an empty server
	Secure     bool   // a proxy in front speaks TLS, so cookies go over TLS only
	Log        *slog.Logger
	Proxies    []string // address ranges of proxies in front, whose word on the client's address counts
	Address    string   // of the site, as ParseAddress returns it; empty for any
	HashesMost int      // passwords hashed at once; 0 means 2

	PageTime time.Duration // that a page may take; 0 means 20 s
}

// SignUp is who may make an account.
type SignUp string

// The ways of signing up.
const (
	SignUpOpen       SignUp = "open"
	SignUpInvitation SignUp = "invitation"
	SignUpClosed     SignUp = "closed"
)

type server struct {
	store   *db.Store
	options Options
	hashes  chan struct{} // a place for each password that may be hashed at once
	uploads *uploads
}

// New returns the handler of a whole site.
func New(store *db.Store, options Options) http.Handler {
	if options.Log == nil {
		options.Log = slog.New(slog.DiscardHandler)
	}
	if options.HashesMost == 0 {
		options.HashesMost = 2
	}
	if options.PageTime == 0 {
		options.PageTime = pageTime
	}
	s := &server{store: store, options: options, hashes: make(chan struct{}, options.HashesMost), uploads: newUploads()}
	return s.routes()
}
