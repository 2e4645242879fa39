package handlers

import (
	"bytes"
	"context"
	"fmt"
	netmail "net/mail"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"strokeledger/handlers/mail"
	"strokeledger/handlers/mail/mailtest"
)

// posting is a site whose letters go to a mail server on loopback, with a pupil who has
// confirmed the address and a coach who has written. at is when mail is due.
func posting(t *testing.T) (office *mailtest.Office, coach visitor, at *time.Time, errands func(send func(context.Context, mail.Letter) error) *Errands) {
	t.Helper()
	at = new(time.Time)
	*at = time.Date(2026, 6, 5, 8, 0, 0, 0, time.UTC)
	var log bytes.Buffer
	s, sent, _ := mailing(t, at, &log)
	pupil, coach := s.coached()
	pupil.in("Etc/UTC")
	pupil.follows("/account/mail", "every", "daily")
	sent.confirms(s)
	coach.follows("/players/1/notes", "day", "2026-05-02", "body", "The grip.")
	*at = time.Date(2026, 6, 6, 7, 0, 0, 0, time.UTC)
	office = mailtest.Open(t)
	server := mail.Server{Host: "127.0.0.1", Port: office.Port(), Security: mail.Plain, From: "golf@club.example"}
	return office, coach, at, func(send func(context.Context, mail.Letter) error) *Errands {
		options := s.server.options
		if options.Address, options.Mail = "https://golf.example.org", server.Send; send != nil {
			options.Mail = func(ctx context.Context, l mail.Letter) error {
				if err := server.Send(ctx, l); err != nil {
					return err
				}
				return send(ctx, l)
			}
		}
		return NewErrands(s.store, options)
	}
}

// ids are the Message-IDs of letters, in order.
func ids(t *testing.T, all []mailtest.Taken) (ids []string) {
	t.Helper()
	for _, one := range all {
		m, err := netmail.ReadMessage(strings.NewReader(one.Data))
		if err != nil {
			t.Fatal(err)
		}
		ids = append(ids, m.Header.Get("Message-ID"))
	}
	return ids
}

// inOrder is a letter with its lines in an order, whatever order its head came in.
func inOrder(l mailtest.Taken) mailtest.Taken {
	lines := strings.Split(l.Data, "\n")
	slices.Sort(lines)
	l.Data = strings.Join(lines, "\n")
	return l
}

// whole runs errands in a goroutine that may die in them, as a process does.
func whole(errands *Errands) {
	var process sync.WaitGroup
	process.Go(func() { errands.once(context.Background()) })
	process.Wait()
}

// A process that dies after the server took a letter, and before that is written down,
// leaves it behind. The next one sends the very letter again, whatever is new by then, so
// that a mailbox that drops duplicates shows it once; what is new comes in the next.
// Sources: RFC 5322, section 3.6.4; RFC 7352.
func TestAProcessDiesWithALetterSent(t *testing.T) {
	office, coach, at, errands := posting(t)
	whole(errands(func(context.Context, mail.Letter) error { runtime.Goexit(); return nil }))
	coach.follows("/players/1/notes", "day", "2026-05-02", "body", "The stance.")
	whole(errands(nil))
	if n := len(office.All()); n != 1 {
		t.Fatalf("sent %d times before it was due again", n)
	}
	*at = at.Add(digestAgain)
	whole(errands(nil))
	whole(errands(nil))
	all := office.All()
	if len(all) != 2 || inOrder(all[0]) != inOrder(all[1]) {
		t.Fatalf("sent %d times: %+v", len(all), all)
	}
	*at = at.AddDate(0, 0, 1)
	whole(errands(nil))
	all = office.All()
	if got := ids(t, all); len(got) != 3 || got[0] != got[1] || got[2] == got[0] || !strings.Contains(all[2].Data, "one new notice") {
		t.Errorf("%+v", all)
	}
}

// A process that dies before the server has the letter leaves it behind as well, and it
// goes once.
func TestAProcessDiesWithALetterUnsent(t *testing.T) {
	office, _, at, errands := posting(t)
	dying := errands(nil)
	dying.s.options.Mail = func(context.Context, mail.Letter) error { runtime.Goexit(); return nil }
	whole(dying)
	*at = at.Add(digestAgain)
	whole(errands(nil))
	*at = at.AddDate(0, 0, 1)
	whole(errands(nil))
	if n := len(office.All()); n != 1 {
		t.Errorf("sent %d times", n)
	}
}

// A server that takes a letter and falls silent gets the very letter again; one that
// takes it and hangs up afterwards, and a process that is told to stop, have sent it.
// A letter that was refused is written anew, with all there is.
func TestALetterGoesOnce(t *testing.T) {
	stopping, stop := context.WithCancel(context.Background())
	for name, c := range map[string]struct {
		wrong  func(*mailtest.Office)
		send   func(context.Context, mail.Letter) error
		during context.Context
		want   string // letters, different ones, and notices in the last
	}{
		"no answer":         {wrong: func(o *mailtest.Office) { o.HangUp = "DATA" }, want: "2 letters, 1 of them different, the last with one new notice"},
		"a dead line later": {wrong: func(o *mailtest.Office) { o.HangUp = "RSET" }, want: "1 letters, 1 of them different, the last with one new notice"},
		"refused":           {wrong: func(o *mailtest.Office) { o.Judge = "451 later" }, want: "2 letters, 2 of them different, the last with two new notices"},
		"told to stop":      {send: func(context.Context, mail.Letter) error { stop(); return nil }, during: stopping, want: "1 letters, 1 of them different, the last with one new notice"},
	} {
		t.Run(name, func(t *testing.T) {
			office, coach, at, errands := posting(t)
			if c.wrong != nil {
				c.wrong(office)
			}
			ctx := t.Context()
			if c.during != nil {
				ctx = c.during
			}
			errands(c.send).once(ctx)
			office.HangUp, office.Judge = "", ""
			coach.follows("/players/1/notes", "day", "2026-05-02", "body", "The stance.")
			*at = at.Add(digestAgain)
			whole(errands(nil))
			all, different := office.All(), map[string]bool{}
			for _, id := range ids(t, all) {
				different[id] = true
			}
			notices := "one new notice"
			if strings.Contains(all[len(all)-1].Data, "two new notices") {
				notices = "two new notices"
			}
			if got := fmt.Sprintf("%d letters, %d of them different, the last with %s", len(all), len(different), notices); got != c.want {
				t.Errorf("%s, want %s", got, c.want)
			}
		})
	}
}
