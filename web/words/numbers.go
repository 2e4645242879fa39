package words

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Percent writes a share from 0 to 1 as a whole percentage.
func Percent(x float64) string { return fmt.Sprintf("%.0f%%", math.Round(100*x)) }

// Points writes a change of a share.
func Points(x float64) string {
	text := Signed(100*x, 0)
	if strings.TrimLeft(text, "+"+Minus) == "1" {
		return text + " point"
	}
	return text + " points"
}

// OneDecimal writes a signed amount with one decimal.
func OneDecimal(x float64) string { return Signed(x, 1) }

// StrokeCount writes an amount of strokes with its unit.
func StrokeCount(x float64) string {
	text := Plain(x)
	if text == "1" {
		return text + " stroke"
	}
	return text + " strokes"
}

// Minus is the real minus sign.
const Minus = "−"

// Signed writes a loss with its sign and a real minus; nothing has none.
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

// Tick writes a value of an axis with as many decimals as it needs.
func Tick(x float64) string {
	if x == math.Trunc(x) {
		return Signed(x, 0)
	}
	return Signed(x, 1)
}

// Plain writes a number with one decimal at most.
func Plain(x float64) string { return strconv.FormatFloat(math.Round(x*10)/10, 'f', -1, 64) }

// Grouped writes a whole number that is not negative with its thousands apart.
func Grouped(n int) string {
	if n < 1000 {
		return strconv.Itoa(n)
	}
	return fmt.Sprintf("%s,%03d", Grouped(n/1000), n%1000)
}

// Plural writes a count with its noun.
func Plural(n int, one, many string) string { return strconv.Itoa(n) + " " + OneOrMany(n, one, many) }

// OneOrMany chooses the word that goes with a count.
func OneOrMany(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

// Spelled writes small numbers as words.
func Spelled(n int) string {
	words := []string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}
	if n >= 0 && n < len(words) {
		return words[n]
	}
	return strconv.Itoa(n)
}

// Strokes writes an amount as a golfer says it: whole numbers as words.
func Strokes(x float64) string {
	tenths := math.Round(x * 10)
	if whole := tenths / 10; whole == math.Trunc(whole) && whole <= 12 {
		return Spelled(int(whole))
	}
	return fmt.Sprintf("%.1f", tenths/10)
}
