package handlers

import (
	"bytes"
	"context"
	"io"
	"log/slog"
	"mime/multipart"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"net/url"
	"os"
	"strings"
	"testing"

	"github.com/go-chi/chi/v5"

	"strokeledger/db"
	"strokeledger/db/dbtest"
)

func TestMain(m *testing.M) { os.Exit(dbtest.Run(m)) }

// site is a server with a database of its own.
type site struct {
	*httptest.Server
	store *db.Store
	t     *testing.T
}

func newSite(t *testing.T, options Options) site {
	t.Helper()
	store := dbtest.Open(t)
	s := httptest.NewServer(New(store, options))
	t.Cleanup(s.Close)
	return site{s, store, t}
}

// visitor is a browser that follows no redirect by itself.
type visitor struct {
	site
	client *http.Client
}

func (s site) visitor() visitor {
	jar, err := cookiejar.New(nil)
	if err != nil {
		s.t.Fatal(err)
	}
	return visitor{s, &http.Client{Jar: jar, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}}
}

// answer is what came back.
type answer struct {
	status   int
	location string
	body     string
}

func (v visitor) ask(r *http.Request) answer {
	v.t.Helper()
	got, err := v.client.Do(r)
	if err != nil {
		v.t.Fatal(err)
	}
	defer got.Body.Close()
	body, err := io.ReadAll(got.Body)
	if err != nil {
		v.t.Fatal(err)
	}
	return answer{got.StatusCode, got.Header.Get("Location"), string(body)}
}

func (v visitor) get(path string) answer {
	r, err := http.NewRequest(http.MethodGet, v.URL+path, nil)
	if err != nil {
		v.t.Fatal(err)
	}
	return v.ask(r)
}

func (v visitor) post(path string, fields ...string) answer {
	form := url.Values{}
	for i := 0; i+1 < len(fields); i += 2 {
		form.Add(fields[i], fields[i+1])
	}
	r, err := http.NewRequest(http.MethodPost, v.URL+path, strings.NewReader(form.Encode()))
	if err != nil {
		v.t.Fatal(err)
	}
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	return v.ask(r)
}

const password = "a long password"

// member is a visitor with an account, signed in.
func (s site) member(name string) visitor {
	s.t.Helper()
	hash, err := HashPassword(context.Background(), password)
	if err != nil {
		s.t.Fatal(err)
	}
	if _, err := s.store.NewPlayer(context.Background(), name+"@example.org", name, hash); err != nil {
		s.t.Fatal(err)
	}
	v := s.visitor()
	if a := v.post("/sign-in", "email", name+"@example.org", "password", password); a.status != http.StatusSeeOther {
		s.t.Fatalf("%s: %d %s", name, a.status, a.body)
	}
	return v
}

// withRound gives a member a course and a round with its first hole entered,
// and returns the round's path.
func (v visitor) withRound() string {
	v.t.Helper()
	if a := v.post("/courses/new", "name", "Harrow Fen", "card", "4 384\n3 158\n5 498\n"); a.status != http.StatusSeeOther {
		v.t.Fatalf("%d %s", a.status, a.body)
	}
	a := v.post("/rounds/new", "course", "1", "date", "2026-05-02")
	if a.status != http.StatusSeeOther || a.location != "/rounds/1/holes/1" {
		v.t.Fatalf("%d %s %s", a.status, a.location, a.body)
	}
	if a := v.post("/rounds/1/holes/1", "line", "r150 g20 2", "version", "0", "press", "save"); a.status != http.StatusSeeOther || a.location != "/rounds/1/holes/2" {
		v.t.Fatalf("%d %s %s", a.status, a.location, a.body)
	}
	return "/rounds/1"
}

