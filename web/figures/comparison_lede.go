package figures

import (
	"fmt"
	"math"

	"strokeledger/analysis/account"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/words"
)

// ComparisonLede says what moved from the span before the last one, or from the
// first span that has rounds where the one before has none.
func ComparisonLede(in ComparisonInput) string {
	last := len(in.Sheet.Columns) - 1
	c := &in.Sheet.Columns[last]
	if len(c.Rounds) == 0 {
		return fmt.Sprintf("No rounds in %s.", SpanName(in, last))
	}
	name, from := words.Capital(SpanName(in, last)), last-1
	change := func(k int) compare.Change { return c.Cells[k].Change }
	if from >= 0 && len(in.Sheet.Columns[from].Rounds) == 0 {
		from = FirstPlayed(in.Sheet)
		change = func(k int) compare.Change { return c.Cells[k].Since }
	}
	if from < 0 || from == last {
		return fmt.Sprintf("%s: %s. No other span has rounds to compare it with.", name, stands(in, c))
	}
	return fmt.Sprintf("%s against %s: %s", name, SpanName(in, from), moved(in, change))
}

// moved says how much better or worse everything became, which part of the game
// carries it, and how sure that is.
func moved(in ComparisonInput, change func(int) compare.Change) string {
	all := change(0)
	text := amount(all.Mean)
	if all.Word == 0 {
		return text + ", from too few rounds to tell it from chance."
	}
	main := mainPart(all, change)
	if main != 0 {
		text += fmt.Sprintf(", %s %s%s", howMuch(change(int(main)).Mean/all.Mean), words.Where(main), mainBand(in, main, change))
	}
	return text + certainty(all, main, change) + otherParts(all, main, change) + "."
}

// amount says how many strokes a round everything changed by.
func amount(mean float64) string {
	switch {
	case math.Abs(mean) < .05:
		return "no better and no worse"
	case mean < 0:
		return fmt.Sprintf("%s better a round", words.StrokeCount(-mean))
	default:
		return fmt.Sprintf("%s worse a round", words.StrokeCount(mean))
	}
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

// lying says where the ball of a short shot lies.
var lying = map[golf.Lie]string{golf.Fairway: " on the fairway", golf.Rough: " in the rough", golf.Bunker: " in bunkers",
	golf.Recovery: " out of recovery", golf.Tee: " off the tee"}

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
		return reach + lying[b.Lie]
	}
	return reach
}

// certainty says how sure the change is: of the main part, or of everything where
// there is none.
func certainty(all compare.Change, main golf.Category, change func(int) compare.Change) string {
	return map[compare.Word]string{
		compare.Clear:   ", and that is clear",
		compare.Leaning: ", which is leaning but not certain",
		compare.Chance:  ", which could be chance",
	}[said(all, main, change).Word]
}

// said is the change that the sentence is about.
func said(all compare.Change, main golf.Category, change func(int) compare.Change) compare.Change {
	if main == 0 {
		return all
	}
	return change(int(main))
}

// otherParts says which other parts moved by more than chance, or that none did
// beside a main part.
func otherParts(all compare.Change, main golf.Category, change func(int) compare.Change) string {
	text := ""
	for _, part := range golf.Categories {
		c := change(int(part))
		if part == main || c.Word != compare.Clear && c.Word != compare.Leaning {
			continue
		}
		direction := "better"
		if c.Mean > 0 {
			direction = "worse"
		}
		text += fmt.Sprintf("; %s is %s %s (%s)", part, words.Plain(math.Abs(c.Mean)), direction, words.Certainty(c.Word))
	}
	if text == "" && main != 0 && said(all, main, change).Word != compare.Chance {
		return "; the rest could be chance"
	}
	return text
}
