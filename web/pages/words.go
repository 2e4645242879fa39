// Package pages decides what each page says: wording, signs, units, links and
// what stands where there is nothing yet. Every page is a struct made by a pure
// function, and a template with only ifs and loops.
package pages

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

const minus = "−"

// signed writes a loss with its sign and a real minus; nothing has none.
func signed(x float64, decimals int) string {
	text := strconv.FormatFloat(math.Abs(x), 'f', decimals, 64)
	switch {
	case strings.Trim(text, "0.") == "":
		return text
	case x < 0:
		return minus + text
	default:
		return "+" + text
	}
}

// tick writes a value of an axis with as many decimals as it needs.
func tick(x float64) string {
	if x == math.Trunc(x) {
		return signed(x, 0)
	}
	return signed(x, 1)
}

func plain(x float64) string { return strconv.FormatFloat(math.Round(x*10)/10, 'f', -1, 64) }

// here is the entry of the navigation of a player's page; for a coach it is
// always the coach's.
func here(whose paths.Whose, own string) string {
	if whose.Own {
		return own
	}
	return paths.Coaching
}

// far writes a distance in the player's units. One that was typed in them is
// written as it was typed; a long one that comes from another unit has no
// decimals, since nobody reads tenths of a metre on a hole.
func far(lie golf.Lie, d golf.Distance, units form.Units) string {
	unit := units.Far
	if lie == golf.Green {
		unit = units.Green
	}
	x := unit.In(d)
	if tenths := x * 10; x >= 50 && math.Abs(tenths-math.Round(tenths)) > 1e-6 {
		x = math.Round(x)
	}
	return plain(x) + " " + unit.String()
}

// sum writes a sum of lengths: a whole number, in thousands.
func sum(d golf.Distance, units form.Units) string {
	return grouped(int(math.Round(units.Far.In(d)))) + " " + units.Far.String()
}

// grouped writes a whole number that is not negative with its thousands apart.
func grouped(n int) string {
	if n < 1000 {
		return strconv.Itoa(n)
	}
	return fmt.Sprintf("%s,%03d", grouped(n/1000), n%1000)
}

// capital writes a word with a capital letter.
func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

func plural(n int, one, many string) string { return strconv.Itoa(n) + " " + word(n, one, many) }

func word(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return many
}

// spelled writes small numbers as words.
func spelled(n int) string {
	words := []string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}
	if n >= 0 && n < len(words) {
		return words[n]
	}
	return strconv.Itoa(n)
}

// where names a part of the game as the place where strokes were lost.
func where(c golf.Category) string {
	return map[golf.Category]string{golf.TeeShots: "off the tee", golf.Approach: "on the approach",
		golf.ShortGame: "in the short game", golf.Putting: "putting"}[c]
}

// bandName names a band in the player's units.
func bandName(b account.Band, units form.Units) string {
	if b.Category == golf.TeeShots {
		return fmt.Sprintf("Par %d", b.Par)
	}
	unit := units.Far
	if b.Category == golf.Putting {
		unit = units.Green
	}
	name := fmt.Sprintf("over %s %s", plain(unit.In(b.Low)), unit)
	if b.High > 0 {
		name = fmt.Sprintf("%s to %s %s", plain(unit.In(b.Low)), plain(unit.In(b.High)), unit)
	}
	if b.Category == golf.ShortGame {
		return capital(b.Lie.String()) + ", " + name
	}
	return capital(name)
}

// lede says the round in a sentence, with the losses as the account prints them.
func lede(q Asked, printed map[golf.Category]float64) string {
	a := q.Account
	target := "your " + plain(q.Target)
	if q.Of != "" {
		target = "the target of " + plain(q.Target)
	}
	over := fmt.Sprintf("%s over %s", capital(strokes(a.Lost.Total)), target)
	switch {
	case a.Lost.Total < -.05:
		over = fmt.Sprintf("%s under %s", capital(strokes(-a.Lost.Total)), target)
	case a.Lost.Total < .05:
		over = "Level with " + target
	}
	if n := len(a.Holes); n < 18 {
		over += fmt.Sprintf(" on %s %s", spelled(n), word(n, "hole", "holes"))
	}
	worst := golf.TeeShots
	for _, c := range golf.Categories {
		if a.Lost.Of(c) > a.Lost.Of(worst) {
			worst = c
		}
	}
	text := over
	if printed[worst] >= .3 {
		text += fmt.Sprintf(": %s lost %s", strokes(printed[worst]), where(worst))
	} else {
		text += ": no part of the game lost much"
	}
	switch n, compound := len(a.Doubles), a.Counts.Compound; {
	case n == 0:
	case n == compound:
		text += fmt.Sprintf(", and %s compound %s", spelled(n), word(n, "double", "doubles"))
	case compound == 0:
		text += fmt.Sprintf(", and %s %s", spelled(n), word(n, "double", "doubles"))
	default:
		text += fmt.Sprintf(", and %s doubles, %s of them compound", spelled(n), spelled(compound))
	}
	return text + "."
}

// strokes writes an amount as a golfer says it: whole numbers as words.
func strokes(x float64) string {
	tenths := math.Round(x * 10)
	if whole := tenths / 10; whole == math.Trunc(whole) && whole <= 12 {
		return spelled(int(whole))
	}
	return fmt.Sprintf("%.1f", tenths/10)
}

// joined puts parts that are not empty behind each other.
func joined(parts ...string) string {
	var kept []string
	for _, p := range parts {
		if p != "" {
			kept = append(kept, p)
		}
	}
	return strings.Join(kept, ", ")
}
