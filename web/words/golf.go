package words

import (
	"fmt"
	"math"

	"strokeledger/analysis/account"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/form"
)

// Unit names a unit of length in full.
func Unit(u golf.Unit) string {
	if u == golf.Metres {
		return "Metres"
	}
	return "Yards"
}

// Span names a span, its years told where they differ.
func Span(s golf.Span, years bool) string {
	switch {
	case s.Last > 0 && s.Before:
		return "the " + Spelled(s.Last) + " before"
	case s.Last > 0:
		return "the last " + Spelled(s.Last)
	case s.From.IsZero() && s.To.IsZero():
		return "all rounds"
	case s.From.IsZero():
		return "up to " + ShortDay(s.To)
	case s.To.IsZero():
		return "from " + ShortDay(s.From)
	case s.IsYear():
		return fmt.Sprint(s.From.Year)
	case s.IsMonth() && !years:
		return s.From.Month.String()
	case s.IsMonth():
		return s.From.Time().Format("Jan 2006")
	default:
		return ShortDay(s.From) + " to " + ShortDay(s.To)
	}
}

// Level names a level: past the ends of the ladder in words.
func Level(l compare.Level) string {
	switch l.Past {
	case compare.Better:
		return fmt.Sprintf("better than %d", golf.MinTarget)
	case compare.Worse:
		return fmt.Sprintf("above %d", golf.MaxTarget)
	default:
		return fmt.Sprintf("%.0f", math.Round(l.Value))
	}
}

// LevelRange writes the 95% interval of a level.
func LevelRange(p compare.PlaysTo) string { return Level(p.Low) + " to " + Level(p.High) }

// OneIf is 1 when b holds and 0 otherwise, to count with.
func OneIf(b bool) int {
	if b {
		return 1
	}
	return 0
}

// PartName names a part of the game in a sentence.
func PartName(c golf.Category) string {
	if c == golf.TeeShots {
		return "game off the tee"
	}
	return c.String()
}

// GolfersGame says whose game a level is.
func GolfersGame(l compare.Level) string {
	if l.Past != compare.Within {
		return Level(l)
	}
	n := Level(l)
	article := "a"
	if n[0] == '8' {
		article = "an"
	}
	return article + " " + n + "’s"
}

// Distance writes a distance in the player's units. One that was typed in them is
// written as it was typed; a long one that comes from another unit has no
// decimals, since nobody reads tenths of a metre on a hole.
func Distance(lie golf.Lie, d golf.Distance, units form.Units) string {
	unit := units.Far
	if lie == golf.Green {
		unit = units.Green
	}
	x := unit.In(d)
	if tenths := x * 10; x >= 50 && math.Abs(tenths-math.Round(tenths)) > 1e-6 {
		x = math.Round(x)
	}
	return Plain(x) + " " + unit.String()
}

// TotalLength writes a sum of lengths: a whole number, in thousands.
func TotalLength(d golf.Distance, units form.Units) string {
	return Grouped(int(math.Round(units.Far.In(d)))) + " " + units.Far.String()
}

// Where names a part of the game as the place where strokes were lost.
func Where(c golf.Category) string {
	return map[golf.Category]string{golf.TeeShots: "off the tee", golf.Approach: "on the approach",
		golf.ShortGame: "in the short game", golf.Putting: "putting"}[c]
}

// Band names a band in the player's units.
func Band(b account.Band, units form.Units) string {
	if b.Category == golf.TeeShots {
		return fmt.Sprintf("Par %d", b.Par)
	}
	unit := units.Far
	if b.Category == golf.Putting {
		unit = units.Green
	}
	name := fmt.Sprintf("over %s %s", Plain(unit.In(b.Low)), unit)
	if b.High > 0 {
		name = fmt.Sprintf("%s to %s %s", Plain(unit.In(b.Low)), Plain(unit.In(b.High)), unit)
	}
	if b.Category == golf.ShortGame {
		return Capital(b.Lie.String()) + ", " + name
	}
	return Capital(name)
}
