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

// ComparisonInput is what a comparison of spans is made of.
type ComparisonInput struct {
	analysis.Months                   // the spans side by side, the season, and what can be chosen
	At              paths.Comparison  // what was chosen, and of whose rounds
	Name            string            // the player's
	Marks           []MarkedDay       // the days that the player marked, the earliest first
	Target          float64           // the player's, strokes over 18 holes
	Units           form.Units        // of who reads the page
	Problems        map[string]string // what is wrong with a form that came back, by field
	Marking         [2]string         // the day and the event typed into the form that marks a day
}

// ComparisonFoot says what the figures of a comparison mean.
func ComparisonFoot(in ComparisonInput) string {
	return fmt.Sprintf("Fixed golfer: every round is compared with the same golfer, %s, so a longer course expects more strokes. The comparison knows a course’s length, but not its slope, wind or rough: leave out rounds played in unusual conditions. Losses are per 18 holes; holes entered as a score alone do not count. Doubles are judged by each round’s own target.", Against(in))
}

// Against names the golfer compared with.
func Against(in ComparisonInput) string {
	if in.Level == 0 {
		return "a tour player"
	}
	return words.A(in.Level) + " golfer"
}

// FirstPlayed is the first column that has rounds, counted from 0; 0 when none has.
func FirstPlayed(s compare.Sheet) int {
	for i, c := range s.Columns {
		if len(c.Rounds) > 0 {
			return i
		}
	}
	return 0
}

// SpanName names the span of column i; months have their year when the columns
// are not all of one year.
func SpanName(in ComparisonInput, i int) string {
	years := map[int]bool{in.Last.Year: true}
	for _, c := range in.Sheet.Columns {
		if c.Span.Last == 0 {
			years[c.Span.From.Year] = true
		}
	}
	return words.Span(in.Sheet.Columns[i].Span, len(years) > 1)
}

// MarkedDay is a day on which something changed for the player.
type MarkedDay struct {
	ID   int64     // of the mark, to remove it by
	Day  golf.Date // the first day after the change
	What string    // what happened, in the player's words
}

// ComparisonLede says what moved between the last two spans that have rounds.
func ComparisonLede(in ComparisonInput) string {
	last := len(in.Sheet.Columns) - 1
	c := &in.Sheet.Columns[last]
	name := words.Capital(SpanName(in, last))
	if len(c.Rounds) == 0 {
		return fmt.Sprintf("No rounds in %s.", SpanName(in, last))
	}
	before := last - 1
	for before >= 0 && len(in.Sheet.Columns[before].Rounds) == 0 {
		before--
	}
	if before < 0 {
		return fmt.Sprintf("%s: %s. No other span has rounds to compare it with.", name, stands(in, c))
	}
	change := func(k int) compare.Change { return c.Cells[k].Change }
	if before != last-1 {
		change = func(k int) compare.Change { return c.Cells[k].Since }
	}
	text := fmt.Sprintf("%s against %s: ", name, SpanName(in, before))
	all := change(0)
	switch {
	case math.Abs(all.Mean) < .05:
		text += "no better and no worse"
	case all.Mean < 0:
		text += fmt.Sprintf("%s better a round", words.StrokeCount(-all.Mean))
	default:
		text += fmt.Sprintf("%s worse a round", words.StrokeCount(all.Mean))
	}
	switch {
	case all.Thin.Any():
		return text + "; " + words.Thin(all.Thin) + "."
	case all.Word == 0:
		return text + "." // every round of a span is like every other
	}
	main := mainPart(all, change)
	if main != 0 {
		text += fmt.Sprintf(", %s %s%s", howMuch(change(int(main)).Mean/all.Mean), words.Where(main), mainBand(in, main, change))
	}
	return text + verdict(all, main, change)
}

// stands says how much was lost in a column, and where most of it.
func stands(in ComparisonInput, c *compare.Column) string {
	worst := golf.Most(func(part golf.Category) float64 { return c.Cells[part].Mean })
	total := c.Cells[0].Mean
	if total < .05 {
		return "nothing lost to " + Against(in)
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

// howMuch words the share of a change that one part of the game carries.
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
func mainBand(in ComparisonInput, part golf.Category, change func(int) compare.Change) string {
	whole := change(int(part)).Mean
	for k, row := range in.Sheet.Rows {
		if row.Category == part && row.Band != (account.Band{}) && change(k).Known && change(k).Mean/whole >= .6 {
			return bandPhrase(row.Band, in)
		}
	}
	return ""
}

// bandPhrase says from where the shots of a band are played.
func bandPhrase(b account.Band, in ComparisonInput) string {
	if b.Category == golf.TeeShots {
		return fmt.Sprintf(" of the par %ss", words.Spelled(b.Par))
	}
	unit := in.Units.Far
	if b.Category == golf.Putting {
		unit = in.Units.Green
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
	text := map[compare.Word]string{compare.Clear: ", and that is clear", compare.Leaning: ", which is leaning but not certain", compare.Chance: ", which could be chance"}[said.Word]
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
