package words

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Percent writes a share from 0 to 1 as a whole percentage.
func Percent(x float64) string { return fmt.Sprintf("%.0f%%", math.Round(100*x)) }

// Points writes a change of a share, from -1 to 1, in signed percentage points.
func Points(x float64) string {
	text := Signed(100*x, 0)
	if strings.TrimLeft(text, "+"+Minus) == "1" {
		return text + " point"
	}
	return text + " points"
}

// OneDecimal writes a change with its sign and one decimal: +1.2, −0.4, 0.0.
func OneDecimal(x float64) string { return Signed(x, 1) }

// StrokeCount writes an amount of strokes with its unit: 1 stroke, 0.4 strokes.
func StrokeCount(x float64) string {
	text := Plain(x)
	if text == "1" {
		return text + " stroke"
	}
	return text + " strokes"
}

// Minus is the minus sign of print, which is as wide as a plus.
const Minus = "−"

// Signed writes an amount with its sign and a fixed number of decimals. What
// rounds to zero has no sign.
func Signed(x float64, decimals int) string {
	text := strconv.FormatFloat(math.Abs(x), 'f', decimals, 64)
	switch {
	case strings.Trim(text, "0.") == "":
		return text
	case x < 0:
		return Minus + text
	default:
		return "+" + text
	}
}

// Tick writes a value beside an axis, with its sign and at most one decimal.
func Tick(x float64) string {
	if x == math.Trunc(x) {
		return Signed(x, 0)
	}
	return Signed(x, 1)
}

// Plain writes a number with at most one decimal: 79, 79.5. What rounds to zero
// has no sign.
func Plain(x float64) string {
	return strconv.FormatFloat(math.Round(x*10)/10+0, 'f', -1, 64) // + 0 takes the sign off a negative zero
}

// Grouped writes a whole number, 0 or more, with commas between thousands.
func Grouped(n int) string {
	if n < 1000 {
		return strconv.Itoa(n)
	}
	return fmt.Sprintf("%s,%03d", Grouped(n/1000), n%1000)
}

// Plural writes a count in figures with its noun: 1 hole, 18 holes.
func Plural(n int, one, many string) string { return strconv.Itoa(n) + " " + OneOrMany(n, one, many) }

// Tally is 1 when something holds and 0 otherwise, to count it or to sort by it.
func Tally(holds bool) int {
	if holds {
		return 1
	}
	return 0
}

// SpelledPlural writes a count with its noun, small counts as words: one hole,
// no holes, 18 holes.
func SpelledPlural(n int, one, many string) string {
	return Spelled(n) + " " + OneOrMany(n, one, many)
}

// OneOrMany chooses the word that goes with a count.
func OneOrMany(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

// Spelled writes 0 to 12 as words, with no for 0, and other numbers in figures.
func Spelled(n int) string {
	words := []string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}
	if n >= 0 && n < len(words) {
		return words[n]
	}
	return strconv.Itoa(n)
}

// teens are 13 to 20 as words.
var teens = []string{"thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen", "twenty"}

// SpelledAmount writes an amount of 0 or more as a golfer says it: whole numbers
// up to 20 as words and above without decimals, others with one decimal.
func SpelledAmount(x float64) string {
	tenths := math.Round(x * 10)
	whole := tenths / 10
	switch n := int(whole) - 13; {
	case whole != math.Trunc(whole):
		return fmt.Sprintf("%.1f", whole)
	case n >= 0 && n < len(teens):
		return teens[n]
	default:
		return Spelled(int(whole))
	}
}

// Score writes a score in whole strokes, in brackets when a hole of it was picked up.
func Score(strokes float64, pickedUp bool) string {
	text := strconv.FormatFloat(math.Round(strokes), 'f', 0, 64)
	if pickedUp {
		return "(" + text + ")"
	}
	return text
}

// OnHoles says over how many holes a score is, after it; empty for 18.
func OnHoles(n int) string {
	if n == 18 {
		return ""
	}
	return " on " + Plural(n, "hole", "holes")
}

// A writes a number with its indefinite article, as it is read aloud: a 79, an
// 84, an 18, a 180.
func A(x float64) string { return Article(Plain(x)) + " " + Plain(x) }

// Article is the indefinite article of a number written in figures: an before
// eight, eleven, eighteen, eighty and eight hundred.
func Article(number string) string {
	whole, _, _ := strings.Cut(number, ".")
	first, _, _ := strings.Cut(whole, ",") // of thousands, the group that is read first
	if strings.HasPrefix(first, "8") || first == "11" || first == "18" {
		return "an"
	}
	return "a"
}
