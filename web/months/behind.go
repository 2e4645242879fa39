package months

import (
	"fmt"

	"strokeledger/analysis"
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

// NewBehindPage lists what a figure is made of.
func NewBehindPage(page layout.Page, q figures.ComparisonInput, b analysis.Behind) BehindPage {
	heading := fmt.Sprintf("Putts, %s, in all these spans", figures.PuttLength(b.Length, q))
	if b.Span != nil {
		heading = fmt.Sprintf("%s, %s", figureName(q, b), figures.SpanName(q, b.Of.Column-1))
	}
	p := newBehind(page, q, heading, b.All)
	p.Holes, p.Share = b.Holes(), b.Share()
	switch {
	case p.Share:
		p.Lede = fmt.Sprintf("%d of %s.", b.Hits(), words.Plural(len(b.All), "chance", "chances"))
	case p.Holes:
		p.Lede = fmt.Sprintf("%s in %s.", words.Plural(len(b.All), "hole", "holes"), words.Plural(len(b.Span.Rounds), "round", "rounds"))
	default:
		p.Lede = lossLede(b)
	}
	return p
}

// figureName names a figure of a column.
func figureName(q figures.ComparisonInput, b analysis.Behind) string {
	switch {
	case !b.IsLoss():
		return measureName(b.Of.Measure)
	case b.Row.Band.Category != 0:
		return words.Capital(b.Row.Category.String()) + ": " + words.Band(b.Row.Band, q.Units)
	case b.Row.Category != 0:
		return words.Capital(b.Row.Category.String())
	default:
		return "All shots"
	}
}

// measureName names a measure as its row does.
func measureName(measure string) string {
	for _, table := range countTables {
		for _, row := range table.rows {
			if row[0] == measure {
				return row[1]
			}
		}
	}
	return shortPuttsName
}

func lossLede(b analysis.Behind) string {
	shots, rounds, lost := words.Plural(len(b.All), "shot", "shots"), words.Plural(len(b.Span.Rounds), "round", "rounds"), b.Lost()
	if lost < -.05 {
		return fmt.Sprintf("%s in %s won back %s.", shots, rounds, words.StrokeCount(-lost))
	}
	return fmt.Sprintf("%s in %s lost %s.", shots, rounds, words.StrokeCount(lost))
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