// Every route that the router knows: who may, who may not. A route that is not
// in the table fails the test.
func TestAccess(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen, SetupToken: "token"})
	owner, stranger, nobody := s.member("owner"), s.member("stranger"), s.visitor()
	owner.withRound()
	type who struct{ owner, stranger, nobody int }
	open, own, private := who{200, 200, 200}, who{200, 404, 303}, who{200, 200, 303}
	table := map[string]who{
		"GET /healthz": open, "GET /readyz": open, "GET /static/{file}": {404, 404, 404},
		"GET /": {303, 303, 200}, "GET /join": open, "POST /join": {422, 422, 422}, "POST /sign-in": {422, 422, 422},
		"GET /rounds": private, "GET /rounds/new": private, "POST /rounds/new": {422, 422, 303},
		"GET /courses": private, "GET /courses/new": private, "POST /courses/new": {422, 422, 303},
		"GET /courses/{course}": private, "POST /courses/{course}": {422, 422, 303},
		"GET /account": private, "POST /account": {422, 422, 303}, "POST /account/password": {422, 422, 303},
		"POST /account/devices": {404, 404, 303}, "POST /account/delete": {422, 422, 303}, "POST /account/invite": {404, 404, 303},
		"GET /accounts": {404, 404, 303}, "POST /accounts/{player}/reset": {404, 404, 303}, "GET /reset": open, "POST /reset": {422, 422, 422},
		"GET /export/shots.csv": private, "GET /export/everything.json": private, "GET /import": private, "POST /import": {422, 422, 303}, "POST /import/confirm": {404, 404, 303},
		"GET /rounds/{round}": own, "GET /rounds/{round}/holes/{hole}": own, "POST /rounds/{round}/holes/{hole}": {422, 404, 303},
		"GET /rounds/{round}/holes/{hole}/shots": own, "POST /rounds/{round}/holes/{hole}/shots": {422, 404, 303}, "POST /rounds/{round}/note": {303, 404, 303},
		"POST /rounds/{round}/holes/{hole}/echo": own,
		"POST /rounds/{round}/remove":            {303, 404, 303}, "POST /rounds/{round}/restore": {303, 404, 303},
		"POST /sign-out": {303, 303, 303},
	}
	server := &server{store: s.store, options: Options{SignUp: SignUpOpen}, hashes: make(chan struct{}, 1)}
	routes, last := []string{}, []string{}
	err := chi.Walk(server.routes().(chi.Routes), func(method, route string, _ http.Handler, _ ...func(http.Handler) http.Handler) error {
		name := method + " " + route
		if _, known := table[name]; !known {
			t.Errorf("%s has no row", name)
		}
		switch name {
		case "POST /sign-out", "POST /rounds/{round}/remove":
			last = append(last, name)
		case "POST /rounds/{round}/restore":
			last = append(last, name)
		default:
			routes = append(routes, name)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(routes)+len(last) != len(table) {
		t.Errorf("%d routes, %d rows", len(routes)+len(last), len(table))
	}
	check := func(name string, v visitor, as string, want int) {
		method, route, _ := strings.Cut(name, " ")
		path := strings.NewReplacer("{round}", "1", "{hole}", "1", "{course}", "1", "{player}", "1", "{file}", "none.css").Replace(route)
		got := answer{}
		if method == http.MethodGet {
			got = v.get(path)
		} else {
			got = v.post(path)
		}
		if got.status != want {
			t.Errorf("%s as %s: %d, want %d", name, as, got.status, want)
		}
	}
	for _, name := range append(routes, "POST /rounds/{round}/remove", "POST /rounds/{round}/restore", "POST /sign-out") {
		check(name, nobody, "nobody", table[name].nobody)
		check(name, stranger, "a stranger", table[name].stranger)
		check(name, owner, "the owner", table[name].owner)
	}
}

func TestOtherSitesMayNotPost(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	r, err := http.NewRequest(http.MethodPost, v.URL+"/sign-out", nil)
	if err != nil {
		t.Fatal(err)
	}
	r.Header.Set("Origin", "https://elsewhere.example")
	r.Header.Set("Sec-Fetch-Site", "cross-site")
	if a := v.ask(r); a.status != http.StatusForbidden {
		t.Errorf("%d", a.status)
	}
	if a := v.get("/rounds"); a.status != http.StatusOK {
		t.Errorf("signed out by another site: %d", a.status)
	}
}

func TestFirstAccountNeedsTheSetupToken(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpInvitation, SetupToken: "sesame"})
	v := s.visitor()
	fields := []string{"name", "Steward", "email", "s@example.org", "password", password, "token"}
	if a := v.post("/join", append(fields, "wrong")...); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "setup token") {
		t.Errorf("%d", a.status)
	}
	if a := v.post("/join", append(fields, "sesame")...); a.status != http.StatusSeeOther {
		t.Fatalf("%d %s", a.status, a.body)
	}
	if a := s.visitor().post("/join", append(fields, "sesame")...); a.status == http.StatusSeeOther {
		t.Error("the setup token worked twice")
	}
	a := v.post("/account/invite")
	_, link, found := strings.Cut(a.body, "<code>http://")
	if !found {
		t.Fatalf("%d %s", a.status, a.body)
	}
	link, _, _ = strings.Cut(link, "</code>")
	_, token, _ := strings.Cut(link, "token=")
	pupil := s.visitor()
	if a := pupil.get("/join?token=" + token); a.status != http.StatusOK {
		t.Errorf("%d", a.status)
	}
	join := func(v visitor, name string) int {
		return v.post("/join", "name", name, "email", name+"@example.org", "password", password, "token", token).status
	}
	if got := join(pupil, "one"); got != http.StatusSeeOther {
		t.Errorf("%d", got)
	}
	if got := join(s.visitor(), "two"); got != http.StatusNotFound {
		t.Errorf("the invitation made a second account: %d", got)
	}
}

