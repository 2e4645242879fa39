package practice

import (
	"fmt"
	"math"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
	"strokeledger/web/components"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// CarryPart is a drill beside its part of the game on the course.
type CarryPart struct {
	Say      string   // whether it carries over
	Lines    []string // what changed in the drill and on the course
	Drill    CarryFigure
	Course   CarryFigure
	Months   []CarryMonthRow
	Sessions []CarrySessionRow // the latest first
	Moves    bool              // sessions say from where
	Counted  string            // over the shares
	Compare  string            // address of the same rounds in the months; empty without rounds on both sides
}

// CarryFigure is a picture with its caption.
type CarryFigure struct {
	Caption string
	Picture *components.Drawing
}

// CarryMonthRow is a month; what is not known is empty.
type CarryMonthRow struct{ Month, Share, Between, Tries, Level, LevelBetween, Rounds string }

// CarrySessionRow is a session; its level is empty where it is not sure enough.
type CarrySessionRow struct{ Day, From, Share, Between, Level, LevelBetween string }

// newCarry sets a drill beside the course; nil with too few sessions.
func newCarry(in DrillInput) *CarryPart {
	c := in.Carry
	if !c.Enough {
		return nil
	}
	p := &CarryPart{Say: carrySay(&c), Lines: []string{in.carryDrill(), in.carryCourse()}, Moves: in.MaxFeet > 0, Counted: words.Capital(made(in.DrillFor)) + " of 100"}
	if in.carryMoved() {
		p.Lines = append(p.Lines, "Not all sessions were from the same distance. How sure the drill’s change is goes by what one golfer would reach from each, so that stepping back is no loss.")
	}
	p.Lines = append(p.Lines, "That both move together does not prove that one caused the other.")
	p.Drill = CarryFigure{fmt.Sprintf("%s: %s of 100, by session", in.DrillFor.Name, made(in.DrillFor)), in.carrySessions()}
	p.Course = CarryFigure{words.Capital(c.Part.String()) + " on the course: plays to, by month", in.carryMonths()}
	for _, m := range c.Months {
		p.Months = append(p.Months, carryMonthRow(m))
	}
	for i := len(c.Sessions) - 1; i >= 0 && len(p.Sessions) < mostRows; i-- {
		p.Sessions = append(p.Sessions, carrySessionRow(c.Sessions[i]))
	}
	if c.Course.Known {
		spans := []golf.Span{{From: c.From, To: c.Until}, {From: c.Until.AddDays(1)}}
		p.Compare = paths.Comparison{Whose: in.Whose, Comparison: golf.Comparison{Spans: spans}}.Months()
	}
	return p
}

// carrySay says whether a drill carries over.
func carrySay(c *analysis.Carry) string {
	drill, course := c.Moves()
	if drill == course && (c.Drill.Word == 0) == (c.Course.Word == 0) {
		switch {
		case drill == compare.Better:
			return "Both are better: the drill, and play on the course."
		case drill == compare.Worse:
			return "Both are worse: the drill, and play on the course."
		case c.Drill.Word == 0:
			return "It is too early to say."
		default:
			return "No clear change yet, in the drill or on the course."
		}
	}
	second := carrySide("the course", course, c.Course.Word)
	if drill == compare.Better && course == compare.Within && c.Course.Word != 0 {
		second = "the course does not show it yet"
	}
	return words.Capital(carrySide("the drill", drill, c.Drill.Word)) + "; " + second + "."
}

// carrySide says which way the drill or the course went.
func carrySide(what string, way compare.Past, word compare.Word) string {
	switch {
	case word == 0:
		return "for " + what + " it is too early to say"
	case way == compare.Better:
		return strings.Replace(what, "the course", "play on the course", 1) + " is better"
	case way == compare.Worse:
		return strings.Replace(what, "the course", "play on the course", 1) + " is worse"
	default:
		return what + " shows no clear change"
	}
}

// carryMoved reports whether the sessions were from different distances.
func (in DrillInput) carryMoved() bool {
	for _, s := range in.Carry.Sessions {
		if s.Feet != in.Carry.Sessions[0].Feet {
			return true
		}
	}
	return false
}

// carryDrill says what changed in the drill.
func (in DrillInput) carryDrill() string {
	c := in.Carry
	text := fmt.Sprintf("Drill: %s %s of 100 in the first %s sessions, up to %s, and %s in the %s since", made(in.DrillFor), carryShare(c.Halves[0].Share), words.Spelled(c.Halves[0].Sessions),
		words.ShortDay(c.Until), carryShare(c.Halves[1].Share), words.Spelled(c.Halves[1].Sessions))
	if c.Drill.Thin.Any() {
		return fmt.Sprintf("%s. It takes %s sessions in each to say how sure that is.", text, words.Spelled(c.Drill.Thin.Need))
	}
	return text + carryWord(c.Drill)
}

// carryCourse says what changed on the course.
func (in DrillInput) carryCourse() string {
	c := in.Carry
	before, since := c.Halves[0], c.Halves[1]
	if !c.Course.Known {
		return fmt.Sprintf("Course: %s up to %s and %s since. It takes rounds on both sides to compare.", words.SpelledPlural(before.Rounds, "round", "rounds"), words.ShortDay(c.Until), words.SpelledPlural(since.Rounds, "round", "rounds"))
	}
	way := "more"
	if c.Course.Mean < 0 {
		way = "fewer"
	}
	text := fmt.Sprintf("Course, %s: %s %s strokes lost for 18 holes in %s since %s than in %s up to it", c.Part, tenth(math.Abs(c.Course.Mean)), way,
		words.SpelledPlural(since.Rounds, "round", "rounds"), words.ShortDay(c.Until), words.SpelledPlural(before.Rounds, "round", "rounds"))
	if before.PlaysTo.Known() && since.PlaysTo.Known() {
		text += fmt.Sprintf("; it played to %s (%s), and now to %s (%s)", words.Level(before.PlaysTo.Level), words.LevelRange(before.PlaysTo), words.Level(since.PlaysTo.Level), words.LevelRange(since.PlaysTo))
	}
	if c.Course.Thin.Any() {
		return text + ". " + words.Capital(words.Thin(c.Course.Thin)) + "."
	}
	return text + carryWord(c.Course)
}

// carryWord ends a sentence with how sure a change is.
func carryWord(c compare.Change) string {
	if c.Word == 0 {
		return "."
	}
	return ": " + words.Certainty(c.Word) + "."
}

// carryShare is a share of tries with where it lies.
func carryShare(c compare.Cell) string {
	return fmt.Sprintf("%s (%s)", hundred(c.Mean), hundreds(c.Interval))
}

func hundred(share float64) string { return fmt.Sprintf("%.0f", math.Round(100*share)) }

func hundreds(i stat.Interval) string { return hundred(i.Low) + " to " + hundred(i.High) }

func carryMonthRow(m analysis.CarryMonth) CarryMonthRow {
	row := CarryMonthRow{Month: words.Span(m.Span, true), Tries: fmt.Sprint(m.Of), Rounds: fmt.Sprint(m.Rounds)}
	if m.Of > 0 {
		row.Share, row.Between = hundred(float64(m.Counted)/float64(m.Of)), hundreds(compare.ShareOf(m.Counted, m.Of))
	}
	if m.PlaysTo.Known() {
		row.Level, row.LevelBetween = words.Level(m.PlaysTo.Level), words.LevelRange(m.PlaysTo)
	}
	return row
}

func carrySessionRow(s analysis.CarrySession) CarrySessionRow {
	counted, of := s.Made()
	row := CarrySessionRow{Day: words.ShortDay(s.Day), Share: hundred(float64(counted) / float64(of)), Between: hundreds(s.Share)}
	if s.Feet > 0 {
		row.From = words.Plain(s.Feet) + " ft"
	}
	if s.Read.Tells() {
		row.Level, row.LevelBetween = words.Plain(math.Round(s.Read.Level)), fmt.Sprintf("%s to %s", words.Plain(s.Read.Interval.Low), words.Plain(s.Read.Interval.High))
	}
	return row
}
