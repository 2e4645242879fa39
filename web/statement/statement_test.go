package statement

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"strokeledger/analysis/account"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golf/golftest"
	"strokeledger/web/figures"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// asked works out a round as the handler does.
func asked(t interface{ Fatal(...any) }, r golf.Round, target float64, units form.Units) RoundInput {
	fixed, err := expect.Level(target)
	if err != nil {
		t.Fatal(err)
	}
	lens, course := expect.ForTarget(r.Card(), r.TargetOf(target, 72))
	a := account.Of(r, account.Terms{Lens: lens, Course: course, Fixed: fixed, Boundary: golf.StandardBoundary}).InWholeStrokes()
	return RoundInput{ID: 1, Round: r, Card: r.Card(), Account: a, Target: target, Level: lens.Level(), Bounds: golf.StandardBoundary, Units: units}
}

// printed reads an amount as the page prints it.
func printed(t interface{ Fatalf(string, ...any) }, text string) float64 {
	x, err := strconv.ParseFloat(strings.NewReplacer(words.Minus, "-", "+", "", "(", "", ")", "").Replace(text), 64)
	if err != nil {
		t.Fatalf("%q is no amount", text)
	}
	return x
}

// What is printed adds up: target and lines to the score, bands to their line.
func TestPrintedLinesAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := asked(t, golftest.Rounds().Draw(t, "round"), rapid.Float64Range(68, 110).Draw(t, "target"), form.StandardUnits)
		s := NewRoundPage(layout.Page{}, in)
		sum := printed(t, s.Target)
		for _, l := range s.Lines {
			amount := printed(t, l.Amount)
			sum += amount
			if math.Abs(printed(t, l.Balance)-sum) > 1e-6 {
				t.Fatalf("%s: balance %s, lines come to %.1f", l.Name, l.Balance, sum)
			}
			bands := 0.0
			for _, b := range l.Bands {
				if b.Shots != strconv.Itoa(len(b.All)) || b.All[0].At != b.WorstAt {
					t.Fatalf("%s, %s: %s shots, %d are listed", l.Name, b.Name, b.Shots, len(b.All))
				}
				bands += printed(t, b.Amount)
			}
			if len(l.Bands) > 0 && math.Abs(bands-amount) > 1e-6 {
				t.Fatalf("%s: %s, bands come to %.1f", l.Name, l.Amount, bands)
			}
		}
		if math.Abs(sum-printed(t, s.Score)) > 1e-6 || math.Abs(printed(t, s.Target)+printed(t, s.Lost)-sum) > 1e-6 {
			t.Fatalf("target %s and lines come to %.1f, lost %s, score %s", s.Target, sum, s.Lost, s.Score)
		}
	})
}

// The card adds up as printed: holes to their nine, the balance from hole to hole
// and over the turn, and the parts of both nines to the lines of the account.
func TestPrintedCardAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := asked(t, golftest.Rounds().Draw(t, "round"), rapid.Float64Range(68, 110).Draw(t, "target"), form.StandardUnits)
		slices.SortFunc(in.Card, func(a, b golf.CardHole) int { return cmp.Compare(a.Number, b.Number) })
		s := NewRoundPage(layout.Page{}, in)
		balance, parts, lines := 0.0, map[string]float64{}, 0.0
		for i, n := range s.Nines {
			nine, sum := 0.0, 0.0
			for _, h := range n.Holes {
				if h.Lost == "" {
					continue
				}
				nine += printed(t, h.Lost)
				if balance += printed(t, h.Lost); math.Abs(printed(t, h.Balance)-balance) > 1e-6 {
					t.Fatalf("hole %s: balance %s, holes come to %.1f", h.Number, h.Balance, balance)
				}
			}
			for _, p := range n.Parts {
				sum += printed(t, p.Amount)
				parts[p.Name] += printed(t, p.Amount)
			}
			if math.Abs(printed(t, n.Lost)-nine) > 1e-6 || math.Abs(sum-nine) > 1e-6 {
				t.Fatalf("%s: lost %s, holes come to %.1f, parts to %.1f", n.Title, n.Lost, nine, sum)
			}
			if forward := i == 0 && len(s.Nines) == 2 && s.Nines[1].Balance != ""; forward != (n.Carried != "") || forward && n.Carried != n.Balance {
				t.Fatalf("%s: %q carried forward, balance %s", n.Title, n.Carried, n.Balance)
			}
		}
		for _, l := range s.Lines {
			if l.Name == courseLine {
				continue
			}
			lines += printed(t, l.Amount)
			if math.Abs(parts[l.Name]-printed(t, l.Amount)) > 1e-6 {
				t.Fatalf("%s: line %s, nines come to %.1f", l.Name, l.Amount, parts[l.Name])
			}
		}
		if last := s.Holes[len(s.Holes)-1]; math.Abs(lines-balance) > 1e-6 || math.Abs(printed(t, last.Balance)-balance) > 1e-6 {
			t.Fatalf("lines come to %.1f, the card to %.1f, the last hole says %s", lines, balance, last.Balance)
		}
	})
}

