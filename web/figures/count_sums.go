package figures

import (
	"math"
	"slices"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
)

// The kinds of doubles add up to the doubles, and so do the places where they began,
// with those that were a leak and began nowhere.
var (
	kindMeasures = []string{"compound", "single", "separate", "leak"}
	rootMeasures = rootsOf()
)

func rootsOf() []string {
	all := []string{"leak"}
	for _, part := range golf.Categories {
		all = append(all, "root "+part.String())
	}
	return all
}

// MarkCount marks the row of a measure as one that is added up, or as a sum.
func MarkCount(r *FigureRow, measure string) {
	if measure == "doubles" {
		r.Sums("kinds")
		r.Sums("roots")
	}
	if slices.Contains(kindMeasures, measure) {
		r.Adds("kinds")
	}
	if slices.Contains(rootMeasures, measure) {
		r.Adds("roots")
	}
}

// PrintedMeasures are the measures of a column as they are written: shares in whole
// percent, counts in tenths that add up.
func PrintedMeasures(s compare.Sheet, column int) []float64 {
	cells := s.Columns[column].Measures
	all := make([]float64, len(cells))
	if len(cells) < len(compare.Measures) {
		return all // a comparison of losses alone
	}
	for k, m := range compare.Measures {
		if all[k] = Tenth(cells[k].Mean); m.Share {
			all[k] = math.Round(cells[k].Mean*100) / 100
		}
	}
	doubles := all[compare.MeasureAt("doubles")]
	share := func(measures []string, total float64) {
		exact := make([]float64, len(measures))
		for i, name := range measures {
			exact[i] = cells[compare.MeasureAt(name)].Mean
		}
		for i, tenths := range Tenths(exact, total) {
			all[compare.MeasureAt(measures[i])] = tenths
		}
	}
	share(kindMeasures, doubles)
	share(rootMeasures[1:], doubles-all[compare.MeasureAt("leak")])
	return all
}
