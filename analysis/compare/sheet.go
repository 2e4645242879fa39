package compare

import (
	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/parallel"
	"strokeledger/analysis/stat"
)

// Row is a line of a sheet: everything, a part of the game, or one of its
// bands.
type Row struct {
	Category golf.Category // zero for everything
	Band     account.Band  // zero for everything and for a part of the game
}

// rowsOf lists the rows: everything, the four parts of the game at the number
// of their category, and every band.
func rowsOf(boundary golf.Distance) []Row {
	rows := []Row{{}}
	for _, c := range golf.Categories {
		rows = append(rows, Row{Category: c})
	}
	for _, b := range account.Bands(boundary) {
		rows = append(rows, Row{b.Category, b})
	}
	return rows
}

// Rows lists the rows of a sheet: everything, the four parts of the game, and every
// band.
func Rows(boundary golf.Distance) []Row { return rowsOf(boundary) }

// Sheet is some spans of a player's rounds beside each other.
type Sheet struct {
	Rows    []Row    // everything first, then the parts of the game, then the bands
	Columns []Column // one a span, in the order in which the spans were given
}

// Column is one span.
type Column struct {
	Span   golf.Span
	Rounds []*Judged // of the span, with a hole whose strokes are known, in the order of their days
	Detail float64   // holes of the span with their strokes known

	Cells    []Cell                    // strokes lost for 18 holes, by row of the sheet
	Measures []Cell                    // by the list of Measures
	PlaysTo  [golf.Putting + 1]PlaysTo // by category
	Short    Holed                     // putts of 6 ft and less
}

// Cell is a figure of a column with what it stands on.
type Cell struct {
	Figure
	Shots    int           // behind a loss; chances behind a share
	Change   Change        // from the nearest column before that has rounds
	Interval stat.Interval // of 95 %, see HasInterval
}

// Thin is why there is no interval; no note when there is one.
func (c *Cell) Thin() golf.Thin { return golf.Enough(golf.ThinInterval, c.N, minForInterval) }

// HasInterval reports whether there is an interval.
func (c *Cell) HasInterval() bool { return c.N >= minForInterval }

// Apart says how sure it is that the figure is not 0: clear where the interval of
// 95 % leaves it out, leaning where that of 80 % does (Student's t), chance
// otherwise; 0 with too few rounds for a word. Of the dearest of many figures it is a
// little too sure, since the dearest are chosen for being large.
func (c *Cell) Apart() Word {
	if c.N < minForWord {
		return 0
	}
	leaning, ok := c.Sample.Interval(1 - leaningAt)
	switch {
	case c.Interval.Low > 0 || c.Interval.High < 0:
		return Clear
	case ok && (leaning.Low > 0 || leaning.High < 0):
		return Leaning
	default:
		return Chance
	}
}

// NewSheet compares spans of rounds that stand in the order of their days. The
// ladder gives the level that each part plays to. The same seed gives the same intervals.
func NewSheet(rounds []*Judged, spans []golf.Span, boundary golf.Distance, ladder Ladder, seed uint64) Sheet {
	s := Sheet{Rows: rowsOf(boundary), Columns: make([]Column, len(spans))}
	parallel.Do(len(spans), func(i int) {
		s.Columns[i] = s.column(rounds, spans[i], boundary, ladder, seed)
	})
	for i := range s.Columns {
		if before := s.PlayedBefore(i); before >= 0 {
			s.Columns[i].changes(&s.Columns[before])
		}
	}
	return s
}

// PlayedBefore is the last column before column i that has rounds; -1 when there
// is none.
func (s *Sheet) PlayedBefore(i int) int {
	for i--; i >= 0; i-- {
		if len(s.Columns[i].Rounds) > 0 {
			return i
		}
	}
	return -1
}

// changes fills in what changed from another column.
func (c *Column) changes(from *Column) {
	for k := range c.Cells {
		c.Cells[k].Change = changeOf(from.Cells[k].Figure, c.Cells[k].Figure)
	}
	for k := range c.Measures {
		c.Measures[k].Change = changeOf(from.Measures[k].Figure, c.Measures[k].Figure)
	}
}

// column works out a span.
func (s *Sheet) column(rounds []*Judged, span golf.Span, boundary golf.Distance, ladder Ladder, seed uint64) Column {
	c := Column{Span: span}
	holes := c.choose(rounds)
	drawn := ladder.drawn.over(len(c.Rounds), seed)
	c.lost(len(s.Rows), drawn, holes)
	c.measure(drawn, holes)
	c.playsTo(boundary, ladder, seed)
	c.Short = holed(c.Rounds, 0, 6*golf.Foot)
	return c
}

// choose fills in the rounds of the span, and returns the holes of each.
func (c *Column) choose(rounds []*Judged) (holes []float64) {
	for i, r := range rounds {
		if c.Span.Holds(i, len(rounds), r.Round.Date) && r.Holes > 0 {
			c.Detail += r.Holes
			c.Rounds = append(c.Rounds, r)
			holes = append(holes, r.Holes)
		}
	}
	return holes
}

// lost fills in what was lost in each row.
func (c *Column) lost(rows int, drawn resampled, holes []float64) {
	values := make([]float64, len(c.Rounds))
	for row := range rows {
		shots := 0
		for i, r := range c.Rounds {
			values[i] = r.lost[row]
			shots += r.shots[row]
		}
		c.Cells = append(c.Cells, drawn.cell(perRound(values, holes, drawn), shots))
	}
}

// cell puts the interval to a figure that stands on so many shots or chances.
func (d resampled) cell(f Figure, shots int) Cell {
	c := Cell{Figure: f, Shots: shots}
	if c.HasInterval() {
		c.Interval = f.events.widened(f.Around(d.reach))
	}
	return c
}

// playsTo fills in the levels. With too few rounds for any it only counts, since
// profiles are slow to make.
func (c *Column) playsTo(boundary golf.Distance, ladder Ladder, seed uint64) {
	if len(c.Rounds) < MinRounds {
		for _, part := range golf.Categories {
			c.PlaysTo[part].Rounds = c.withStroke(part)
		}
		return
	}
	profiles := make([]Profile, len(c.Rounds))
	parallel.Do(len(c.Rounds), func(i int) { profiles[i] = ladder.Profile(c.Rounds[i].Round, boundary) })
	for _, part := range golf.Categories {
		c.PlaysTo[part] = ladder.PlaysTo(profiles, part, seed)
	}
}

// withStroke counts the rounds that have a stroke in a part of the game.
func (c *Column) withStroke(part golf.Category) int {
	n := 0
	for _, r := range c.Rounds {
		if r.shots[part] > 0 { // the rows of a sheet begin with everything and the parts
			n++
		}
	}
	return n
}