// The costs of a hole's shots, as printed, add up to what its working ends with.
func TestWorkingsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := NewRoundPage(layout.Page{}, asked(t, golftest.Rounds().Draw(t, "round"), 79, form.StandardUnits))
		for _, h := range s.Holes {
			if len(h.Shots) == 0 {
				continue
			}
			sum := 0.0
			for _, shot := range h.Shots {
				sum += printed(t, shot.Lost)
			}
			if end := figures.LostWords(sum); !strings.Contains(h.Working, ": "+end) {
				t.Fatalf("%s: %q, shots come to %s", h.Heading, h.Working, end)
			}
		}
	})
}

// Every page of a random round renders without a panic and without a NaN.
func TestEveryStatementRenders(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		units := rapid.SampledFrom([]form.Units{form.StandardUnits, {Far: golf.Metres, Green: golf.Metres}}).Draw(t, "units")
		in := asked(t, golftest.Rounds().Draw(t, "round"), 79, units)
		var b strings.Builder
		if err := NewRoundPage(layout.Page{}, in).View().Render(t.Context(), &b); err != nil {
			t.Fatal(err)
		}
		if err := NewFoldPage(layout.Page{}, in).View().Render(t.Context(), &b); err != nil {
			t.Fatal(err)
		}
		if out := b.String(); strings.Contains(out, "NaN") || strings.Contains(out, "Inf") || strings.Contains(out, "style=") || strings.Contains(out, "+0.0<") {
			t.Fatalf("NaN, Inf, an inline style or a signed zero in\n%s", out)
		}
	})
}

func hole(number, par int, shots ...golf.Shot) golf.Hole {
	return golf.Hole{Number: number, Par: par, Shots: shots}
}

func yd(lie golf.Lie, yards float64) golf.Shot {
	return golf.Shot{Lie: lie, Distance: golf.Yards.Of(yards)}
}

func ft(feet float64) golf.Shot { return golf.Shot{Lie: golf.Green, Distance: golf.Feet.Of(feet)} }

func TestSentence(t *testing.T) {
	par := func(n int) golf.Hole { return hole(n, 4, yd(golf.Tee, 390), yd(golf.Fairway, 150), ft(20), ft(2)) }
	six := hole(2, 4, yd(golf.Tee, 410), yd(golf.Recovery, 210), yd(golf.Recovery, 195), yd(golf.Fairway, 60), ft(15), ft(2))
	for _, c := range []struct {
		name  string
		holes []golf.Hole
		want  string
	}{
		{"one hole at par", []golf.Hole{par(1)}, "0.4 under your target of 4.4 for one hole: 0.3 won back on the approach, the rest even."},
		{"a compound double", []golf.Hole{par(1), six}, "1.2 over your target of 8.8 for two holes: 0.6 off the tee, 0.4 on the approach, the rest even; and one compound double."},
	} {
		got := NewRoundPage(layout.Page{}, asked(t, golf.Round{Holes: c.holes}, 79, form.StandardUnits)).Lede
		if got != c.want {
			t.Errorf("%s: %q", c.name, got)
		}
	}
	empty := NewRoundPage(layout.Page{}, RoundInput{Card: expect.ReferenceCourse(), Units: form.StandardUnits})
	if !empty.Empty || empty.Lede != "No hole of this round has been entered yet." || empty.Left != "18 holes still to enter." {
		t.Errorf("%+v", empty)
	}
}

// A row of the list says what the statement says.
func TestListAgreesWithTheStatement(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := asked(t, golftest.Rounds().Draw(t, "round"), 79, form.StandardUnits)
		s := NewRoundPage(layout.Page{}, in)
		row := figures.ListedRound{ID: 1, Round: in.Round, Card: len(in.Card), Target: 79, Account: in.Account}.Row(paths.Whose{Own: true})
		if row.Over != s.Lost && row.Over+".0" != s.Lost && s.Lost != "0.0" {
			t.Fatalf("list %s, statement %s", row.Over, s.Lost)
		}
		if len(s.Lines) == 4 {
			want := fmt.Sprintf("tee %s, approach %s, short game %s, putting %s", s.Lines[0].Amount, s.Lines[1].Amount, s.Lines[2].Amount, s.Lines[3].Amount)
			if row.Parts != want {
				t.Fatalf("list %s, statement %s", row.Parts, want)
			}
		}
	})
}
