package handlers

import (
	"context"
	"crypto/rand"
	"crypto/sha256"
	"errors"
	"net/http"
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/db"
)

// cookieName is the cookie of a session. It holds the player's number and a
// random token; the server keeps only a hash of the token.
const cookieName = "ledger"

// hostOnly is the prefix with which browsers accept a cookie only from this exact
// host, over TLS.
const hostOnly = "__Host-"

const cookieAge = 60 * 24 * 60 * 60 // s

func hashed(token string) []byte {
	sum := sha256.Sum256([]byte(token))
	return sum[:]
}

// begin signs a player in on this device, ends the session the device had, and
// remembers the device.
func (s *server) begin(w http.ResponseWriter, r *http.Request, p db.Player) error {
	if who, old, ok := s.sessionOf(r); ok {
		if err := s.store.EndSession(r.Context(), who, old); err != nil && !errors.Is(err, golf.ErrNotFound) {
			return err
		}
	}
	if err := s.rememberDevice(w, r, p.ID); err != nil {
		return err
	}
	token := rand.Text() + rand.Text()
	if err := s.store.NewSession(r.Context(), p.ID, hashed(token), device(r)); err != nil {
		return err
	}
	http.SetCookie(w, s.cookie(cookieName, strconv.FormatInt(int64(p.ID), 10)+"."+token, cookieAge))
	return nil
}

// renew extends the cookie of a session by another 60 days, as the database does the
// session.
func (s *server) renew(w http.ResponseWriter, r *http.Request) {
	if c, err := r.Cookie(s.named(cookieName)); err == nil {
		http.SetCookie(w, s.cookie(cookieName, c.Value, cookieAge))
	}
}

// named is the full name of a cookie on this server.
func (s *server) named(cookie string) string {
	if s.options.Secure {
		return hostOnly + cookie
	}
	return cookie
}

func (s *server) cookie(name, value string, age int) *http.Cookie {
	return &http.Cookie{Name: s.named(name), Value: value, Path: "/", MaxAge: age, HttpOnly: true, Secure: s.options.Secure, SameSite: http.SameSiteLaxMode}
}

// deviceMost is how many bytes of a User-Agent header are kept. The header is
// long because its last word is often the one that names the browser.
const deviceMost = 250

// device is the User-Agent header of the browser that signs in, shortened.
func device(r *http.Request) string {
	agent := strings.ToValidUTF8(strings.Map(func(c rune) rune {
		if c < ' ' {
			return -1
		}
		return c
	}, r.UserAgent()), "")
	if len(agent) > deviceMost {
		agent = strings.ToValidUTF8(agent[:deviceMost], "")
	}
	if agent == "" {
		return "a device without a name"
	}
	return agent
}

// sessionOf reads the session of a request.
func (s *server) sessionOf(r *http.Request) (who golf.PlayerID, tokenHash []byte, ok bool) {
	c, err := r.Cookie(s.named(cookieName))
	if err != nil {
		return 0, nil, false
	}
	number, token, found := strings.Cut(c.Value, ".")
	n, err := strconv.ParseInt(number, 10, 64)
	if !found || err != nil {
		return 0, nil, false
	}
	return golf.PlayerID(n), hashed(token), true
}

// withPlayer puts the signed-in player, if any, into the context of a request.
func (s *server) withPlayer(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		who, token, ok := s.sessionOf(r)
		if !ok {
			next.ServeHTTP(w, r)
			return
		}
		p, noted, err := s.store.SignedIn(r.Context(), who, token)
		if noted {
			s.renew(w, r)
		}
		switch {
		case errors.Is(err, golf.ErrNotFound):
			next.ServeHTTP(w, r)
		case err != nil:
			s.answerError(w, r, err)
		default:
			next.ServeHTTP(w, r.WithContext(context.WithValue(r.Context(), playerKey, p)))
		}
	})
}

func playerOf(r *http.Request) (db.Player, bool) {
	p, ok := r.Context().Value(playerKey).(db.Player)
	return p, ok
}

// me is the signed-in player of a request; it may be called only behind
// mustBeSignedIn.
func me(r *http.Request) db.Player {
	p, _ := playerOf(r)
	return p
}
