package browser

import (
	"fmt"
	"io"
	"math/rand/v2"
	"net/http"
	"net/http/cookiejar"
	"net/url"
	"regexp"
	"strings"
	"testing"
	"time"
)

// client posts forms to the app, wherever it is at the time.
type client struct{ http.Client }

func (c *client) post(app *App, path string, form url.Values) (*http.Response, error) {
	got, err := c.PostForm(app.URL+path, form)
	if err != nil {
		return nil, err
	}
	defer got.Body.Close()
	_, err = io.Copy(io.Discard, got.Body)
	return got, err
}

// The program is killed between and during 200 saves of holes; none that it
// acknowledged is lost.
func TestKillingTheServerLosesNoSave(t *testing.T) {
	app, err := Start("../../..")
	if err != nil {
		t.Fatal(err)
	}
	defer func() {
		if err := app.Stop(); err != nil {
			t.Error(err)
		}
	}()
	jar, err := cookiejar.New(nil)
	if err != nil {
		t.Fatal(err)
	}
	c := &client{http.Client{Jar: jar, Timeout: 10 * time.Second, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}}
	if got, err := c.post(app, "/sign-in", url.Values{"email": {Player}, "password": {app.Password}}); err != nil || got.StatusCode != http.StatusSeeOther {
		t.Fatalf("%v, %v", got, err)
	}
	var rounds []string
	for range 12 {
		got, err := c.post(app, "/rounds/new", url.Values{"course": {"1"}, "date": {"2026-11-01"}})
		if err != nil || got.StatusCode != http.StatusSeeOther {
			t.Fatalf("%v, %v", got, err)
		}
		rounds = append(rounds, strings.TrimSuffix(got.Header.Get("Location"), "/holes/1"))
	}
	rng := rand.New(rand.NewPCG(84, 1))
	acknowledged := map[string]string{}
	kills := 0
	for i := range 200 {
		path := fmt.Sprintf("%s/holes/%d", rounds[i%len(rounds)], i/len(rounds)+1)
		line := fmt.Sprintf("f%d g%d 2", 100+i, 10+i%30)
		form := url.Values{"line": {line}, "version": {"0"}, "press": {"save"}}
		before := App{URL: app.URL} // where it is now; a kill moves it
		killed := make(chan error, 1)
		if i%20 == 10 {
			kills++
			wait := time.Duration(rng.IntN(8000)) * time.Microsecond // before, during or after the save
			go func() { time.Sleep(wait); killed <- app.Kill() }()
		} else {
			killed <- nil
		}
		got, err := c.post(&before, path, form)
		if err == nil && got.StatusCode == http.StatusSeeOther {
			acknowledged[path] = line
		}
		if err := <-killed; err != nil {
			t.Fatal(err)
		}
	}
	if len(acknowledged) < 180 || kills != 10 {
		t.Fatalf("%d saves acknowledged, %d kills", len(acknowledged), kills)
	}
	field := regexp.MustCompile(`(?s)id="line".*?value="([^"]*)"`)
	for path, line := range acknowledged {
		got, err := c.Get(app.URL + path)
		if err != nil {
			t.Fatal(err)
		}
		body, err := io.ReadAll(got.Body)
		got.Body.Close()
		if m := field.FindSubmatch(body); err != nil || m == nil || string(m[1]) != line {
			t.Errorf("%s: %d, want %q, %v", path, got.StatusCode, line, err)
		}
	}
	t.Logf("%d of 200 saves acknowledged over %d kills, none lost", len(acknowledged), kills)
}