func TestSignInIsSlowedDown(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	s.member("a")
	v := s.visitor()
	last := 0
	for range failuresMost + 1 {
		last = v.post("/sign-in", "email", "a@example.org", "password", "wrong").status
	}
	if last != http.StatusTooManyRequests {
		t.Errorf("%d", last)
	}
	if a := v.post("/sign-in", "email", "A@example.org", "password", password); a.status != http.StatusTooManyRequests {
		t.Errorf("the right password after too many: %d", a.status)
	}
}

func TestAHoleIsSavedOnceHoweverOftenItIsSent(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	round := v.withRound()
	for range 3 {
		if a := v.post(round+"/holes/2", "line", "g15 2", "version", "0", "press", "save"); a.status != http.StatusSeeOther {
			t.Fatalf("%d %s", a.status, a.body)
		}
	}
	if a := v.post(round+"/holes/2", "line", "g18 2", "version", "0"); a.status != http.StatusConflict || !strings.Contains(a.body, "g15 2") || !strings.Contains(a.body, `value="g18 2"`) {
		t.Errorf("%d %s", a.status, a.body)
	}
	if a := v.post(round+"/holes/2", "line", "g18 2", "version", "1"); a.status != http.StatusSeeOther {
		t.Errorf("%d", a.status)
	}
}

func TestAddressesThatAreNone(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	round := v.withRound()
	for _, path := range []string{"/rounds/x", "/rounds/0", "/rounds/99", round + "/holes/19", round + "/holes/x", "/courses/77", "/nothing", "/rounds/99999999999999999999"} {
		if a := v.get(path); a.status != http.StatusNotFound || !strings.Contains(a.body, "Not found") {
			t.Errorf("%s: %d", path, a.status)
		}
	}
}

func TestWhatIsExportedHoldsTheRound(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	v.withRound()
	if a := v.get("/export/shots.csv"); a.status != http.StatusOK || strings.Count(a.body, "\n") != 5 || !strings.Contains(a.body, "Harrow Fen") {
		t.Errorf("%d %s", a.status, a.body)
	}
}

