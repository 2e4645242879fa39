package compare

import (
	"slices"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
)

// MinRounds is the fewest rounds from which a level is given. It is this
// program's choice; there is no published source.
const MinRounds = 5

// confidence is how sure an interval is.
const confidence = .95

// Level is a level on the ladder, or past one of its ends; the value is then
// that of the end. The zero value is not known.
type Level struct {
	Value float64 // a score, 68 to 110
	Past  Past
}

// Known reports whether there is a level.
func (l Level) Known() bool { return l != Level{} }

// Past says past which end of the ladder a level lies.
type Past int8

// The two ends, and neither.
const (
	Better Past = -1 // better than 68
	Within Past = 0
	Worse  Past = 1 // above 110
)

// levelOf is a value as a level, at an end where it reaches it.
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
	Level, Low, High Level // not known under MinRounds
	Rounds           int   // with a stroke in that part of the game
}

// Thin is why there is no level; no note when there is one.
func (p PlaysTo) Thin() golf.Thin { return golf.Enough(golf.ThinLevel, p.Rounds, MinRounds) }

// Known reports whether there is a level.
func (p PlaysTo) Known() bool { return p.Level.Known() }

// PlaysTo returns the level to which a part of the game was played over some
// rounds. Under five rounds with such a stroke it knows nothing but their number.
// The interval draws whole rounds anew, with the same draws for the same seed.
func (l Ladder) PlaysTo(profiles []Profile, c golf.Category, seed uint64) (result PlaysTo) {
	lost, n := l.byRung(profiles, c)
	if result.Rounds = n; n < MinRounds {
		return result
	}
	level := l.zero(lost, inOrder(n))
	result.Level = levelOf(level)
	near := l.below(level)
	interval := l.drawn.of(n, seed).Interval(confidence, func(drawn []int32) float64 { return l.zeroNear(lost, drawn, near) })
	result.Low, result.High = levelOf(interval.Low), levelOf(interval.High)
	return result
}

// level is that of PlaysTo alone; not known under five rounds.
func (l Ladder) level(profiles []Profile, c golf.Category) Level {
	lost, n := l.byRung(profiles, c)
	if n < MinRounds {
		return Level{}
	}
	return levelOf(l.zero(lost, inOrder(n)))
}

// byRung lists for every rung what each round lost there, of the n rounds that
// have a stroke in a part of the game.
func (l Ladder) byRung(profiles []Profile, c golf.Category) (lost [][]float64, n int) {
	lost = make([][]float64, len(l.rungs))
	room := make([]float64, len(l.rungs)*len(profiles))
	for rung := range lost {
		lost[rung] = room[rung*len(profiles):][:0:len(profiles)]
	}
	for _, p := range profiles {
		if !slices.ContainsFunc(p.lost[c], func(x float64) bool { return x != 0 }) {
			continue
		}
		n++
		for rung, x := range p.lost[c] {
			lost[rung] = append(lost[rung], x)
		}
	}
	return lost, n
}

// inOrder is the draw that takes each of n rounds once.
func inOrder(n int) []int32 {
	all := make([]int32, n)
	for i := range all {
		all[i] = int32(i)
	}
	return all
}

// below is the rung at or under a level, never the last.
func (l Ladder) below(level float64) int {
	rung := 0
	for rung < len(l.rungs)-2 && l.rungs[rung+1].Level() <= level {
		rung++
	}
	return rung
}

// zero is the level at which what the drawn rounds lost adds up to nothing.
func (l Ladder) zero(lost [][]float64, drawn []int32) float64 {
	return l.zeroNear(lost, drawn, len(l.rungs)/2)
}

// zeroNear is that level, looked for from a rung: the sum is linear between
// rungs and falls from one to the next.
func (l Ladder) zeroNear(lost [][]float64, drawn []int32, rung int) float64 {
	low, high := sumOf(lost[rung], drawn), sumOf(lost[rung+1], drawn)
	for low <= 0 {
		if rung == 0 {
			return expect.MinLevel
		}
		rung--
		low, high = sumOf(lost[rung], drawn), low
	}
	for high >= 0 {
		if rung == len(l.rungs)-2 {
			return expect.MaxLevel
		}
		rung++
		low, high = high, sumOf(lost[rung+1], drawn)
	}
	return l.rungs[rung].Level() + (l.rungs[rung+1].Level()-l.rungs[rung].Level())*low/(low-high)
}

// sumOf adds up the values of the drawn rounds.
func sumOf(values []float64, drawn []int32) float64 {
	sum := 0.0
	for _, i := range drawn {
		sum += values[i]
	}
	return sum
}
