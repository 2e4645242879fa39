package handlers

import (
	"context"
	"fmt"
	"io"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/parallel"
	"strokeledger/web/paths"
)

// A database that is gone is a page that says what to do, and that keeps what
// was typed.
func TestADatabaseThatIsGone(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	s.store.Close()
	for _, path := range []string{"/", "/rounds", "/readyz"} {
		a := v.get(path)
		if a.status != http.StatusServiceUnavailable || !strings.Contains(a.body, "starting again. Try again in a moment") || !strings.Contains(a.body, `href="`+path+`"`) || strings.Contains(a.body, "closed pool") {
			t.Errorf("%s: %d %s", path, a.status, a.body)
		}
	}
	a := v.post("/rounds/1/holes/1?nine=2", "line", `f150 "g20" 2`, "version", "3")
	for _, want := range []string{"Nothing you typed is lost", `action="/rounds/1/holes/1?nine=2"`, `name="line" value="f150 &#34;g20&#34; 2"`, `name="version" value="3"`, "Try again</button>"} {
		if a.status != http.StatusServiceUnavailable || !strings.Contains(a.body, want) {
			t.Errorf("no %s: %d %s", want, a.status, a.body)
		}
	}
	a = v.post("/sign-in", "email", "a@example.org", "password", password)
	if a.status != http.StatusServiceUnavailable || strings.Contains(a.body, password) || !strings.Contains(a.body, "Go back, and try again in a moment") {
		t.Errorf("a password: %d %s", a.status, a.body)
	}
	if a := v.get("/healthz"); a.status != http.StatusOK {
		t.Errorf("the process itself is well, and says %d", a.status)
	}
}

// A request that takes too long is given up with a page, and what it waited for
// is free again.
func TestARequestThatTakesTooLong(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	hurried := httptest.NewServer(New(s.store, Options{PageTime: time.Second}))
	defer hurried.Close()
	v.Server = hurried // the cookie is the host's, whatever the port
	c, err := pgx.Connect(t.Context(), s.url)
	if err != nil {
		t.Fatal(err)
	}
	defer c.Close(context.Background())
	tx, err := c.Begin(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	if _, err := tx.Exec(t.Context(), "lock table courses"); err != nil {
		t.Fatal(err)
	}
	if a := v.get("/courses"); a.status != http.StatusServiceUnavailable || !strings.Contains(a.body, "ry again in a moment") {
		t.Errorf("%d %s", a.status, a.body)
	}
	if err := tx.Rollback(t.Context()); err != nil {
		t.Fatal(err)
	}
	for deadline := time.Now().Add(time.Minute); ; { // a busy machine may be late once
		a := v.get("/courses")
		if a.status == http.StatusOK {
			break
		}
		if time.Now().After(deadline) {
			t.Fatalf("after it: %d %s", a.status, a.body)
		}
	}
}

// What computes for too long, and asks no database, is given up too.
func TestAPageThatIsTooLate(t *testing.T) {
	s := &server{options: Options{Log: slog.New(slog.DiscardHandler), PageTime: time.Nanosecond}}
	late := s.page(func(w http.ResponseWriter, r *http.Request) error {
		<-r.Context().Done()
		return r.Context().Err()
	})
	w := httptest.NewRecorder()
	s.timed(late).ServeHTTP(w, httptest.NewRequest(http.MethodGet, "/months", nil))
	if body := w.Body.String(); w.Code != http.StatusServiceUnavailable || !strings.Contains(body, "This took too long") || w.Header().Get("Retry-After") == "" {
		t.Errorf("%d %s", w.Code, body)
	}
}

// Files may take longer than pages.
func TestAFileMayTakeLonger(t *testing.T) {
	s := &server{options: Options{PageTime: pageTime}}
	site := httptest.NewServer(s.timed(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		end, _ := r.Context().Deadline()
		fmt.Fprint(w, time.Until(end) > pageTime)
	})))
	defer site.Close()
	for path, longer := range map[string]string{paths.Everything: "true", paths.Export: "true", paths.Import: "true", paths.ImportConfirm: "true", paths.Rounds: "false"} {
		got, err := http.Get(site.URL + path)
		if err != nil {
			t.Fatal(err)
		}
		body, err := io.ReadAll(got.Body)
		got.Body.Close()
		if err != nil || string(body) != longer {
			t.Errorf("%s: %s, %v", path, body, err)
		}
	}
}

func TestAPanicBecomesAPage(t *testing.T) {
	s := &server{options: Options{Log: slog.New(slog.DiscardHandler)}}
	bug := func() { panic("a bug") }
	for name, work := range map[string]func(){
		"a handler":                   bug,
		"a piece of work beside it":   func() { parallel.Do(3, func(int) { bug() }) },
		"a piece of a piece, as well": func() { parallel.Do(2, func(int) { parallel.Do(2, func(int) { bug() }) }) },
	} {
		w := httptest.NewRecorder()
		s.identify(s.recovered(http.HandlerFunc(func(http.ResponseWriter, *http.Request) { work() }))).ServeHTTP(w, httptest.NewRequest(http.MethodGet, "/", nil))
		if body := w.Body.String(); w.Code != http.StatusInternalServerError || !strings.Contains(body, "Something went wrong") || !strings.Contains(body, "Request ") || strings.Contains(body, "a bug") {
			t.Errorf("%s: %d %s", name, w.Code, body)
		}
	}
}

// A handler that cuts its answer off, cuts it off.
func TestAnAnswerThatIsCutOff(t *testing.T) {
	s := &server{options: Options{Log: slog.New(slog.DiscardHandler)}}
	w := httptest.NewRecorder()
	defer func() {
		if v := recover(); v != http.ErrAbortHandler || w.Body.Len() > 0 {
			t.Errorf("%v, %s", v, w.Body)
		}
	}()
	s.recovered(http.HandlerFunc(func(http.ResponseWriter, *http.Request) { panic(http.ErrAbortHandler) })).ServeHTTP(w, httptest.NewRequest(http.MethodGet, "/", nil))
	t.Error("no panic")
}
