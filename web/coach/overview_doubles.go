package coach

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/chart"
	"strokeledger/web/words"
)

// DoublesPart are the doubles of the last rounds together.
type DoublesPart struct {
	Say    string
	Began  []BeganRow  // where they began, the most first; none without a double
	All    string      // how many there are
	Nines  [2][]OnHole // how many on which hole
	Clubs  string      // what was in hand; empty where no club was entered
	Months string      // address of the holes behind them
}

// BeganRow is a part of the game in which doubles began.
type BeganRow struct {
	Name  string
	Bar   string // how long, percent
	Count string
}

// OnHole is how many doubles there were on a hole.
type OnHole struct{ Hole, Count string } // no count for none

func newDoublesPart(in OverviewInput) DoublesPart {
	d := in.Overview.Doubles
	p := DoublesPart{All: strconv.Itoa(d.All)}
	over := words.SpelledPlural(d.Rounds, "round", "rounds")
	if d.All == 0 {
		p.Say = "No doubles in " + over + "."
		return p
	}
	var kinds []string
	for _, k := range account.Kinds {
		if n := d.Kinds[k]; n > 0 {
			kinds = append(kinds, fmt.Sprintf("%d %s", n, kindWords[k]))
		}
	}
	p.Say = fmt.Sprintf("%s in %s: %s.", words.Capital(words.Plural(d.All, "double", "doubles")), over, strings.Join(kinds, ", "))
	p.began(d)
	for i := range 18 {
		h := OnHole{Hole: strconv.Itoa(i + 1)}
		if n := d.Holes[i+1]; n > 0 {
			h.Count = strconv.Itoa(n)
		}
		p.Nines[i/9] = append(p.Nines[i/9], h)
	}
	var clubs []string
	for _, c := range d.Clubs {
		clubs = append(clubs, fmt.Sprintf("%s %d", c.Club, c.Count))
	}
	if len(clubs) > 0 {
		p.Clubs = fmt.Sprintf("Club in hand, of the %d that began off the green: %s.", d.OffGreen, strings.Join(clubs, ", "))
	}
	p.Months = lastTen(in.Whose).BehindMeasure(2, "doubles")
	return p
}

// kindWords name the kinds of doubles in a count.
var kindWords = map[account.Kind]string{account.Compound: "compound", account.Single: "single", account.Separate: "separate", account.Leak: "leaks", account.Unknown: "known by the score alone"}

// began fills in where the doubles began.
func (p *DoublesPart) began(d analysis.DoublesTogether) {
	type row struct {
		name  string
		count int
	}
	rows := []row{{"Nowhere in particular", d.Began[0]}}
	most := d.Began[0]
	for _, c := range golf.Categories {
		rows = append(rows, row{words.Capital(c.String()), d.Began[c]})
		most = max(most, d.Began[c])
	}
	slices.SortStableFunc(rows, func(a, b row) int { return b.count - a.count })
	for _, r := range rows {
		if r.count > 0 {
			p.Began = append(p.Began, BeganRow{r.name, chart.Percent(float64(r.count) / float64(most)), strconv.Itoa(r.count)})
		}
	}
}
