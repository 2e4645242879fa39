package handlers

import (
	"crypto/rand"
	"net/http"
	"strconv"

	"strokeledger/analysis/golf"
	"strokeledger/web/coach"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// coachLinkDays is how many days an invitation works.
const coachLinkDays = 7

func (s *server) coaching(w http.ResponseWriter, r *http.Request) error {
	return s.showCoaching(w, r, http.StatusOK, coach.CoachingInput{})
}

func (s *server) showCoaching(w http.ResponseWriter, r *http.Request, status int, in coach.CoachingInput) error {
	coaches, err := s.store.Coaches(r.Context(), me(r).ID)
	if err != nil {
		return err
	}
	if in.Roster, err = s.roster(r); err != nil {
		return err
	}
	if in.Unused, err = s.store.CoachInvitations(r.Context(), me(r).ID); err != nil {
		return err
	}
	in.Whose = mine(r)
	for _, c := range coaches {
		in.Coaches = append(in.Coaches, coach.CoachInput{Player: me(r).ID, Coach: c.ID, Name: c.Name, Email: c.Email, From: c.SharedFrom, Approved: c.Confirmed, Looked: s.hereIf(r, c.LookedAt)})
	}
	return show(w, r, status, coach.NewCoachingPage(shell(r), in).View())
}

// inviteCoach makes a link that one coach can use once.
func (s *server) inviteCoach(w http.ResponseWriter, r *http.Request) error {
	from := form.ParseSharedFrom(r.FormValue("from"))
	if !from.Sound() {
		return s.showCoaching(w, r, http.StatusUnprocessableEntity, coach.CoachingInput{From: from})
	}
	token := rand.Text()
	if err := s.store.NewCoachInvitation(r.Context(), me(r).ID, hashed(token), from.Value, coachLinkDays); err != nil {
		return err
	}
	return s.showCoaching(w, r, http.StatusOK, coach.CoachingInput{Link: s.absolute(r, paths.CoachLink(me(r).ID, token))})
}

func (s *server) revokeCoachLinks(w http.ResponseWriter, r *http.Request) error {
	if err := s.store.RevokeCoachInvitations(r.Context(), me(r).ID); err != nil {
		return err
	}
	return saved(w, r, paths.Coaching, "links")
}

// coachLink shows the invitation behind a link; only accepting it changes anything.
func (s *server) coachLink(w http.ResponseWriter, r *http.Request) error {
	name, err := s.store.CoachInvitation(r.Context(), formID(r, "player"), hashed(r.FormValue("token")))
	if err != nil {
		return err
	}
	return show(w, r, http.StatusOK, coach.NewInvitationPage(shell(r), name, r.FormValue("player"), r.FormValue("token")).View())
}

func (s *server) acceptCoaching(w http.ResponseWriter, r *http.Request) error {
	if err := s.store.AcceptCoaching(r.Context(), me(r).ID, formID(r, "player"), hashed(r.FormValue("token"))); err != nil {
		return err
	}
	return saved(w, r, paths.Coaching, "coach")
}

func (s *server) confirmCoach(w http.ResponseWriter, r *http.Request) error {
	if err := s.store.ConfirmCoach(r.Context(), me(r).ID, formID(r, "coach")); err != nil {
		return err
	}
	return saved(w, r, paths.Coaching, "approved")
}

func (s *server) endCoaching(w http.ResponseWriter, r *http.Request) error {
	if err := s.store.EndCoaching(r.Context(), me(r).ID, formID(r, "player"), formID(r, "coach")); err != nil {
		return err
	}
	return saved(w, r, paths.Coaching, "ended")
}

// formID reads the ID of a player or a round from a form. It is 0, which nothing
// has, if the field is missing or not a number.
func formID(r *http.Request, field string) golf.PlayerID {
	n, _ := strconv.ParseInt(r.FormValue(field), 10, 64)
	return golf.PlayerID(n)
}
