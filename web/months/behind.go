package months

import (
	"fmt"
	"math"

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
	Heading string // the figure and its span
	Lede    string // how many there are, and what they come to
	Back    string // address of the comparison
	Holes   bool   // the rows are whole holes, not shots
	Share   bool   // the figure is a share, so each row says whether it succeeded
	Rows    []BehindRow
	Cut     string // says that some are not shown; empty when all are
	Others  string // how many are not shown; empty when all are
	Rest    string // what those lost together, signed, two decimals
	Lost    string // what all lost together, so
}

// BehindRow is one shot or hole.
type BehindRow struct {
	Day    string
	Course string
	At     string // address of the shot or hole on its statement
	Place  string // hole, or hole and shot
	From   string // lie and distance of a shot; score and par of a hole
	Lost   string // strokes, signed, two decimals
	Of     figures.Voucher
	Hit    string // yes or no; shown where the figure is a share
}

// behindMost is how many shots or holes are listed at most.
const behindMost = 300

// NewBehindPage lists the shots or holes that a figure is made of.
func NewBehindPage(page layout.Page, in figures.ComparisonInput, b analysis.Behind) BehindPage {
	heading := fmt.Sprintf("Putts, %s, all these spans", figures.PuttLength(b.Length, in))
	if b.Span != nil {
		heading = fmt.Sprintf("%s, %s", figureName(in, b), figures.SpanName(in, b.Of.Column-1))
	}
	p := newBehind(page, in, heading, b.All)
	p.Holes, p.Share = b.Holes(), b.Share()
	switch {
	case p.Share && b.Measure == nil: // putts
		p.Lede = fmt.Sprintf("%d of %s holed. %s", b.Hits(), words.Plural(len(b.All), "putt", "putts"), puttsLost(figures.LostTogether(b.All)))
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
func figureName(in figures.ComparisonInput, b analysis.Behind) string {
	switch {
	case !b.IsLoss():
		return measureName(b.Of.Measure)
	case b.Row.Band.Category != 0:
		return words.Capital(b.Row.Category.String()) + ": " + words.Band(b.Row.Band, in.Units)
	case b.Row.Category != 0:
		return words.Capital(b.Row.Category.String())
	default:
		return "All shots"
	}
}

// measureName names a measure as its row does.
func measureName(measure string) string {
	for _, group := range figures.CountGroups {
		for _, count := range group.Counts {
			if count.Measure == measure {
				return count.Name
			}
		}
	}
	return shortPuttsName
}

// lossLede adds up what the shots lost or won back.
func lossLede(b analysis.Behind) string {
	shots, rounds, lost := words.Plural(len(b.All), "shot", "shots"), words.Plural(len(b.Span.Rounds), "round", "rounds"), figures.LostTogether(b.All)
	if lost < -.004 {
		return fmt.Sprintf("%s in %s won back %.2f strokes.", shots, rounds, -lost)
	}
	return fmt.Sprintf("%s in %s lost %.2f strokes.", shots, rounds, math.Abs(lost))
}

// puttsLost adds up what putts of a length lost or won back.
func puttsLost(lost float64) string {
	if lost > -.005 {
		return fmt.Sprintf("Strokes lost: %.2f.", math.Abs(lost))
	}
	return fmt.Sprintf("Strokes won back: %.2f.", -lost)
}

func newBehind(page layout.Page, in figures.ComparisonInput, heading string, all []compare.Behind) BehindPage {
	if !in.At.Own {
		heading = in.Name + ": " + heading
	}
	page.Title, page.Here = heading, layout.Here(in.At.Whose, paths.MyMonths)
	p := BehindPage{Page: page, Heading: heading, Back: in.At.Months()}
	p.Foot = fmt.Sprintf("Fixed golfer: strokes lost against %s. A round’s statement compares the same shot with the golfer who averages the target on that course, so its figure may differ.", figures.Against(in))
	p.Lost = words.Signed(figures.LostTogether(all), 2)
	if len(all) > behindMost {
		p.Cut = fmt.Sprintf("The costliest %d of %d.", behindMost, len(all))
		p.Others, p.Rest = fmt.Sprintf("The other %d", len(all)-behindMost), words.Signed(figures.LostTogether(all[behindMost:]), 2)
		all = all[:behindMost]
	}
	for _, b := range all {
		p.Rows = append(p.Rows, behindRow(in, b))
	}
	return p
}

func behindRow(in figures.ComparisonInput, b compare.Behind) BehindRow {
	hole := b.Round.Round.Holes[b.Hole]
	lost, working := figures.LostOn(b)
	r := BehindRow{Day: words.ShortDay(b.Round.Round.Date), Course: b.Round.Round.Course, Lost: words.Signed(lost, 2), Hit: "no"}
	if b.Hit {
		r.Hit = "yes"
	}
	shot := max(b.Shot, 0)
	r.At = in.At.Round(b.Round.ID) + paths.Shot(hole.Number, shot+1)
	r.Place = fmt.Sprintf("hole %d", hole.Number)
	r.Of.Working = working
	if b.Shot >= 0 {
		s := hole.Shots[b.Shot]
		r.Place += fmt.Sprintf(", shot %d", b.Shot+1)
		r.From = words.Capital(s.Lie.String()) + " " + words.Distance(s.Lie, s.Distance, in.Units)
	} else {
		r.From = fmt.Sprintf("%s on a par %d", words.Score(float64(b.Round.Account.Holes[b.Hole].Whole), hole.PickedUp), hole.Par)
	}
	r.Of.Name = r.Place
	return r
}

// columns is how many columns the list has.
func (p BehindPage) columns() string { return fmt.Sprint(4 + words.Tally(p.Share)) }

// beside is how many stand after what was lost.
func (p BehindPage) beside() string { return fmt.Sprint(2 + words.Tally(p.Share)) }
