package handlers

import (
	"bytes"
	"context"
	"errors"
	"log/slog"
	"net/url"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"strokeledger/db/dbtest"
	"strokeledger/handlers/mail"
	"strokeledger/web/paths"
)

// letters keeps what a site sends.
type letters struct {
	sync.Mutex
	all    []mail.Letter
	refuse error
}

func (l *letters) send(_ context.Context, one mail.Letter) error {
	l.Lock()
	defer l.Unlock()
	if l.refuse == nil {
		l.all = append(l.all, one)
	}
	return l.refuse
}

// mailing is a site that sends mail, whose clock stands at a moment.
func mailing(t *testing.T, at *time.Time, log *bytes.Buffer) (testSite, *letters, *Errands) {
	t.Helper()
	sent := &letters{}
	s := newSite(t, Options{SignUp: SignUpOpen, Mail: sent.send, Clock: func() time.Time { return *at }, Log: slog.New(slog.NewTextHandler(log, nil))})
	options := s.server.options
	options.Address = "https://golf.example.org" // of the letters alone: the test server has another
	return s, sent, NewErrands(s.store, options)
}

// confirms follows the link in the last letter and starts the mail, and forgets the letter.
func (l *letters) confirms(s testSite) {
	s.t.Helper()
	reader := s.visitor()
	link := l.link(s.t)
	reader.mustSee(reader.get(link), "Shall this mail start?")
	at, _ := url.Parse(link)
	if a := reader.post(paths.DigestProof, "player", at.Query().Get("player"), "token", at.Query().Get("token")); a.status != 303 || a.location != paths.DigestProof+"?done=started" {
		s.t.Fatalf("%d to %s", a.status, a.location)
	}
	l.all = l.all[:len(l.all)-1]
}

// link is the one in the last letter that asks to confirm an address.
func (l *letters) link(t *testing.T) string {
	t.Helper()
	if len(l.all) == 0 {
		t.Fatal("no letter")
	}
	found := regexp.MustCompile(`(?m)^(?:https://golf\.example\.org)?(/notices/mail/confirm\S*)`).FindStringSubmatch(l.all[len(l.all)-1].Text)
	if found == nil {
		t.Fatalf("%+v", l.all[len(l.all)-1])
	}
	return found[1]
}

// Mail comes once when it is due where its reader is, with what is new since the last and
// not yet read; nothing comes when there is nothing, to whom has not chosen it, or after
// it was ended.
func TestDigests(t *testing.T) {
	var log bytes.Buffer
	at := time.Date(2026, 6, 5, 4, 0, 0, 0, time.UTC) // Friday, six in the morning in Paris
	s, sent, errands := mailing(t, &at, &log)
	pupil, coach := s.coached()
	pupil.in("Europe/Paris")
	pupil.mustSee(pupil.get("/account"), "robin@example.org", `value="none" checked`)
	pupil.mustSee(pupil.follows("/account/mail", "every", "daily"), "An e-mail with a link was sent to your address.", `value="daily" checked`)
	sent.confirms(s)
	several := func() {
		var group sync.WaitGroup
		for range 3 {
			group.Go(func() { errands.once(t.Context()) })
		}
		group.Wait()
	}
	coach.follows("/players/1/notes", "day", "2026-05-02", "body", "The grip.")
	several()
	if len(sent.all) != 0 {
		t.Fatalf("before seven: %+v", sent.all)
	}
	at = at.Add(time.Hour)
	several()
	if len(sent.all) != 1 {
		t.Fatalf("at seven: %+v", sent.all)
	}
	l := sent.all[0]
	if l.To != "robin@example.org" || l.Name != "A" || l.Subject != "Strokeledger: one new notice" || !strings.Contains(l.Text, "ines has written a note.") || !strings.Contains(l.Text, "https://golf.example.org/players/1/lessons#note-1") ||
		strings.Contains(l.Text, "accepted your link") || strings.Contains(l.Text, "The grip") || !strings.Contains(l.Text, l.Unsubscribe) {
		t.Errorf("%+v", l)
	}
	at = at.AddDate(0, 0, 1)
	several()
	coach.follows("/players/1/notes", "day", "2026-05-02", "body", "The stance.")
	pupil.get("/notices")
	at = at.AddDate(0, 0, 1)
	several()
	if len(sent.all) != 1 {
		t.Errorf("with nothing new: %+v", sent.all)
	}
	pupil.mustSee(pupil.follows("/account/mail", "every", "weekly"), "Your choice of mail is saved.", "It is on. You confirmed the address on")
	coach.follows("/players/1/notes", "day", "2026-05-02", "body", "The swing.")
	at = time.Date(2026, 6, 8, 4, 59, 0, 0, time.UTC)
	several()
	at = at.Add(time.Minute)
	several()
	if len(sent.all) != 2 || sent.all[1].Unsubscribe != l.Unsubscribe {
		t.Errorf("on Monday: %+v", sent.all)
	}
	if a := pupil.post("/account/mail", "every", "hourly"); a.status != 400 {
		t.Errorf("hourly: %d", a.status)
	}
	pupil.follows("/account/mail", "every", "none")
	coach.follows("/players/1/notes", "day", "2026-05-02", "body", "The finish.")
	at = at.AddDate(0, 0, 14)
	several()
	if len(sent.all) != 2 {
		t.Errorf("after the end: %+v", sent.all)
	}
}

