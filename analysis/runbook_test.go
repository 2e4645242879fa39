package analysis

import (
	"math"
	"testing"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/runout"
)

// fromRough are such trials from the rough, on greens of two speeds.
func fromRough(club string, pairs ...float64) []golf.Trial {
	all := trialsOf(club, pairs...)
	for i := range all {
		all[i].Lie = golf.Rough
		if i%2 == 1 {
			all[i].Speed = golf.FastGreen
		}
	}
	return all
}

// A club counts from three trials of a lie on, whatever the greens, and its line is
// that of the page of the book.
func TestRunBook(t *testing.T) {
	trials := append(trialsOf("pw", 12, 21, 13, 23), fromRough("pw", 12, 21, 13, 23)...)
	if book := RunBook(trials); len(book) != 0 {
		t.Errorf("two trials of a lie count: %+v", book)
	}
	trials = append(trials, trialsOf("PW", 12, 20)...)
	trials = append(trials, fromRough("sw", 8, 12, 10, 15, 12, 18, 14, 21, 16, 24)...)
	book := RunBook(trials)
	want := golf.RunBook{{Club: "pw", Lie: golf.Fairway, Start: 9, From: 9, To: 16}, {Club: "sw", Lie: golf.Rough, Slope: .5, From: 5, To: 19}}
	for i := range want {
		if len(book) != len(want) || math.Abs(book[i].Start-want[i].Start) > 1e-9 || math.Abs(book[i].Slope-want[i].Slope) > 1e-9 {
			t.Fatalf("%+v", book)
		}
		want[i].Start, want[i].Slope = book[i].Start, book[i].Slope
		if book[i] != want[i] {
			t.Errorf("%+v, want %+v", book[i], want[i])
		}
	}
	page := runout.NewPage([]runout.Trial{{Carry: 8, Total: 12}, {Carry: 10, Total: 15}, {Carry: 12, Total: 18}, {Carry: 14, Total: 21}, {Carry: 16, Total: 24}})
	land := runout.Shot{Distance: 18, Slope: golf.LevelGround}.Land(page)
	if run, ok := book.Run(golf.Rough, 18*golf.Yard); !ok || math.Abs(18-land-run.Yards()) > 1e-9 {
		t.Errorf("18 yd: %g by the book, %g by its page", run.Yards(), 18-land)
	}
}

// shortSided is a par 4 whose approach leaves 18 yd from the rough on the short side,
// with a chip that stays in the rough and the rest sound.
func shortSided() golf.Hole {
	return golf.Hole{Number: 1, Par: 4, Shots: []golf.Shot{
		{Lie: golf.Tee, Distance: 390 * golf.Yard}, {Lie: golf.Fairway, Distance: 150 * golf.Yard},
		{Lie: golf.Rough, Distance: 18 * golf.Yard, ShortSided: true}, {Lie: golf.Rough, Distance: 10 * golf.Yard},
		{Lie: golf.Green, Distance: 12 * golf.Foot}, {Lie: golf.Green, Distance: 1 * golf.Foot},
	}}
}

// statementBy is the statement of that hole by a player with a book.
func statementBy(t *testing.T, book golf.RunBook, change func(*golf.Shot)) Statement {
	t.Helper()
	h := shortSided()
	change(&h.Shots[2])
	book.Fill(h.Shots)
	s, err := StatementOf(golf.Played{Target: 79, Par18: 72, Round: golf.Round{ID: "r", Holes: []golf.Hole{h}}}, nil, golf.StandardBoundary)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// The same hole without a book, with one whose ball runs as far as the shot is long
// allows, and with one whose ball stops where it lands: the approach that left the
// short side costs more by the first and less by the second, which knows no short
// side, so that nothing was played from trouble.
func TestABookReplacesTheRunOutOfTheModel(t *testing.T) {
	as := func(*golf.Shot) {}
	long := golf.RunBook{{Club: "8i", Lie: golf.Rough, Start: 14, From: 1, To: 9}}
	stops := golf.RunBook{{Club: "lw", Lie: golf.Rough, From: 10, To: 20}}
	fairway := golf.RunBook{{Club: "8i", Lie: golf.Fairway, Start: 14, From: 1, To: 9}}
	none, more, less := statementBy(t, nil, as).Account, statementBy(t, long, as).Account, statementBy(t, stops, as).Account
	left, chip := 1, 2
	if a, b, c := less.Holes[0].Shots[left], none.Holes[0].Shots[left], more.Holes[0].Shots[left]; !(a.Lost < b.Lost && b.Lost < c.Lost) {
		t.Errorf("the approach lost %g, %g, %g", a.Lost, b.Lost, c.Lost)
	}
	if less.Holes[0].Shots[chip].Trouble || !none.Holes[0].Shots[chip].Trouble || !more.Holes[0].Shots[chip].Trouble {
		t.Error("played from trouble")
	}
	if math.Abs(none.Holes[0].Lost-more.Holes[0].Lost) > 1e-9 {
		t.Error("the book changes what the hole lost")
	}
	if got := statementBy(t, fairway, as).Account; got.Holes[0].Shots[chip] != none.Holes[0].Shots[chip] {
		t.Error("a book without the lie changes a shot")
	}
	plain := statementBy(t, nil, func(s *golf.Shot) { s.ShortSided = false }).Account
	if got := less.Holes[0].Shots; got[left] != plain.Holes[0].Shots[left] || got[chip] != plain.Holes[0].Shots[chip] {
		t.Error("a ball that stops where it lands is charged for a short side")
	}
	measured := func(s *golf.Shot) { s.GreenKnown, s.GreenToWork = true, 7*golf.Yard }
	if with, without := statementBy(t, long, measured).Account, statementBy(t, nil, measured).Account; with.Holes[0].Shots[left] != without.Holes[0].Shots[left] {
		t.Error("a book changes a short side that was measured")
	}
}

// With a book whose ball stops where it lands, an approach from 150 yd is no error
// where the model makes it one, and the double is no longer a compound one; with a
// book whose ball runs far, one from a distance at which the model sees no error is
// one.
func TestABookDecidesWhatIsAnError(t *testing.T) {
	judged := func(book golf.RunBook, yd float64) (approach bool, kind account.Kind) {
		h := shortSided()
		h.Shots[1].Distance = golf.Yards.Of(yd)
		book.Fill(h.Shots)
		s, err := StatementOf(golf.Played{Target: 79, Par18: 72, Round: golf.Round{ID: "r", Holes: []golf.Hole{h}}}, nil, golf.StandardBoundary)
		if err != nil || len(s.Account.Doubles) != 1 {
			t.Fatal(err, s.Account.Doubles)
		}
		return s.Account.Holes[0].Shots[1].Error, s.Account.Doubles[0].Kind
	}
	stops := golf.RunBook{{Club: "lw", Lie: golf.Rough, From: 10, To: 20}}
	long := golf.RunBook{{Club: "8i", Lie: golf.Rough, Start: 14, From: 1, To: 9}}
	for _, c := range []struct {
		yd   float64
		book golf.RunBook
		err  bool
		kind account.Kind
	}{
		{150, nil, true, account.Compound}, {150, stops, false, account.Single}, {150, long, true, account.Compound},
		{185, nil, false, account.Single}, {185, stops, false, account.Single}, {185, long, true, account.Compound},
	} {
		if err, kind := judged(c.book, c.yd); err != c.err || kind != c.kind {
			t.Errorf("from %g yd with %+v: an error %v, %s", c.yd, c.book, err, kind)
		}
	}
}
