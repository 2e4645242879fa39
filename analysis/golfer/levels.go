package golfer

import (
	"fmt"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/parallel"
)

// The stored levels: skill coordinates from firstLevel/levelsPerSkill on, dense
// enough that a straight line between two is within .001 of a level solved on
// its own, and wide enough to hold levels 68 to 110.
const (
	firstLevel     = -3
	lastLevel      = 40
	levelsPerSkill = 25
)

// LevelSkills returns the skill coordinates of the stored levels.
func LevelSkills() []float64 {
	var all []float64
	for i := firstLevel; i <= lastLevel; i++ {
		all = append(all, float64(i)/levelsPerSkill)
	}
	return all
}

// SolveLevels solves every stored level, on all cores, and tells notify how
// many are done. It fails when they do not hold levels 68 to 110.
func (p Parameters) SolveLevels(notify func(done, of int)) ([]expect.Stored, error) {
	skills := LevelSkills()
	levels := make([]expect.Stored, len(skills))
	sums := make([]float64, len(skills))
	parallel.DoTelling(len(skills), func(i int) {
		g := p.Solve(skills[i])
		levels[i], sums[i] = g.Stored(), g.course(expect.ReferenceCourse())
	}, func(done int) { notify(done, len(skills)) })
	if low, high := sums[0], sums[len(sums)-1]; low > expect.MinLevel || high < expect.MaxLevel {
		return nil, fmt.Errorf("the stored levels reach from %.2f to %.2f; they must hold %g to %g", low, high, expect.MinLevel, expect.MaxLevel)
	}
	return levels, nil
}
