// Package handlers answers requests. A handler reads the request, asks the store and
// the engine, and shows a page; one place turns the error it returns into an answer.
//
// It computes nothing about golf and has no SQL.
package handlers

import (
	"context"
	"log/slog"
	"net/http"
	"time"

	"strokeledger/analysis"
	"strokeledger/db"
	"strokeledger/handlers/mail"
)

// Options say how a server runs.
type Options struct {
	SignUp     SignUp
	SetupToken string // makes the first account of an empty server
	Secure     bool   // a proxy in front speaks TLS, so cookies go over TLS only
	Log        *slog.Logger
	Proxies    []string // address ranges of proxies in front, which report the client's address
	Address    string   // of the site, as ParseAddress returns it; empty for any
	HashesMost int      // passwords hashed at once; 0 means 2
	Hash       HashCost // of passwords; the zero value means 64 MiB, three passes, four lanes

	Mail func(context.Context, mail.Letter) error // sends a letter, with links that start with Address; nil for a site without mail

	Clock func() time.Time // tells the moment, in the time zone of players who have chosen none; nil means the machine's

	ChanceRounds int // played for the chance of a target; 0 means as many as the engine plays

	PageTime time.Duration // the longest that a page may take; 0 means 20 s
	SlowStep time.Duration // how much longer each further try of an unknown client takes; 0 means 100 ms
}

// SignUp says who may create an account.
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
	worked  *worked
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
	return &server{store: store, options: options, hashing: newHashing(options.Hash, options.HashesMost), uploads: newUploads(), engine: analysis.NewEngine(), worked: newWorked()}
}
