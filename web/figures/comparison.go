package figures

import (
	"fmt"
	"math"

	"strokeledger/analysis"
	"strokeledger/analysis/account"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/form"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// ComparisonInput is what a comparison is made of.
type ComparisonInput struct {
	analysis.Months
	At       paths.Comparison
	Name     string // the player's
	Marks    []MarkedDay
	Target   float64 // the player's
	Units    form.Units
	Problems map[string]string // what was wrong with a form, by field
	Marking  [2]string         // the day and what happened, as they were typed
}

// ComparisonFoot says what the figures mean.
func ComparisonFoot(q ComparisonInput) string {
	return fmt.Sprintf("Fixed golfer. Every round is compared with the same golfer, %s, so that a longer course expects more strokes. He knows a course's length, not its slope, wind or rough: leave out rounds that were not alike. Losses are for 18 holes; holes known by their score alone count in none. Doubles are judged by the target that each round was played for.", Against(q))
}

// Against names the golfer compared with.
func Against(q ComparisonInput) string {
	if q.Level == 0 {
		return "a tour player"
	}
	return "a " + words.Plain(q.Level) + " golfer"
}

// FirstPlayed is the first column that has rounds.
func FirstPlayed(s compare.Sheet) int {
	for i, c := range s.Columns {
		if len(c.Rounds) > 0 {
			return i
		}
	}
	return 0
}

// SpanName names a span as a column heads it.
func SpanName(q ComparisonInput, i int) string {
	years := map[int]bool{q.Last.Year: true}
	for _, c := range q.Sheet.Columns {
		if c.Span.Last == 0 {
			years[c.Span.From.Year] = true
		}
	}
	return words.Span(q.Sheet.Columns[i].Span, len(years) > 1)
}

// MarkedDay is a day that the player marked.
type MarkedDay struct {
	ID   int64
	Day  golf.Date
	What string
}

// ComparisonLede says what moved between the last two spans that have rounds.
func ComparisonLede(q ComparisonInput) string {
	last := len(q.Sheet.Columns) - 1
	c := &q.Sheet.Columns[last]
	name := words.Capital(SpanName(q, last))
	if len(c.Rounds) == 0 {
		return fmt.Sprintf("No round in %s.", SpanName(q, last))
	}
	before := last - 1
	for before >= 0 && len(q.Sheet.Columns[before].Rounds) == 0 {
		before--
	}
	if before < 0 {
		return fmt.Sprintf("%s: %s. No other span has a round to set beside it.", name, stands(c))
	}
	change := func(k int) compare.Change { return c.Cells[k].Change }
	if before != last-1 {
		change = func(k int) compare.Change { return c.Cells[k].Since }
	}
	text := fmt.Sprintf("%s against %s: ", name, SpanName(q, before))
	all := change(0)
	switch {
	case math.Abs(all.Mean) < .05:
		text += "no better and no worse"
	case all.Mean < 0:
		text += fmt.Sprintf("%s better a round", words.StrokeCount(-all.Mean))
	default:
		text += fmt.Sprintf("%s worse a round", words.StrokeCount(all.Mean))
	}
	if all.Word == 0 {
		return text + ", from too few rounds to say more than the numbers."
	}
	main := mainPart(all, change)
	if main != 0 {
		text += fmt.Sprintf(", %s %s%s", howMuch(change(int(main)).Mean/all.Mean), words.Where(main), mainBand(q, main, change))
	}
	return text + verdict(all, main, change)
}

// stands says where most was lost in a column.
func stands(c *compare.Column) string {
	worst := golf.Most(func(part golf.Category) float64 { return c.Cells[part].Mean })
	total := c.Cells[0].Mean
	if total < .05 {
		return "nothing lost against the golfer compared with"
	}
	return fmt.Sprintf("%s lost a round, most of it %s", words.StrokeCount(total), words.Where(worst))
}

// mainPart is the part of the game that moved most the way of everything; none
// where everything hardly moved or no part carries a third of it.
func mainPart(all compare.Change, change func(int) compare.Change) golf.Category {
	if math.Abs(all.Mean) < .3 {
		return 0
	}
	main := golf.Category(0)
	for _, part := range golf.Categories {
		share := change(int(part)).Mean / all.Mean
		if share > 1./3 && (main == 0 || share > change(int(main)).Mean/all.Mean) {
			main = part
		}
	}
	return main
}

func howMuch(share float64) string {
	switch {
	case share > 1.15:
		return "more than that"
	case share >= .8:
		return "almost all of it"
	case share >= .5:
		return "most of it"
	default:
		return "the largest part"
	}
}

// mainBand names the band that carries most of what a part of the game moved.
func mainBand(q ComparisonInput, part golf.Category, change func(int) compare.Change) string {
	whole := change(int(part)).Mean
	for k, row := range q.Sheet.Rows {
		if row.Category == part && row.Band != (account.Band{}) && change(k).Known && change(k).Mean/whole >= .6 {
			return bandPhrase(row.Band, q)
		}
	}
	return ""
}

// bandPhrase says from where the shots of a band are played.
func bandPhrase(b account.Band, q ComparisonInput) string {
	if b.Category == golf.TeeShots {
		return fmt.Sprintf(" of the par %ss", words.Spelled(b.Par))
	}
	unit := q.Units.Far
	if b.Category == golf.Putting {
		unit = q.Units.Green
	}
	reach := fmt.Sprintf(" from over %s %s", words.Plain(unit.In(b.Low)), unit)
	if b.High > 0 {
		reach = fmt.Sprintf(" from %s to %s %s", words.Plain(unit.In(b.Low)), words.Plain(unit.In(b.High)), unit)
	}
	if b.Category == golf.ShortGame {
		return reach + map[golf.Lie]string{golf.Fairway: " on the fairway", golf.Rough: " in the rough", golf.Bunker: " in bunkers",
			golf.Recovery: " out of recovery", golf.Tee: " off the tee"}[b.Lie]
	}
	return reach
}

// verdict says how sure the change is, and which other parts moved.
func verdict(all compare.Change, main golf.Category, change func(int) compare.Change) string {
	said := all
	if main != 0 {
		said = change(int(main))
	}
	text := map[compare.Word]string{compare.Clear: ", and that is clear", compare.Leaning: ", which is leaning but not sure", compare.Chance: ", which could be chance"}[said.Word]
	others := 0
	for _, part := range golf.Categories {
		if c := change(int(part)); part != main && (c.Word == compare.Clear || c.Word == compare.Leaning) {
			others++
			direction := "better"
			if c.Mean > 0 {
				direction = "worse"
			}
			text += fmt.Sprintf("; %s is %s %s (%s)", part, words.Plain(math.Abs(c.Mean)), direction, words.Certainty(c.Word))
		}
	}
	if main != 0 && said.Word != compare.Chance && others == 0 {
		text += "; the rest could be chance"
	}
	return text + "."
}
