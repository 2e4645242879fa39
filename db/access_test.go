package db_test

import (
	"errors"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// sees counts the rounds that asker sees of a player.
func sees(t *testing.T, s *db.Store, asker, player golf.PlayerID) int {
	t.Helper()
	all, err := s.History(t.Context(), asker, player)
	if err != nil {
		t.Fatal(err)
	}
	_, err = s.Seen(t.Context(), asker, player)
	if len(all) > 0 && err != nil || err != nil && !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("%d rounds, %v", len(all), err)
	}
	return len(all)
}

// A coach sees the pupil's rounds of the shared days, from when the pupil confirms
// the coach until one of them ends it. Nobody else ever sees them.
func TestACoachHasAccess(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	pupil, coach, other := newPlayer(t, s, "a@example.org"), newPlayer(t, s, "b@example.org"), newPlayer(t, s, "c@example.org")
	for days := range 3 {
		r := aRound()
		r.Holes[0] = entered(0)
		r.Holes[0].Length = 384 * golf.Yard
		r.PlayedOn = r.PlayedOn.AddDate(0, 0, days)
		if _, err := s.NewRound(ctx, pupil, r); err != nil {
			t.Fatal(err)
		}
	}
	second := golf.DateOf(aRound().PlayedOn).AddDays(1)
	if err := s.NewCoachInvitation(ctx, pupil, []byte("token"), second, 7); err != nil {
		t.Fatal(err)
	}
	if i, err := s.CoachInvitation(ctx, coach, pupil, []byte("token")); err != nil || i.Name == "" || i.SharedFrom == nil || i.Own || i.Used || i.Revoked || i.Expired || i.Waits || i.Coaches {
		t.Fatalf("%+v, %v", i, err)
	}
	for what, err := range map[string]error{
		"a wrong token":      s.AcceptCoaching(ctx, coach, pupil, []byte("other")),
		"the pupil's own":    s.AcceptCoaching(ctx, pupil, pupil, []byte("token")),
		"confirmed too soon": s.ConfirmCoach(ctx, pupil, coach),
	} {
		if !errors.Is(err, golf.ErrNotFound) {
			t.Errorf("%s: %v", what, err)
		}
	}
	if err := s.AcceptCoaching(ctx, coach, pupil, []byte("token")); err != nil {
		t.Fatal(err)
	}
	if err := s.AcceptCoaching(ctx, other, pupil, []byte("token")); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("a link is used twice: %v", err)
	}
	if n := sees(t, s, coach, pupil); n != 0 {
		t.Errorf("before the pupil confirms, the coach sees %d rounds", n)
	}
	if err := s.ConfirmCoach(ctx, pupil, coach); err != nil {
		t.Fatal(err)
	}
	if own, shared, none := sees(t, s, pupil, pupil), sees(t, s, coach, pupil), sees(t, s, other, pupil); own != 3 || shared != 2 || none != 0 {
		t.Errorf("the pupil sees %d, the coach %d, another %d", own, shared, none)
	}
	for who, want := range map[golf.PlayerID]bool{pupil: false, coach: true, other: false} {
		if p, err := s.Seen(ctx, who, who); p.Teaches != want || err != nil {
			t.Errorf("%d has pupils: %v, %v", who, p.Teaches, err)
		}
		if got, err := s.OnlyCoaches(ctx, who); got != want || err != nil {
			t.Errorf("%d only coaches: %v, %v", who, got, err)
		}
	}
	if n := sees(t, s, pupil, coach); n != 0 {
		t.Errorf("the pupil sees %d rounds of the coach", n)
	}
	if err := s.RecordLook(ctx, coach, pupil, looked(db.LookMonths, 0)); err != nil {
		t.Error(err)
	}
	for _, stranger := range []golf.PlayerID{other, pupil} {
		if err := s.RecordLook(ctx, stranger, pupil, looked(db.LookMonths, 0)); !errors.Is(err, golf.ErrNotFound) {
			t.Errorf("a look by %d, who is not a coach: %v", stranger, err)
		}
	}
	for who, want := range map[golf.PlayerID]bool{coach: true, other: false} {
		if before, err := s.VisitBefore(ctx, who, pupil); before != nil || (err == nil) != want {
			t.Errorf("the visit of %d before the first: %v, %v", who, before, err)
		}
	}
	coaches, err := s.Coaches(ctx, pupil)
	if err != nil || len(coaches) != 1 || !coaches[0].Confirmed || coaches[0].LookedAt == nil {
		t.Errorf("%+v, %v", coaches, err)
	}
	looks, err := s.Looks(ctx, pupil, 0, 9)
	if err != nil || len(looks) != 1 || looks[0].CoachID != coach || looks[0].Kind != db.LookMonths || looks[0].Times != 1 {
		t.Errorf("%+v, %v", looks, err)
	}
	if pupils, err := s.Roster(ctx, coach, thisMonth()); err != nil || len(pupils) != 1 || pupils[0].ID != pupil {
		t.Errorf("%+v, %v", pupils, err)
	}
	if err := s.EndCoaching(ctx, other, pupil, coach); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("another ends it: %v", err)
	}
	if err := s.EndCoaching(ctx, pupil, pupil, coach); err != nil {
		t.Fatal(err)
	}
	if n := sees(t, s, coach, pupil); n != 0 {
		t.Errorf("after the end the coach sees %d rounds", n)
	}
}

func TestLinksExpireAndAreRevoked(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	pupil, coach := newPlayer(t, s, "a@example.org"), newPlayer(t, s, "b@example.org")
	if err := s.NewCoachInvitation(ctx, pupil, []byte("late"), golf.Date{}, -1); err != nil {
		t.Fatal(err)
	}
	if err := s.AcceptCoaching(ctx, coach, pupil, []byte("late")); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("an expired link: %v", err)
	}
	if err := s.NewCoachInvitation(ctx, pupil, []byte("back"), golf.Date{}, 7); err != nil {
		t.Fatal(err)
	}
	for who, want := range map[golf.PlayerID]int{pupil: 1, coach: 0} {
		if n, err := s.CoachInvitations(ctx, who); n != want || err != nil {
			t.Errorf("%d has %d links that can be used, %v", who, n, err)
		}
	}
	if err := s.RevokeCoachInvitations(ctx, pupil); err != nil {
		t.Fatal(err)
	}
	if i, err := s.CoachInvitation(ctx, coach, pupil, []byte("back")); err != nil || !i.Revoked {
		t.Errorf("a revoked link: %+v, %v", i, err)
	}
	if i, err := s.CoachInvitation(ctx, coach, pupil, []byte("late")); err != nil || !i.Expired {
		t.Errorf("an expired link: %+v, %v", i, err)
	}
	if err := s.AcceptCoaching(ctx, coach, pupil, []byte("back")); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("a revoked link is used: %v", err)
	}
}
