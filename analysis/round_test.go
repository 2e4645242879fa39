package analysis

import (
	"flag"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golf/golftest"
	"strokeledger/analysis/shotsfile"
)

var update = flag.Bool("update", false, "write the golden files anew")

func analyst(t testing.TB, c Choice) *Analyst {
	a, err := NewAnalyst(c, golf.StandardBoundary)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func rounds(t testing.TB, name string) []golf.Round {
	file, err := os.Open("../testdata/shots/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	var all []golf.Round
	for r, err := range shotsfile.NewReader(file, shotsfile.Limits{}).Rounds() {
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, r)
	}
	return all
}

func TestTargetIsTheSumOfEverything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := golftest.Rounds().Draw(t, "round")
		target := rapid.Float64Range(68, 110).Draw(t, "target")
		a, err := NewAnalyst(Target(target), golf.StandardBoundary)
		if err != nil {
			t.Fatal(err)
		}
		report := a.Statement(r, 0).Account
		if got, want := report.Lost.Total, report.Score-r.TargetOf(target, 0); math.Abs(got-want) > 1e-9 {
			t.Fatalf("lost %.12f, score - target %.12f", got, want)
		}
	})
}

// target of n holes = par of those holes + (T - par of the 18 holes) n / 18.
func TestTargetOfSomeHoles(t *testing.T) {
	nine := golf.Round{}
	for i := range 9 {
		nine.Holes = append(nine.Holes, golf.Hole{Number: i + 1, Par: 4, Shots: []golf.Shot{{Lie: golf.Tee, Distance: 380 * golf.Yard}}})
	}
	if got := nine.TargetOf(79, 0); got != 39.5 {
		t.Errorf("nine holes of par 36 for a 79: %g", got)
	}
	if got := nine.TargetOf(79, 70); got != 40.5 {
		t.Errorf("nine holes of par 36 on a par 70 for a 79: %g", got)
	}
}

// A double is the same double whatever it is priced by.
func TestDoublesDoNotDependOnTheLens(t *testing.T) {
	byTarget, byLevel, byTour := analyst(t, Target(79)), analyst(t, Level(79)), analyst(t, Tour())
	for _, r := range rounds(t, "season.csv") {
		want := byLevel.Statement(r, 0).Account.Doubles
		for _, other := range []*Analyst{byTarget, byTour} {
			got := other.Statement(r, 0).Account.Doubles
			for i := range got {
				got[i].Lost = want[i].Lost // the price is the lens's own
			}
			if diff := cmp.Diff(want, got); diff != "" {
				t.Fatalf("%s: %s", r.ID, diff)
			}
		}
	}
}

func TestChoicesOutOfRangeAreRefused(t *testing.T) {
	for _, c := range []Choice{Target(67), Target(math.NaN()), Level(111)} {
		if _, err := NewAnalyst(c, golf.StandardBoundary); err == nil {
			t.Errorf("%s %v was taken", c.Kind(), c.value)
		}
	}
	for _, boundary := range []golf.Distance{29 * golf.Yard, 101 * golf.Yard, golf.Distance(math.NaN())} {
		if _, err := NewAnalyst(Target(79), boundary); err == nil {
			t.Errorf("a boundary of %g yd was taken", boundary.Yards())
		}
	}
}

// The account of a season, so that a change of it is seen and meant. Write it
// anew with -update.
func TestGoldenSeason(t *testing.T) {
	a := analyst(t, Target(79))
	var b strings.Builder
	for _, r := range rounds(t, "season.csv") {
		acc := a.Statement(r, 0).Account
		l := acc.Lost
		fmt.Fprintf(&b, "%s score %.4f expected %.4f tee %.4f approach %.4f short %.4f putting %.4f %+v\n",
			r.ID, acc.Score, acc.Expected, l.Tee, l.Approach, l.ShortGame, l.Putting, acc.Counts)
		for _, d := range acc.Doubles {
			fmt.Fprintf(&b, "  hole %d par %d in %d lost %.4f %s root %d %s costliest %d chain %v compounding %.4f\n",
				d.Hole, d.Par, d.Score, d.Lost, d.Kind, d.Root, d.RootCategory, d.Costliest, d.Chain, d.Compounding)
		}
	}
	const name = "../testdata/golden/season.txt"
	if *update {
		if err := os.WriteFile(name, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), b.String()); diff != "" {
		t.Error(diff)
	}
}

func ExampleAnalyst_Statement() {
	analyst, err := NewAnalyst(Target(79), golf.StandardBoundary)
	if err != nil {
		panic(err)
	}
	report := analyst.Statement(golf.Round{Holes: []golf.Hole{{Number: 1, Par: 4, Shots: []golf.Shot{
		{Lie: golf.Tee, Distance: 390 * golf.Yard},
		{Lie: golf.Rough, Distance: 150 * golf.Yard},
		{Lie: golf.Green, Distance: 30 * golf.Foot},
		{Lie: golf.Green, Distance: 4 * golf.Foot},
		{Lie: golf.Green, Distance: 1 * golf.Foot},
	}}}}, 72)
	lost := report.Account.Lost
	fmt.Printf("5 on a target of %.2f: %.2f lost\n", report.Account.Expected, lost.Total)
	fmt.Printf("tee %+.1f, approach %+.1f, putting %+.1f\n", lost.Tee, lost.Approach, lost.Putting)
	// Output:
	// 5 on a target of 4.39: 0.61 lost
	// tee +0.1, approach -0.4, putting +0.9
}

func BenchmarkReport(b *testing.B) {
	a := analyst(b, Target(79))
	all := rounds(b, "season.csv")
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		a.Statement(all[i%len(all)], 0)
	}
}

// A stored round is compared with the golfer of its own target, over the holes
// of the card that is given.
func TestStatementOfAStoredRound(t *testing.T) {
	whole := played(t, 84, 1)[0]
	first := whole
	first.Round.Holes = whole.Round.Holes[:1]
	for _, c := range []struct {
		name  string
		round golf.Played
		card  []golf.CardHole
		level float64
		holes int
	}{
		{"none", golf.Played{Target: 79}, nil, 0, 0},
		{"a whole round on the course that defines levels", whole, nil, 79, 18},
		{"one hole, over the whole card", first, whole.Round.Card(), 79, 1},
	} {
		s, err := StatementOf(c.round, c.card, golf.StandardBoundary)
		if err != nil || len(s.Account.Holes) != c.holes || math.Abs(s.Level-c.level) > .2 {
			t.Errorf("%s: %d holes against %.2f, %v", c.name, len(s.Account.Holes), s.Level, err)
		}
	}
	if got, err := StatementOf(whole, nil, golf.StandardBoundary); err != nil || cmp.Diff(analyst(t, Target(79)).Statement(whole.Round, 72), got) != "" {
		t.Errorf("a stored round has another statement than the same round of a file: %v", err)
	}
	if _, err := StatementOf(golf.Played{Target: 60, Round: whole.Round}, nil, golf.StandardBoundary); err == nil {
		t.Error("a target of 60 was taken")
	}
}

func TestAgainst(t *testing.T) {
	for _, c := range []struct {
		versus golf.Versus
		want   Choice
	}{{golf.Versus{}, Target(82)}, {golf.VersusTour, Tour()}, {golf.VersusLevel(90), Level(90)}} {
		if got := Against(c.versus, 82); got != c.want {
			t.Errorf("%s: %+v", c.versus, got)
		}
	}
}
