package handlers

import (
	"context"
	"crypto/rand"
	"crypto/subtle"
	"encoding/base64"
	"fmt"
	"strings"

	"golang.org/x/crypto/argon2"
)

// argon2id as the first choice of RFC 9106 asks for where memory is short:
// 64 MiB, three passes, four lanes.
const (
	hashPasses = 3
	hashMemory = 64 * 1024 // KiB
	hashLanes  = 4
	hashLength = 32
	saltLength = 16
)

// PasswordMin and PasswordMax are how many bytes a password may have.
const (
	PasswordMin = 10
	PasswordMax = 200
)

// hash makes the hash of a password that is kept. Only so many are made at
// once, since each takes memory.
func (s *server) hash(ctx context.Context, password string) (string, error) {
	salt := make([]byte, saltLength)
	rand.Read(salt)
	sum, err := s.key(ctx, password, salt)
	if err != nil {
		return "", err
	}
	b64 := base64.RawStdEncoding
	return fmt.Sprintf("$argon2id$v=%d$m=%d,t=%d,p=%d$%s$%s", argon2.Version, hashMemory, hashPasses, hashLanes, b64.EncodeToString(salt), b64.EncodeToString(sum)), nil
}

func (s *server) key(ctx context.Context, password string, salt []byte) ([]byte, error) {
	select {
	case s.hashes <- struct{}{}:
		defer func() { <-s.hashes }()
	case <-ctx.Done():
		return nil, ctx.Err()
	}
	return argon2.IDKey([]byte(password), salt, hashPasses, hashMemory, hashLanes, hashLength), nil
}

// HashPassword makes the hash of a password outside a request.
func HashPassword(ctx context.Context, password string) (string, error) {
	return (&server{hashes: make(chan struct{}, 1)}).hash(ctx, password)
}

// matches reports whether a password is the one of a hash. An empty hash, of an
// account that does not exist, takes as long and never matches.
func (s *server) matches(ctx context.Context, password, kept string) (bool, error) {
	parts := strings.Split(kept, "$")
	salt, want := make([]byte, saltLength), []byte(nil)
	if len(parts) == 6 {
		var err error
		if salt, err = base64.RawStdEncoding.DecodeString(parts[4]); err != nil {
			return false, err
		}
		if want, err = base64.RawStdEncoding.DecodeString(parts[5]); err != nil {
			return false, err
		}
	}
	got, err := s.key(ctx, password, salt)
	return err == nil && len(want) > 0 && subtle.ConstantTimeCompare(got, want) == 1, err
}
