package play

import (
	"fmt"
	"math"
	"slices"

	"strokeledger/web/chart"
)

// scores draws the columns.
func (in ChanceInput) scores(target string) ScorePicture {
	var all []int
	largest := 0.0
	for score, share := range in.Scores {
		if share >= .001 {
			all = append(all, score)
			largest = max(largest, share)
		}
	}
	slices.Sort(all)
	p := ScorePicture{Label: fmt.Sprintf("How often each score comes in 100 rounds: %s %s or better, average %.1f.", roundsOf(in.Chance.Chance), target, in.Mean), Said: hundred(in.Chance.Chance) + " in 100", Better: target + " or better"}
	if len(all) == 0 {
		return p
	}
	low, high := all[0], all[len(all)-1]
	step := (scoreWide - 2*scoreLeft) / float64(high-low+1)
	goal := int(math.Floor(in.Chance.Target + 1e-9))
	for score := low; score <= high; score++ {
		x := scoreLeft + float64(score-low)*step
		tall := in.Scores[score] / largest * (scoreFoot - 44)
		p.Columns = append(p.Columns, ScoreColumn{tenth(x + .5), tenth(scoreFoot - tall), tenth(step - 1), tenth(tall), score <= goal})
		if score%5 == 0 {
			p.Ticks = append(p.Ticks, CurveTick{tenth(x + step/2), fmt.Sprint(score)})
		}
	}
	p.Rule = tenth(min(max(scoreLeft+float64(goal-low+1)*step, scoreLeft), scoreWide-scoreLeft))
	p.Mean = tenth(scoreLeft + (in.Mean-float64(low)+.5)*step)
	return p
}

// each is the chance of scores about the target.
func (in ChanceInput) each() []ScoreChance {
	var all []ScoreChance
	goal := int(math.Floor(in.Chance.Target + 1e-9))
	for d := -2; d <= 8; d += 2 {
		all = append(all, ScoreChance{fmt.Sprint(goal + d), hundred(in.AtOrBetter(goal + d)), d == 0})
	}
	return all
}

// chanceScale holds every chance from none to all.
var chanceScale = chart.Range{Low: 0, High: 1, Step: .2}

func (in ChanceInput) between(target string) *ChanceRange {
	i := in.Chance.Interval
	if in.Thin.Any() || i.Low == i.High {
		return nil
	}
	c := &ChanceRange{Said: fmt.Sprintf("%s or better, of 100: it may be between %s and %s", target, hundred(i.Low), hundred(i.High)), Low: chanceScale.Across(i.Low), High: chanceScale.Across(i.High), Now: chanceScale.Across(in.Chance.Chance),
		LowIs: hundred(i.Low), HiIs: hundred(i.High)}
	c.Label = c.Said
	for _, v := range chanceScale.Ticks() {
		c.Ticks = append(c.Ticks, CurveTick{chanceScale.Across(v), hundred(v)})
	}
	return c
}
