package handlers

import (
	"context"
	"crypto/rand"
	"errors"
	"net/http"
	"strings"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/handlers/mail"
	"strokeledger/web/coach"
	"strokeledger/web/paths"
	"strokeledger/web/site"
)

// Mail about notices could be turned on for anybody's address. So it starts only after a
// letter went there with a link, and its reader has pressed the button on the page that
// the link opens. Following the link changes nothing, since mail programs do that to see
// whether it is safe.
const (
	proofDays    = 3  // how long a link works
	asksMost     = 4  // such letters to an address in a day, whatever account asks
	asksTogether = 10 // such letters that one network has sent in a quarter of an hour
	askTime      = 10 * time.Second
)

// errAskedEnough says that no such letter goes to an address for now.
var errAskedEnough = errors.New("enough letters went to the address, or its reader wants none")

// askedAddress is the key under which letters to an address are counted.
func askedAddress(email string) []byte { return hashed("asked " + strings.ToLower(email)) }

// askProof sends an account's address a letter that asks to confirm it, and reports
// whether one went: none goes to an address that was asked before, unless that is wanted.
// One that cannot be sent is owed from a moment on.
func (s *server) askProof(ctx context.Context, d db.Digest, again bool, owed time.Time) (bool, error) {
	may, err := s.store.CountAsked(ctx, askedAddress(d.Email), asksMost)
	if err == nil && !may {
		err = errAskedEnough
	}
	if err != nil {
		return false, err
	}
	token := rand.Text() + rand.Text()
	asked, err := s.store.AskProof(ctx, d, hashed(token), proofDays, again)
	if err != nil || !asked {
		return false, err
	}
	until := s.now().AddDate(0, 0, proofDays).In(s.zoneOf(db.Player{Zone: d.Zone}))
	said := coach.NewProof(coach.ProofInput{Name: d.Name, Site: s.options.Address, Daily: d.Every == daily, Link: s.options.Address + paths.DigestProofOf(d.PlayerID, token), Until: until})
	if err := s.options.Mail(ctx, mail.Letter{To: d.Email, Subject: said.Subject, Text: said.Text}); err != nil && !errors.Is(err, mail.ErrUncertain) {
		return false, errors.Join(err, s.store.ProofNotSent(context.WithoutCancel(ctx), d.PlayerID, hashed(token), owed))
	}
	return true, nil
}

// askAddress asks the reader's address to confirm that mail may go there, if that is
// still needed, and says on the page of the account what was done.
func (s *server) askAddress(w http.ResponseWriter, r *http.Request, again bool) error {
	d, err := s.store.Digest(r.Context(), me(r).ID)
	if err != nil {
		return err
	}
	if d.ProvedAt != nil || d.Open && !again {
		return saved(w, r, paths.Account, "digest")
	}
	n, err := s.store.CountTry(r.Context(), db.Try{Account: hashed("mail"), Client: hashed("mail " + network(r)), Known: true}, asksTogether)
	if err != nil {
		return err
	}
	err = errAskedEnough
	if n.Own <= asksTogether {
		ctx, cancel := context.WithTimeout(r.Context(), askTime)
		defer cancel()
		_, err = s.askProof(ctx, d, true, s.now().Add(digestAgain))
	}
	return s.answerAsked(w, r, d, err)
}

// answerAsked says what became of the letter.
func (s *server) answerAsked(w http.ResponseWriter, r *http.Request, d db.Digest, err error) error {
	switch {
	case err == nil:
		return saved(w, r, paths.Account, "digest-asked")
	case errors.Is(err, errAskedEnough):
		f := storedAccount(r)
		f.MailWrong = "No e-mail was sent: enough went to this address lately. Try again tomorrow."
		return s.showAccount(w, r, http.StatusTooManyRequests, f)
	}
	s.options.Log.WarnContext(r.Context(), "mail was not sent", "player", d.PlayerID, "error", err)
	return saved(w, r, paths.Account, "digest-later")
}

// proofOf finds the mail that a link in such a letter is about.
func (s *server) proofOf(r *http.Request) (d db.Digest, token string, err error) {
	token = r.FormValue("token")
	d, err = s.store.ProofOf(r.Context(), formID(r, "player"), hashed(token))
	return d, token, err
}

// digestProof asks whether mail may go to an address. What it says of a link that does
// not work is the same whatever the reason.
func (s *server) digestProof(w http.ResponseWriter, r *http.Request) error {
	if done := r.FormValue("done"); done != "" {
		return show(w, r, http.StatusOK, site.NewDigestProofPage(shell(r), site.DigestProofInput{Started: done == "started", Refused: done == "refused"}).View())
	}
	d, token, err := s.proofOf(r)
	switch {
	case errors.Is(err, golf.ErrNotFound):
		return show(w, r, http.StatusNotFound, site.NewDigestProofPage(shell(r), site.DigestProofInput{}).View())
	case err != nil:
		return err
	}
	in := site.DigestProofInput{Name: d.Name, Email: d.Email, Daily: d.Every == daily, Player: d.PlayerID, Token: token}
	return show(w, r, http.StatusOK, site.NewDigestProofPage(shell(r), in).View())
}

// proveDigest starts the mail, or calls it off and leaves the address alone.
func (s *server) proveDigest(w http.ResponseWriter, r *http.Request) error {
	d, token, err := s.proofOf(r)
	done := "started"
	switch {
	case err != nil:
	case r.FormValue("refuse") != "":
		done, err = "refused", s.store.RefuseProof(r.Context(), d, askedAddress(d.Email))
	default:
		err = s.store.Prove(r.Context(), d, hashed(token), nextDigest(s.now().In(s.zoneOf(db.Player{Zone: d.Zone})), d.Every))
	}
	if errors.Is(err, golf.ErrNotFound) {
		return show(w, r, http.StatusNotFound, site.NewDigestProofPage(shell(r), site.DigestProofInput{}).View())
	}
	if err != nil {
		return err
	}
	return redirect(w, r, paths.DigestProof+"?done="+done)
}
