package handlers

import (
	"bytes"
	"errors"
	"net/http"
	"net/url"
	"strings"
	"testing"
	"time"

	"strokeledger/db/dbtest"
	"strokeledger/handlers/mail"
	"strokeledger/web/paths"
)

// asking is a site that sends mail and a player whose address has been asked to confirm.
func asking(t *testing.T, log *bytes.Buffer) (testSite, *letters, *Errands, visitor, visitor) {
	t.Helper()
	at := new(time.Time)
	*at = time.Date(2026, 6, 5, 8, 0, 0, 0, time.UTC)
	s, sent, errands := mailing(t, at, log)
	pupil, coach := s.coached()
	pupil.in("Etc/UTC")
	pupil.follows("/account/mail", "every", "daily")
	coach.follows("/players/1/notes", "day", "2026-05-02", "body", "The grip.")
	*at = at.AddDate(0, 0, 7)
	return s, sent, errands, pupil, coach
}

// fieldsOfLink are player and token of a link, as the page that it opens sends them.
func fieldsOfLink(t *testing.T, link string) []string {
	t.Helper()
	at, err := url.Parse(link)
	if err != nil {
		t.Fatal(err)
	}
	return []string{"player", at.Query().Get("player"), "token", at.Query().Get("token")}
}

// An address that nobody confirmed gets one letter, which says who asked, and no other;
// following its link, as a mail program does, changes nothing. The log has no secret.
func TestMailWaitsForItsReader(t *testing.T) {
	var log bytes.Buffer
	_, sent, errands, pupil, _ := asking(t, &log)
	errands.once(t.Context())
	if len(sent.all) != 1 || sent.all[0].To != "robin@example.org" || sent.all[0].Name != "" || !strings.Contains(sent.all[0].Text, "The account “A” on") || !strings.Contains(sent.all[0].Text, "If it was not you") {
		t.Fatalf("%+v", sent.all)
	}
	link := sent.link(t)
	scanner := pupil.visitor()
	for _, method := range []string{http.MethodGet, http.MethodHead, http.MethodGet} {
		r, _ := http.NewRequest(method, pupil.URL+link, nil)
		if a := scanner.ask(r); a.status != http.StatusOK {
			t.Errorf("%s: %d", method, a.status)
		}
	}
	errands.once(t.Context())
	if len(sent.all) != 1 {
		t.Errorf("mail after a link was followed: %+v", sent.all)
	}
	pupil.mustSee(pupil.get("/account"), "No mail goes there until you confirm that the address is yours.", "Send the e-mail again")
	sent.confirms(pupil.testSite)
	pupil.mustSee(pupil.get("/account"), "It is on. You confirmed the address on")
	for _, secret := range fieldsOfLink(t, link)[3:] {
		if strings.Contains(log.String(), secret) {
			t.Error("the log has the secret")
		}
	}
}

// A link works once, until another replaces it, it expires, the address changes or the
// mail is ended; whatever is wrong with one, the answer is the same.
func TestLinksThatDoNotConfirm(t *testing.T) {
	var log bytes.Buffer
	s, sent, _, pupil, _ := asking(t, &log)
	said := ""
	fails := func(why, link string) {
		t.Helper()
		reader := s.visitor()
		for _, a := range []answer{reader.get(link), reader.post(paths.DigestProof, fieldsOfLink(t, link)...), reader.post(paths.DigestProof, append(fieldsOfLink(t, link), "refuse", "yes")...)} {
			if said == "" {
				said = a.body
			}
			if a.status != http.StatusNotFound || a.body != said || strings.Contains(a.body, "robin") {
				t.Errorf("%s: %d %s", why, a.status, a.body)
			}
		}
	}
	first := sent.link(t)
	fails("another account", strings.Replace(first, "player=1", "player=2", 1))
	fails("no account", strings.Replace(first, "player=1", "player=99", 1))
	fails("a wrong secret", first+"x")
	fails("no secret", paths.DigestProof+"?player=1")
	pupil.follows("/account/mail", "again", "yes")
	fails("a link that was replaced", first)
	second := sent.link(t)
	dbtest.Exec(t, s.url, `update digests set asked_until = now() - interval '1 second'`)
	fails("a link that has expired", second)
	pupil.mustSee(pupil.get("/account"), "its link has expired")
	pupil.follows("/account/mail", "again", "yes")
	third := sent.link(t)
	dbtest.Exec(t, s.url, `update players set email = 'moved@example.org' where id = 1`)
	fails("a link to an earlier address", third)
	pupil.follows("/account/mail", "every", "daily")
	fourth := sent.link(t)
	if to := sent.all[len(sent.all)-1].To; to != "moved@example.org" {
		t.Errorf("a letter to %s", to)
	}
	sent.confirms(s)
	fails("a link that was used", fourth)
	dbtest.Exec(t, s.url, `delete from asked_addresses`)
	pupil.follows("/account/mail", "every", "none")
	pupil.follows("/account/mail", "every", "daily")
	fifth := sent.link(t)
	pupil.follows("/account/mail", "every", "none")
	fails("ended mail", fifth)
}

