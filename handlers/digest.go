package handlers

import (
	"context"
	"crypto/rand"
	"errors"
	"net/http"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/handlers/mail"
	"strokeledger/web/coach"
	"strokeledger/web/paths"
	"strokeledger/web/site"
)

// digestHour is when mail about new notices goes out where its reader is, on Mondays
// when it is weekly.
const digestHour = 7

// nextDigest is the first time after a moment at which mail is due.
func nextDigest(after time.Time, every string) time.Time {
	due := time.Date(after.Year(), after.Month(), after.Day(), digestHour, 0, 0, 0, after.Location())
	for !due.After(after) || every == weekly && due.Weekday() != time.Monday {
		due = time.Date(due.Year(), due.Month(), due.Day()+1, digestHour, 0, 0, 0, after.Location())
	}
	return due
}

// The choices of mail.
const (
	daily  = "daily"
	weekly = "weekly"
)

// digestAgain is how long mail that could not be sent waits for the first time; it waits
// twice as long the next time, and so on digestDoubled times.
const (
	digestAgain   = 15 * time.Minute
	digestDoubled = 6
)

// sendDigests sends the mail that is due, and asks addresses to confirm that were not
// asked yet. What cannot be sent is tried again later.
func (e *Errands) sendDigests(ctx context.Context) error {
	if e.s.options.Mail == nil {
		return nil
	}
	due, err := e.s.store.DueDigests(ctx, e.s.now())
	if err != nil {
		return err
	}
	for _, d := range due {
		wait := digestAgain << min(d.Tries, digestDoubled)
		again := e.s.now().Add(wait)
		mine, err := e.s.store.ClaimDigest(ctx, d, again)
		if err != nil {
			return err
		}
		if !mine {
			continue
		}
		if err := e.sendDue(ctx, d, again); err != nil && ctx.Err() == nil {
			e.s.options.Log.WarnContext(ctx, "mail was not sent", "player", d.PlayerID, "tries", d.Tries+1, "again", wait.String(), "error", err)
		}
	}
	return nil
}

// sendDue sends what an account is due.
func (e *Errands) sendDue(ctx context.Context, d db.Digest, again time.Time) error {
	if d.ProvedAt == nil {
		_, err := e.s.askProof(ctx, d, false, again)
		return err
	}
	l, err := e.letterFor(ctx, d)
	next := nextDigest(e.s.now().In(e.s.zoneOf(db.Player{Zone: d.Zone})), d.Every)
	switch {
	case errors.Is(err, errNothingNew):
		return e.s.store.NextDigest(ctx, d.PlayerID, next)
	case err != nil:
		return err
	}
	stop := e.s.options.Address + paths.DigestEndOf(d.PlayerID, d.Token)
	err = e.s.options.Mail(ctx, mail.Letter{Name: d.Name, To: d.Email, Subject: l.Subject, Text: l.Body, Unsubscribe: stop, ID: l.ID, Date: l.WrittenAt})
	ctx = context.WithoutCancel(ctx) // what became of the letter is kept, even when the process is told to stop
	switch {
	case err == nil:
		return e.letterTaken(ctx, d.PlayerID, l.ID, next)
	case errors.Is(err, mail.ErrUncertain):
		return err
	}
	return errors.Join(err, e.s.store.LetterRefused(ctx, d.PlayerID, l))
}

// letterTaken keeps that a letter is with the mail server. A reader who ended the mail
// meanwhile has none to keep it of.
func (e *Errands) letterTaken(ctx context.Context, who golf.PlayerID, id string, next time.Time) error {
	if err := e.s.store.LetterTaken(ctx, who, id, next); !errors.Is(err, golf.ErrNotFound) {
		return err
	}
	return nil
}

// errNothingNew says that there is nothing to send.
var errNothingNew = errors.New("nothing new")

