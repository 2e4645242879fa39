package practice

import (
	"strokeledger/analysis/account"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
)

// Kind is what a candidate is about: a part of the game, or something that cuts
// across the parts. The strokes of the latter are also in the parts.
type Kind uint8

// The kinds. The zero value is a part of the game.
const (
	OfPart      Kind = iota
	Compounding      // errors that follow an error on the way to a double
	ShortSide        // approaches that left too little green
	ShortMisses      // putts of 6 ft and less missed on the way to a double
	crossKinds
)

// String returns "part", "compounding", "short side" or "six feet and in".
func (k Kind) String() string {
	return [...]string{"part", "compounding", "short side", "six feet and in"}[k]
}

// Cross is what something that cuts across the parts of the game loses for 18
// holes.
type Cross struct {
	Mean     float64
	Interval stat.Interval // 95 %, the mean itself for fewer than two rounds
	Times    int           // how often it came up
	Book     int           // how many of these the player's run-out book judged
}

// crosses works out what cuts across the parts of the game. Of compounding only
// what there is beyond that of the golfer of the target counts.
func (g *Game) crosses(f *Family, rounds []*account.Account) {
	own := f.Chains(g.Target)
	c := crossOf(rounds, func(i int) (float64, int) { return chainsOf(rounds[i]) })
	g.Cross[Compounding] = Cross{Mean: c.Mean - own, Interval: stat.Interval{Low: c.Interval.Low - own, High: c.Interval.High - own}, Times: c.Times}
	g.Cross[ShortMisses] = crossOf(rounds, func(i int) (float64, int) { return shortMisses(rounds[i]) })
}

// shortSide works out what chips cost because there was too little green: only of
// shots for which that was written down.
func (g *Game) shortSide(rounds []golf.Round, accounts []*account.Account, judge *expect.Baseline) {
	book := 0
	g.Cross[ShortSide] = crossOf(accounts, func(i int) (lost float64, times int) {
		for _, h := range rounds[i].Holes {
			if !h.Detailed() {
				continue
			}
			for _, s := range h.Shots {
				if s.ShortSided || s.GreenKnown {
					extra := judge.Shot(s) - judge.Strokes(s.Lie, s.Distance)
					if extra > 0 {
						lost, times = lost+extra, times+1
						if s.ByRunOut() && s.OwnRunKnown {
							book++
						}
					}
				}
			}
		}
		return lost, times
	})
	g.Cross[ShortSide].Book = book
}

// crossOf sums up what of gives for every round with a hole whose strokes are known.
func crossOf(rounds []*account.Account, of func(i int) (lost float64, times int)) Cross {
	var values []float64
	c, lost, weight := Cross{}, 0.0, 0.0
	for i, r := range rounds {
		if holes := detailed(r); holes > 0 {
			x, times := of(i)
			lost, weight, c.Times = lost+x, weight+holes/18, c.Times+times
			values = append(values, x*18/holes)
		}
	}
	c.Mean = lost / weight
	c.Interval = stat.Interval{Low: c.Mean, High: c.Mean}
	if i, ok := stat.Of(values).Interval(.95); ok {
		reach := (i.High - i.Low) / 2
		c.Interval = stat.Interval{Low: c.Mean - reach, High: c.Mean + reach}
	}
	return c
}

// detailed is how many holes of a round have their strokes known.
func detailed(a *account.Account) float64 {
	n := 0.0
	for _, h := range a.Holes {
		if h.Detailed {
			n++
		}
	}
	return n
}

// chainsOf is what compounding lost on the doubles of a round, and on how many.
func chainsOf(a *account.Account) (lost float64, times int) {
	for _, d := range a.Doubles {
		if lost += d.Compounding; len(d.Chain) > 0 {
			times++
		}
	}
	return lost, times
}

// shortMisses is what missed putts of 6 ft and less lost on the way to doubles,
// and how many there were.
func shortMisses(a *account.Account) (lost float64, times int) {
	for _, d := range a.Doubles {
		for _, h := range a.Holes {
			if h.Number != d.Hole {
				continue
			}
			for _, shot := range d.Missed {
				lost, times = lost+h.Shots[shot-1].Lost, times+1
			}
		}
	}
	return lost, times
}

// areaOf is the drill that serves a band.
func areaOf(b account.Band) string {
	switch b.Category {
	case golf.TeeShots:
		return "corridor"
	case golf.Approach:
		if b.High > 0 && b.High <= 100*golf.Yard {
			return "wedge-ladder"
		}
		return "approach"
	case golf.ShortGame:
		switch {
		case b.Lie == golf.Bunker:
			return "bunker"
		case b.High > 20*golf.Yard:
			return "wedge-ladder"
		case b.Lie == golf.Fairway:
			return "chip-fairway"
		default:
			return "chip-rough"
		}
	default:
		switch {
		case b.High > 0 && b.High <= 6*golf.Foot:
			return "start-line"
		case b.High > 0 && b.High <= 20*golf.Foot:
			return "ladder"
		default:
			return "lag"
		}
	}
}