// A new address needs a new proof: mail to it stops until its reader confirms.
func TestANewAddressIsAskedAnew(t *testing.T) {
	var log bytes.Buffer
	s, sent, errands, pupil, coach := asking(t, &log)
	sent.confirms(s)
	coach.follows("/players/1/notes", "day", "2026-05-02", "body", "The stance.")
	dbtest.Exec(t, s.url, `update players set email = 'moved@example.org' where id = 1`)
	dbtest.Exec(t, s.url, `update digests set due_at = '2026-06-01'`)
	errands.once(t.Context())
	errands.once(t.Context())
	if len(sent.all) != 1 || sent.all[0].To != "moved@example.org" || sent.all[0].Unsubscribe != "" {
		t.Fatalf("%+v", sent.all)
	}
	pupil.mustSee(pupil.get("/account"), "No mail goes there until you confirm")
	sent.link(t)
}

// An account that got mail before addresses were confirmed is asked once, when its next
// letter would have gone, and gets nothing else; its page says so before that.
func TestMailFromBeforeIsAskedToConfirm(t *testing.T) {
	var log bytes.Buffer
	at := time.Date(2026, 6, 5, 6, 0, 0, 0, time.UTC)
	s, sent, errands := mailing(t, &at, &log)
	pupil, coach := s.coached()
	dbtest.Exec(t, s.url, `insert into digests (player_id, every, token, due_at) values (1, 'daily', 'secret', '2026-06-05 07:00+00')`)
	coach.follows("/players/1/notes", "day", "2026-05-02", "body", "The grip.")
	pupil.mustSee(pupil.get("/account"), "No mail goes there until you confirm", "as soon as the mail server accepts it", "Send the e-mail now")
	errands.once(t.Context())
	if len(sent.all) != 0 {
		t.Fatalf("%+v", sent.all)
	}
	sent.refuse = errors.New("451 later")
	at = at.Add(time.Hour)
	errands.once(t.Context())
	sent.refuse = nil
	for range 4 {
		at = at.AddDate(0, 0, 1)
		errands.once(t.Context())
	}
	if len(sent.all) != 1 {
		t.Fatalf("%+v", sent.all)
	}
	sent.confirms(s)
}

// A letter that the server does not take is sent later; one of which nobody knows is
// not sent again unless it is asked for.
func TestALetterThatAsksIsTriedAgain(t *testing.T) {
	var log bytes.Buffer
	at := time.Date(2026, 6, 5, 8, 0, 0, 0, time.UTC)
	s, sent, errands := mailing(t, &at, &log)
	pupil := s.member("robin")
	sent.refuse = errors.New("451 later")
	pupil.mustSee(pupil.follows("/account/mail", "every", "daily"), "The mail server did not accept the e-mail", "Send the e-mail now")
	sent.refuse = nil
	errands.once(t.Context())
	if len(sent.all) != 0 {
		t.Fatalf("at once: %+v", sent.all)
	}
	at = at.Add(digestAgain)
	errands.once(t.Context())
	sent.confirms(s)
	pupil.follows("/account/mail", "every", "none")
	sent.refuse = mail.ErrUncertain
	pupil.mustSee(pupil.follows("/account/mail", "every", "daily"), "Send the e-mail again")
	sent.refuse = nil
	at = at.AddDate(0, 0, 2)
	errands.once(t.Context())
	if len(sent.all) != 0 {
		t.Fatalf("%+v", sent.all)
	}
}

