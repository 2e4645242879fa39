package handlers

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net/http"
	"sync"
	"time"

	"strokeledger/analysis/accountfile"
	"strokeledger/analysis/golf"
)

// quotaDay is how many bytes of files an account may upload a day. The process
// counts them, so a restart resets the count.
const quotaDay = 256 << 20

// uploads lets only one import run at a time, since nothing else a request can do
// takes as much memory and database time.
type uploads struct {
	all  chan struct{} // the one place
	wait time.Duration // how long to wait for another account's import

	mu    sync.Mutex
	busy  map[golf.PlayerID]bool
	day   golf.Date
	taken map[golf.PlayerID]int64 // bytes that day
}

func newUploads() *uploads {
	return &uploads{all: make(chan struct{}, 1), wait: 5 * time.Second, busy: map[golf.PlayerID]bool{}, taken: map[golf.PlayerID]int64{}}
}

var (
	errOwnImport = &refusal{http.StatusConflict, "Import in progress", "Another import of yours is still running. This one changed nothing. Wait until it is done and try again."}
	errImports   = &refusal{http.StatusServiceUnavailable, "Temporarily unavailable", "Someone else is importing a file, and only one can run at a time. Nothing was changed."}
	errQuota     = &refusal{http.StatusTooManyRequests, "Daily limit reached", fmt.Sprintf("You can upload up to %d MiB of files a day, and this file goes over that. Nothing was changed. Try again tomorrow.", quotaDay>>20)}
	errSlow      = &refusal{http.StatusRequestTimeout, "Upload too slow", "The file did not arrive in time. Nothing was changed. Try again with a faster connection or a smaller file."}
)

// begin reserves the one place for an account's import, and returns the function
// that releases it.
func (u *uploads) begin(ctx context.Context, who golf.PlayerID) (end func(), err error) {
	if !u.take(who) {
		return nil, errOwnImport
	}
	late := time.NewTimer(u.wait)
	defer late.Stop()
	select {
	case u.all <- struct{}{}:
		return func() { <-u.all; u.free(who) }, nil
	case <-late.C:
		err = errImports
	case <-ctx.Done():
		err = ctx.Err()
	}
	u.free(who)
	return nil, err
}

// take marks the account as importing, and reports whether it was not before.
func (u *uploads) take(who golf.PlayerID) bool {
	u.mu.Lock()
	defer u.mu.Unlock()
	own := u.busy[who]
	u.busy[who] = true
	return !own
}

// free marks the account as no longer importing.
func (u *uploads) free(who golf.PlayerID) {
	u.mu.Lock()
	defer u.mu.Unlock()
	delete(u.busy, who)
}

// count adds to the bytes that an account has uploaded today, and reports whether
// they are within the quota.
func (u *uploads) count(who golf.PlayerID, bytes int64, today golf.Date) bool {
	u.mu.Lock()
	defer u.mu.Unlock()
	if today != u.day {
		u.day = today
		clear(u.taken)
	}
	if bytes > quotaDay-u.taken[who] {
		return false
	}
	u.taken[who] += bytes
	return true
}

// importing runs work as the only import.
func (s *server) importing(w http.ResponseWriter, r *http.Request, work func() error) error {
	end, err := s.uploads.begin(r.Context(), me(r).ID)
	if err == nil {
		err = work()
		end()
	}
	if errors.Is(err, errOwnImport) || errors.Is(err, errImports) {
		w.Header().Set("Retry-After", "10")
	}
	if errors.Is(err, errQuota) {
		w.Header().Set("Retry-After", fmt.Sprint(24*60*60))
	}
	return err
}

// counted reads an upload until the account reaches its quota.
type counted struct {
	io.Reader
	read func(bytes int64) bool
	err  error
}

func (c *counted) Read(p []byte) (int, error) {
	if c.err != nil {
		return 0, c.err
	}
	n, err := c.Reader.Read(p)
	if err != nil && err != io.EOF {
		c.err = err
	}
	if !c.read(int64(n)) {
		c.err = errQuota
		return 0, errQuota
	}
	return n, err
}

// upload reads the file of a form as it arrives. The file is never on disk and
// never in memory as a whole. The rest of a refused request is read and dropped,
// so that the browser goes on to read the answer.
func (s *server) upload(r *http.Request) (file *counted, err error) {
	form, err := r.MultipartReader()
	if errors.Is(err, http.ErrNotMultipart) {
		return nil, errNoFile
	}
	for err == nil {
		part, failed := form.NextPart()
		if failed == io.EOF {
			return nil, errNoFile
		}
		if err = failed; err == nil && part.FormName() == "file" && part.FileName() != "" {
			who := me(r).ID
			return &counted{Reader: part, read: func(n int64) bool { return s.uploads.count(who, n, golf.DateOf(s.now())) }}, nil
		}
	}
	return nil, unreadable(err)
}

var errNoFile = &accountfile.Fault{What: "No file was chosen. Allowed: a shots file or an account file."}

// unreadable turns an error of reading a request's body into one with a page.
func unreadable(err error) error {
	var tooLarge *http.MaxBytesError
	var timeout interface{ Timeout() bool }
	switch {
	case errors.As(err, &tooLarge), errors.Is(err, errQuota), errors.Is(err, context.Canceled):
		return err
	case errors.As(err, &timeout) && timeout.Timeout():
		return errSlow
	}
	return errForm
}
