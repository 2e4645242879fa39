package pages

import (
	"fmt"
	"math"

	"strokeledger/analysis/account"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
)

// monthsLede says what moved between the last two spans that have rounds.
func monthsLede(q AskedMonths) string {
	last := len(q.Sheet.Columns) - 1
	c := &q.Sheet.Columns[last]
	name := capital(spanName(q, last))
	if len(c.Rounds) == 0 {
		return fmt.Sprintf("No round in %s.", spanName(q, last))
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
	text := fmt.Sprintf("%s against %s: ", name, spanName(q, before))
	all := change(0)
	switch {
	case math.Abs(all.Mean) < .05:
		text += "no better and no worse"
	case all.Mean < 0:
		text += fmt.Sprintf("%s better a round", strokeCount(-all.Mean))
	default:
		text += fmt.Sprintf("%s worse a round", strokeCount(all.Mean))
	}
	if all.Word == 0 {
		return text + ", from too few rounds to say more than the numbers."
	}
	main := mainPart(all, change)
	if main != 0 {
		text += fmt.Sprintf(", %s %s%s", howMuch(change(int(main)).Mean/all.Mean), where(main), mainBand(q, main, change))
	}
	return text + verdict(all, main, change)
}

// stands says where most was lost in a column.
func stands(c *compare.Column) string {
	worst := golf.TeeShots
	for _, part := range golf.Categories {
		if c.Cells[part].Mean > c.Cells[worst].Mean {
			worst = part
		}
	}
	total := c.Cells[0].Mean
	if total < .05 {
		return "nothing lost against the golfer compared with"
	}
	return fmt.Sprintf("%s lost a round, most of it %s", strokeCount(total), where(worst))
}

func strokeCount(x float64) string {
	return fmt.Sprintf("%s %s", plain(x), word(int(math.Round(x*10)), "stroke", "strokes"))
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
func mainBand(q AskedMonths, part golf.Category, change func(int) compare.Change) string {
	whole := change(int(part)).Mean
	for k, row := range q.Sheet.Rows {
		if row.Category == part && row.Band != (account.Band{}) && change(k).Known && change(k).Mean/whole >= .6 {
			return bandPhrase(row.Band, q)
		}
	}
	return ""
}

// bandPhrase says from where the shots of a band are played.
func bandPhrase(b account.Band, q AskedMonths) string {
	if b.Category == golf.TeeShots {
		return fmt.Sprintf(" of the par %ss", spelled(b.Par))
	}
	unit := q.Units.Far
	if b.Category == golf.Putting {
		unit = q.Units.Green
	}
	reach := fmt.Sprintf(" from over %s %s", plain(unit.In(b.Low)), unit)
	if b.High > 0 {
		reach = fmt.Sprintf(" from %s to %s %s", plain(unit.In(b.Low)), plain(unit.In(b.High)), unit)
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
			text += fmt.Sprintf("; %s is %s %s (%s)", part, plain(math.Abs(c.Mean)), direction, c.Word)
		}
	}
	if main != 0 && said.Word != compare.Chance && others == 0 {
		text += "; the rest could be chance"
	}
	return text + "."
}
