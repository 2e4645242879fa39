package browser

import (
	"bufio"
	"io"
	"net/http"
	"net/http/cookiejar"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"syscall"
	"testing"

	"strokeledger/db/local"
)

var setupToken = regexp.MustCompile(`setup token (\S+)`)

// process starts the program on a named database, and returns its address and
// the setup token, if it printed one.
func process(t *testing.T, program, database string) (url, token string) {
	t.Helper()
	c := exec.Command(program, "serve", "--listen", "127.0.0.1:0", "--sign-up", "closed")
	c.Env = append(os.Environ(), "DATABASE_URL="+database)
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		c.Process.Signal(syscall.SIGTERM)
		if err := c.Wait(); err != nil {
			t.Error(err)
		}
	})
	lines := bufio.NewScanner(out)
	for lines.Scan() {
		if m := address.FindStringSubmatch(lines.Text()); m != nil {
			if url = m[1]; !lines.Scan() {
				break
			}
			if m := setupToken.FindStringSubmatch(lines.Text()); m != nil {
				token = m[1]
			}
			return url, token
		}
	}
	t.Fatal("the program ended")
	return "", ""
}

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

// Two processes on one Postgres serve the same sessions and edits.
func TestTwoProcessesOnOneDatabase(t *testing.T) {
	folder, err := os.MkdirTemp("", "ledger-two-")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.RemoveAll(folder) })
	if err := os.Chmod(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	postgres, err := local.StartThrowaway(filepath.Join(folder, "pg"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(postgres.Stop)
	program := filepath.Join(app.folder, "strokeledger")
	one, token := process(t, program, postgres.URL)
	two, _ := process(t, program, postgres.URL)
	jar, err := cookiejar.New(nil)
	if err != nil {
		t.Fatal(err)
	}
	c := &client{http.Client{Jar: jar, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}}
	post := func(at, path string, fields ...string) string {
		t.Helper()
		form := url.Values{}
		for i := 0; i+1 < len(fields); i += 2 {
			form.Set(fields[i], fields[i+1])
		}
		got, err := c.post(&App{URL: at}, path, form)
		if err != nil || got.StatusCode != http.StatusSeeOther {
			t.Fatalf("%s: %v, %v", path, got, err)
		}
		return got.Header.Get("Location")
	}
	post(one, "/join", "token", token, "name", "Fay", "email", "fay@example.org", "password", "a long password")
	post(two, "/courses/new", "name", "Fen", "holes", "2", "anyway", "holes:2", "paste", "4 380\n3 150\n")
	hole := post(one, "/rounds/new", "course", "1", "date", "2026-05-02")
	post(two, hole, "line", "f140 g20 2", "version", "0")
	got, err := c.Get(one + hole)
	if err != nil {
		t.Fatal(err)
	}
	defer got.Body.Close()
	body, err := io.ReadAll(got.Body)
	if err != nil || !strings.Contains(string(body), `value="f140 g20 2"`) {
		t.Errorf("%d, %v", got.StatusCode, err)
	}
}

// A second start on a data folder in use says where the first is, and leaves it
// and its Postgres alone.
func TestASecondStartSaysWhereTheFirstIs(t *testing.T) {
	second := exec.Command(filepath.Join(app.folder, "strokeledger"), "serve", "--listen", "127.0.0.1:0", "--data", filepath.Join(app.folder, "data"))
	second.Env = append(os.Environ(), "DATABASE_URL=")
	if said, err := second.CombinedOutput(); err != nil || string(said) != "already running on "+app.URL+"\n" {
		t.Errorf("%s, %v", said, err)
	}
	got, err := http.Get(app.URL + "/readyz")
	if err != nil || got.StatusCode != http.StatusOK {
		t.Fatalf("the first: %v, %v", got, err)
	}
	got.Body.Close()
}
