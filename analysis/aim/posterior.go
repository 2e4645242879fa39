package aim

import (
	"math"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/stat"
)

// The weights of the level's own pattern beside the balls of a session. With a
// weight of 10 for the mean a slice of .9 spreads was covered 47 % of the time.
const (
	meanWeight   = 1    // balls
	spreadWeight = 10   // balls
	cutOff       = 3.44 // spreads beyond which a ball counts as struck badly, whatever else: the circle that holds as many as 3 to either side hold
	sure         = .95
)

// Level is the pattern of a golfer with one club: what a player's own is compared
// with.
type Level struct {
	sideSD, longSD float64  // yd of the well-struck ball
	long           float64  // yd that it ends beyond the target on average
	bad            []strike // the ways to strike it badly
}

// strike is one way to strike the ball badly, against the target.
type strike struct {
	share, long    float64 // of all balls; yd beyond the target
	sideSD, longSD float64 // yd
}

// LevelOf is the pattern of a golfer from a lie with a club of a length in yards.
func LevelOf(s golfer.Striker, lie golf.Lie, yd float64) Level {
	stroke := s.Stroke(lie, yd)
	well := stroke.Strikes[0]
	l := Level{sideSD: well.Mean * well.Angle, longSD: well.SD, long: well.Mean - yd}
	for _, k := range stroke.Strikes[1:] {
		l.bad = append(l.bad, strike{k.Share, k.Mean - yd, k.Mean * k.Angle, k.SD})
	}
	return l
}

// badShare is how many of all balls are struck badly.
func (l Level) badShare() float64 {
	sum := 0.0
	for _, k := range l.bad {
		sum += k.share
	}
	return sum
}

// rounds of sorting balls into well and badly struck; it settles in about five.
const sortings = 15

// After is the player's pattern after a session of at least MinBalls balls with
// that club; fewer say nothing. What is known of bias and spread, across and along
// apart, is a normal with an inverse chi-squared variance, the marginals of a normal
// with an inverse-Wishart covariance; what bends long balls to one side is not kept.
//
// A ball counts by the chance that it was struck well, given how far the level's bad
// strikes go: a cut alone would take many short drives for the spread of good ones.
func (l Level) After(balls []Ball) Pattern {
	if len(balls) < MinBalls {
		return Pattern{}
	}
	side, long := make([]float64, len(balls)), make([]float64, len(balls))
	for i, b := range balls {
		side[i], long[i] = b.Side, b.Long-l.long
	}
	across, along := robust(side, l.sideSD), robust(long, l.longSD)
	weights, well, bad := make([]float64, len(balls)), 1-l.badShare(), 1.0
	for range sortings {
		badly := 0.0
		for i := range balls {
			weights[i] = l.wellStruck(Ball{side[i], long[i]}, across, along, well)
			badly += 1 - weights[i]
		}
		across, along = posterior(side, weights, l.sideSD), posterior(long, weights, l.longSD)
		if share := l.badShare(); share > 0 {
			bad = (spreadWeight*share + badly) / (spreadWeight + float64(len(balls))) / share
			well = 1 - bad*share
		}
	}
	return Pattern{Side: across.mean, Long: along.mean, Wide: across.sd / l.sideSD, Deep: along.sd / l.longSD, Bad: bad,
		Balls: len(balls), SideIn: across.meanIn(), LongIn: along.meanIn(),
		WideIn: scaled(across.sdIn(), 1/l.sideSD), DeepIn: scaled(along.sdIn(), 1/l.longSD)}
}

// wellStruck is the chance that a ball, whose length is against the well-struck one,
// was struck well; well is how often balls are.
func (l Level) wellStruck(b Ball, across, along known, well float64) float64 {
	u, v := (b.Side-across.mean)/across.sd, (b.Long-along.mean)/along.sd
	if u*u+v*v > cutOff*cutOff {
		return 0
	}
	good := well * math.Exp(-(u*u+v*v)/2) / (across.sd * along.sd)
	bad, wide := 0.0, across.sd/l.sideSD
	for _, k := range l.bad {
		u, v := (b.Side-across.mean)/(k.sideSD*wide), (b.Long+l.long-k.long)/k.longSD
		bad += k.share / l.badShare() * (1 - well) * math.Exp(-(u*u+v*v)/2) / (k.sideSD * wide * k.longSD)
	}
	return good / (good + bad)
}

// robust is a first guess of middle and spread: the median, and 1.4826 times the
// median deviation, which is the spread of a normal, with the level's at its weight.
func robust(values []float64, level float64) known {
	median := stat.Median(values)
	away := make([]float64, len(values))
	for i, x := range values {
		away[i] = math.Abs(x - median)
	}
	own, n := 1.4826*stat.Median(away), float64(len(values))
	return known{mean: median, sd: math.Sqrt((spreadWeight*level*level + n*own*own) / (spreadWeight + n))}
}

// known is what is known of one direction of a pattern.
type known struct {
	mean, sd   float64
	weight, df float64 // balls that the mean stands on, and degrees of freedom of the spread
}

// meanIn is where the mean lies.
func (k known) meanIn() stat.Interval {
	reach := stat.TQuantile(.5+sure/2, k.df) * k.sd / math.Sqrt(k.weight)
	return stat.Interval{Low: k.mean - reach, High: k.mean + reach}
}

// sdIn is where the spread lies.
func (k known) sdIn() stat.Interval {
	return stat.Interval{Low: k.sd * math.Sqrt(k.df/stat.ChiSquaredQuantile(.5+sure/2, k.df)),
		High: k.sd * math.Sqrt(k.df/stat.ChiSquaredQuantile(.5-sure/2, k.df))}
}

// posterior is what is known after some values, each with its weight, of a normal
// about 0 whose spread was thought to be sd (A. Gelman et al., Bayesian Data
// Analysis, chapter 3).
func posterior(values, weights []float64, sd float64) known {
	n, sum, squares := 0.0, 0.0, 0.0
	for i, x := range values {
		n += weights[i]
		sum += weights[i] * x
	}
	mean := 0.0
	if n > 0 {
		mean = sum / n
	}
	for i, x := range values {
		squares += weights[i] * (x - mean) * (x - mean)
	}
	weight, df := meanWeight+n, spreadWeight+n
	scale := math.Sqrt((spreadWeight*sd*sd + squares + meanWeight*n/weight*mean*mean) / df)
	return known{sum / weight, scale, weight, df}
}

func scaled(i stat.Interval, by float64) stat.Interval {
	return stat.Interval{Low: i.Low * by, High: i.High * by}
}
