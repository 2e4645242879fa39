package main

import (
	"bufio"
	"fmt"
	"math"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
)

// statement writes reports as a golfer reads them at a terminal: a statement a
// round, and one of them all at the end.
type statement struct {
	choice analysis.Choice
	rounds int
	holes  int // with their strokes known
	lost   account.Split
	counts account.Counts
	roots  [golf.Putting + 1]int
	chains float64 // strokes lost to compounding
}

func newStatement(choice analysis.Choice) *statement { return &statement{choice: choice} }

func (s *statement) begin(*bufio.Writer) {}

func (s *statement) add(_ *bufio.Writer, r analysis.Statement) {
	s.rounds++
	s.counts.Add(r.Account.Counts)
	s.lost.Add(r.Account.Lost)
	for _, h := range r.Account.Holes {
		if h.Detailed {
			s.holes++
		}
	}
	for _, d := range r.Account.Doubles {
		s.roots[d.RootCategory]++
		s.chains += d.Compounding
	}
}

// round writes one statement: a sentence, the account from what was expected
// to the score, and the doubles.
func (s *statement) round(to []byte, r analysis.Statement) []byte {
	var b strings.Builder
	where := strings.Join(nonEmpty(r.Round.Date.String(), r.Round.Course, r.Round.Tee), ", ")
	fmt.Fprintf(&b, "%s\n%s\n\n", where, s.sentence(r))
	s.accountLines(&b, r.Account)
	for _, d := range r.Account.Doubles {
		fmt.Fprintf(&b, "  %s\n", doubleLine(d))
	}
	b.WriteByte('\n')
	return append(to, b.String()...)
}

func nonEmpty(all ...string) []string {
	var kept []string
	for _, s := range all {
		if s != "" {
			kept = append(kept, s)
		}
	}
	return kept
}

// sentence says the round in one line.
func (s *statement) sentence(r analysis.Statement) string {
	a := r.Account
	text := fmt.Sprintf("%d %s in %.0f", len(a.Holes), plural(len(a.Holes), "hole", "holes"), math.Round(a.Score))
	if worst := a.Lost.Worst(); a.Lost.Of(worst) > 0.05 {
		text += fmt.Sprintf(": %s %s, most of all %s (%.1f)", overUnder(a.Lost.Total), s.against(), partName(worst), a.Lost.Of(worst))
	} else {
		text += fmt.Sprintf(": %s %s, nothing lost in any part of the game", overUnder(a.Lost.Total), s.against())
	}
	if n := len(a.Doubles); n > 0 {
		text += fmt.Sprintf(", %d %s", n, plural(n, "double", "doubles"))
	}
	return text + "."
}

