package handlers

import (
	"context"
	"crypto/rand"
	"net/http"
	"net/netip"
	"strconv"
	"strings"
	"time"

	"github.com/go-chi/chi/v5/middleware"

	"strokeledger/analysis/golf"
	"strokeledger/db"
)

// triesOfPassword is how many tries of a password a client has for an account in a
// quarter of an hour, and a signed-in player for the own.
const triesOfPassword = 10

// joinsMost is how many tries to make an account a network has in a quarter of an
// hour that make none; one that does starts anew.
const joinsMost = 5

// Beyond as many tries for an account from everywhere, each from a client that it
// does not know is slower than the one before, up to a most.
const (
	slowAfter = 10
	slowStep  = 100 * time.Millisecond
	slowMost  = 4 * time.Second
)

// The cookie that a browser keeps after its first sign-in, also when it signs
// out: a random token, of which the server keeps the hash by account.
const (
	deviceName  = "ledger-device"
	deviceAge   = 365 * 24 * 60 * 60 // s
	deviceToken = 52                 // letters of a token
)

// errSlowDown says that a client has tried too often; its text is for the page.
type errSlowDown struct{ wait time.Duration }

func (e *errSlowDown) Error() string { return "too many tries" }

// text says how long to wait.
func (e *errSlowDown) text() string {
	minutes := max(1, int((e.wait+time.Minute-1)/time.Minute))
	if minutes == 1 {
		return "Too many tries. Wait a minute."
	}
	return "Too many tries. Wait " + strconv.Itoa(minutes) + " minutes."
}

// after tells a browser when to come back.
func (e *errSlowDown) after(w http.ResponseWriter) {
	w.Header().Set("Retry-After", strconv.Itoa(max(1, int(e.wait/time.Second))))
}

// network is the part of the client's address that one household or office
// shares: a /24 of IPv4, a /64 of IPv6.
func network(r *http.Request) string {
	return networkOf(middleware.GetClientIP(r.Context()))
}

func networkOf(address string) string {
	ip, err := netip.ParseAddr(address)
	if err != nil {
		return address
	}
	ip, bits := ip.Unmap().WithZone(""), 64
	if ip.Is4() {
		bits = 24
	}
	prefix, err := ip.Prefix(bits)
	if err != nil {
		return address
	}
	return prefix.String()
}

// signInAccount names an account by its address, whether there is one or not.
func signInAccount(email string) []byte { return hashed("sign-in " + strings.ToLower(email)) }

// ownAccount names the account of who is signed in and gives the password again.
func ownAccount(who golf.PlayerID) []byte {
	return hashed("password " + strconv.FormatInt(int64(who), 10))
}

// signInTry is a try to sign in. A browser that signed in to the account before is
// counted by itself, whatever its network does.
func (s *server) signInTry(r *http.Request, email string, p db.Player) (db.Try, error) {
	account := signInAccount(email)
	if token, ok := s.deviceOf(r); ok && p.ID != 0 {
		known, err := s.store.KnowsDevice(r.Context(), p.ID, hashed(token))
		if err != nil {
			return db.Try{}, err
		}
		if known {
			return db.Try{Account: account, Client: hashed(string(account) + " device " + token), Known: true}, nil
		}
	}
	return db.Try{Account: account, Client: hashed(string(account) + " network " + network(r))}, nil
}

// tried counts a try, then checks the password: errSlowDown when there were too
// many. The hash of an account is made anew when hashes cost otherwise now.
func (s *server) tried(ctx context.Context, try db.Try, p db.Player, password string) (bool, error) {
	n, err := s.store.CountTry(ctx, try, triesOfPassword)
	if err != nil {
		return false, err
	}
	if n.Own > triesOfPassword {
		return false, &errSlowDown{n.Wait}
	}
	if err := pause(ctx, slowed(n.All, s.options.SlowStep)); err != nil {
		return false, err
	}
	who := string(try.Client)
	ok, old, err := s.hashing.matches(ctx, who, password, p.PasswordHash)
	if err != nil || !ok {
		return false, err
	}
	if err := s.store.TryPassed(ctx, try); err != nil {
		return false, err
	}
	if old {
		s.renewHash(ctx, who, p, password)
	}
	return true, nil
}

// renewHash keeps a hash of the same password at today's cost. Its player signs in
// whether this works or not; the next time tries again.
func (s *server) renewHash(ctx context.Context, who string, p db.Player, password string) {
	hash, err := s.hashing.hash(ctx, who, password)
	if err == nil {
		err = s.store.RenewHash(ctx, p.ID, p.PasswordHash, hash)
	}
	if err != nil {
		s.options.Log.WarnContext(ctx, "the hash of a password was not renewed", "player", int64(p.ID), "error", err.Error())
	}
}

// slowed is how much slower a try is when there were so many for its account.
func slowed(tries int, step time.Duration) time.Duration {
	return min(time.Duration(max(0, tries-slowAfter))*step, slowMost)
}

func pause(ctx context.Context, long time.Duration) error {
	if long == 0 {
		return nil
	}
	select {
	case <-time.After(long):
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}

// confirmed checks the password that a signed-in player gives again, so often in
// a quarter of an hour.
func (s *server) confirmed(r *http.Request, password string) (bool, error) {
	p := me(r)
	account := ownAccount(p.ID)
	return s.tried(r.Context(), db.Try{Account: account, Client: account, Known: true}, p, password)
}

// deviceOf is the token of a browser that has signed in here.
func (s *server) deviceOf(r *http.Request) (token string, ok bool) {
	c, err := r.Cookie(s.named(deviceName))
	if err != nil || len(c.Value) != deviceToken {
		return "", false
	}
	return c.Value, true
}

// rememberDevice makes a browser one that the account knows.
func (s *server) rememberDevice(w http.ResponseWriter, r *http.Request, who golf.PlayerID) error {
	token, ok := s.deviceOf(r)
	if !ok {
		token = rand.Text() + rand.Text()
	}
	if err := s.store.KnowDevice(r.Context(), who, hashed(token)); err != nil {
		return err
	}
	http.SetCookie(w, s.cookie(deviceName, token, deviceAge))
	return nil
}
