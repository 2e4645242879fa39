package analysis

import (
	"testing"

	"strokeledger/analysis/practice"
)

// A plan from 300 rounds: at most 50 ms beyond what the rounds take to be read.
func BenchmarkPlan(b *testing.B) {
	engine, history := NewEngine(), played(b, 88, 300)
	for b.Loop() {
		if _, err := engine.Plan(PlanInput{History: history, Target: 79, Minutes: 180}); err != nil {
			b.Fatal(err)
		}
	}
}

// The chances of each drill at 43 levels: at most 20 ms.
func BenchmarkLevelsOfDrills(b *testing.B) {
	for _, d := range practice.Drills() {
		if d.NoMark {
			continue
		}
		b.Run(d.Key, func(b *testing.B) {
			engine := NewEngine()
			for b.Loop() {
				if _, err := practice.LevelsOf(d, &engine.golfer); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
