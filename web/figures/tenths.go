package figures

import (
	"math"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
	"strokeledger/web/words"
)

// Whatever stands under each other on a page adds up as it is printed. A page
// rounds its total first, shares that out among its parts, and each part among
// what it is made of: Tenths is one step of that, from the total down.

// Tenths rounds parts to tenths of a stroke that add up to a total printed above
// or below them. None moves by a whole tenth.
func Tenths(parts []float64, total float64) []float64 {
	return shared(parts, .1, total)
}

// Hundredths does the same with two decimals.
func Hundredths(parts []float64, total float64) []float64 {
	return shared(parts, .01, total)
}

func shared(parts []float64, unit, total float64) []float64 {
	all := stat.RoundedTo(parts, unit, total)
	for i, x := range all {
		all[i] = math.Round(x/unit) * unit
	}
	return all
}

// Tenth rounds a total to what is printed of it.
func Tenth(total float64) float64 { return math.Round(total*10) / 10 }

// SharedOut says why an amount is not its working rounded to a tenth; empty where
// it is.
func SharedOut(working, printed float64) string {
	if math.Abs(working-printed) <= .0501 {
		return ""
	}
	return words.Signed(printed, 1) + " here, so that the tenths add up"
}

// WithNote adds a note to a working.
func WithNote(working, note string) string {
	if note == "" {
		return working
	}
	return working + "; " + note
}

// AccountLine is a line between the target of a round and its score.
type AccountLine struct {
	Name    string
	Part    golf.Category // 0 for a line that is no part of the game
	Printed float64       // strokes lost, in tenths
}

// Names of the lines that are no part of the game.
const (
	ScoreOnly  = "Score only"
	CourseLine = "Course"
	// PickedUpLine is what counting picked-up holes in whole strokes changed.
	PickedUpLine = "Picked up"
)

// AccountLines are the lines of a round, in tenths that add up from the printed
// target to the printed score: the parts of the game, and what is not known shot
// by shot where there is any. Every page that shows a round takes them from here,
// so that its amounts are the same everywhere.
func AccountLines(a account.Account) (target float64, lines []AccountLine) {
	var exact []float64
	for _, c := range golf.Categories {
		lines, exact = append(lines, AccountLine{Name: words.Capital(c.String()), Part: c}), append(exact, a.Lost.Of(c))
	}
	for _, extra := range []struct {
		name   string
		amount float64
	}{{ScoreOnly, a.Lost.Undetailed}, {PickedUpLine, a.Lost.PickedUp}, {CourseLine, a.Lost.Course}} {
		if math.Abs(extra.amount) > 1e-9 {
			lines, exact = append(lines, AccountLine{Name: extra.name}), append(exact, extra.amount)
		}
	}
	target = Tenth(a.Expected - a.Lost.Course)
	for i, tenths := range Tenths(exact, Tenth(a.Score)-target) {
		lines[i].Printed = tenths
	}
	return target, lines
}