// Mail that cannot be sent is tried again later and later, each time by one process, and
// then has everything in it. The log names the account by its number.
func TestDigestsAreTriedAgain(t *testing.T) {
	var log bytes.Buffer
	at := time.Date(2026, 6, 5, 8, 0, 0, 0, time.UTC)
	s, sent, errands := mailing(t, &at, &log)
	pupil, coach := s.coached()
	pupil.in("Etc/UTC")
	pupil.follows("/account/mail", "every", "daily")
	sent.confirms(s)
	coach.follows("/players/1/notes", "day", "2026-05-02", "body", "The grip.")
	sent.refuse = errors.New("550 no such (address)")
	at = time.Date(2026, 6, 6, 7, 0, 0, 0, time.UTC)
	for range 3 {
		errands.once(t.Context())
	}
	at = at.Add(15 * time.Minute)
	errands.once(t.Context())
	at = at.Add(29 * time.Minute)
	errands.once(t.Context())
	if n := strings.Count(log.String(), "mail was not sent"); n != 2 || !strings.Contains(log.String(), "player=1") || strings.Contains(log.String(), "robin") {
		t.Errorf("%d failures: %s", n, log.String())
	}
	sent.refuse = nil
	coach.follows("/players/1/notes", "day", "2026-05-02", "body", "The stance.")
	at = at.Add(time.Minute)
	errands.once(t.Context())
	errands.once(t.Context())
	if len(sent.all) != 1 || sent.all[0].Subject != "Strokeledger: two new notices" {
		t.Errorf("%+v", sent.all)
	}
	dbtest.Exec(t, s.url, `do $$ begin if (select count(*) from digests where tries = 0 and due_at = '2026-06-07 07:00+00') <> 1 then raise 'the next is not due in the morning'; end if; end $$`)
}

// The link in a letter asks before it ends the mail; a mail program ends it with one
// request. Neither needs a session, and a wrong secret finds nothing.
// Source: RFC 8058, section 3.2: a POST to the address, with List-Unsubscribe=One-Click.
func TestDigestsEndByTheirLink(t *testing.T) {
	var log bytes.Buffer
	at := time.Date(2026, 6, 5, 8, 0, 0, 0, time.UTC)
	s, sent, errands := mailing(t, &at, &log)
	pupil, coach := s.coached()
	reader := s.visitor()
	linked := func() string {
		pupil.follows("/account/mail", "every", "daily")
		sent.confirms(s)
		coach.follows("/players/1/notes", "day", "2026-05-02", "body", "The grip.")
		at = at.AddDate(0, 0, 1)
		errands.once(t.Context())
		return strings.TrimPrefix(sent.all[len(sent.all)-1].Unsubscribe, "https://golf.example.org")
	}
	link := linked()
	reader.mustSee(reader.get(link), "Stop the mail about your notices?")
	reader.mustSee(reader.get(link), "Stop the mail about your notices?")
	for _, wrong := range []string{link + "x", strings.Replace(link, "player=1", "player=2", 1), strings.Replace(link, "token=", "x=", 1)} {
		if a := reader.get(wrong); a.status != 404 {
			t.Errorf("%s: %d", wrong, a.status)
		}
		if a := reader.post(wrong); a.status != 404 {
			t.Errorf("%s: %d", wrong, a.status)
		}
	}
	reader.mustSee(reader.post(link), "You get no more mail about notices.")
	if a := reader.get(link); a.status != 404 {
		t.Errorf("a link that was used: %d", a.status)
	}
	second := linked()
	reader.mustSee(reader.post(second, "List-Unsubscribe", "One-Click"), "You get no more mail about notices.")
	pupil.mustSee(pupil.get("/account"), `value="none" checked`)
	if token := link[strings.Index(link, "token=")+6:]; strings.Contains(log.String(), token) {
		t.Error("the log has the secret")
	}
}

// A site without a mail server offers no mail.
func TestNoMail(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	if a := v.get("/account"); strings.Contains(a.body, "Mail about notices") {
		t.Error("mail is offered")
	}
	if a := v.post("/account/mail", "every", "daily"); a.status != 404 {
		t.Errorf("%d", a.status)
	}
}

// Mail is due at seven where its reader is, on the days when the clocks change too.
// Source: IANA tz database: in 2026 Paris changes on 29 March and 25 October.
func TestDigestsAreDueInTheMorning(t *testing.T) {
	paris, err := time.LoadLocation("Europe/Paris")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ after, every, want string }{
		{"2026-06-05T06:59", daily, "2026-06-05T07:00+02:00"},
		{"2026-06-05T07:00", daily, "2026-06-06T07:00+02:00"},
		{"2026-03-28T12:00", daily, "2026-03-29T07:00+02:00"},
		{"2026-10-24T12:00", daily, "2026-10-25T07:00+01:00"},
		{"2026-12-31T23:00", daily, "2027-01-01T07:00+01:00"},
		{"2026-06-05T12:00", weekly, "2026-06-08T07:00+02:00"},
		{"2026-06-08T06:00", weekly, "2026-06-08T07:00+02:00"},
		{"2026-06-08T07:00", weekly, "2026-06-15T07:00+02:00"},
	} {
		after, err := time.ParseInLocation("2006-01-02T15:04", c.after, paris)
		if err != nil {
			t.Fatal(err)
		}
		if got := nextDigest(after, c.every).Format("2006-01-02T15:04Z07:00"); got != c.want {
			t.Errorf("%s after %s: %s, want %s", c.every, c.after, got, c.want)
		}
	}
}