// A database that is gone is a page that says what to do.
func TestADatabaseThatIsGone(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	s.store.Close()
	for _, path := range []string{"/", "/rounds", "/readyz"} {
		if a := v.get(path); a.status != http.StatusServiceUnavailable || !strings.Contains(a.body, "try again in a minute") || strings.Contains(a.body, "closed pool") {
			t.Errorf("%s: %d %s", path, a.status, a.body)
		}
	}
	if a := v.get("/healthz"); a.status != http.StatusOK {
		t.Errorf("the process itself is well, and says %d", a.status)
	}
}

func TestDeletingTheAccount(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	v.withRound()
	if a := v.post("/account/delete", "confirm", "wrong"); a.status != http.StatusUnprocessableEntity {
		t.Errorf("%d", a.status)
	}
	if a := v.post("/account/delete", "confirm", password); a.status != http.StatusSeeOther {
		t.Errorf("%d", a.status)
	}
	if a := s.visitor().post("/sign-in", "email", "a@example.org", "password", password); a.status != http.StatusUnprocessableEntity {
		t.Errorf("signed in to a deleted account: %d", a.status)
	}
}

func TestAPanicBecomesAPage(t *testing.T) {
	s := &server{options: Options{Log: slog.New(slog.DiscardHandler)}}
	w := httptest.NewRecorder()
	s.identify(s.recovered(http.HandlerFunc(func(http.ResponseWriter, *http.Request) { panic("a bug") }))).ServeHTTP(w, httptest.NewRequest(http.MethodGet, "/", nil))
	if body := w.Body.String(); w.Code != http.StatusInternalServerError || !strings.Contains(body, "Something went wrong here") || !strings.Contains(body, "Request ") || strings.Contains(body, "a bug") {
		t.Errorf("%d %s", w.Code, body)
	}
}

// upload sends a file as the import form does.
func (v visitor) upload(text string) answer {
	v.t.Helper()
	var body bytes.Buffer
	w := multipart.NewWriter(&body)
	part, err := w.CreateFormFile("file", "shots.csv")
	if err != nil {
		v.t.Fatal(err)
	}
	if _, err := part.Write([]byte(text)); err != nil {
		v.t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		v.t.Fatal(err)
	}
	r, err := http.NewRequest(http.MethodPost, v.URL+"/import", &body)
	if err != nil {
		v.t.Fatal(err)
	}
	r.Header.Set("Content-Type", w.FormDataContentType())
	return v.ask(r)
}

// What was taken away comes back when it is taken in by another account.
func TestExportAndImport(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	season, err := os.ReadFile("../testdata/shots/season.csv")
	if err != nil {
		t.Fatal(err)
	}
	one, two := s.member("one"), s.member("two")
	if a := one.upload(string(season)); a.status != http.StatusOK || !strings.Contains(a.body, "36 rounds") {
		t.Fatalf("%d %s", a.status, a.body)
	}
	if a := one.get("/rounds"); strings.Contains(a.body, "Harrow Fen") {
		t.Error("kept before it was confirmed")
	}
	if a := one.post("/import/confirm"); a.status != http.StatusSeeOther {
		t.Fatalf("%d", a.status)
	}
	first := one.get("/export/shots.csv").body
	if a := two.upload(first); a.status != http.StatusOK {
		t.Fatalf("%d %s", a.status, a.body)
	}
	if a := two.post("/import/confirm"); a.status != http.StatusSeeOther {
		t.Fatalf("%d", a.status)
	}
	if second := two.get("/export/shots.csv").body; second != first || strings.Count(first, "\n") < 3000 {
		t.Errorf("%d bytes went out, %d came back", len(first), len(second))
	}
	if a := two.upload(first); !strings.Contains(a.body, "36 rounds are there already") {
		t.Error("rounds that are there already are not told")
	}
	for _, there := range []string{"skip", "replace"} {
		if two.upload(first).status != http.StatusOK || two.post("/import/confirm", "there", there).status != http.StatusSeeOther {
			t.Errorf("%s failed", there)
		}
		if n := strings.Count(two.get("/rounds").body, "<tr>"); n != 37 {
			t.Errorf("%s: %d rows", there, n)
		}
	}
}

