package handlers

import (
	"crypto/rand"
	"errors"
	"net/http"
	"strconv"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/coach"
	"strokeledger/web/form"
	"strokeledger/web/paths"
	"strokeledger/web/words"
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
	if in.Ended, err = s.ended(r); err != nil {
		return err
	}
	if err := s.readCodes(r, &in.Codes); err != nil {
		return err
	}
	in.Whose = mine(r)
	for _, c := range coaches {
		in.Coaches = append(in.Coaches, coach.CoachInput{Player: me(r).ID, Coach: c.ID, Name: c.Name, Email: c.Email, From: c.SharedFrom, Approved: c.Confirmed, Looked: s.hereIf(r, c.LookedAt)})
	}
	return show(w, r, status, coach.NewCoachingPage(shell(r), in).View())
}

// ended are the accesses that the signed-in player ended within a day.
func (s *server) ended(r *http.Request) (all []coach.EndInput, err error) {
	kept, err := s.store.EndedCoachings(r.Context(), me(r).ID)
	for _, e := range kept {
		all = append(all, endOf(r, e))
	}
	return all, err
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

// coachLink shows the invitation behind a link, or what became of it; only accepting it
// changes anything.
func (s *server) coachLink(w http.ResponseWriter, r *http.Request) error {
	i, err := s.store.CoachInvitation(r.Context(), me(r).ID, formID(r, "player"), hashed(r.FormValue("token")))
	if err != nil {
		return err
	}
	in := coach.Invitation{Name: i.Name, Player: r.FormValue("player"), Token: r.FormValue("token"), Own: i.Own, Used: i.Used, Mine: i.Mine, Revoked: i.Revoked, Expired: i.Expired, Waits: i.Waits, Coaches: i.Coaches}
	if i.SharedFrom != nil {
		in.From = golf.DateOf(*i.SharedFrom)
	}
	status := http.StatusOK
	if !in.Open() && !in.Own && !in.Waits && !in.Coaches {
		status = http.StatusGone
	}
	return show(w, r, status, coach.NewInvitationPage(shell(r), in).View())
}

func (s *server) acceptCoaching(w http.ResponseWriter, r *http.Request) error {
	err := s.store.AcceptCoaching(r.Context(), me(r).ID, formID(r, "player"), hashed(r.FormValue("token")))
	if errors.Is(err, golf.ErrNotFound) {
		return s.coachLink(w, r) // it says why not
	}
	if err != nil {
		return err
	}
	access, err := s.store.Coaching(r.Context(), me(r).ID, formID(r, "player"), me(r).ID)
	if err != nil {
		return err
	}
	n, what := db.Notice{Kind: db.NoticeAsked, OfID: access.PupilID}, "coach"
	if access.Confirmed { // and had access before
		n.Kind, n.What, what = db.NoticeLinked, sharedFrom(access.SharedFrom), "linked"
	}
	s.tell(r, access.PupilID, n)
	return saved(w, r, paths.Coaching, what)
}

// sharedFrom writes the first shared day for a notice; empty for everything.
func sharedFrom(day *time.Time) string {
	if day == nil {
		return ""
	}
	return words.ShortDay(golf.DateOf(*day))
}

func (s *server) confirmCoach(w http.ResponseWriter, r *http.Request) error {
	if err := s.store.ConfirmCoach(r.Context(), me(r).ID, formID(r, "coach")); err != nil {
		return err
	}
	s.tell(r, formID(r, "coach"), db.Notice{Kind: db.NoticeApproved, OfID: me(r).ID})
	return saved(w, r, paths.Coaching, "approved")
}

// endCoaching asks, and then ends the access.
func (s *server) endCoaching(w http.ResponseWriter, r *http.Request) error {
	pupil, who := formID(r, "player"), formID(r, "coach")
	access, err := s.store.Coaching(r.Context(), me(r).ID, pupil, who)
	if err != nil {
		return err
	}
	if r.FormValue("sure") == "" {
		return show(w, r, http.StatusOK, coach.NewEndPage(shell(r), endOf(r, access)).View())
	}
	if err := s.store.EndCoaching(r.Context(), me(r).ID, pupil, who); err != nil {
		return err
	}
	s.tell(r, pupil, db.Notice{Kind: db.NoticeEnded, OfID: pupil})
	s.tell(r, who, db.Notice{Kind: db.NoticeEnded, OfID: pupil})
	return saved(w, r, paths.Coaching, "ended")
}

func endOf(r *http.Request, c db.Coaching) coach.EndInput {
	return coach.EndInput{Player: c.PupilID, Coach: c.CoachID, PlayerName: c.Pupil, CoachName: c.Coach, Own: c.PupilID == me(r).ID}
}

// resumeCoaching takes up an access again that the reader ended within a day.
func (s *server) resumeCoaching(w http.ResponseWriter, r *http.Request) error {
	if err := s.store.ResumeCoaching(r.Context(), me(r).ID, formID(r, "player"), formID(r, "coach")); err != nil {
		return err
	}
	for _, to := range []golf.PlayerID{formID(r, "player"), formID(r, "coach")} {
		s.tell(r, to, db.Notice{Kind: db.NoticeResumed, OfID: formID(r, "player")})
	}
	return saved(w, r, paths.Coaching, "resumed")
}

// shareFrom changes the first day that a coach sees.
func (s *server) shareFrom(w http.ResponseWriter, r *http.Request) error {
	from := form.ParseSharedFrom(r.FormValue("from"))
	if !from.Sound() {
		return s.showCoaching(w, r, http.StatusUnprocessableEntity, coach.CoachingInput{From: from})
	}
	if err := s.store.ShareFrom(r.Context(), me(r).ID, formID(r, "coach"), from.Value); err != nil {
		return err
	}
	n := db.Notice{Kind: db.NoticeDay, OfID: me(r).ID}
	if !from.Value.IsZero() {
		n.What = words.ShortDay(from.Value)
	}
	s.tell(r, formID(r, "coach"), n)
	return saved(w, r, paths.Coaching, "day")
}

// formID reads the ID of a player or a round from a form. It is 0, which nothing
// has, if the field is missing or not a number.
func formID(r *http.Request, field string) golf.PlayerID {
	n, _ := strconv.ParseInt(r.FormValue(field), 10, 64)
	return golf.PlayerID(n)
}
