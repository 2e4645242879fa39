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

// sendDigests sends the mail that is due. What cannot be sent is tried again later.
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
		mine, err := e.s.store.ClaimDigest(ctx, d, e.s.now().Add(wait))
		if err != nil {
			return err
		}
		if !mine {
			continue
		}
		if err := e.sendDigest(ctx, d); err != nil && ctx.Err() == nil {
			e.s.options.Log.WarnContext(ctx, "mail was not sent", "player", d.PlayerID, "tries", d.Tries+1, "again", wait.String(), "error", err)
		}
	}
	return nil
}

// sendDigest sends the mail of one account, if there is something new, and says when the
// next is due.
func (e *Errands) sendDigest(ctx context.Context, d db.Digest) error {
	news, err := e.s.store.Unmailed(ctx, d.PlayerID)
	if err != nil {
		return err
	}
	p := db.Player{ID: d.PlayerID, Zone: d.Zone}
	if len(news) > 0 {
		stop := e.s.options.Address + paths.DigestEndOf(d.PlayerID, d.Token)
		said := coach.NewDigest(coach.DigestInput{Name: d.Name, Site: e.s.options.Address, Daily: d.Every == daily, Stop: stop, Notices: e.s.noticesFor(p, news)})
		if err := e.s.options.Mail(ctx, mail.Letter{Name: d.Name, To: d.Email, Subject: said.Subject, Text: said.Text, Unsubscribe: stop}); err != nil {
			return err
		}
	}
	return e.s.store.DigestSent(ctx, d.PlayerID, news, nextDigest(e.s.now().In(e.s.zoneOf(p)), d.Every))
}

// saveDigest chooses how often the reader gets mail.
func (s *server) saveDigest(w http.ResponseWriter, r *http.Request) error {
	if s.options.Mail == nil {
		return golf.ErrNotFound
	}
	switch every := r.FormValue("every"); every {
	case "none":
		if err := s.store.EndDigest(r.Context(), me(r).ID); err != nil {
			return err
		}
	case daily, weekly:
		if err := s.store.ChooseDigest(r.Context(), me(r).ID, every, rand.Text()+rand.Text(), nextDigest(s.here(r, s.now()), every)); err != nil {
			return err
		}
	default:
		return errUnreadable
	}
	return saved(w, r, paths.Account, "digest")
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

// mailChosen says how often the reader gets mail.
func (s *server) mailChosen(r *http.Request, f *site.AccountInput) error {
	if s.options.Mail == nil {
		return nil
	}
	d, err := s.store.Digest(r.Context(), me(r).ID)
	if err != nil && !errors.Is(err, golf.ErrNotFound) {
		return err
	}
	f.Mail, f.Email, f.Every = true, me(r).Email, d.Every
	return nil
}
