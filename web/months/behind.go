package months

import (
	"fmt"

	"strokeledger/analysis/compare"
	"strokeledger/web/figures"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// BehindPage lists the shots or holes that a figure of a comparison is made of.
type BehindPage struct {
	layout.Page
	Heading string // the figure and its span
	Lede    string // how many there are, and what they come to
	Back    string // address of the comparison
	Holes   bool   // the rows are whole holes, not shots
	Share   bool   // the figure is a share, so each row says whether it succeeded
	Rows    []BehindRow
	Cut     string // says that some are not shown; empty when all are
}

// BehindRow is one shot or hole.
type BehindRow struct {
	Day    string
	Course string
	At     string // address of the shot or hole on its statement
	Place  string // hole, or hole and shot
	From   string // lie and distance of a shot; score and par of a hole
	Lost   string // strokes, signed, two decimals
	Hit    string // yes or no; shown where the figure is a share
}

// behindMost is how many shots or holes are listed at most.
const behindMost = 300

// NewBehindRow lists the shots of a row in column i, counted from 0.
func NewBehindRow(page layout.Page, in figures.ComparisonInput, i int, row compare.Row) BehindPage {
	c := &in.Sheet.Columns[i]
	name := "All shots"
	switch {
	case row.Band.Category != 0:
		name = words.Capital(row.Category.String()) + ": " + words.Band(row.Band, in.Units)
	case row.Category != 0:
		name = words.Capital(row.Category.String())
	}
	all := c.ShotsOf(row)
	p := newBehind(page, in, fmt.Sprintf("%s, %s", name, figures.SpanName(in, i)), all)
	lost := 0.0
	for _, b := range all {
		lost += b.Lost
	}
	p.Lede = fmt.Sprintf("%s in %s lost %s.", words.Plural(len(all), "shot", "shots"), words.Plural(len(c.Rounds), "round", "rounds"), words.StrokeCount(lost))
	if lost < -.05 {
		p.Lede = fmt.Sprintf("%s in %s won back %s.", words.Plural(len(all), "shot", "shots"), words.Plural(len(c.Rounds), "round", "rounds"), words.StrokeCount(-lost))
	}
	return p
}

// NewBehindMeasure lists the holes or putts behind a measure of column i, counted
// from 0.
func NewBehindMeasure(page layout.Page, in figures.ComparisonInput, i int, measure string, all []compare.Behind) BehindPage {
	name := shortPuttsName
	for _, table := range countTables {
		for _, row := range table.rows {
			if row[0] == measure {
				name = row[1]
			}
		}
	}
	p := newBehind(page, in, fmt.Sprintf("%s, %s", name, figures.SpanName(in, i)), all)
	k := compare.MeasureAt(measure)
	p.Holes, p.Share = k >= 0, k < 0 || compare.Measures[k].Share
	p.Lede = fmt.Sprintf("%s in %s.", words.Plural(len(all), "hole", "holes"), words.Plural(len(in.Sheet.Columns[i].Rounds), "round", "rounds"))
	if p.Share {
		p.Lede = hitsOf(all)
	}
	return p
}

// NewBehindPutts lists the putts of one range of lengths, from all spans.
func NewBehindPutts(page layout.Page, in figures.ComparisonInput, h compare.Holed) BehindPage {
	all := compare.PuttsBehind(in.Sheet.Columns, h)
	p := newBehind(page, in, fmt.Sprintf("Putts, %s, all these spans", figures.PuttLength(h, in)), all)
	p.Share, p.Lede = true, hitsOf(all)
	return p
}

// hitsOf says how many of the chances succeeded.
func hitsOf(all []compare.Behind) string {
	hits := 0
	for _, b := range all {
		if b.Hit {
			hits++
		}
	}
	return fmt.Sprintf("%d of %s.", hits, words.Plural(len(all), "chance", "chances"))
}

func newBehind(page layout.Page, in figures.ComparisonInput, heading string, all []compare.Behind) BehindPage {
	page.Title, page.Here = heading, layout.Here(in.At.Whose, paths.MyMonths)
	p := BehindPage{Page: page, Heading: heading, Back: in.At.Months()}
	p.Foot = fmt.Sprintf("Fixed golfer: strokes lost against %s. A round’s statement compares the same shot with the golfer who averages the target on that course, so its figure may differ.", figures.Against(in))
	if len(all) > behindMost {
		p.Cut = fmt.Sprintf("The costliest %d of %d.", behindMost, len(all))
		all = all[:behindMost]
	}
	for _, b := range all {
		p.Rows = append(p.Rows, behindRow(in, b))
	}
	return p
}

func behindRow(in figures.ComparisonInput, b compare.Behind) BehindRow {
	hole := b.Round.Round.Holes[b.Hole]
	r := BehindRow{Day: words.ShortDay(b.Round.Round.Date), Course: b.Round.Round.Course, Lost: words.Signed(b.Lost, 2), Hit: "no"}
	if b.Hit {
		r.Hit = "yes"
	}
	shot := max(b.Shot, 0)
	r.At = in.At.Round(b.Round.ID) + paths.Shot(hole.Number, shot+1)
	r.Place = fmt.Sprintf("hole %d", hole.Number)
	if b.Shot >= 0 {
		s := hole.Shots[b.Shot]
		r.Place += fmt.Sprintf(", shot %d", b.Shot+1)
		r.From = words.Capital(s.Lie.String()) + " " + words.Distance(s.Lie, s.Distance, in.Units)
		return r
	}
	r.From = fmt.Sprintf("%d on a par %d", hole.Strokes(), hole.Par)
	return r
}
