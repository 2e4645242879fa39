package trial

import (
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"net/http/cookiejar"
	"net/url"
	"strings"
	"time"
)

// player enters rounds.
type player struct {
	app          *app
	client       http.Client
	rounds       int             // begun; the note of each is its number
	path         string          // of the round in hand
	next         int             // its next hole
	saves        int             // tried; each has a line of its own
	acknowledged map[spot]string // the line of each save that the app said it took
	doubtful     int
}

// spot is a hole of a round.
type spot struct {
	round string
	hole  int
}

const holes = 18

// join makes the account and a course.
func join(a *app) (*player, error) {
	jar, err := cookiejar.New(nil)
	if err != nil {
		return nil, err
	}
	p := &player{app: a, next: holes + 1, acknowledged: map[spot]string{}}
	p.client = http.Client{Jar: jar, Timeout: 30 * time.Second, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	if _, err := p.must("/join", url.Values{"token": {a.token}, "name": {"Fay"}, "email": {"fay@example.org"}, "password": {"a long password"}}); err != nil {
		return nil, err
	}
	_, err = p.must("/courses/new", url.Values{"name": {"Fen"}, "holes": {fmt.Sprint(holes)}, "paste": {strings.Repeat("4 380\n", holes)}})
	return p, err
}

// post sends a form; status is 0 when no answer came.
func (p *player) post(at, path string, form url.Values) (status int, location string) {
	got, err := p.client.PostForm(at+path, form)
	if err != nil {
		return 0, ""
	}
	defer got.Body.Close()
	io.Copy(io.Discard, got.Body)
	return got.StatusCode, got.Header.Get("Location")
}

// must sends a form that the app takes.
func (p *player) must(path string, form url.Values) (location string, err error) {
	status, location := p.post(p.app.url, path, form)
	if status != http.StatusSeeOther {
		return "", fmt.Errorf("%s answers %d", path, status)
	}
	return location, nil
}

// save saves the next hole, of a new round when the one in hand is full.
func (p *player) save() (acknowledged bool, err error) { return p.saveAt(p.app.url) }

// saveAt saves the next hole with an app that may be killed meanwhile. A hole
// without an answer is left behind: nobody knows whether it is saved.
func (p *player) saveAt(at string) (acknowledged bool, err error) {
	if p.next > holes {
		status, first := p.post(at, "/rounds/new", url.Values{"course": {"1"}, "date": {"2026-11-01"}, "conditions": {fmt.Sprint(p.rounds + 1)}})
		switch status {
		case http.StatusSeeOther:
		case 0, http.StatusServiceUnavailable, http.StatusInternalServerError:
			p.rounds++ // it may be there
			return false, nil
		default:
			return false, fmt.Errorf("a new round answers %d", status)
		}
		p.rounds++
		p.path, p.next = strings.TrimSuffix(first, "/1"), 1
	}
	where := spot{fmt.Sprint(p.rounds), p.next}
	line := fmt.Sprintf("f%d g%d 2", 100+p.saves%200, 10+p.saves%37)
	p.saves++
	p.next++
	status, _ := p.post(at, fmt.Sprintf("%s/%d", p.path, where.hole), url.Values{"line": {line}, "version": {"0"}, "press": {"save"}})
	switch status {
	case http.StatusSeeOther:
		p.acknowledged[where] = line
		return true, nil
	case 0, http.StatusServiceUnavailable, http.StatusInternalServerError:
		p.doubtful++
		return false, nil
	}
	return false, fmt.Errorf("a save answers %d", status)
}

// lost reads the whole account and lists the acknowledged saves that are not in
// it as they were sent. Each is listed once.
func (p *player) lost() ([]string, error) {
	got, err := p.client.Get(p.app.url + "/export/everything.json")
	if err != nil {
		return nil, err
	}
	defer got.Body.Close()
	if got.StatusCode != http.StatusOK {
		return nil, fmt.Errorf("the export answers %d", got.StatusCode)
	}
	var all struct {
		Rounds []struct {
			Note  string
			Holes []struct {
				Number int
				Line   string
				Shots  []struct{}
			}
		}
	}
	if err := json.NewDecoder(got.Body).Decode(&all); err != nil {
		return nil, err
	}
	there := map[spot]string{}
	for _, r := range all.Rounds {
		for _, h := range r.Holes {
			if len(h.Shots) == 4 { // all of the line, not its text alone
				there[spot{r.Note, h.Number}] = h.Line
			}
		}
	}
	var lost []string
	for where, line := range p.acknowledged {
		if there[where] != line {
			lost = append(lost, fmt.Sprintf("round %s, hole %d, %q", where.round, where.hole, line))
			delete(p.acknowledged, where)
		}
	}
	return lost, nil
}
