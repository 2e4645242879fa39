package pages

import (
	"fmt"
	"math"

	"strokeledger/analysis/account"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/chart"
	"strokeledger/web/components"
)

// MonthTable is rows with a cell for each span.
type MonthTable struct {
	Caption string
	Kind    string // what a row is
	Heads   []MonthHead
	Since   string
	Axis    components.Axis
	Rows    []MonthRow
	Foot    []MonthRow
}

// MonthHead heads the column of a span.
type MonthHead struct{ Name, Rounds string }

// MonthRow is one row, with its bands.
type MonthRow struct {
	Name  string
	At    string // address of whom it is about, empty for nobody
	Cells []MonthCell
	Since ChangeWords
	Bands []MonthRow
}

// MonthCell is a figure of one span.
type MonthCell struct {
	Head     string // the span, where cells stand under each other
	Figure   string
	None     bool   // the figure says that there is none
	At       string // address of what is behind it; empty for nothing
	Interval string
	Behind   string // how many shots
	Change   ChangeWords
	Bar      chart.Bar
	Whisker  chart.Whisker
	Reach    Reach
}

// Reach is a level with its interval on a line of levels.
type Reach struct {
	Known             bool
	X, X1, X2, Target string
	HasTarget         bool
}

// ChangeWords is a change and how sure it is.
type ChangeWords struct{ Figure, Word, Class string }

func changeWords(c compare.Change, write func(float64) string) ChangeWords {
	if !c.Known {
		return ChangeWords{}
	}
	return ChangeWords{write(c.Mean), c.Word.String(), [...]string{"", "v1", "v2", "v3"}[c.Word]}
}

func oneDecimal(x float64) string { return signed(x, 1) }

func (m *Months) heads(q AskedMonths) []MonthHead {
	var heads []MonthHead
	for i, c := range q.Sheet.Columns {
		heads = append(heads, MonthHead{capital(spanName(q, i)), plural(len(c.Rounds), "round", "rounds")})
	}
	return heads
}

// monthTicks is how many figures the axis of a narrow column has.
const monthTicks = 3

// parts is the table of strokes lost.
func (m *Months) parts(q AskedMonths) MonthTable {
	scale := monthScale(q.Sheet)
	t := MonthTable{Caption: "Strokes lost for 18 holes against " + m.Against + ", with the interval of 95 %; every column on the same scale",
		Kind: "Part", Heads: m.heads(q), Since: m.Since, Axis: components.NewAxis(scale, tick)}
	for k, row := range q.Sheet.Rows {
		name := ""
		switch {
		case row.Category == 0:
			t.Foot = []MonthRow{m.lossRow(q, k, "All", scale)}
			continue
		case row.Band == (account.Band{}):
			name = capital(row.Category.String())
		default:
			name = bandName(row.Band, q.Units)
			if !anyShots(q.Sheet, k) {
				continue
			}
		}
		made := m.lossRow(q, k, name, scale)
		if row.Band == (account.Band{}) {
			t.Rows = append(t.Rows, made)
			continue
		}
		part := &t.Rows[row.Category-golf.TeeShots]
		part.Bands = append(part.Bands, made)
	}
	return t
}

func anyShots(s compare.Sheet, row int) bool {
	for _, c := range s.Columns {
		if c.Cells[row].Shots > 0 {
			return true
		}
	}
	return false
}

func (m *Months) lossRow(q AskedMonths, k int, name string, scale chart.Scale) MonthRow {
	r := MonthRow{Name: name}
	for i, c := range q.Sheet.Columns {
		cell := c.Cells[k]
		made := MonthCell{Head: capital(spanName(q, i)), Bar: emptyBar, Figure: "no round", None: true}
		if cell.Known {
			made.Figure, made.Bar, made.None = signed(cell.Mean, 1), scale.Bar(cell.Mean), false
			made.Behind = plural(cell.Shots, "shot", "shots")
			if cell.Shots > 0 {
				made.At = q.At.BehindRow(i+1, q.Sheet.Rows[k].String())
			}
			made.Change = changeWords(cell.Change, oneDecimal)
		}
		if cell.HasInterval {
			made.Interval = signed(cell.Interval.Low, 1) + " to " + signed(cell.Interval.High, 1)
			made.Whisker = scale.Whisker(cell.Mean, cell.Interval.Low, cell.Interval.High)
		}
		r.Cells = append(r.Cells, made)
		r.Since = changeWords(cell.Since, oneDecimal)
	}
	return r
}

// whiskerRoom is how far beyond the bars the scale goes for their whiskers, in
// strokes; an interval of two rounds would make every bar a speck.
const whiskerRoom = 4

// monthScale is the one scale of every column.
func monthScale(s compare.Sheet) chart.Scale {
	var values, ends []float64
	for _, c := range s.Columns {
		for k, cell := range c.Cells {
			if k == 0 || !cell.Known {
				continue // the sum stands without a bar
			}
			values = append(values, cell.Mean)
			if cell.HasInterval {
				ends = append(ends, cell.Interval.Low, cell.Interval.High)
			}
		}
	}
	low, high := 0.0, 0.0
	for _, v := range values {
		low, high = min(low, v), max(high, v)
	}
	for _, e := range ends {
		values = append(values, max(low-whiskerRoom, min(high+whiskerRoom, e)))
	}
	return chart.NewScale(values...).Fewer(monthTicks)
}

// plays is the table of levels that each part plays to.
func (m *Months) plays(q AskedMonths) MonthTable {
	t := MonthTable{Caption: fmt.Sprintf("The level at which a part of the game loses nothing on average, with the interval of 95 %%; from %d rounds on", compare.MinRounds),
		Kind: "Part", Heads: m.heads(q)}
	for _, part := range golf.Categories {
		r := MonthRow{Name: capital(part.String())}
		for i, c := range q.Sheet.Columns {
			cell := MonthCell{Head: capital(spanName(q, i)), Figure: "too few rounds", None: true}
			if c.Plays[part] {
				p := c.PlaysTo[part]
				cell.Figure, cell.Interval, cell.None = levelName(p.Level), levelRange(p), false
				cell.Reach, cell.At = reachOf(p, q.Target), q.At.BehindRow(i+1, part.String())
			}
			r.Cells = append(r.Cells, cell)
		}
		t.Rows = append(t.Rows, r)
	}
	return t
}

// levelScale holds every level.
var levelScale = chart.Range{Low: 66, High: 112, Step: 10}

func reachOf(p compare.PlaysTo, target float64) Reach {
	return Reach{Known: true, X: levelScale.Across(p.Level.Value), X1: levelScale.Across(p.Low.Value), X2: levelScale.Across(p.High.Value),
		HasTarget: target > 0, Target: levelScale.Across(target)}
}

// levelName names a level: past the ends of the ladder in words.
func levelName(l compare.Level) string {
	switch l.Past {
	case compare.Better:
		return "better than 68"
	case compare.Worse:
		return "above 110"
	default:
		return fmt.Sprintf("%.0f", math.Round(l.Value))
	}
}

func levelRange(p compare.PlaysTo) string { return levelName(p.Low) + " to " + levelName(p.High) }
