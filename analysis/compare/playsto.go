package compare

import (
	"math/rand/v2"
	"slices"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
)

// MinRounds is the fewest rounds from which a level is told.
const MinRounds = 5

const (
	resamples  = 1000 // how often rounds are drawn anew for an interval
	confidence = .95  // how sure an interval is
)

// Level is a level on the ladder, or past one of its ends; the value is then
// that of the end.
type Level struct {
	Value float64
	Past  Past
}

// Past says past which end of the ladder a level lies.
type Past int8

// The two ends, and neither.
const (
	Better Past = -1 // better than 68
	Within Past = 0
	Worse  Past = 1 // above 110
)

func levelOf(value float64) Level {
	switch {
	case value <= expect.MinLevel:
		return Level{expect.MinLevel, Better}
	case value >= expect.MaxLevel:
		return Level{expect.MaxLevel, Worse}
	default:
		return Level{value, Within}
	}
}

// PlaysTo is the level at which a player's losses in one part of the game are
// zero on average, with its interval of 95 %.
type PlaysTo struct {
	Level, Low, High Level
	Rounds           int // with a stroke in that part of the game
}

// PlaysTo returns the level to which a part of the game was played over some
// rounds. Under five rounds with such a stroke ok is false, and nothing but
// their number is told. The interval draws whole rounds anew, with the same
// draws for the same seed.
func (l Ladder) PlaysTo(profiles []Profile, c golf.Category, seed uint64) (result PlaysTo, ok bool) {
	var rows [][]float64
	for _, p := range profiles {
		if slices.ContainsFunc(p.lost[c], func(x float64) bool { return x != 0 }) {
			rows = append(rows, p.lost[c])
		}
	}
	result.Rounds = len(rows)
	if len(rows) < MinRounds {
		return result, false
	}
	all := make([]int, len(rows))
	for i := range all {
		all[i] = i
	}
	result.Level = levelOf(l.zero(rows, all))
	draws := stat.Bootstrap(rand.New(rand.NewPCG(seed, uint64(c))), len(rows), resamples,
		func(drawn []int) float64 { return l.zero(rows, drawn) })
	interval := stat.BootstrapInterval(draws, len(rows), confidence)
	result.Low, result.High = levelOf(interval.Low), levelOf(interval.High)
	return result, true
}

// zero is the level at which the drawn rows add up to nothing lost: the sum is
// linear between rungs and falls from one to the next.
func (l Ladder) zero(rows [][]float64, drawn []int) float64 {
	sum := func(rung int) float64 {
		s := 0.0
		for _, i := range drawn {
			s += rows[i][rung]
		}
		return s
	}
	low, high := 0, len(l)-1
	lost, won := sum(low), sum(high)
	if lost <= 0 {
		return expect.MinLevel
	}
	if won >= 0 {
		return expect.MaxLevel
	}
	for high-low > 1 {
		mid := (low + high) / 2
		if s := sum(mid); s > 0 {
			low, lost = mid, s
		} else {
			high, won = mid, s
		}
	}
	return l[low].Level() + (l[high].Level()-l[low].Level())*lost/(lost-won)
}
