package aim

import (
	"fmt"
	"math"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/stat"
)

// The limits of a range session.
const (
	MaxBalls  = 200
	maxOffYds = 300 // yd from the aim
)

// ParseBalls reads a session, a ball a line: yards left or right of the aim, then
// yards short or long, as "-8 3", "8 left, 3 long" or "12 right, 5 short".
func ParseBalls(text string) ([]Ball, Faults) {
	var all []Ball
	var faults Faults
	if len(text) > MaxBytes {
		return nil, Faults{{What: fmt.Sprintf("the session has %d bytes; allowed: at most %d", len(text), MaxBytes)}}
	}
	line := 0
	for row := range strings.SplitSeq(text, "\n") {
		line++
		words := rowWords(row)
		if len(words) == 0 {
			continue
		}
		b, err := parseBall(words)
		switch {
		case err != nil:
			faults = append(faults, Fault{Line: line, What: err.Error()})
		case len(all) == MaxBalls:
			return all, append(faults, Fault{Line: line, What: fmt.Sprintf("more than %d balls", MaxBalls)})
		default:
			all = append(all, b)
		}
	}
	return all, faults
}

const ballRow = "8 left, 3 long"

// parseBall reads the words of one ball.
func parseBall(words []string) (Ball, error) {
	var b Ball
	for _, axis := range []struct {
		to          *float64
		minus, plus string
	}{{&b.Side, "left", "right"}, {&b.Long, "short", "long"}} {
		if len(words) == 0 {
			return b, fmt.Errorf("a number is missing; such as: %s", ballRow)
		}
		x, err := parseNumber(words[0])
		if err != nil {
			return b, fmt.Errorf("%w; such as: %s", err, ballRow)
		}
		if words = words[1:]; len(words) > 0 && (words[0] == axis.minus || words[0] == axis.plus) {
			if x < 0 {
				return b, fmt.Errorf("%s %s; such as: %s", plain(x), words[0], ballRow)
			}
			if words[0] == axis.minus {
				x = 0 - x
			}
			words = words[1:]
		}
		if math.Abs(x) > maxOffYds {
			return b, fmt.Errorf("%s yd from the aim; allowed: at most %d", plain(x), maxOffYds)
		}
		*axis.to = x
	}
	return b, nothingElse(words, ballRow)
}

// The weights of the level's own pattern beside the balls of a session. With a
// weight of 10 for the mean a slice of .9 spreads was covered 47 % of the time.
const (
	meanWeight   = 1   // balls
	spreadWeight = 10  // balls
	cutOff       = 3.5 // spreads beyond which a ball counts as struck badly: the ellipse that holds as many balls as 3 to each side do
	sure         = .95
)

// Level is the pattern of a golfer with one club: what a player's own is compared
// with.
type Level struct {
	sideSD, longSD float64 // yd of the well-struck ball
	bad            float64 // share of balls struck badly
	long           float64 // yd that the well-struck ball ends beyond the target on average
}

// LevelOf is the pattern of a golfer from a lie with a club of a length in yards.
func LevelOf(s golfer.Striker, lie golf.Lie, yd float64) Level {
	stroke := s.Stroke(lie, yd)
	well := stroke.Strikes[0]
	return Level{sideSD: well.Mean * well.Angle, longSD: well.SD, bad: 1 - well.Share, long: well.Mean - yd}
}

// After is the player's pattern after a session of at least MinBalls balls with
// that club; fewer say nothing. What is known of bias and spread, across and along
// apart, is a normal with an inverse chi-squared variance, the marginals of a normal
// with an inverse-Wishart covariance; what bends long balls to one side is not kept.
func (l Level) After(balls []Ball) Pattern {
	if len(balls) < MinBalls {
		return Pattern{}
	}
	side, long := make([]float64, len(balls)), make([]float64, len(balls))
	for i, b := range balls {
		side[i], long[i] = b.Side, b.Long-l.long
	}
	near := l.well(side, long)
	across, along := posterior(pick(side, near), l.sideSD), posterior(pick(long, near), l.longSD)
	p := Pattern{Side: across.mean, Long: along.mean, Wide: across.sd / l.sideSD, Deep: along.sd / l.longSD, Bad: 1,
		Balls: len(balls), SideIn: across.meanIn, LongIn: along.meanIn,
		WideIn: scaled(across.sdIn, 1/l.sideSD), DeepIn: scaled(along.sdIn, 1/l.longSD)}
	if l.bad > 0 {
		n := float64(len(balls))
		p.Bad = (spreadWeight*l.bad + n - float64(len(near))) / (spreadWeight + n) / l.bad
	}
	return p
}

// well lists the balls that are not farther out than the cut, measured from the
// medians. The spread of the cut is that of the level and that of the middle of the
// balls, by their weights, so that neither a wild player nor a few tops move it far.
func (l Level) well(side, long []float64) []int {
	sideMid, sideSD := robust(side, l.sideSD)
	longMid, longSD := robust(long, l.longSD)
	var near []int
	for i := range side {
		if math.Hypot((side[i]-sideMid)/sideSD, (long[i]-longMid)/longSD) <= cutOff {
			near = append(near, i)
		}
	}
	return near
}

// robust is the median of values, and their spread: 1.4826 times the median
// deviation, which is that of a normal, with the level's at its weight.
func robust(values []float64, level float64) (median, sd float64) {
	median = stat.Median(values)
	away := make([]float64, len(values))
	for i, x := range values {
		away[i] = math.Abs(x - median)
	}
	own, n := 1.4826*stat.Median(away), float64(len(values))
	return median, math.Sqrt((spreadWeight*level*level + n*own*own) / (spreadWeight + n))
}

func pick(values []float64, places []int) []float64 {
	picked := make([]float64, len(places))
	for i, at := range places {
		picked[i] = values[at]
	}
	return picked
}

// known is what is known of one direction of a pattern.
type known struct {
	mean, sd     float64
	meanIn, sdIn stat.Interval
}

// posterior is what is known after some values of a normal about 0 whose spread
// was thought to be sd (A. Gelman et al., Bayesian Data Analysis, chapter 3).
func posterior(values []float64, sd float64) known {
	n, sum, squares := float64(len(values)), 0.0, 0.0
	for _, x := range values {
		sum += x
	}
	mean := sum / max(n, 1)
	for _, x := range values {
		squares += (x - mean) * (x - mean)
	}
	weight, df := meanWeight+n, spreadWeight+n
	scale := math.Sqrt((spreadWeight*sd*sd + squares + meanWeight*n/weight*mean*mean) / df)
	k := known{mean: sum / weight, sd: scale}
	reach := stat.TQuantile(.5+sure/2, df) * scale / math.Sqrt(weight)
	k.meanIn = stat.Interval{Low: k.mean - reach, High: k.mean + reach}
	k.sdIn = stat.Interval{Low: scale * math.Sqrt(df/stat.ChiSquaredQuantile(.5+sure/2, df)),
		High: scale * math.Sqrt(df/stat.ChiSquaredQuantile(.5-sure/2, df))}
	return k
}

func scaled(i stat.Interval, by float64) stat.Interval {
	return stat.Interval{Low: i.Low * by, High: i.High * by}
}
