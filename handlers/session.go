package handlers

import (
	"context"
	"crypto/rand"
	"crypto/sha256"
	"errors"
	"net/http"
	"net/url"
	"regexp"
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// cookieName is the cookie of a session. It holds the player's number and a
// random token; the server keeps only a hash of the token.
const cookieName = "ledger"

// hostOnly before a cookie's name makes a browser accept it only from this exact
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

// renew gives the cookie of a session another 60 days, as the database gives the
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

// device is the User-Agent header of the browser that signs in, cut to length.
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

// me is the signed-in player of a request that has passed mustBeSignedIn.
func me(r *http.Request) db.Player {
	p, _ := playerOf(r)
	return p
}

// thenName is the cookie that remembers which page a visitor asked for before
// signing in, such as a link that a pupil sent to a coach.
const (
	thenName = "ledger-then"
	thenAge  = 15 * 60 // s
	thenMost = 1000    // bytes
)

// rememberAddress remembers a page of this site until the visitor has signed in.
func (s *server) rememberAddress(w http.ResponseWriter, at string) {
	if ownPage(at) {
		http.SetCookie(w, s.cookie(thenName, url.QueryEscape(at), thenAge))
	}
}

// remembered is the page that a visitor asked for before signing in, and forgets
// it; empty for none.
func (s *server) remembered(w http.ResponseWriter, r *http.Request) string {
	c, err := r.Cookie(s.named(thenName))
	if err != nil {
		return ""
	}
	http.SetCookie(w, s.cookie(thenName, "", -1))
	at, err := url.QueryUnescape(c.Value)
	if err != nil || !ownPage(at) {
		return ""
	}
	return at
}

// ownPage reports whether an address is a path of this site that no browser
// would take for an address of another site.
func ownPage(at string) bool {
	u, err := url.Parse(at)
	if err != nil || u.Scheme != "" || u.Host != "" || u.User != nil || u.Opaque != "" || u.Fragment != "" {
		return false
	}
	visible := func(c rune) bool { return c > ' ' && c <= '~' && c != '\\' }
	return len(at) <= thenMost && strings.HasPrefix(at, "/") && !strings.HasPrefix(at, "//") &&
		!strings.ContainsFunc(at, func(c rune) bool { return !visible(c) })
}

// mustBeSignedIn redirects visitors to the front page and remembers the page they
// asked for, so that signing in leads there. A line they sent is put back in the
// field of its hole. A script gets 401 and keeps what it sent.
func (s *server) mustBeSignedIn(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if _, ok := playerOf(r); ok {
			next.ServeHTTP(w, r)
			return
		}
		if wantsJSON(r) {
			s.answerError(w, r, errSignedOut)
			return
		}
		to := paths.Front
		if at := typedAt(r); at != "" {
			s.rememberAddress(w, at)
			to = paths.SignInAgain
		} else if r.Method == http.MethodGet {
			s.rememberAddress(w, r.URL.RequestURI())
		}
		http.Redirect(w, r, to, http.StatusSeeOther)
	})
}

var holeAddress = regexp.MustCompile(`^/rounds/([0-9]{1,18})/holes/([0-9]{1,2})$`)

// typedAt is the address of a hole's page with the line from a form in its field;
// empty for any other form.
func typedAt(r *http.Request) string {
	found := holeAddress.FindStringSubmatch(r.URL.Path)
	line := r.PostFormValue("line")
	if r.Method != http.MethodPost || found == nil || line == "" || len(line) > form.LongestLine {
		return ""
	}
	round, _ := strconv.ParseInt(found[1], 10, 64) // digits alone, few enough, by the pattern
	hole, _ := strconv.Atoi(found[2])
	return paths.HoleTyped(golf.RoundID(round), hole, line)
}
