package figures

import (
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/paths"
)

// bookRound is a round of a day that lost what an index makes of it.
func bookRound(i int, day golf.Date) ListedRound {
	random := rand.New(rand.NewPCG(uint64(i), 18))
	lost := account.Split{Tee: random.NormFloat64() * 3, Approach: random.NormFloat64() * 3, ShortGame: random.NormFloat64() * 2}
	score := math.Round(83 + random.NormFloat64()*4)
	lost.Putting = score - 79 - lost.Tee - lost.Approach - lost.ShortGame
	lost.Total = score - 79
	return ListedRound{ID: golf.RoundID(i), Card: 18, Target: 79, Round: golf.Round{Date: day, Course: "Harrow Fen", Holes: make([]golf.Hole, 18)},
		Account: account.Account{Score: score, Expected: 79, Lost: lost, Doubles: make([]account.Double, i%4)}}
}

// bookRounds are rounds over two years, the latest first.
func bookRounds() []ListedRound {
	var all []ListedRound
	for i := range 60 {
		all = append(all, bookRound(i+1, golf.Date{Year: 2026, Month: time.May, Day: 20}.AddDays(-9*i)))
	}
	return all
}

// number reads a printed amount.
func number(t *testing.T, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(strings.NewReplacer("−", "-", "+", "").Replace(text), 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// What is printed adds up: the rounds of a month to its subtotal, and that with
// what is brought forward to what is carried; a year begins anew.
func TestTheBookAddsUp(t *testing.T) {
	all := bookRounds()
	for _, forward := range []bool{false, true} {
		b := NewRoundBook(BookInput{Whose: paths.Whose{Player: 1, Own: true}, Rounds: all, First: golf.Date{Year: 2025, Month: 1, Day: 1}, Forward: forward})
		months := slices.Clone(b.Months)
		if !forward {
			slices.Reverse(months)
		}
		if len(months) < 12 || b.Over != "Over 79" {
			t.Fatalf("%d months, %q", len(months), b.Over)
		}
		before := BookMonth{}
		for _, m := range months {
			sum := 0.0
			for _, r := range m.Rows {
				sum += number(t, r.Over)
			}
			if math.Abs(sum-number(t, m.Subtotal.Over)) > 1e-9 {
				t.Errorf("%s %s: rounds %v, subtotal %s", m.Name, m.Year, sum, m.Subtotal.Over)
			}
			brought := 0.0
			if m.Year == before.Year {
				brought = number(t, m.Brought.Over)
				if m.Brought.Over != before.Carried.Over || m.Brought.Rounds != before.Carried.Rounds {
					t.Errorf("%s: brought %+v, carried before %+v", m.Name, m.Brought, before.Carried)
				}
			} else if m.Brought.Name != "" {
				t.Errorf("%s %s begins a year with %+v", m.Name, m.Year, m.Brought)
			}
			if math.Abs(brought+number(t, m.Subtotal.Over)-number(t, m.Carried.Over)) > 1e-9 {
				t.Errorf("%s: %v and %s make %s", m.Name, brought, m.Subtotal.Over, m.Carried.Over)
			}
			before = m
		}
	}
}

// Rounds before the first day shown are brought forward and not shown.
func TestTheBookBringsForward(t *testing.T) {
	b := NewRoundBook(BookInput{Rounds: bookRounds()[:14], First: golf.Date{Year: 2026, Month: time.April, Day: 1}})
	if len(b.Months) != 2 || b.Months[1].Name != "April" || b.Months[1].Brought.Rounds != "8 rounds" {
		t.Errorf("%+v", b.Months)
	}
	cut := NewRoundBook(BookInput{Rounds: bookRounds()[:14], First: golf.Date{Year: 2026, Month: time.April, Day: 1}, Cut: true})
	if cut.Months[1].Brought.Name != "" || cut.Months[1].Carried.Name != "" {
		t.Errorf("%+v", cut.Months[1])
	}
}

func TestSubtotal(t *testing.T) {
	whole, nine, none := bookRound(1, may), bookRound(2, may), ListedRound{}
	whole.Account.Score, nine.Account.Score = 84, 41
	nine.Round.Holes = nine.Round.Holes[:9]
	for _, c := range []struct {
		name  string
		month []ListedRound
		want  [3]string
	}{
		{"one", []ListedRound{whole}, [3]string{"One round, mean", "", "84.0"}},
		{"a nine too", []ListedRound{whole, nine}, [3]string{"Two rounds", "mean of one with 18 holes", "84.0"}},
		{"no whole round", []ListedRound{nine, none}, [3]string{"Two rounds", "", ""}},
	} {
		s := subtotal(c.month)
		if got := [3]string{s.Name, s.Rounds, s.Score}; got != c.want {
			t.Errorf("%s: %q", c.name, got)
		}
	}
}

// The target is printed in the first row and where it changes, and nowhere when
// it is the same all along.
func TestTargetsAreSaidWhereTheyChange(t *testing.T) {
	all := bookRounds()[:6]
	for i := range all[3:] {
		all[3+i].Target = 82.5
	}
	b := NewRoundBook(BookInput{Rounds: all, First: golf.Date{Year: 2026, Month: 1, Day: 1}})
	var said []string
	for _, m := range b.Months {
		for _, r := range m.Rows {
			said = append(said, r.Target)
		}
	}
	if want := []string{"target 79", "", "", "target 82.5", "", ""}; !slices.Equal(said, want) || b.Over != "Over target" {
		t.Errorf("%q under %q", said, b.Over)
	}
}

func TestSplitBar(t *testing.T) {
	for _, c := range []struct {
		name string
		of   Split
		want SplitBar
	}{
		{"lost and won", Split{Over: 10, Parts: [splitParts]int{22, -12, 0, 0, 0}},
			SplitBar{Known: true, Net: "22.73%", Blocks: []SplitBlock{{"tee-block", "18.18%", "10%"}, {"won-block approach-block", "12.73%", "5.45%"}}}},
		{"beyond the right", Split{Over: 220, Parts: [splitParts]int{110, 0, 0, 110, 0}},
			SplitBar{Known: true, CutRight: true, Blocks: []SplitBlock{{"tee-block", "18.18%", "50%"}, {"putting-block", "68.18%", "31.82%"}}}},
		{"beyond the left", Split{Over: -66, Parts: [splitParts]int{0, 0, -66, 0, 0}},
			SplitBar{Known: true, CutLeft: true, Blocks: []SplitBlock{{"won-block short-game-block", "0%", "18.18%"}}}},
		{"known by the score alone", Split{Over: 44, Parts: [splitParts]int{0, 0, 0, 0, 44}},
			SplitBar{Known: true, Net: "38.18%", Blocks: []SplitBlock{{"unknown-block", "18.18%", "20%"}}}},
	} {
		if got := NewSplitBar(c.of); got.Net != c.want.Net || got.CutLeft != c.want.CutLeft || got.CutRight != c.want.CutRight || !slices.Equal(got.Blocks, c.want.Blocks) {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
	if len(SplitKeys(false)) != 4 || len(SplitKeys(true)) != 5 {
		t.Error("the legend does not say what is drawn")
	}
}

// A nine stands beside the target of its holes, and the column then heads no target
// of 18. A picked-up hole puts the score in brackets.
func TestNinesAndPickedUpHolesInTheBook(t *testing.T) {
	nine := bookRound(1, golf.Date{Year: 2026, Month: 5, Day: 2})
	nine.Round.Holes = make([]golf.Hole, 9)
	nine.Card = 9
	nine.Account = account.Account{Score: 47, Expected: 46, Lost: account.Split{Approach: 1, Total: 1}, Holes: []account.Hole{{PickedUp: true}}}
	b := NewRoundBook(BookInput{Rounds: []ListedRound{nine}})
	row := b.Months[0].Rows[0]
	if b.Over != "Over target" || row.Holes != "target 46 for 9 holes" || row.Score != "(47)" || row.Over != "+1" {
		t.Errorf("%q: %+v", b.Over, row)
	}
}