// letterFor is the letter that an account is sent now: the one that an earlier try left
// behind, or else a new one, which is kept before it is sent.
func (e *Errands) letterFor(ctx context.Context, d db.Digest) (db.DigestLetter, error) {
	begun, err := e.s.store.BegunLetter(ctx, d.PlayerID)
	if !errors.Is(err, golf.ErrNotFound) {
		return begun, err
	}
	news, err := e.s.store.Unmailed(ctx, d.PlayerID)
	if err != nil {
		return begun, err
	}
	if len(news) == 0 {
		return begun, errNothingNew
	}
	p := db.Player{ID: d.PlayerID, Zone: d.Zone}
	said := coach.NewDigest(coach.DigestInput{Name: d.Name, Site: e.s.options.Address, Daily: d.Every == daily, Stop: e.s.options.Address + paths.DigestEndOf(d.PlayerID, d.Token), Notices: e.s.noticesFor(p, news)})
	l := db.DigestLetter{ID: mail.NewID(), Subject: said.Subject, Body: said.Text, WrittenAt: e.s.now()}
	for _, n := range news {
		l.Notices = append(l.Notices, n.ID)
	}
	return l, e.s.store.BeginLetter(ctx, d.PlayerID, l)
}

// saveDigest chooses how often the reader gets mail. Before it starts, the address is
// asked to confirm.
func (s *server) saveDigest(w http.ResponseWriter, r *http.Request) error {
	if s.options.Mail == nil {
		return golf.ErrNotFound
	}
	every, again := r.FormValue("every"), r.FormValue("again") != ""
	switch {
	case again:
		return s.askAddress(w, r, true)
	case every == "none":
		if err := s.store.EndDigest(r.Context(), me(r).ID); err != nil {
			return err
		}
		return saved(w, r, paths.Account, "digest")
	case every != daily && every != weekly:
		return errUnreadable
	}
	if err := s.store.ChooseDigest(r.Context(), me(r).ID, every, rand.Text()+rand.Text(), nextDigest(s.here(r, s.now()), every)); err != nil {
		return err
	}
	return s.askAddress(w, r, false)
}

// digestOf finds the mail that an address in a letter is about. The address is the same
// for whoever follows it and for a mail program that sends its form, so both values come
// from it.
func (s *server) digestOf(r *http.Request) (db.Digest, error) {
	q := r.URL.Query()
	n, _ := parseID(q.Get("player"))
	return s.store.DigestOf(r.Context(), golf.PlayerID(n), q.Get("token"))
}

// digestEnd asks whether to end the mail. Following the link changes nothing, since mail
// programs do that to see whether it is safe.
func (s *server) digestEnd(w http.ResponseWriter, r *http.Request) error {
	d, err := s.digestOf(r)
	if err != nil {
		return err
	}
	return show(w, r, http.StatusOK, site.NewDigestEndPage(shell(r), paths.DigestEndOf(d.PlayerID, d.Token)).View())
}

// endDigest ends the mail, for a reader who was asked or for a mail program.
func (s *server) endDigest(w http.ResponseWriter, r *http.Request) error {
	d, err := s.digestOf(r)
	if err != nil {
		return err
	}
	if err := s.store.EndDigest(r.Context(), d.PlayerID); err != nil {
		return err
	}
	return show(w, r, http.StatusOK, site.NewDigestEndPage(shell(r), "").View())
}

// mailChosen says how often the reader gets mail, and whether it has started.
func (s *server) mailChosen(r *http.Request, f *site.AccountInput) error {
	if s.options.Mail == nil {
		return nil
	}
	d, err := s.store.Digest(r.Context(), me(r).ID)
	if err != nil && !errors.Is(err, golf.ErrNotFound) {
		return err
	}
	f.Mail, f.Email, f.Every, f.AskedOpen = true, me(r).Email, d.Every, d.Open
	f.ProvedAt, f.AskedAt, f.AskedUntil = s.hereIf(r, d.ProvedAt), s.hereIf(r, d.AskedAt), s.hereIf(r, d.AskedUntil)
	return nil
}