// Nobody is pestered: a few letters a day go to an address, whatever account asks, and
// none for a while once its reader has said that it was somebody else.
func TestAskingIsLimited(t *testing.T) {
	var log bytes.Buffer
	s, sent, errands, pupil, _ := asking(t, &log)
	const enough = "No e-mail was sent: enough went to this address lately. Try again tomorrow."
	for range asksMost - 1 {
		pupil.follows("/account/mail", "again", "yes")
	}
	if a := pupil.post("/account/mail", "again", "yes"); a.status != http.StatusTooManyRequests || !strings.Contains(a.body, enough) {
		t.Errorf("%d %s", a.status, a.body)
	}
	if a := pupil.post("/account/delete", "confirm", password); a.status != http.StatusSeeOther {
		t.Fatal(a.status)
	}
	again := s.member("robin")
	if a := again.post("/account/mail", "every", "daily"); a.status != http.StatusTooManyRequests || len(sent.all) != asksMost {
		t.Errorf("a new account: %d, %d letters", a.status, len(sent.all))
	}
	dbtest.Exec(t, s.url, `delete from asked_addresses`)
	dbtest.Exec(t, s.url, `delete from tries`)
	again.follows("/account/mail", "again", "yes")
	link, reader := sent.link(t), s.visitor()
	reader.mustSee(reader.get(link), "I did not ask for it")
	if a := reader.post(paths.DigestProof, append(fieldsOfLink(t, link), "refuse", "yes")...); a.status != http.StatusSeeOther {
		t.Fatal(a.status)
	}
	reader.mustSee(reader.get(paths.DigestProof+"?done=refused"), "The mail is called off.")
	again.mustSee(again.get("/account"), `value="none" checked`)
	dbtest.Exec(t, s.url, `update asked_addresses set began_at = now() - interval '2 days'`)
	sent.all = nil
	if a := again.post("/account/mail", "every", "daily"); a.status != http.StatusTooManyRequests || !strings.Contains(a.body, enough) {
		t.Errorf("after a refusal: %d %s", a.status, a.body)
	}
	dbtest.Exec(t, s.url, `update digests set due_at = '2026-06-01'`)
	errands.once(t.Context())
	if len(sent.all) != 0 {
		t.Errorf("%+v", sent.all)
	}
}

// One network has only so many addresses asked, however many accounts it makes.
func TestANetworkAsksSoManyAddresses(t *testing.T) {
	var log bytes.Buffer
	at := time.Date(2026, 6, 5, 8, 0, 0, 0, time.UTC)
	s, sent, _ := mailing(t, &at, &log)
	for i := range asksTogether + 3 {
		want := http.StatusSeeOther
		if i >= asksTogether {
			want = http.StatusTooManyRequests
		}
		v := s.member("player" + string(rune('a'+i)))
		if a := v.post("/account/mail", "every", "weekly"); a.status != want {
			t.Errorf("%d: %d", i, a.status)
		}
	}
	if len(sent.all) != asksTogether {
		t.Errorf("%d letters", len(sent.all))
	}
}

// Another's mail is not to be started or ended from one's own account.
func TestNobodyAsksForAnother(t *testing.T) {
	var log bytes.Buffer
	s, sent, _, _, coach := asking(t, &log)
	if a := coach.post("/account/mail", "again", "yes", "player", "1"); a.status != http.StatusNotFound {
		t.Errorf("%d", a.status)
	}
	link := sent.link(t)
	if a := s.visitor().post("/account/mail", "again", "yes"); a.status != http.StatusSeeOther || len(sent.all) != 1 {
		t.Errorf("signed out: %d, %d letters", a.status, len(sent.all))
	}
	if a := s.visitor().post(link); a.status != http.StatusNotFound {
		t.Errorf("a secret in the address alone: %d", a.status)
	}
}
