package figures

import (
	"slices"

	"strokeledger/analysis/account"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/words"
)

// Pair is the one comparison that a page makes: the last span that has rounds
// against the one before it that has rounds. Sentence and columns all say it.
type Pair struct {
	Known                   bool      // two spans have rounds
	Now, Before             int       // their columns, from 0; -1 for none
	NowName, BeforeName     string    // as in a sentence: November
	NowRounds, BeforeRounds string    // how many: 3 rounds
	Moved                   []float64 // by row of the sheet: strokes as printed now, less strokes as printed before
}

// NewPair finds the two spans of a comparison that has columns.
func NewPair(in ComparisonInput) Pair {
	p := Pair{Now: in.Sheet.PlayedBefore(len(in.Sheet.Columns)), Before: -1}
	if p.Now < 0 {
		return p
	}
	rounds := func(column int) string {
		return words.Plural(len(in.Sheet.Columns[column].Rounds), "round", "rounds")
	}
	p.NowName, p.NowRounds, p.Before = SpanName(in, p.Now), rounds(p.Now), in.Sheet.PlayedBefore(p.Now)
	if p.Before < 0 {
		return p
	}
	p.Known, p.BeforeName, p.BeforeRounds = true, SpanName(in, p.Before), rounds(p.Before)
	before := PrintedLosses(in.Sheet, p.Before)
	for k, now := range PrintedLosses(in.Sheet, p.Now) {
		p.Moved = append(p.Moved, now-before[k])
	}
	return p
}

// change is what changed in row k of the sheet.
func (p Pair) change(in ComparisonInput, k int) compare.Change {
	return in.Sheet.Columns[p.Now].Cells[k].Change
}

// Sure is the word of a change that is clear or leaning; empty for every other,
// since those could be chance.
func Sure(w compare.Word) string {
	if w == compare.Clear || w == compare.Leaning {
		return words.Certainty(w)
	}
	return ""
}

// PrintedLosses are the strokes lost in each row of a column, for 18 holes, in
// tenths that add up as printed: parts to all, bands to their part.
func PrintedLosses(s compare.Sheet, column int) []float64 {
	cells := s.Columns[column].Cells
	all := make([]float64, len(cells))
	share := func(rows []int, total float64) {
		rows = slices.DeleteFunc(rows, func(k int) bool { return !cells[k].Known })
		if len(rows) == 0 {
			return
		}
		means := make([]float64, len(rows))
		for i, k := range rows {
			means[i] = cells[k].Mean
		}
		for i, tenths := range Tenths(means, total) {
			all[rows[i]] = tenths
		}
	}
	all[0] = Tenth(cells[0].Mean)
	share([]int{int(golf.TeeShots), int(golf.Approach), int(golf.ShortGame), int(golf.Putting)}, all[0])
	for _, part := range golf.Categories {
		var bands []int
		for k, row := range s.Rows {
			if row.Category == part && row.Band != (account.Band{}) && cells[k].Shots > 0 {
				bands = append(bands, k)
			}
		}
		share(bands, all[part])
	}
	return all
}
