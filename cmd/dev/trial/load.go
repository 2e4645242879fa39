package trial

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"net/http"
	"net/http/cookiejar"
	"net/url"
	"os"
	"slices"
	"strings"
	"sync"
	"time"
)

// Crowd is how many players save, and how long.
type Crowd struct {
	Players int
	Time    time.Duration
	Root    string // folder of the source tree
}

// Waits is how long players waited.
type Waits struct {
	Saves, Pages []time.Duration // of each save, and of each page after it
	Failures     int             // answers that were not what a player needs
	Took         time.Duration
}

// String is what a crowd met, in three lines.
func (w Waits) String() string {
	line := func(name string, all []time.Duration) string {
		return fmt.Sprintf("%-5s p50 %s, p95 %s, p99 %s", name, quantile(all, .50), quantile(all, .95), quantile(all, .99))
	}
	return fmt.Sprintf("%.1f saves a second, %d failures\n%s\n%s", float64(len(w.Saves))/w.Took.Seconds(), w.Failures, line("save", w.Saves), line("page", w.Pages))
}

// quantile is the smallest wait that a share of all did not exceed; 0 of none.
func quantile(all []time.Duration, share float64) time.Duration {
	if len(all) == 0 {
		return 0
	}
	sorted := slices.Sorted(slices.Values(all))
	return sorted[max(0, int(math.Ceil(share*float64(len(sorted))))-1)].Round(100 * time.Microsecond)
}

// Load lets a crowd save holes on a fresh app with a private Postgres: every
// player saves one a second and opens the next page.
func Load(crowd Crowd, progress io.Writer) (waits Waits, err error) {
	folder, err := os.MkdirTemp("", "ledger-load-")
	if err != nil {
		return waits, err
	}
	defer os.RemoveAll(folder)
	if err := os.Chmod(folder, 0o755); err != nil { // the server may be another user's
		return waits, err
	}
	a, err := build(crowd.Root, folder)
	if err != nil {
		return waits, err
	}
	a.flags = []string{"--sign-up", "open", "--proxies", "127.0.0.0/8"} // each player comes from an address of its own
	if err := a.start(); err != nil {
		return waits, errors.Join(err, a.stop())
	}
	defer func() { err = errors.Join(err, a.stop()) }()
	if _, err := join(a); err != nil {
		return waits, err
	}
	fmt.Fprintf(progress, "%d players sign up\n", crowd.Players)
	var members []*member
	for i := range crowd.Players {
		m, err := newMember(a, i)
		if err != nil {
			return waits, err
		}
		members = append(members, m)
	}
	fmt.Fprintf(progress, "they save for %s\n", crowd.Time)
	return playAll(members, crowd.Time), nil
}

// playAll lets everybody save once a second, each at a moment of its own.
func playAll(members []*member, span time.Duration) Waits {
	var all Waits
	var lock sync.Mutex
	var playing sync.WaitGroup
	began := time.Now()
	for i, m := range members {
		playing.Go(func() {
			time.Sleep(time.Duration(i) * time.Second / time.Duration(len(members)))
			every := time.NewTicker(time.Second)
			defer every.Stop()
			for time.Since(began) < span {
				saved, opened, err := m.play()
				lock.Lock()
				if err != nil {
					all.Failures++
				} else {
					all.Saves, all.Pages = append(all.Saves, saved), append(all.Pages, opened)
				}
				lock.Unlock()
				<-every.C
			}
		})
	}
	playing.Wait()
	all.Took = time.Since(began)
	return all
}

// member is a player of a crowd.
type member struct {
	url, from string
	client    http.Client
	at        string // the hole in hand; empty when a round is to be begun
}

func newMember(a *app, i int) (*member, error) {
	jar, err := cookiejar.New(nil)
	if err != nil {
		return nil, err
	}
	m := &member{url: a.url, from: fmt.Sprintf("10.1.%d.%d", i/250, i%250+1)}
	m.client = http.Client{Jar: jar, Timeout: 30 * time.Second, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	got, err := m.post("/join", "", url.Values{"name": {fmt.Sprintf("Player %d", i)}, "email": {fmt.Sprintf("p%d@example.org", i)}, "password": {"a long password"}})
	if err != nil {
		return nil, err
	}
	defer got.Body.Close()
	if got.StatusCode != http.StatusSeeOther {
		return nil, fmt.Errorf("joining answers %s", got.Status)
	}
	return m, nil
}

func (m *member) post(path, accept string, form url.Values) (*http.Response, error) {
	r, err := http.NewRequest(http.MethodPost, m.url+path, strings.NewReader(form.Encode()))
	if err != nil {
		return nil, err
	}
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	r.Header.Set("X-Forwarded-For", m.from)
	if accept != "" {
		r.Header.Set("Accept", accept)
	}
	return m.client.Do(r)
}

// play saves the hole in hand, as the page's script does, and opens the next.
func (m *member) play() (saved, opened time.Duration, err error) {
	if m.at == "" || !strings.Contains(m.at, "/holes/") { // the statement: the round is over
		got, err := m.post("/rounds/new", "", url.Values{"course": {"1"}, "date": {"2026-11-01"}, "first_hole": {"1"}})
		if err != nil {
			return 0, 0, err
		}
		got.Body.Close()
		if m.at = got.Header.Get("Location"); m.at == "" {
			return 0, 0, fmt.Errorf("a new round answers %s", got.Status)
		}
	}
	began := time.Now()
	got, err := m.post(m.at, "application/json", url.Values{"line": {"f150 r12 g14 2"}, "version": {"0"}, "press": {"save"}})
	if err != nil {
		return 0, 0, err
	}
	defer got.Body.Close()
	var answer struct{ Next string }
	if err := json.NewDecoder(got.Body).Decode(&answer); err != nil || got.StatusCode != http.StatusOK {
		return 0, 0, fmt.Errorf("a save answers %s, %w", got.Status, err)
	}
	saved = time.Since(began)
	m.at = answer.Next
	began = time.Now()
	page, err := m.client.Get(m.url + m.at)
	if err != nil {
		return 0, 0, err
	}
	defer page.Body.Close()
	if _, err := io.Copy(io.Discard, page.Body); err != nil || page.StatusCode != http.StatusOK {
		return 0, 0, fmt.Errorf("a page answers %s, %w", page.Status, err)
	}
	return saved, time.Since(began), nil
}
