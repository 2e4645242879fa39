package handlers

import (
	"context"
	"crypto/rand"
	"crypto/subtle"
	"encoding/base64"
	"fmt"
	"net/http"
	"strings"
	"sync"

	"golang.org/x/crypto/argon2"
)

// HashCost is what the hash of a password costs, with argon2id.
type HashCost struct {
	Memory uint32 // KiB
	Passes uint32
	Lanes  uint8
}

// standardCost is what RFC 9106 recommends where memory is limited: 64 MiB, three
// passes, four lanes.
var standardCost = HashCost{Memory: 64 * 1024, Passes: 3, Lanes: 4}

const (
	hashLength = 32
	saltLength = 16
)

// hashesWaiting is how many passwords may wait to be hashed; each takes a few tenths
// of a second.
const hashesWaiting = 40

// errHashesBusy means that too many passwords are waiting to be hashed.
var errHashesBusy = &refusal{http.StatusServiceUnavailable, "Temporarily unavailable", "Too many people are signing in right now."}

// hashing hashes passwords: a limited number at once, since each takes memory, and
// one at a time for each client.
type hashing struct {
	cost   HashCost
	queue  chan struct{} // one place for each password that is being hashed or waits
	places chan struct{} // one place for each that is being hashed

	mu    sync.Mutex
	turns map[string]*turn // by client
}

// turn lets a client have one password hashed at a time.
type turn struct {
	free   chan struct{}
	wanted int
}

func newHashing(cost HashCost, most int) *hashing {
	if cost == (HashCost{}) {
		cost = standardCost
	}
	return &hashing{cost: cost, queue: make(chan struct{}, most+hashesWaiting), places: make(chan struct{}, most), turns: map[string]*turn{}}
}

// take waits for the turn of a client and for a place; done gives both back.
func (h *hashing) take(ctx context.Context, who string) (done func(), err error) {
	left, err := h.takeTurn(ctx, who)
	if err != nil {
		return nil, err
	}
	select {
	case h.queue <- struct{}{}:
	default:
		left()
		return nil, errHashesBusy
	}
	select {
	case h.places <- struct{}{}:
		return func() { <-h.places; <-h.queue; left() }, nil
	case <-ctx.Done():
		<-h.queue
		left()
		return nil, ctx.Err()
	}
}

// takeTurn waits until no other password of the client is being hashed.
func (h *hashing) takeTurn(ctx context.Context, who string) (left func(), err error) {
	h.mu.Lock()
	t := h.turns[who]
	if t == nil {
		t = &turn{free: make(chan struct{}, 1)}
		h.turns[who] = t
	}
	t.wanted++
	h.mu.Unlock()
	leave := func() {
		h.mu.Lock()
		defer h.mu.Unlock()
		if t.wanted--; t.wanted == 0 {
			delete(h.turns, who)
		}
	}
	select {
	case t.free <- struct{}{}:
		return func() { <-t.free; leave() }, nil
	case <-ctx.Done():
		leave()
		return nil, ctx.Err()
	}
}

// hash makes the hash of a password, to be stored.
func (h *hashing) hash(ctx context.Context, who, password string) (string, error) {
	done, err := h.take(ctx, who)
	if err != nil {
		return "", err
	}
	defer done()
	k := storedHash{HashCost: h.cost, salt: make([]byte, saltLength)}
	rand.Read(k.salt)
	k.sum = k.of(password, hashLength)
	return k.text(), nil
}

// matches reports whether a password matches a stored hash, and whether that hash
// was made at another cost than hashes are now. A hash that cannot be read, such as
// the empty one of an account that does not exist, takes as long and never matches.
func (h *hashing) matches(ctx context.Context, who, password, kept string) (ok, old bool, err error) {
	k, readable := readHash(kept)
	if !readable {
		k = storedHash{HashCost: h.cost, salt: make([]byte, saltLength), sum: make([]byte, hashLength)}
	}
	done, err := h.take(ctx, who)
	if err != nil {
		return false, false, err
	}
	defer done()
	same := subtle.ConstantTimeCompare(k.of(password, uint32(len(k.sum))), k.sum) == 1
	return same && readable, k.HashCost != h.cost || len(k.salt) != saltLength || len(k.sum) != hashLength, nil
}

// storedHash is the hash of a password as it is stored.
type storedHash struct {
	HashCost
	salt, sum []byte
}

// of hashes a password with the salt and at the cost of this hash.
func (k storedHash) of(password string, length uint32) []byte {
	return argon2.IDKey([]byte(password), k.salt, k.Passes, k.Memory, k.Lanes, length)
}

func (k storedHash) text() string {
	b64 := base64.RawStdEncoding
	return fmt.Sprintf("$argon2id$v=%d$%s$%s$%s", argon2.Version, k.HashCost, b64.EncodeToString(k.salt), b64.EncodeToString(k.sum))
}

// String writes a cost as a stored hash has it.
func (c HashCost) String() string { return fmt.Sprintf("m=%d,t=%d,p=%d", c.Memory, c.Passes, c.Lanes) }

// The most that a stored hash may cost. A hash that costs more is not one of ours,
// and would take the server down.
const (
	memoryMost = 1 << 20 // KiB
	passesMost = 20
	lengthMost = 128
)

// readHash reads a stored hash; ok is false for any other text.
func readHash(text string) (k storedHash, ok bool) {
	parts := strings.Split(text, "$")
	if len(parts) != 6 || parts[0] != "" || parts[1] != "argon2id" || parts[2] != fmt.Sprintf("v=%d", argon2.Version) {
		return k, false
	}
	if _, err := fmt.Sscanf(parts[3], "m=%d,t=%d,p=%d", &k.Memory, &k.Passes, &k.Lanes); err != nil || k.String() != parts[3] {
		return k, false
	}
	var errs [2]error
	k.salt, errs[0] = base64.RawStdEncoding.DecodeString(parts[4])
	k.sum, errs[1] = base64.RawStdEncoding.DecodeString(parts[5])
	if errs[0] != nil || errs[1] != nil {
		return k, false
	}
	fits := k.Memory >= 1 && k.Memory <= memoryMost && k.Passes >= 1 && k.Passes <= passesMost && k.Lanes >= 1
	return k, fits && len(k.salt) >= 8 && len(k.salt) <= lengthMost && len(k.sum) >= saltLength && len(k.sum) <= lengthMost
}

// HashPassword makes the hash of a password outside a request.
func HashPassword(ctx context.Context, password string) (string, error) {
	return newHashing(standardCost, 1).hash(ctx, "", password)
}