func TestBrokenFilesAreRefusedWhole(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	for _, text := range []string{"", "nothing", "round,date,hole,par,shot,lie,distance\nr,2026-05-02,1,4,1,moon,390\n", "\x00\xff\xfe"} {
		if a := v.upload(text); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "line 1") && !strings.Contains(a.body, "line 2") {
			t.Errorf("%q: %d", text, a.status)
		}
	}
	if a := v.post("/import/confirm"); a.status != http.StatusNotFound {
		t.Errorf("something waited: %d", a.status)
	}
}

func TestForgottenPassword(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpInvitation, SetupToken: "sesame"})
	steward := s.visitor()
	if a := steward.post("/join", "name", "Steward", "email", "s@example.org", "password", password, "token", "sesame"); a.status != http.StatusSeeOther {
		t.Fatalf("%d", a.status)
	}
	v := s.member("a")
	a := steward.post("/accounts/2/reset")
	_, link, found := strings.Cut(a.body, "<code>"+s.URL)
	if !found {
		t.Fatalf("%d %s", a.status, a.body)
	}
	link, _, _ = strings.Cut(strings.ReplaceAll(link, "&amp;", "&"), "</code>")
	if got := v.get("/rounds"); !strings.Contains(got.body, "The steward made a link") {
		t.Error("the player is not told")
	}
	if got := v.get("/rounds"); strings.Contains(got.body, "The steward made a link") {
		t.Error("the player is told twice")
	}
	where, err := url.Parse(link)
	if err != nil {
		t.Fatal(err)
	}
	token := where.Query().Get("token")
	out := s.visitor()
	if got := out.get(link); got.status != http.StatusOK {
		t.Errorf("%d", got.status)
	}
	for i, want := range []int{http.StatusSeeOther, http.StatusNotFound} {
		if got := out.post("/reset", "player", "2", "token", token, "password", "another password"); got.status != want {
			t.Errorf("use %d: %d", i+1, got.status)
		}
	}
	if got := v.get("/rounds"); got.status != http.StatusSeeOther {
		t.Error("still signed in with the old password")
	}
	if got := out.post("/sign-in", "email", "a@example.org", "password", "another password"); got.status != http.StatusSeeOther {
		t.Errorf("%d", got.status)
	}
}

func TestMoreIsSaidOfShotsAndOutlivesTheLine(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	round := v.withRound()
	said := []string{"version", "1", "club", "driver", "miss", "right", "word", "pushed", "club", "8i", "miss", "short-left", "word", "", "club", "", "miss", "", "word", "lag", "club", "", "miss", "", "word", ""}
	if a := v.post(round+"/holes/1/shots", said...); a.status != http.StatusSeeOther {
		t.Fatalf("%d %s", a.status, a.body)
	}
	if a := v.post(round+"/holes/1", "line", "t/driver r150/8i g22 2", "version", "2"); a.status != http.StatusSeeOther {
		t.Fatalf("%d %s", a.status, a.body)
	}
	body := v.get(round + "/holes/1/shots").body
	for _, want := range []string{`value="pushed"`, `value="driver"`, `value="8i"`, `<option value="short-left" selected>`} {
		if !strings.Contains(body, want) {
			t.Errorf("no %s", want)
		}
	}
	if strings.Contains(body, `value="lag"`) {
		t.Error("a word stayed with a putt that is another now")
	}
	said[5] = "wide"
	if a := v.post(round+"/holes/1/shots", said...); a.status != http.StatusUnprocessableEntity {
		t.Errorf("%d", a.status)
	}
}

func TestTheCardChecksTheNine(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	round := v.withRound()
	v.post(round+"/holes/2", "line", "g15 2", "version", "0")
	v.post(round+"/holes/3", "line", "r250 f90 g15 2", "version", "0")
	for said, want := range map[string]string{"12": "It agrees with the holes", "13": "The holes come to 12", "": "The card&#39;s score out"} {
		if a := v.post(round+"/note", "out", said, "note", "wind"); a.status != http.StatusSeeOther {
			t.Fatalf("%d", a.status)
		}
		if body := v.get(round).body; !strings.Contains(body, want) || !strings.Contains(body, `value="wind"`) {
			t.Errorf("%q: no %q", said, want)
		}
	}
}

