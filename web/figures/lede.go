package figures

import (
	"fmt"
	"math"
	"strings"

	"strokeledger/analysis/account"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/words"
)

// ComparisonLede says what moved between the last span that has rounds and the
// one before it that has rounds: what is clear first, and that nothing is where
// nothing is.
func ComparisonLede(in ComparisonInput) string {
	last, said := len(in.Sheet.Columns)-1, ""
	if len(in.Sheet.Columns[last].Rounds) == 0 {
		said = fmt.Sprintf("No rounds in %s.", SpanName(in, last))
	}
	p := NewPair(in)
	switch {
	case p.Known:
		said += " " + p.lede(in)
	case p.Now >= 0:
		said += fmt.Sprintf(" %s: %s. No other span has rounds to compare it with.", words.Capital(SpanName(in, p.Now)), stands(in, p))
	}
	return strings.TrimSpace(said)
}

// stands says how much was lost in the only column that has rounds, and where
// most of it.
func stands(in ComparisonInput, p Pair) string {
	lost := PrintedLosses(in.Sheet, p.Now)
	if lost[0] < .05 {
		return "nothing lost to " + Against(in)
	}
	worst := golf.Most(func(part golf.Category) float64 { return lost[part] })
	return fmt.Sprintf("%s lost a round of 18, most of it %s", words.StrokeCount(lost[0]), words.Where(worst))
}

// lede says what moved between the two columns.
func (p Pair) lede(in ComparisonInput) string {
	if strokes := p.clearStrokes(in); strokes != "" {
		return fmt.Sprintf("%s against %s: %s.", words.Capital(p.NowName), p.BeforeName, strokes)
	}
	if thin := p.change(in, 0).Thin; thin.Any() {
		return fmt.Sprintf("Nothing clear between %s (%s) and %s (%s): it takes %s rounds in each.", p.BeforeName, p.BeforeRounds, p.NowName, p.NowRounds, words.Spelled(thin.Need))
	}
	what, counts := "Nothing clear", p.clearCount(in)
	if counts != "" {
		what = "Nothing clear in strokes"
	}
	return fmt.Sprintf("%s between %s and %s (%s).%s%s", what, p.BeforeName, p.NowName, p.NowRounds, p.leaning(in), counts)
}

// clearStrokes says which strokes changed clearly, and which others probably did;
// empty when none did clearly.
func (p Pair) clearStrokes(in ComparisonInput) string {
	var said []string
	main := golf.Category(0)
	if all := p.change(in, 0); all.Word == compare.Clear {
		text := words.StrokeCount(math.Abs(p.Moved[0])) + " " + direction(p.Moved[0]) + " a round of 18"
		if main = p.mainPart(in); main != 0 {
			text += fmt.Sprintf(", %s %s%s", howMuch(p.change(in, int(main)).Mean/all.Mean), words.Where(main), p.mainBand(in, main))
		}
		said = append(said, text+", and that is clear")
	}
	for _, word := range []compare.Word{compare.Clear, compare.Leaning} {
		for _, part := range golf.Categories {
			if part == main || p.change(in, int(part)).Word != word {
				continue
			}
			if len(said) == 0 && word == compare.Clear {
				said = append(said, fmt.Sprintf("%s %s a round of 18 %s, and that is clear", words.StrokeCount(math.Abs(p.Moved[part])), direction(p.Moved[part]), words.Where(part)))
			} else if len(said) > 0 {
				said = append(said, fmt.Sprintf("%s is %s %s (%s)", part, words.Plain(math.Abs(p.Moved[part])), direction(p.Moved[part]), words.Certainty(word)))
			}
		}
	}
	return strings.Join(said, "; ")
}

// mostLeaning is how many changes that are only likely the sentence names.
const mostLeaning = 2

// leaning says which strokes changed probably, where none did clearly: everything
// together before its parts. It is empty when none did.
func (p Pair) leaning(in ComparisonInput) string {
	var said []string
	for k := range len(golf.Categories) + 1 {
		if p.change(in, k).Word != compare.Leaning {
			continue
		}
		name := "everything together"
		if k > 0 {
			name = golf.Category(k).String()
		}
		said = append(said, fmt.Sprintf("%s %s %s", name, words.Plain(math.Abs(p.Moved[k])), direction(p.Moved[k])))
	}
	if said == nil {
		return ""
	}
	said = said[:min(len(said), mostLeaning)]
	return " Leaning, but not certain: " + words.List(said) + "."
}

// clearCount says which count changed clearly, the first of them; empty when none
// did.
func (p Pair) clearCount(in ComparisonInput) string {
	all := p.counts(in)
	if len(all) == 0 || all[0].Word != words.Certainty(compare.Clear) {
		return ""
	}
	went := "fell"
	if all[0].up {
		went = "rose"
	}
	return fmt.Sprintf(" %s %s from %s to %s: that is clear.", all[0].Name, went, all[0].Before, all[0].Now)
}

// direction says which way strokes lost moved.
func direction(change float64) string {
	if change > 0 {
		return "worse"
	}
	return "better"
}

// mainPart is the part of the game that moved most the way of everything; none
// where everything hardly moved or no part carries a third of it.
func (p Pair) mainPart(in ComparisonInput) golf.Category {
	all := p.change(in, 0)
	if math.Abs(all.Mean) < .3 {
		return 0
	}
	share := func(part golf.Category) float64 { return p.change(in, int(part)).Mean / all.Mean }
	if main := golf.Most(share); share(main) > 1./3 {
		return main
	}
	return 0
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
func (p Pair) mainBand(in ComparisonInput, part golf.Category) string {
	whole := p.change(in, int(part)).Mean
	for k, row := range in.Sheet.Rows {
		if row.Category == part && row.Band != (account.Band{}) && p.change(in, k).Known && p.change(in, k).Mean/whole >= .6 {
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
