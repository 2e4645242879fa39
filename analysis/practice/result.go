package practice

import (
	"math"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/stat"
)

// An interval of levels leaves out at most outside at each end, and reaches an end
// of the scale that it comes within nearEnd levels of. Found by counting how often
// it covers: 92 times in 100 at every level and 94 to 97 on average is what it is
// held to.
const (
	outside = .034
	nearEnd = 2
)

// widestLevel is the widest interval, in levels, with which a level is shown.
const widestLevel = 20

// Count is the result of some tries at one station: how many counted.
type Count struct{ Counted, Of int }

// Result is what tries of a drill say.
type Result struct {
	Counts   []Count       // by station
	Level    float64       // median of the level that the tries point to
	Interval stat.Interval // of the level, 95 %
	Target   float64       // how many the target's golfer would have counted, on average
	Today    float64       // the same of today's golfer
}

// Tells reports whether the level is sure enough to be shown.
func (r Result) Tells() bool { return r.Interval.High-r.Interval.Low <= widestLevel }

// Levels are the chances of a drill at every whole level from 68 to 110.
type Levels [][]float64

// LevelsOf are the chances of a drill with a model at every level.
func LevelsOf(d Drill, of *golfer.Parameters) (Levels, error) {
	if levels, ok := tabled(d, of); ok {
		return levels, nil
	}
	return d.solveAll(of)
}

// At reads the chances at a level from 68 to 110, on a straight line between
// whole levels.
func (l Levels) At(level float64) []float64 {
	x := min(max(level-float64(golf.MinTarget), 0), float64(len(l)-1))
	i := min(int(x), len(l)-2)
	c := make([]float64, len(l[i]))
	for j := range c {
		c[j] = l[i][j] + (x-float64(i))*(l[i+1][j]-l[i][j])
	}
	return c
}

// Beside are the chances of two drills as those of one whose stations are both's.
func (l Levels) Beside(more Levels) Levels {
	both := make(Levels, len(l))
	for i := range l {
		both[i] = append(append([]float64{}, l[i]...), more[i]...)
	}
	return both
}

// Read reads tries, a count for every station. Before them every level from 68 to
// 110 is held to be as likely as any other.
func (l Levels) Read(tries []Count, target, today float64) Result {
	r := Result{Counts: tries, Target: l.expected(tries, target), Today: l.expected(tries, today)}
	weights, most := make([]float64, len(l)), math.Inf(-1)
	for i, c := range l {
		for j, n := range tries {
			weights[i] += logTimes(n.Counted, c[j]) + logTimes(n.Of-n.Counted, 1-c[j])
		}
		most = max(most, weights[i])
	}
	total := 0.0
	for i := range weights {
		weights[i] = math.Exp(weights[i] - most)
		total += weights[i]
	}
	r.Level, r.Interval = levelAt(weights, total/2), between(weights, outside*total)
	return r
}

// expected is how many of some tries count on average at a level.
func (l Levels) expected(tries []Count, level float64) float64 {
	sum := 0.0
	for j, c := range l.At(level) {
		sum += c * float64(tries[j].Of)
	}
	return sum
}

// between are the whole levels that are left when as much weight as out is cut off
// at each end; a level that is cut into stays. An interval that comes near an end
// of the scale reaches it: the golfers beyond it are told as the end.
func between(weights []float64, out float64) stat.Interval {
	low, high := 0, len(weights)-1
	for sum := weights[low]; sum <= out; sum += weights[low] {
		low++
	}
	for sum := weights[high]; sum <= out; sum += weights[high] {
		high--
	}
	if low <= nearEnd {
		low = 0
	}
	if high >= len(weights)-1-nearEnd {
		high = len(weights) - 1
	}
	return stat.Interval{Low: float64(golf.MinTarget + low), High: float64(golf.MinTarget + high)}
}

// levelAt is the level below which so much weight lies, each whole level's spread
// evenly over the level about it. The first and the last keep to their half.
func levelAt(weights []float64, below float64) float64 {
	sum := 0.0
	for i, w := range weights {
		if sum+w >= below && w > 0 {
			return min(max(float64(golf.MinTarget+i)+(below-sum)/w-.5, float64(golf.MinTarget)), float64(golf.MaxTarget))
		}
		sum += w
	}
	return float64(golf.MaxTarget)
}

// logTimes is n times the logarithm of a chance; 0 where n is 0, whatever the
// chance.
func logTimes(n int, chance float64) float64 {
	if n == 0 {
		return 0
	}
	return float64(n) * math.Log(max(chance, math.SmallestNonzeroFloat64))
}
