package startline

import (
	"math"

	"strokeledger/analysis/golfer"
	"strokeledger/analysis/stat"
)

// What is believed before a putt is seen: our own choice.
const (
	priorLogSpread = .56 // of the logarithm of the spread, about the level's
	priorBias      = 1   // degrees, about straight
)

// The grid reaches gridReach prior spreads to each side, in gridSteps steps.
const (
	gridReach = 4.0
	gridSteps = 80
)

// Reading is what some tries say. Angles are in degrees.
type Reading struct {
	Spread   float64       // median of the spread of the start line (a standard deviation)
	Interval stat.Interval // of the spread, 95 %
	Level    float64       // the spread of the golfer whose speed was taken
	Window   float64       // how far from the middle the putt may start and still go in
	Bias     *Bias         // nil where no sides were written down
}

// Bias is where putts start on average, in degrees; left is negative.
type Bias struct {
	Mean     float64
	Interval stat.Interval // 95 %
}

// Clear reports whether the interval leaves out straight.
func (b Bias) Clear() bool { return b.Interval.Low > 0 || b.Interval.High < 0 }

// Model is what to expect of straight putts of one length, for every spread and
// bias on a grid.
type Model struct {
	level, window   float64   // degrees
	spreads, biases []float64 // the grid: logarithms of spreads, and biases
	left, right, on []float64 // logarithms of the chances of the line, spread by spread
	holed, notHoled []float64 // the same of a putt holed or not
	short, long     float64   // logarithms of the chances of the speed
	prior           []float64
}

// NewModel makes the model of putts of feet (MinFeet to MaxFeet), with the speed
// of a putter.
func NewModel(of golfer.Putter, feet float64) *Model {
	m := &Model{level: degrees(of.StartLineSpread(feet)), window: degrees(golfer.StartLineWindow(feet))}
	short, fit, long := of.Pace(feet)
	m.short, m.long = math.Log(short), math.Log(long)
	m.spreads, m.biases = nodes(math.Log(m.level), priorLogSpread), nodes(0, priorBias)
	for i, l := range m.spreads {
		z := gridReach * (2*float64(i)/gridSteps - 1)
		for _, bias := range m.biases {
			spread, y := math.Exp(l), bias/priorBias
			left, right := stat.NormalCDF((-m.window-bias)/spread), stat.NormalCDF((bias-m.window)/spread)
			on := stat.NormalCDF((m.window-bias)/spread) - left
			m.left, m.right, m.on = append(m.left, logOf(left)), append(m.right, logOf(right)), append(m.on, logOf(on))
			m.holed, m.notHoled = append(m.holed, logOf(on*fit)), append(m.notHoled, logOf(1-on*fit))
			m.prior = append(m.prior, -z*z/2-y*y/2)
		}
	}
	return m
}

// Read reads tries of the model's length that Check finds nothing wrong with.
func (m *Model) Read(t Tries) Reading {
	onSpread, onBias := make([]float64, len(m.spreads)), make([]float64, len(m.biases))
	for k, weight := range m.weights(t) {
		onSpread[k/len(m.biases)] += weight
		onBias[k%len(m.biases)] += weight
	}
	r := Reading{Level: m.level, Window: m.window, Spread: math.Exp(quantile(m.spreads, onSpread, .5)),
		Interval: stat.Interval{Low: math.Exp(quantile(m.spreads, onSpread, .025)), High: math.Exp(quantile(m.spreads, onSpread, .975))}}
	if t.Sides {
		r.Bias = &Bias{Mean: mean(m.biases, onBias), Interval: stat.Interval{Low: quantile(m.biases, onBias, .025), High: quantile(m.biases, onBias, .975)}}
	}
	return r
}

// weights are the posterior chances of the grid's points, not scaled to add up to 1.
func (m *Model) weights(t Tries) []float64 {
	logs, most := make([]float64, len(m.prior)), math.Inf(-1)
	made, left, right, onLine := float64(t.Made), float64(t.Left), float64(t.Right), float64(t.Short+t.Long)
	speed := float64(t.Short)*m.short + float64(t.Long)*m.long
	for k := range logs {
		logs[k] = m.prior[k] + made*m.holed[k]
		if t.Sides {
			logs[k] += left*m.left[k] + right*m.right[k] + onLine*m.on[k] + speed
		} else {
			logs[k] += float64(t.Of-t.Made) * m.notHoled[k]
		}
		most = max(most, logs[k])
	}
	for k := range logs {
		logs[k] = math.Exp(logs[k] - most)
	}
	return logs
}

// logOf is the logarithm of a chance, and a very small one of none.
func logOf(chance float64) float64 { return math.Log(max(chance, math.SmallestNonzeroFloat64)) }

// nodes are equally spaced values about a middle.
func nodes(middle, spread float64) []float64 {
	all := make([]float64, gridSteps+1)
	for i := range all {
		all[i] = middle + spread*gridReach*(2*float64(i)/gridSteps-1)
	}
	return all
}

// quantile reads a quantile from weights of equally spaced values, each weight
// spread evenly over its step.
func quantile(values, weights []float64, p float64) float64 {
	total := 0.0
	for _, w := range weights {
		total += w
	}
	step, sum := values[1]-values[0], 0.0
	for i, w := range weights {
		if sum+w >= p*total {
			return values[i] + step*((p*total-sum)/w-.5)
		}
		sum += w
	}
	return values[len(values)-1]
}

func mean(values, weights []float64) float64 {
	sum, total := 0.0, 0.0
	for i, w := range weights {
		sum, total = sum+w*values[i], total+w
	}
	return sum / total
}

func degrees(radians float64) float64 { return radians * 180 / math.Pi }
