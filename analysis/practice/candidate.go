package practice

import (
	"cmp"
	"math"
	"slices"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/stat"
)

// Candidate is something to practise, with what it would win back.
type Candidate struct {
	Kind     Kind
	Part     golf.Category // of OfPart
	Band     account.Band  // the dearest of the part, of OfPart
	WinBack  float64       // strokes for 18 holes
	Interval stat.Interval // of what is lost there, 95 %
	Sure     Certainty     // that the part is weaker than the rest of the game
	Drill    Drill
	Mark     Mark    // zero for a drill without one
	Today    float64 // level at which the part is played today
	Minutes  int     // a week
	Again    int     // rounds after which the months may show it; 0 where rounds alone will not
}

// The number of candidates of a plan, and from how many strokes for 18 holes one
// that cuts across the parts is worth naming.
const (
	mostCandidates = 5
	worthNaming    = .15
)

// The minutes of a week that a plan may share out, and its smallest piece.
const (
	MinMinutes   = golf.MinWeek
	MaxMinutes   = golf.MaxMinutes
	leastMinutes = 10
	minuteStep   = golf.WeekStep
)

// Candidates are what to practise, the most important first: every part of the
// game with its dearest band, and what cuts across them where it is worth naming.
// Minutes, MinMinutes to MaxMinutes in whole fives, are shared out among them.
func (g *Game) Candidates(of golfer.Parameters, minutes int) ([]Candidate, error) {
	var all []Candidate
	for _, c := range g.order() {
		band := g.dearest(c)
		e := g.Parts[c]
		all = append(all, Candidate{Part: c, Band: bands[band], WinBack: e.WinBack(), Interval: e.Interval(), Sure: e.Certainty(),
			Today: g.Played[c], Again: measureAgain(e.WinBack(), g.Spread[c], g.Holes/18)})
		if err := all[len(all)-1].choose(areaOf(bands[band]), of, g.Target); err != nil {
			return nil, err
		}
	}
	all, err := g.withCross(all, of)
	if err != nil {
		return nil, err
	}
	share(all, minutes)
	return all, nil
}

// crossDrills are the drills that serve what cuts across the parts.
var crossDrills = [crossKinds]string{Compounding: "back-into-play", ShortSide: "short-side", ShortMisses: "round-the-hole"}

// withCross puts what cuts across the parts among them, by strokes, after the parts
// that are clear.
func (g *Game) withCross(all []Candidate, of golfer.Parameters) ([]Candidate, error) {
	for kind, drill := range crossDrills {
		x := g.Cross[kind]
		if drill == "" || x.Mean < worthNaming {
			continue
		}
		c := Candidate{Kind: Kind(kind), WinBack: x.Mean, Interval: x.Interval, Today: g.Level}
		if err := c.choose(drill, of, g.Target); err != nil {
			return nil, err
		}
		at, _ := slices.BinarySearchFunc(all, c, func(a, b Candidate) int {
			if a.Sure == Clear || a.WinBack >= b.WinBack {
				return -1
			}
			return 1
		})
		all = slices.Insert(all, at, c)
	}
	return all[:min(len(all), mostCandidates)], nil
}

// choose gives the candidate a drill, with the mark of the target.
func (c *Candidate) choose(key string, of golfer.Parameters, target float64) (err error) {
	if c.Drill, err = Find(key); err != nil || c.Drill.NoMark {
		return err
	}
	aims, err := c.Drill.Chances(&of, target)
	if err != nil {
		return err
	}
	today, err := c.Drill.Chances(&of, max(c.Today, target))
	if err != nil {
		return err
	}
	c.Mark = c.Drill.Mark(aims, today)
	return nil
}

// weight is how much of the time a candidate gets.
func (c Candidate) weight() float64 {
	return c.WinBack * [...]float64{Usual: .4, Leaning: .7, Clear: 1}[c.Sure]
}

// share shares minutes out by weight, in whole fives, at least ten each, adding up
// exactly.
func share(all []Candidate, minutes int) {
	total, given := 0.0, 0
	for _, c := range all {
		total += c.weight()
	}
	left := max(minutes-leastMinutes*len(all), 0) / minuteStep // steps beyond the least
	rest := make([]float64, len(all))
	for i := range all {
		exact := float64(left) / float64(len(all))
		if total > 0 {
			exact = float64(left) * all[i].weight() / total
		}
		whole := int(exact)
		rest[i], given = exact-float64(whole), given+whole
		all[i].Minutes = leastMinutes + minuteStep*whole
	}
	order := make([]int, len(all))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(rest[b], rest[a]) })
	for _, i := range order[:min(left-given, len(order))] {
		all[i].Minutes += minuteStep
	}
}

// What it takes for the months to show a gain: leaning, so many standard errors,
// and how many rounds are worth waiting for.
const (
	leaningErrors = 1.28
	fewestAgain   = 5
	mostAgain     = 40
)

// measureAgain is after how many more rounds it is even odds that the whole of a
// gain shows as leaning; 0 where that takes too many. n0 are the rounds before.
func measureAgain(gain, spread, n0 float64) int {
	room := (gain/leaningErrors)*(gain/leaningErrors) - spread*spread/n0
	if room <= 0 {
		return 0
	}
	n := int(math.Ceil(spread * spread / room))
	if n > mostAgain {
		return 0
	}
	return max(n, fewestAgain)
}
