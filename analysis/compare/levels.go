package compare

import (
	"strokeledger/analysis/golf"
)

// Against is what a round lost in a part of the game against the golfer of a level,
// in strokes. Losses are linear between the stored levels, so that it is exact.
func (l Ladder) Against(p Profile, c golf.Category, level float64) float64 {
	i := l.below(level)
	low, high := l.rungs[i].Level(), l.rungs[i+1].Level()
	w := min(max((level-low)/(high-low), 0), 1)
	return p.lost[c][i] + w*(p.lost[c][i+1]-p.lost[c][i])
}

// LevelOf is the level to which a part of the game was played over some rounds, held
// to 68 to 110. ok is false with fewer than MinRounds rounds that have such a stroke.
func (l Ladder) LevelOf(profiles []Profile, c golf.Category) (level float64, ok bool) {
	lost, n := l.byRung(profiles, c)
	if n < MinRounds {
		return 0, false
	}
	return l.zero(lost, inOrder(n)), true
}

// Overall is the level to which all parts together were played, held to 68 to 110.
// There must be a round.
func (l Ladder) Overall(profiles []Profile) float64 {
	lost := make([][]float64, len(l.rungs))
	for rung := range lost {
		for _, p := range profiles {
			sum := 0.0
			for _, c := range golf.Categories {
				sum += p.lost[c][rung]
			}
			lost[rung] = append(lost[rung], sum)
		}
	}
	return l.zero(lost, inOrder(len(profiles)))
}
