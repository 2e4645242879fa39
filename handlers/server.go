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

	"strokeledger/analysis"
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
	Hash       HashCost // of passwords; nothing means 64 MiB, three passes, four lanes

	PageTime time.Duration // that a page may take; 0 means 20 s
	SlowStep time.Duration // by which a stranger's try is slower than the last, beyond ten; 0 means 100 ms
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
	hashing *hashing
	uploads *uploads
	engine  *analysis.Engine
}

// New returns the handler of a whole site.
func New(store *db.Store, options Options) http.Handler { return newServer(store, options).routes() }

func newServer(store *db.Store, options Options) *server {
	if options.Log == nil {
		options.Log = slog.New(slog.DiscardHandler)
	}
	if options.HashesMost == 0 {
		options.HashesMost = 2
	}
	if options.PageTime == 0 {
		options.PageTime = pageTime
	}
	if options.SlowStep == 0 {
		options.SlowStep = slowStep
	}
	return &server{store: store, options: options, hashing: newHashing(options.Hash, options.HashesMost), uploads: newUploads(), engine: analysis.NewEngine()}
}
