package compare

import (
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
)

// A count or a share is never surer than if its events were independent: three
// rounds that agree by luck would else look certain. events is what it was counted
// from; the zero value is that of strokes, which are no events.
type events struct {
	kind    eventKind
	hits    int         // events, or successes
	chances int         // holes, or tries
	byHole  stat.Sample // putts of each hole
}

type eventKind uint8

const (
	ofStrokes eventKind = iota
	ofRate              // events that come at a rate for 18 holes
	ofShare             // successes of tries
	ofPutts             // putts, of which every hole has some
)

// interval is where the figure lies if its events are independent, 95 %; ok is
// false for strokes, and for putts of fewer than two holes.
func (e events) interval() (i stat.Interval, ok bool) {
	switch e.kind {
	case ofRate:
		return scaled(stat.CountInterval(e.hits, confidence), wholeRound/float64(e.chances)), true
	case ofShare:
		return stat.ShareInterval(e.hits, e.chances, confidence), true
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
	case ofRate:
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