func plural(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

func overUnder(lost float64) string {
	switch {
	case lost >= .05:
		return fmt.Sprintf("%.1f over", lost)
	case lost <= -.05:
		return fmt.Sprintf("%.1f under", -lost)
	default:
		return "level with"
	}
}

// against names whom the round is compared with.
func (s *statement) against() string {
	value, ok := s.choice.Value()
	switch {
	case !ok:
		return "the tour"
	case s.choice.Kind() == "level":
		return fmt.Sprintf("a golfer of level %g", value)
	default:
		return fmt.Sprintf("the target of %g", value)
	}
}

func partName(c golf.Category) string {
	switch c {
	case golf.TeeShots:
		return "off the tee"
	case golf.Approach:
		return "on the approach"
	case golf.ShortGame:
		return "in the short game"
	default:
		return "putting"
	}
}

// accountLines writes the account from the opening figure to the score, in
// tenths that add up.
func (s *statement) accountLines(b *strings.Builder, a account.Account) {
	opening, name := a.Expected, "expected"
	if s.choice.Kind() == "target" {
		opening, name = a.Expected-a.Lost.Course, "target"
	}
	lines := []struct {
		name   string
		amount float64
		always bool
	}{
		{name, opening, true}, {"tee", a.Lost.Tee, true}, {"approach", a.Lost.Approach, true},
		{"short game", a.Lost.ShortGame, true}, {"putting", a.Lost.Putting, true},
		{"score only", a.Lost.Undetailed, false}, {"course", a.Lost.Course, false},
	}
	amounts := make([]float64, len(lines))
	for i, l := range lines {
		amounts[i] = l.amount
	}
	for i, x := range stat.RoundedParts(amounts, .1) {
		switch {
		case i == 0:
			fmt.Fprintf(b, "  %-12s %6.1f\n", lines[i].name, x)
		case lines[i].always || math.Abs(lines[i].amount) > 1e-9:
			fmt.Fprintf(b, "  %-12s %6s\n", lines[i].name, signed(x))
		}
	}
	note := ""
	if holes := a.PickedUp(); len(holes) > 0 {
		note = fmt.Sprintf("   (picked up on %s, with what was to come)", holeList(holes))
	}
	fmt.Fprintf(b, "  %-12s %6.1f%s\n", "score", a.Score, note)
}

// signed writes tenths with their sign, and a bare 0.0 for none.
func signed(x float64) string {
	if math.Abs(x) < .05 {
		return "0.0"
	}
	return fmt.Sprintf("%+.1f", x)
}

func holeList(holes []int) string {
	var all []string
	for _, h := range holes {
		all = append(all, fmt.Sprint(h))
	}
	return strings.Join(all, ", ")
}

// doubleLine says how one double came about.
func doubleLine(d account.Double) string {
	text := fmt.Sprintf("hole %d, par %d in %d, %.1f lost: %s", d.Hole, d.Par, d.Score, d.Lost, d.Kind)
	if d.Kind == account.Unknown {
		return text + ", known by its score alone"
	}
	if d.Root > 0 {
		text += fmt.Sprintf(", began with shot %d (%s)", d.Root, d.RootCategory)
	}
	if d.RootCategory == golf.Putting {
		text += ", since the putts of a green count together"
	}
	if d.Kind != account.Compound && d.Costliest != d.Root {
		text += fmt.Sprintf(", most lost at shot %d", d.Costliest)
	}
	if len(d.Chain) > 0 {
		text += fmt.Sprintf(", chain %s, the compounding cost %.1f", strings.ReplaceAll(holeList(d.Chain), ", ", " > "), d.Compounding)
	}
	if n := len(d.Missed); n > 0 {
		text += fmt.Sprintf(", %d missed from 6 ft or less", n)
	}
	return text
}

// end writes the statement of all rounds, a round of 18 holes each.
func (s *statement) end(w *bufio.Writer) {
	if s.holes == 0 {
		return
	}
	per18 := func(x float64) float64 { return 18 * x / float64(s.holes) }
	fmt.Fprintf(w, "All %d %s, for 18 holes against %s\n\n", s.rounds, plural(s.rounds, "round", "rounds"), s.against())
	for _, c := range golf.Categories {
		fmt.Fprintf(w, "  %-12s %6s\n", c, signed(per18(s.lost.Of(c))))
	}
	c := s.counts
	fmt.Fprintf(w, "\n  fairways %d of %d, greens %d of %d, up and down %d of %d\n",
		c.Fairways, c.FairwayChances, c.Greens, c.GreenChances, c.UpAndDowns, c.UpAndDownChances)
	fmt.Fprintf(w, "  putts %.1f, three-putts %.1f, penalty strokes %.1f\n",
		per18(float64(c.Putts)), per18(float64(c.ThreePutts)), per18(float64(c.Penalties)))
	fmt.Fprintf(w, "  doubles or worse %.1f: %d compound, %d single, %d separate, %d leak, %d unknown\n",
		per18(float64(c.Doubles)), c.Compound, c.Single, c.Separate, c.Leak, c.Unknown)
	fmt.Fprintf(w, "  they began: %d tee, %d approach, %d short game, %d putting, %d nowhere (leak); compounding cost %.1f\n",
		s.roots[golf.TeeShots], s.roots[golf.Approach], s.roots[golf.ShortGame], s.roots[golf.Putting], c.Leak, per18(s.chains))
}
