package db_test

import (
	"fmt"
	"slices"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// remake makes a line of all balls from a lie, whatever the club: the mean, for any
// carry.
func remake(trials []golf.Trial) golf.RunBook {
	var book golf.RunBook
	for _, lie := range golf.TrialLies {
		sum, n := 0.0, 0.0
		for _, t := range trials {
			if carry, total := t.Yards(); t.Lie == lie {
				sum, n = sum+total-carry, n+1
			}
		}
		if n > 0 {
			book = append(book, golf.RunLine{Club: trials[0].Club, Lie: lie, Start: sum / n, To: 60})
		}
	}
	return book
}

// fromRough is a ball that ran so many yards.
func fromRough(yd float64) golf.Trial {
	return golf.Trial{Club: "sw", Lie: golf.Rough, Speed: golf.MediumGreen, Carry: 10, Total: 10 + yd, Unit: golf.TrialYards}
}

var may2 = golf.Date{Year: 2026, Month: 5, Day: 2}

// shortSided is the second hole of a round with a short side that was not measured
// from the rough, and one that was.
func shortSided(version int) db.Hole {
	h := entered(version)
	h.Number = 2
	h.Line = "v195x r20s r12s4 g2m-"
	h.Shots = slices.Clone(h.Shots)
	h.Shots[2] = golf.Shot{Lie: golf.Rough, Distance: 20 * golf.Yard, ShortSided: true}
	h.Shots[3] = golf.Shot{Lie: golf.Rough, Distance: 12 * golf.Yard, ShortSided: true, GreenKnown: true, GreenToWork: 4 * golf.Yard}
	return h
}

// ownRuns are the run-outs in yards that both readers put into the shots of the
// player's rounds as asker reads them; they must be the same.
func (p pair) ownRuns(asker, who golf.PlayerID) string {
	p.t.Helper()
	said := func(all []golf.Round) string {
		text := ""
		for _, r := range all {
			for _, h := range r.Holes {
				for i, s := range h.Shots {
					if s.OwnRunKnown {
						text += fmt.Sprintf("%s %d.%d %.2f ", r.ID, h.Number, i+1, s.OwnRun.Yards())
					}
				}
			}
		}
		return text
	}
	history, err := p.History(p.ctx, asker, who)
	p.must(err)
	kept, err := p.Rounds(p.ctx, asker, who, db.Chosen{})
	p.must(err)
	var one, other []golf.Round
	for _, h := range history {
		one = append(one, h.Round)
	}
	for _, r := range kept {
		single, err := p.SeenRound(p.ctx, asker, who, r.ID)
		p.must(err)
		if diff := cmp.Diff(r, single); diff != "" {
			p.t.Errorf("a round alone and in a list: %s", diff)
		}
		other = append(other, r.Played())
	}
	slices.Reverse(other)
	if said(one) != said(other) {
		p.t.Errorf("the history has %q, the rounds have %q", said(one), said(other))
	}
	return said(one)
}

// Every reader puts the same run-out into the shots that a book judges, and into no
// others; a book counts for its player alone, and for a coach from whatever day on.
func TestRoundsAreReadWithTheBook(t *testing.T) {
	p := newPair(t)
	p.must(p.SaveHole(p.ctx, p.pupil, p.round, shortSided(0)))
	if got := p.ownRuns(p.pupil, p.pupil); got != "" {
		t.Errorf("without a book %q", got)
	}
	p.must(p.NewTrials(p.ctx, p.stranger, may2, "page", []golf.Trial{fromRough(3)}, remake))
	if got := p.ownRuns(p.pupil, p.pupil); got != "" {
		t.Errorf("by the book of another player %q", got)
	}
	p.must(p.NewTrials(p.ctx, p.pupil, may2.AddDays(-1), "page", []golf.Trial{fromRough(6), fromRough(8)}, remake))
	later := newPlayer(t, p.Store, "later@example.org")
	p.let(later, may2) // sees the round, and none of the balls
	for _, who := range []golf.PlayerID{p.pupil, p.coach, later} {
		if got := p.ownRuns(who, p.pupil); got != "r1 2.3 7.00 " {
			t.Errorf("%d reads %q", who, got)
		}
	}
}

// A ball that is added, removed or brought back changes what rounds are judged by;
// one that was refused does not.
func TestTheBookFollowsItsBalls(t *testing.T) {
	p := newPair(t)
	p.must(p.SaveHole(p.ctx, p.pupil, p.round, shortSided(0)))
	for i, yd := range []float64{6, 9} {
		p.must(p.NewTrials(p.ctx, p.pupil, may2, fmt.Sprint("page ", i), []golf.Trial{fromRough(yd)}, remake))
	}
	is := func(want string) {
		t.Helper()
		if got := p.ownRuns(p.pupil, p.pupil); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	is("r1 2.3 7.50 ")
	all, err := p.Trials(p.ctx, p.pupil, p.pupil)
	p.must(err)
	first := all[0].ID
	p.must(p.RemoveTrial(p.ctx, p.pupil, first, remake))
	is("r1 2.3 9.00 ")
	p.refused(map[string]error{"it is removed again": p.RemoveTrial(p.ctx, p.pupil, first, remake), "the coach brings it back": p.RestoreTrial(p.ctx, p.coach, first, remake)})
	is("r1 2.3 9.00 ")
	p.must(p.RestoreTrial(p.ctx, p.pupil, first, remake))
	is("r1 2.3 7.50 ")
}

// Balls that are saved at the same time are all in the book.
func TestBallsSavedAtTheSameTimeAllCount(t *testing.T) {
	p := newPair(t)
	p.must(p.SaveHole(p.ctx, p.pupil, p.round, shortSided(0)))
	var saves sync.WaitGroup
	failed := make(chan error, 10)
	for i := range 10 {
		saves.Add(1)
		go func() {
			defer saves.Done()
			failed <- p.NewTrials(p.ctx, p.pupil, may2, fmt.Sprint("page ", i), []golf.Trial{fromRough(float64(i))}, remake)
		}()
	}
	saves.Wait()
	for range 10 {
		p.must(<-failed)
	}
	if got := p.ownRuns(p.pupil, p.pupil); got != "r1 2.3 4.50 " {
		t.Errorf("%q", got)
	}
}

// A summary that depends on the book is out of date once the book has changed, also
// when it was worked out before the change and is stored after it. One of a round
// without such a shot stays, and so does every one when another player's book changes.
func TestAChangedBookOutdatesSummaries(t *testing.T) {
	p := newPair(t)
	asking := aRound()
	asking.Name, asking.Holes[1] = "asking", shortSided(0)
	asking.Holes[1].Length = 384 * golf.Yard
	round, err := p.NewRound(p.ctx, p.pupil, asking)
	p.must(err)
	read := func() []db.Round {
		all, err := p.Rounds(p.ctx, p.pupil, p.pupil, db.Chosen{})
		p.must(err)
		return all
	}
	keep := func(rounds []db.Round) {
		for _, r := range rounds {
			p.must(p.SaveSummaries(p.ctx, p.pupil, p.pupil, []db.KeptSummary{{Round: r, MadeFor: "1", Summary: []byte("{}")}}))
		}
	}
	fresh := func(plain, asking bool) {
		t.Helper()
		rows, err := p.Summaries(p.ctx, p.coach, db.Chosen{})
		p.must(err)
		for _, row := range rows {
			if want := map[bool]string{true: "1"}[map[bool]bool{true: asking, false: plain}[row.RoundID == round]]; row.MadeFor != want {
				t.Errorf("round %d: made for %q, want %q", row.RoundID, row.MadeFor, want)
			}
		}
		if len(rows) != 2 {
			t.Errorf("%d rounds", len(rows))
		}
	}
	before := read()
	keep(before)
	fresh(true, true)
	p.must(p.NewTrials(p.ctx, p.stranger, may2, "page", []golf.Trial{fromRough(3)}, remake))
	fresh(true, true)
	p.must(p.NewTrials(p.ctx, p.pupil, may2, "page", []golf.Trial{fromRough(3)}, remake))
	fresh(true, false)
	keep(before)
	fresh(true, false)
	keep(read())
	fresh(true, true)
	all, err := p.Trials(p.ctx, p.pupil, p.pupil)
	p.must(err)
	p.must(p.RemoveTrial(p.ctx, p.pupil, all[0].ID, remake))
	fresh(true, false)
}

// Without a shot that asks for it, a history is read in two trips, otherwise in
// three.
func TestAHistoryReadsTheBookOnlyWhenItIsAskedFor(t *testing.T) {
	s, trips := dbtest.Counted(t)
	who := newPlayer(t, s, "a@example.org")
	r := aRound()
	r.Holes[0] = entered(0)
	r.Holes[0].Length = 384 * golf.Yard
	id, err := s.NewRound(t.Context(), who, r)
	if err != nil {
		t.Fatal(err)
	}
	read := func() int64 {
		before := trips.Load()
		if _, err := s.History(t.Context(), who, who); err != nil {
			t.Fatal(err)
		}
		return trips.Load() - before
	}
	if n := read(); n != 2 {
		t.Errorf("%d trips without such a shot", n)
	}
	if err := s.SaveHole(t.Context(), who, id, shortSided(0)); err != nil {
		t.Fatal(err)
	}
	if n := read(); n != 3 {
		t.Errorf("%d trips with one", n)
	}
}
