package handlers

import (
	"crypto/rand"
	"errors"
	"fmt"
	"net/http"
	"strconv"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/coach"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// triesOfCode is how many codes an account may try in a quarter of an hour, wherever it
// is; the limit by address counts as well.
const triesOfCode = 10

// readCodes reads the signed-in player's code, and who has asked whom.
func (s *server) readCodes(r *http.Request, in *coach.CodesInput) (err error) {
	kept, err := s.store.Codes(r.Context(), me(r).ID)
	in.Code, in.Asks, in.Asked = kept.Code, s.requestsOf(r, kept.Asks), s.requestsOf(r, kept.Asked)
	return err
}

func (s *server) requestsOf(r *http.Request, kept []db.CoachRequest) (all []coach.RequestInput) {
	for _, k := range kept {
		to := coach.RequestInput{ID: k.ID, Name: k.Name, Email: k.Email, Asked: golf.DateOf(s.here(r, k.AskedAt))}
		if k.SharedFrom != nil {
			to.From = golf.DateOf(*k.SharedFrom)
		}
		all = append(all, to)
	}
	return all
}

// setCode gives the signed-in player another code, or turns it off.
func (s *server) setCode(w http.ResponseWriter, r *http.Request) error {
	if r.FormValue("code") == "" {
		if err := s.store.SetCoachCode(r.Context(), me(r).ID, ""); err != nil {
			return err
		}
		return saved(w, r, paths.Coaching, "codeoff")
	}
	err := db.ErrTaken
	for n := 0; n < 3 && errors.Is(err, db.ErrTaken); n++ { // another has it once in 70 thousand million
		random := make([]byte, form.CodeBytes)
		rand.Read(random)
		err = s.store.SetCoachCode(r.Context(), me(r).ID, form.Code(random))
	}
	if err != nil {
		return err
	}
	return saved(w, r, paths.Coaching+"#code", "code")
}

// askCoach names the coach of a code, and asks the coach once the player is sure.
func (s *server) askCoach(w http.ResponseWriter, r *http.Request) error {
	f := form.ParseAskCoach(r.FormValue("code"), r.FormValue("from"))
	if !f.Sound() {
		return s.askAgain(w, r, f)
	}
	if err := s.countCode(w, r); err != nil {
		return err
	}
	owner, err := s.store.OwnerOfCode(r.Context(), me(r).ID, f.Code.Value)
	switch {
	case errors.Is(err, golf.ErrNotFound):
		f.Code.Problem = "No coach has this code now. Ask the coach for it again."
		return s.askAgain(w, r, f)
	case err != nil:
		return err
	case r.FormValue("sure") == "" || owner.Own || owner.Coaches || owner.Waits:
		in := coach.CodeOwner{Name: owner.Name, Email: owner.Email, Code: f.Code.Value, From: f.From.Value, Own: owner.Own, Waits: owner.Waits, Coaches: owner.Coaches, Asked: owner.Asked}
		return show(w, r, http.StatusOK, coach.NewAskPage(shell(r), in).View())
	}
	if err := s.store.AskCoach(r.Context(), me(r).ID, f.Code.Value, f.From.Value); err != nil {
		return err
	}
	s.tell(r, owner.ID, db.Notice{Kind: db.NoticeRequest, OfID: me(r).ID})
	return saved(w, r, paths.Coaching, "requested")
}

func (s *server) askAgain(w http.ResponseWriter, r *http.Request, f form.AskCoach) error {
	return s.showCoaching(w, r, http.StatusUnprocessableEntity, coach.CoachingInput{Codes: coach.CodesInput{Typed: &f}})
}

// countCode counts a try of a code, and refuses one too many.
func (s *server) countCode(w http.ResponseWriter, r *http.Request) error {
	account := hashed("codes of " + strconv.FormatInt(int64(me(r).ID), 10))
	n, err := s.store.CountTry(r.Context(), db.Try{Account: account, Client: account, Known: true}, triesOfCode)
	if err != nil || n.Own <= triesOfCode {
		return err
	}
	w.Header().Set("Retry-After", fmt.Sprint(int(n.Wait/time.Second)+1))
	return s.tooOften(w, r)
}

// answerRequest accepts a pupil who has asked by the code, or declines.
func (s *server) answerRequest(w http.ResponseWriter, r *http.Request) error {
	pupil := formID(r, "player")
	if r.FormValue("accept") == "" {
		if err := s.store.DropRequest(r.Context(), me(r).ID, pupil, me(r).ID); err != nil {
			return err
		}
		s.tell(r, pupil, db.Notice{Kind: db.NoticeRefused, OfID: pupil})
		return saved(w, r, paths.Coaching, "turneddown")
	}
	if err := s.store.TakeRequest(r.Context(), me(r).ID, pupil); err != nil {
		return err
	}
	s.tell(r, pupil, db.Notice{Kind: db.NoticeTaken, OfID: pupil})
	return saved(w, r, paths.Coaching, "taken")
}

// withdrawRequest takes a request back.
func (s *server) withdrawRequest(w http.ResponseWriter, r *http.Request) error {
	if err := s.store.DropRequest(r.Context(), me(r).ID, me(r).ID, formID(r, "coach")); err != nil {
		return err
	}
	return saved(w, r, paths.Coaching, "withdrawn")
}
