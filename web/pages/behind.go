package pages

import (
	"fmt"

	"strokeledger/analysis/compare"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// Behind lists the shots or holes that a figure of a comparison is made of.
type Behind struct {
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
func NewBehindRow(page layout.Page, q AskedMonths, i int, row compare.Row) Behind {
	c := &q.Sheet.Columns[i]
	name := "All shots"
	switch {
	case row.Band.Category != 0:
		name = capital(row.Category.String()) + ": " + bandName(row.Band, q.Units)
	case row.Category != 0:
		name = capital(row.Category.String())
	}
	all := c.ShotsOf(row)
	p := newBehind(page, q, fmt.Sprintf("%s, %s", name, spanName(q, i)), all)
	lost := 0.0
	for _, b := range all {
		lost += b.Lost
	}
	p.Lede = fmt.Sprintf("%s in %s lost %s.", plural(len(all), "shot", "shots"), plural(len(c.Rounds), "round", "rounds"), strokeCount(lost))
	if lost < -.05 {
		p.Lede = fmt.Sprintf("%s in %s won back %s.", plural(len(all), "shot", "shots"), plural(len(c.Rounds), "round", "rounds"), strokeCount(-lost))
	}
	return p
}

// NewBehindMeasure lists the holes or putts behind a measure of column i.
func NewBehindMeasure(page layout.Page, q AskedMonths, i int, measure string, all []compare.Behind) Behind {
	name := "Holed from six feet and in"
	for _, table := range countTables {
		for _, row := range table.rows {
			if row[0] == measure {
				name = row[1]
			}
		}
	}
	p := newBehind(page, q, fmt.Sprintf("%s, %s", name, spanName(q, i)), all)
	k := compare.MeasureAt(measure)
	p.Holes, p.Share = k >= 0, k < 0 || compare.Measures[k].Share
	p.Lede = fmt.Sprintf("%s in %s.", plural(len(all), "hole", "holes"), plural(len(q.Sheet.Columns[i].Rounds), "round", "rounds"))
	if p.Share {
		p.Lede = hitsOf(all)
	}
	return p
}

// NewBehindPutts lists the putts of a length of the putting curve.
func NewBehindPutts(page layout.Page, q AskedMonths, h compare.Holed) Behind {
	all := compare.PuttsBehind(q.Sheet.Columns, h)
	p := newBehind(page, q, fmt.Sprintf("Putts, %s, in all these spans", puttLength(h, q)), all)
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
	return fmt.Sprintf("%d of %s.", hits, plural(len(all), "chance", "chances"))
}

func newBehind(page layout.Page, q AskedMonths, heading string, all []compare.Behind) Behind {
	page.Title, page.Here = heading, here(q.At.Whose, paths.MyMonths)
	p := Behind{Page: page, Heading: heading, Back: q.At.Months()}
	p.Foot = fmt.Sprintf("Fixed golfer: strokes lost against %s. On the statement of a round the same shot is charged against the golfer of that course and target.", againstWhom(q))
	if len(all) > behindMost {
		p.Cut = fmt.Sprintf("The costliest %d of %d.", behindMost, len(all))
		all = all[:behindMost]
	}
	for _, b := range all {
		p.Rows = append(p.Rows, behindRow(q, b))
	}
	return p
}

func behindRow(q AskedMonths, b compare.Behind) BehindRow {
	hole := b.Round.Round.Holes[b.Hole]
	r := BehindRow{Day: shortDay(b.Round.Round.Date), Course: b.Round.Round.Course, Lost: signed(b.Lost, 2), Hit: "no"}
	if b.Hit {
		r.Hit = "yes"
	}
	shot := max(b.Shot, 0)
	r.At = q.At.Round(b.Round.ID) + paths.Shot(hole.Number, shot+1)
	r.Place = fmt.Sprintf("hole %d", hole.Number)
	if b.Shot >= 0 {
		s := hole.Shots[b.Shot]
		r.Place += fmt.Sprintf(", shot %d", b.Shot+1)
		r.From = capital(s.Lie.String()) + " " + far(s.Lie, s.Distance, q.Units)
		return r
	}
	r.From = fmt.Sprintf("%d on a par %d", hole.Strokes(), hole.Par)
	return r
}
