package figures

import (
	"strokeledger/analysis/golf"
	"strokeledger/web/chart"
	"strokeledger/web/components"
	"strokeledger/web/words"
)

// splitScale is the axis of every split bar, whatever the rounds on the page, so
// that a stroke is as long today as it was in May.
var splitScale = chart.Scale{Low: -4, High: 18, Step: 5}

// SplitAxis stands over the bars.
func SplitAxis() components.Axis { return components.NewAxis(splitScale, words.Tick) }

// SplitBar shows where the strokes of a round went: lost parts to the right of
// the line, parts won back to the left of it, and a tick at the sum.
type SplitBar struct {
	Known             bool // there is something to draw
	Blocks            []SplitBlock
	Net               string // place of the sum; empty when it lies beyond the axis
	CutLeft, CutRight bool   // the bar goes on beyond the axis
}

// SplitBlock is one part of the bar.
type SplitBlock struct{ Class, X, Width string }

// blockClasses are the classes of the blocks, in the order of Split.Parts.
func blockClasses() [splitParts]string {
	return [splitParts]string{"tee-block", "approach-block", "short-game-block", "putting-block", "unknown-block"}
}

// NewSplitBar draws what a round lost, counted outward from the line and cut at
// the ends of the axis.
func NewSplitBar(s Split) SplitBar { return s.on(splitScale) }

// averageScale is the axis of a split bar that stands for an average of rounds, which
// is never as far from the target as a single one.
var averageScale = chart.Scale{Low: -3, High: 10, Step: 5}

// NewAverageBar draws an average of rounds the same way, on an axis of its own.
func NewAverageBar(s Split) SplitBar { return s.on(averageScale) }

// AverageZero is where the line stands on that axis.
func AverageZero() string { return averageScale.Percent(0) }

// on draws a split on an axis.
func (s Split) on(scale chart.Scale) SplitBar {
	b := SplitBar{Known: true}
	right, left := 0.0, 0.0
	for i, p := range s.Parts {
		class, from, to := blockClasses()[i], right, right+float64(p)/10
		if p < 0 {
			class, from, to = "won-block "+class, left+float64(p)/10, left
			left = from
		} else {
			right = to
		}
		from, to = max(from, scale.Low), min(to, scale.High)
		if from < to {
			b.Blocks = append(b.Blocks, SplitBlock{class, scale.Percent(from), chart.Percent((to - from) / (scale.High - scale.Low))})
		}
	}
	b.CutLeft, b.CutRight = left < scale.Low, right > scale.High
	if net := float64(s.Over) / 10; net >= scale.Low && net <= scale.High {
		b.Net = scale.Percent(net)
	}
	return b
}

// SplitKey is an entry of the legend of split bars.
type SplitKey struct{ Class, Name string }

// SplitKeys explain the blocks: those of the game, and that of what is not known
// by shots where it is drawn.
func SplitKeys(unknown bool) []SplitKey {
	var all []SplitKey
	for i, c := range golf.Categories {
		all = append(all, SplitKey{blockClasses()[i], words.Capital(c.String())})
	}
	if unknown {
		all = append(all, SplitKey{blockClasses()[splitParts-1], "Not known by shots"})
	}
	return all
}
