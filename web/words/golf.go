package words

import (
	"fmt"
	"math"

	"strokeledger/analysis/account"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/form"
)

// Unit names a unit of length of holes in full.
func Unit(u golf.Unit) string {
	switch u {
	case golf.Metres:
		return "Metres"
	case golf.Feet:
		return "Feet"
	}
	return "Yards"
}

// Span names a span in a sentence; years says that a month needs its year.
func Span(s golf.Span, years bool) string {
	switch {
	case s.Last > 0 && s.Before:
		return "the " + Spelled(s.Last) + " before"
	case s.Last == 1:
		return "the last round"
	case s.Last > 0:
		return "the last " + Spelled(s.Last) + " rounds"
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

// Level names a level as a whole score, or in words where it lies beyond the
// best or the worst golfer of the model.
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

// LevelRange writes the 95% interval of a level: 77 to 83.
func LevelRange(p compare.PlaysTo) string { return Level(p.Low) + " to " + Level(p.High) }

// PartName names a part of the game as something that a golfer has: game off the
// tee, approach, short game, putting.
func PartName(c golf.Category) string {
	if c == golf.TeeShots {
		return "game off the tee"
	}
	return c.String()
}

// Distance writes a distance in the player's unit for its lie. One that was typed
// in that unit is written as it was typed; one of 50 or more that was converted
// has no decimals, since nobody reads tenths of a metre on a hole.
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

// TotalLength writes the length of several holes: 6,012 yd.
func TotalLength(d golf.Distance, units form.Units) string {
	return Grouped(int(math.Round(units.Far.In(d)))) + " " + units.Far.String()
}

// Where names a part of the game as the place where strokes were lost: off the
// tee, on the approach, in the short game, putting.
func Where(c golf.Category) string {
	return map[golf.Category]string{golf.TeeShots: "off the tee", golf.Approach: "on the approach",
		golf.ShortGame: "in the short game", golf.Putting: "putting"}[c]
}

// Band names a band of shots by its distances in the player's units, with the lie
// in the short game; tee shots by the par of their hole.
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
