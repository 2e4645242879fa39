package figures

import (
	"fmt"

	"github.com/a-h/templ"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/words"
)

// PartMonths is one part of the game in every span, the spans under each other on
// one axis.
type PartMonths struct {
	Name    string          // of the part, or All
	What    string          // what the figures are, to who listens
	Against string          // the two spans of the change: November against October
	Moved   string          // the change, signed; empty when not known
	Word    string          // clear or leaning; empty when it could be chance
	Axis    components.Axis // over the pictures
	Months  []MonthLine
	All     bool // it is all parts together
}

// mark says that a figure is added to those of all parts, or that it is their sum.
// Levels are not added up.
func (t PartMonths) mark(column string) templ.Attributes {
	switch {
	case t.What == playsTo:
		return nil
	case t.All:
		return templ.Attributes{"data-sum": "months-" + column}
	default:
		return templ.Attributes{"data-part": "months-" + column}
	}
}

// playsTo is what levels are.
const playsTo = "Plays to"

// MonthLine is one span of a part.
type MonthLine struct {
	Short  string // beside the picture: Aug
	Head   string // in full, to who listens: August, 6 rounds
	Figure string // or why there is none
	None   bool   // there is no figure
	Voucher
	Interval string // 95%; empty when not known
	Bar      MonthBar
	Reach    Reach // a level instead of the bar
	Older    bool  // it is not one of the two spans compared
	Now      bool  // the later of them
}

// NewPartMonths sets the parts of the game and all of them in every span.
func NewPartMonths(in ComparisonInput) []PartMonths {
	pair := NewPair(in)
	printed := make([][]float64, len(in.Sheet.Columns))
	for i := range printed {
		printed[i] = PrintedLosses(in.Sheet, i)
	}
	var all []PartMonths
	for _, k := range []int{int(golf.TeeShots), int(golf.Approach), int(golf.ShortGame), int(golf.Putting), 0} {
		t := PartMonths{Name: "All", What: "Strokes for 18 holes", All: k == 0, Axis: MonthAxis()}
		if k > 0 {
			t.Name = words.Capital(golf.Category(k).String())
		}
		if pair.Known {
			t.Against = fmt.Sprintf("%s against %s", words.Capital(ShortSpanName(in, pair.Now)), ShortSpanName(in, pair.Before))
			t.Moved, t.Word = words.Signed(pair.Moved[k], 1), Sure(pair.change(in, k).Word)
		}
		for i, c := range in.Sheet.Columns {
			line := newMonthLine(in, pair, i)
			line.Figure, line.None, line.Bar = "no rounds", true, EmptyMonthBar
			if cell := c.Cells[k]; cell.Known {
				line.Figure, line.None, line.Voucher = words.Signed(printed[i][k], 1), false, LossVoucher(in, i, k, printed[i][k])
				line.Bar = NewMonthBar(printed[i][k], cell)
			}
			if cell := c.Cells[k]; cell.HasInterval() {
				line.Interval = words.Signed(cell.Interval.Low, 1) + " to " + words.Signed(cell.Interval.High, 1)
			}
			t.Months = append(t.Months, line)
		}
		all = append(all, t)
	}
	return all
}

// NewLevelMonths sets what each part of the game plays to in every span.
func NewLevelMonths(in ComparisonInput) []PartMonths {
	pair := NewPair(in)
	var all []PartMonths
	for _, part := range golf.Categories {
		t := PartMonths{Name: words.Capital(part.String()), What: playsTo, Axis: LevelAxis()}
		for i, c := range in.Sheet.Columns {
			line := newMonthLine(in, pair, i)
			p := c.PlaysTo[part]
			line.Figure, line.None = "–", true
			if p.Known() {
				line.Figure, line.Interval, line.None = words.Level(p.Level), words.LevelRange(p), false
				line.Reach, line.Voucher = NewReach(p, in.Target), LevelVoucher(in, i, part)
			}
			t.Months = append(t.Months, line)
		}
		all = append(all, t)
	}
	return all
}

func newMonthLine(in ComparisonInput, pair Pair, column int) MonthLine {
	return MonthLine{Short: words.Capital(ShortSpanName(in, column)), Now: column == pair.Now, Older: column != pair.Now && column != pair.Before,
		Head: words.Capital(SpanName(in, column)) + ", " + words.Plural(len(in.Sheet.Columns[column].Rounds), "round", "rounds")}
}

// LevelsSaid says what every part plays to in the last span that has levels, and
// why a later span has none.
func LevelsSaid(in ComparisonInput) string {
	known := func(c compare.Column) bool {
		for _, part := range golf.Categories {
			if c.PlaysTo[part].Known() {
				return true
			}
		}
		return false
	}
	thin := ""
	for i := len(in.Sheet.Columns) - 1; i >= 0; i-- {
		c := in.Sheet.Columns[i]
		if !known(c) {
			if thin == "" && len(c.Rounds) > 0 {
				thin = fmt.Sprintf("%s: %s", words.Capital(SpanName(in, i)), words.Thin(c.PlaysTo[golf.TeeShots].Thin()))
			}
			continue
		}
		var said []string
		for _, part := range golf.Categories {
			if p := c.PlaysTo[part]; p.Known() {
				said = append(said, part.String()+" "+words.Level(p.Level))
			}
		}
		text := fmt.Sprintf("%s in %s", words.List(said), SpanName(in, i))
		if thin != "" {
			text += "; " + thin
		}
		return text
	}
	return thin
}