// A course that nobody put in is told hole by hole while its first round is
// entered, and is there afterwards.
func TestACourseIsToldHoleByHole(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	a := v.post("/rounds/new", "new_course", "Quarry Hill", "new_holes", "2", "date", "2026-05-02")
	if a.status != http.StatusSeeOther || a.location != "/rounds/1/holes/1" {
		t.Fatalf("%d %s", a.status, a.location)
	}
	if a := v.post("/rounds/1/holes/1", "line", "r150 g20 2", "version", "0", "par", "4"); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, `value="r150 g20 2"`) {
		t.Errorf("saved without a length: %d", a.status)
	}
	if a := v.post("/rounds/1/holes/1", "line", "r150 g20 2", "version", "0", "par", "4", "length", "380", "index", "7"); a.status != http.StatusSeeOther {
		t.Fatalf("%d %s", a.status, a.body)
	}
	if a := v.post("/rounds/1/holes/2", "line", "g20 2", "version", "0", "par", "3", "length", "155"); a.status != http.StatusSeeOther || a.location != "/rounds/1" {
		t.Fatalf("%d %s", a.status, a.body)
	}
	if body := v.get("/courses/1").body; !strings.Contains(body, "4 380 7\n3 155\n") {
		t.Error("the course was not told")
	}
	if body := v.get("/rounds/1").body; !strings.Contains(body, "par 7, 535 yd") {
		t.Error("the statement does not know the card")
	}
}

// The file of everything brings the same account back.
func TestEverythingComesBack(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	one, two := s.member("one"), s.member("two")
	round := one.withRound()
	one.post("/account", "name", "Robin", "target", "84.5", "boundary", "40", "far", "m", "green", "m", "clubs", "d 3w 7i")
	one.post(round+"/holes/2", "line", "g~15m 2", "version", "0")
	one.post(round+"/holes/3", "line", "v150 r20s4 g3m-", "version", "0")
	one.post(round+"/holes/1/shots", "version", "1", "club", "d", "miss", "left", "word", "pulled", "club", "", "miss", "", "word", "", "club", "", "miss", "", "word", "", "club", "", "miss", "", "word", "")
	one.post(round+"/note", "out", "14", "note", "wind from the west")
	first := one.get("/export/everything.json").body
	if !strings.Contains(first, "pulled") || !strings.Contains(first, "wind from the west") || !strings.Contains(first, "d 3w 7i") {
		t.Fatal(first)
	}
	if a := two.upload(first); a.status != http.StatusSeeOther {
		t.Fatalf("%d %s", a.status, a.body)
	}
	if second := two.get("/export/everything.json").body; second != first {
		t.Errorf("went out\n%s\ncame back\n%s", first, second)
	}
	for _, broken := range []string{"{", `{"version":9}`, strings.Replace(first, `"lie":"green"`, `"lie":"moon"`, 1), strings.Replace(first, `"target":79`, `"target":12`, 1), strings.Replace(first, `"distance_in":`, `"distance_in":-`, 1)} {
		if a := two.upload(broken); a.status != http.StatusUnprocessableEntity {
			t.Errorf("%.60s: %d", broken, a.status)
		}
	}
}

func TestARoundIsGoneOnWith(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("a")
	round := v.withRound()
	if body := v.get("/rounds/new").body; !strings.Contains(body, `href="`+round+`/holes/2"`) || !strings.Contains(body, "2 holes to go") || !strings.Contains(body, `<option value="1" selected>`) {
		t.Error("the round that was begun is not offered")
	}
	v.post(round+"/holes/2", "line", "g15 2", "version", "0")
	v.post(round+"/holes/3", "line", "=7", "version", "0")
	if body := v.get("/rounds/new").body; strings.Contains(body, "to go") {
		t.Error("a round that is entered whole is offered")
	}
}
