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
	Heading string
	Lede    string
	Back    string
	Holes   bool // whole holes, not shots
	Share   bool // some of them count as a success
	Rows    []BehindRow
	Cut     string // that some are not shown
}

// BehindRow is one shot or hole.
type BehindRow struct{ Day, Course, At, Place, From, Lost, Hit string }

// behindMost is how many are listed.
const behindMost = 300

// NewBehindRow lists the shots of a row of column i.
func NewBehindRow(page layout.Page, q figures.ComparisonInput, i int, row compare.Row) BehindPage {
	c := &q.Sheet.Columns[i]
	name := "All shots"
	switch {
	case row.Band.Category != 0:
		name = words.Capital(row.Category.String()) + ": " + words.Band(row.Band, q.Units)
	case row.Category != 0:
		name = words.Capital(row.Category.String())
	}
	all := c.ShotsOf(row)
	p := newBehind(page, q, fmt.Sprintf("%s, %s", name, figures.SpanName(q, i)), all)
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

// NewBehindMeasure lists the holes or putts behind a measure of column i.
func NewBehindMeasure(page layout.Page, q figures.ComparisonInput, i int, measure string, all []compare.Behind) BehindPage {
	name := "Holed from six feet and in"
	for _, table := range countTables {
		for _, row := range table.rows {
			if row[0] == measure {
				name = row[1]
			}
		}
	}
	p := newBehind(page, q, fmt.Sprintf("%s, %s", name, figures.SpanName(q, i)), all)
	k := compare.MeasureAt(measure)
	p.Holes, p.Share = k >= 0, k < 0 || compare.Measures[k].Share
	p.Lede = fmt.Sprintf("%s in %s.", words.Plural(len(all), "hole", "holes"), words.Plural(len(q.Sheet.Columns[i].Rounds), "round", "rounds"))
	if p.Share {
		p.Lede = hitsOf(all)
	}
	return p
}

// NewBehindPutts lists the putts of a length of the putting curve.
func NewBehindPutts(page layout.Page, q figures.ComparisonInput, h compare.Holed) BehindPage {
	all := compare.PuttsBehind(q.Sheet.Columns, h)
	p := newBehind(page, q, fmt.Sprintf("Putts, %s, in all these spans", figures.PuttLength(h, q)), all)
	p.Share, p.Lede = true, hitsOf(all)
	return p
}

func hitsOf(all []compare.Behind) string {
	hits := 0
	for _, b := range all {
		if b.Hit {
			hits++
		}
	}
	return fmt.Sprintf("%d of %s.", hits, words.Plural(len(all), "chance", "chances"))
}

func newBehind(page layout.Page, q figures.ComparisonInput, heading string, all []compare.Behind) BehindPage {
	page.Title, page.Here = heading, layout.Here(q.At.Whose, paths.MyMonths)
	p := BehindPage{Page: page, Heading: heading, Back: q.At.Months()}
	p.Foot = fmt.Sprintf("Fixed golfer: strokes lost against %s. On the statement of a round the same shot is charged against the golfer of that course and target.", figures.Against(q))
	if len(all) > behindMost {
		p.Cut = fmt.Sprintf("The costliest %d of %d.", behindMost, len(all))
		all = all[:behindMost]
	}
	for _, b := range all {
		p.Rows = append(p.Rows, behindRow(q, b))
	}
	return p
}

func behindRow(q figures.ComparisonInput, b compare.Behind) BehindRow {
	hole := b.Round.Round.Holes[b.Hole]
	r := BehindRow{Day: words.ShortDay(b.Round.Round.Date), Course: b.Round.Round.Course, Lost: words.Signed(b.Lost, 2), Hit: "no"}
	if b.Hit {
		r.Hit = "yes"
	}
	shot := max(b.Shot, 0)
	r.At = q.At.Round(b.Round.ID) + paths.Shot(hole.Number, shot+1)
	r.Place = fmt.Sprintf("hole %d", hole.Number)
	if b.Shot >= 0 {
		s := hole.Shots[b.Shot]
		r.Place += fmt.Sprintf(", shot %d", b.Shot+1)
		r.From = words.Capital(s.Lie.String()) + " " + words.Distance(s.Lie, s.Distance, q.Units)
		return r
	}
	r.From = fmt.Sprintf("%d on a par %d", hole.Strokes(), hole.Par)
	return r
}
