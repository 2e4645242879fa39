package handlers

import (
	"crypto/rand"
	"crypto/sha256"
	"encoding/base64"
	"errors"
	"net/http"
	"strings"
	"time"

	"github.com/go-chi/chi/v5"
	"github.com/go-chi/httprate"

	"strokeledger/analysis/golf"
	"strokeledger/web/coach"
	"strokeledger/web/paths"
	"strokeledger/web/site"
)

// feedMost is how often a client may ask for what needs a secret in feedSpan: a program
// of many readers asks for all of their feeds.
const (
	feedMost = 60
	feedSpan = time.Minute
)

// feedPages need a secret instead of a session.
func (s *server) feedPages(r chi.Router) {
	r.Use(httprate.LimitBy(feedMost, feedSpan, byClient, httprate.WithLimitHandler(s.page(s.tooOften))))
	r.Get(paths.NoticesFeed, s.page(s.feed))
	r.Get(paths.DigestEnd, s.page(s.digestEnd))
	r.Post(paths.DigestEnd, s.page(s.endDigest))
	r.Get(paths.DigestProof, s.page(s.digestProof))
	r.Post(paths.DigestProof, s.page(s.proveDigest))
}

// feed answers with the notices of an account as a feed, to whom has its address. The
// notices are not read by that.
func (s *server) feed(w http.ResponseWriter, r *http.Request) error {
	p, f, err := s.store.FeedReader(r.Context(), formID(r, "player"), hashed(r.FormValue("token")))
	if err != nil {
		return err
	}
	kept, err := s.store.Notices(r.Context(), p.ID)
	if err != nil {
		return err
	}
	body, err := coach.NewFeed(coach.FeedInput{Site: s.absolute(r, ""), Name: f.Name, Made: f.MadeAt.In(s.zoneOf(p)), Notices: s.noticesFor(p, kept)})
	if err != nil {
		return err
	}
	sum := sha256.Sum256(body)
	tag := `"` + base64.RawURLEncoding.EncodeToString(sum[:16]) + `"`
	w.Header().Set("Cache-Control", "private, no-cache") // kept by the reader, and asked for again each time
	w.Header().Set("ETag", tag)
	if matches(r.Header.Values("If-None-Match"), tag) {
		w.WriteHeader(http.StatusNotModified)
		return nil
	}
	w.Header().Set("Content-Type", "application/atom+xml; charset=utf-8")
	_, err = w.Write(body)
	return err
}

// matches reports whether the tag of an answer is among those that a reader has.
// Source: RFC 9110, section 13.1.2: lists, any, and comparison without regard to W/.
func matches(headers []string, tag string) bool {
	for _, header := range headers {
		for one := range strings.SplitSeq(header, ",") {
			if one = strings.TrimPrefix(strings.TrimSpace(one), "W/"); one == tag || one == "*" {
				return true
			}
		}
	}
	return false
}

// saveFeed turns the feed of the reader's notices off, or on with a new address, which
// is shown this once.
func (s *server) saveFeed(w http.ResponseWriter, r *http.Request) error {
	switch r.FormValue("feed") {
	case "off":
		if err := s.store.CloseFeed(r.Context(), me(r).ID); err != nil {
			return err
		}
		return saved(w, r, paths.Account, "feed-off")
	case "on":
	default:
		return errUnreadable
	}
	token := rand.Text() + rand.Text()
	var name [16]byte
	rand.Read(name[:])
	if err := s.store.OpenFeed(r.Context(), me(r).ID, hashed(token), randomUUID(name)); err != nil {
		return err
	}
	f := storedAccount(r)
	f.FeedMade = s.absolute(r, paths.NoticesFeedOf(me(r).ID, token))
	return s.showAccount(w, r, http.StatusOK, f)
}

// randomUUID makes a UUID of version 4 of random bytes. Source: RFC 9562, section 5.4.
func randomUUID(b [16]byte) [16]byte {
	b[6], b[8] = b[6]&0x0f|0x40, b[8]&0x3f|0x80
	return b
}

// elsewhere says how the reader hears of notices outside of the site.
func (s *server) elsewhere(r *http.Request, f *site.AccountInput) error {
	kept, err := s.store.Feed(r.Context(), me(r).ID)
	switch {
	case errors.Is(err, golf.ErrNotFound):
	case err != nil:
		return err
	default:
		f.FeedSince = s.here(r, kept.MadeAt)
	}
	return s.mailChosen(r, f)
}
