package db_test

import (
	"errors"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// onCourse is a round on a course with three holes entered: one tee shot from the
// card's length, two from it, and one from another length.
func onCourse(course golf.CourseID) db.Round {
	r := aRound()
	r.CourseID = &course
	tee := func(d golf.Distance) golf.Shot { return golf.Shot{Lie: golf.Tee, Distance: d} }
	putt := golf.Shot{Lie: golf.Green, Distance: 20 * golf.Foot}
	r.Holes[0].Line, r.Holes[0].Shots = "g20", []golf.Shot{tee(384 * golf.Yard), putt}
	lost := tee(158 * golf.Yard)
	lost.Penalty = 1
	r.Holes[1].Line, r.Holes[1].Shots = "x t g20", []golf.Shot{lost, tee(158 * golf.Yard), putt}
	r.Holes[2].Line, r.Holes[2].Shots = "t498 g20", []golf.Shot{tee(498 * golf.Yard), putt}
	return r
}

// A corrected card changes par, length and index of a round, and the tee shots
// that were played from the card; everything else stays.
func TestUseCard(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	a, b := newPlayer(t, s, "a@example.org"), newPlayer(t, s, "b@example.org")
	c := db.Course{Name: "Harrow Fen", Holes: threeHoles()}
	var err error
	if c.ID, err = s.SaveCourse(ctx, a, c); err != nil {
		t.Fatal(err)
	}
	id, err := s.NewRound(ctx, a, onCourse(c.ID))
	if err != nil {
		t.Fatal(err)
	}
	if other, err := s.OtherCards(ctx, a, c.ID); err != nil || len(other) != 0 {
		t.Errorf("the same card: %+v, %v", other, err)
	}
	c.Holes = []golf.CardHole{{Number: 1, Par: 4, Length: 380 * golf.Yard, Index: 2}, {Number: 2, Par: 4, Length: 250 * golf.Yard, Index: 3}, {Number: 3, Par: 5, Length: 510 * golf.Yard, Index: 1}}
	if _, err := s.SaveCourse(ctx, a, c); err != nil {
		t.Fatal(err)
	}
	other, err := s.OtherCards(ctx, a, c.ID)
	if err != nil || len(other) != 1 || other[0].Round != id || other[0].Holes != 3 {
		t.Fatalf("%+v, %v", other, err)
	}
	if other, err := s.OtherCards(ctx, b, c.ID); err != nil || len(other) != 0 {
		t.Errorf("a stranger's rounds: %+v, %v", other, err)
	}
	if err := s.UseCard(ctx, b, id, c.Holes); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("a stranger changes the card: %v", err)
	}
	if err := s.UseCard(ctx, a, id, c.Holes); err != nil {
		t.Fatal(err)
	}
	got, err := s.Round(ctx, a, id)
	if err != nil {
		t.Fatal(err)
	}
	var card []golf.CardHole
	for _, h := range got.Holes {
		card = append(card, h.Card())
	}
	if diff := cmp.Diff(c.Holes, card); diff != "" {
		t.Error(diff)
	}
	tees := []golf.Distance{got.Holes[0].Shots[0].Distance, got.Holes[1].Shots[0].Distance, got.Holes[1].Shots[1].Distance, got.Holes[2].Shots[0].Distance}
	if diff := cmp.Diff([]golf.Distance{380 * golf.Yard, 250 * golf.Yard, 250 * golf.Yard, 498 * golf.Yard}, tees); diff != "" {
		t.Error(diff)
	}
	if got.Par18 != 72 || got.Holes[0].Line != "g20" || got.Holes[1].Shots[0].Penalty != 1 {
		t.Errorf("%+v", got)
	}
	if other, err := s.OtherCards(ctx, a, c.ID); err != nil || len(other) != 0 {
		t.Errorf("offered again: %+v, %v", other, err)
	}
	if err := s.RemoveRound(ctx, a, id); err != nil {
		t.Fatal(err)
	}
	if err := s.UseCard(ctx, a, id, threeHoles()); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("a removed round: %v", err)
	}
}

// The par of the whole course follows a card of 18 holes.
func TestUseCardOf18Holes(t *testing.T) {
	s, ctx := dbtest.Tx(t), t.Context()
	a := newPlayer(t, s, "a@example.org")
	r := aRound()
	r.Holes = nil
	var card []golf.CardHole
	for n := 1; n <= 18; n++ {
		r.Holes = append(r.Holes, db.Hole{Hole: golf.Hole{Number: n, Par: 4}, Length: 400 * golf.Yard})
		card = append(card, golf.CardHole{Number: n, Par: 3, Length: 150 * golf.Yard})
	}
	id, err := s.NewRound(ctx, a, r)
	if err != nil {
		t.Fatal(err)
	}
	if err := s.UseCard(ctx, a, id, card); err != nil {
		t.Fatal(err)
	}
	if got, err := s.Round(ctx, a, id); err != nil || got.Par18 != 54 {
		t.Errorf("par of the course %d, %v", got.Par18, err)
	}
}

// A new card deletes the round's summary, and a summary that was being made of the
// old card is not stored.
func TestANewCardDeletesTheSummary(t *testing.T) {
	p := newPair(t)
	read := func() db.Round {
		r, err := p.Round(p.ctx, p.pupil, p.round)
		p.must(err)
		return r
	}
	summary := func() string {
		rows, err := p.Summaries(p.ctx, p.coach, db.Chosen{})
		p.must(err)
		return rows[0].MadeFor
	}
	before := read()
	p.must(p.SaveSummaries(p.ctx, p.pupil, p.pupil, []db.KeptSummary{{Round: before, MadeFor: "1", Summary: []byte("{}")}}))
	if got := summary(); got != "1" {
		t.Fatalf("%q", got)
	}
	card := threeHoles()
	card[0].Par = 5
	p.must(p.UseCard(p.ctx, p.pupil, p.round, card))
	if got := summary(); got != "" {
		t.Errorf("an outdated summary stays: %q", got)
	}
	p.must(p.SaveSummaries(p.ctx, p.pupil, p.pupil, []db.KeptSummary{{Round: before, MadeFor: "1", Summary: []byte("{}")}}))
	if got := summary(); got != "" {
		t.Errorf("a summary of the old card is kept: %q", got)
	}
}
