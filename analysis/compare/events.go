package compare

import (
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
)

// events is what a count or a share was counted from. Neither is ever surer than
// independent events would be: three rounds that agree by luck would otherwise look
// certain. The zero value is that of strokes lost, which are no events.
type events struct {
	kind    eventKind
	hits    int         // events, or successes
	chances int         // holes, or tries
	size    float64     // strokes of an event, on average; of ofCost alone
	byHole  stat.Sample // putts of each hole; of ofPutts alone
}

type eventKind uint8

const (
	ofRate  eventKind = iota + 1 // events that come at a rate for 18 holes
	ofShare                      // successes of tries
	ofPutts                      // putts, of which every hole has some
	ofCost                       // strokes that events cost which come at a rate
)

// interval is where the figure lies if its events are independent, 95 %; ok is
// false for strokes, and for putts of fewer than two holes.
func (e events) interval() (i stat.Interval, ok bool) {
	switch e.kind {
	case ofRate:
		return scaled(stat.CountInterval(e.hits, confidence), wholeRound/float64(e.chances)), true
	case ofShare:
		return stat.ShareInterval(e.hits, e.chances, confidence), true
	case ofCost:
		return scaled(stat.CountInterval(e.hits, confidence), e.size*wholeRound/float64(e.chances)), true
	case ofPutts:
		i, ok = e.byHole.Interval(confidence)
		return scaled(i, wholeRound), ok
	default:
		return i, false
	}
}

func scaled(i stat.Interval, by float64) stat.Interval {
	return stat.Interval{Low: i.Low * by, High: i.High * by}
}

// widened is an interval that reaches at least as far as that of independent
// events, and not past what a count or a share can be.
func (e events) widened(i stat.Interval) stat.Interval {
	floor, ok := e.interval()
	if !ok {
		return i
	}
	i = stat.Interval{Low: max(0, min(i.Low, floor.Low)), High: max(i.High, floor.High)}
	if e.kind == ofShare {
		i.High = min(1, i.High)
	}
	return i
}

// chance is that of so large a difference from other events where there is none,
// if all are independent; ok is false where that has no test.
func (e events) chance(other events) (p float64, ok bool) {
	switch e.kind {
	case ofRate, ofCost:
		return stat.RatesP(e.hits, other.hits, float64(e.chances), float64(other.chances)), true
	case ofShare:
		return stat.SharesP(e.hits, e.chances, other.hits, other.chances), true
	case ofPutts:
		d, ok := stat.Welch(e.byHole, other.byHole)
		return d.P, ok
	default:
		return 0, false
	}
}

// usualCompounding is about what later errors cost on a compound double, in
// strokes: .94 over 40,000 simulated rounds of an 84.
const usualCompounding = 1.

// compoundDoubles are those of rounds, with what the later errors of each cost on
// average. A usual one counts as one more, so that few say little of the average
// and none say something.
func compoundDoubles(rounds []*Judged) events {
	e := events{kind: ofCost}
	cost := usualCompounding
	for _, r := range rounds {
		e.chances += int(r.Holes)
		e.hits += r.Account.Counts.Compound
		cost += r.compounding()
	}
	e.size = cost / float64(e.hits+1)
	return e
}

// puttsByHole are the putts of each hole whose strokes are known.
func puttsByHole(rounds []*Judged) stat.Sample {
	var all []float64
	for _, r := range rounds {
		for i, h := range r.Account.Holes {
			if !h.Detailed {
				continue
			}
			putts := 0.0
			for k := range h.Shots {
				if r.Round.Holes[i].Shots[k].Lie == golf.Green {
					putts++
				}
			}
			all = append(all, putts)
		}
	}
	return stat.Of(all)
}
