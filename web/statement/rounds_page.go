package statement

import (
	"fmt"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// A page of the list holds whole months: so many that it has about twenty
// rounds, and never so few that it says nothing of late.
const (
	pageMost   = 20 // rounds, unless the first month alone has more
	pageEnough = 10 // rounds, with which a page may end
)

// MonthRounds is how many rounds a month has.
type MonthRounds struct {
	Month  golf.Date // its first day
	Rounds int       // in all
	Chosen int       // on the chosen course
}

// Narrow is how the list is narrowed, and from where on it is read.
type Narrow struct {
	Course   string        // empty for any
	From, To golf.Date     // first days of the first and the last month; zero for no limit
	Before   golf.Date     // first day of a month: only rounds before it; zero for the latest
	Courses  []string      // every course that the player has a round on
	Months   []MonthRounds // every month with rounds, the latest first
}

// chosen reports whether the list is narrowed at all.
func (n Narrow) chosen() bool { return n.Course != "" || !n.From.IsZero() || !n.To.IsZero() }

// address writes the choice as an address holds it, before a month.
func (n Narrow) address(before golf.Date) paths.Book {
	return paths.Book{Course: n.Course, From: monthValue(n.From), To: monthValue(n.To), Before: monthValue(before)}
}

// monthValue writes a month as addresses hold it, empty for none.
func monthValue(d golf.Date) string {
	if d.IsZero() {
		return ""
	}
	return d.Time().Format("2006-01")
}

// Leaf is what one page of the list shows and what it must read for that.
type Leaf struct {
	First golf.Date     // first day shown
	From  golf.Date     // first day read: where the year of First begins, so that its sums can be carried
	To    golf.Date     // last day shown and read
	Older []MonthRounds // months that are not shown, before First, the latest first
	Years []int         // years shown, the latest first
}

// LeafOf chooses the months of a page. Without a round its days are zero.
func LeafOf(n Narrow) Leaf {
	var leaf Leaf
	rounds := 0
	for _, m := range n.Months {
		if m.Chosen == 0 || !n.holds(m.Month) {
			continue
		}
		if len(leaf.Older) > 0 || rounds >= pageEnough && rounds+m.Chosen > pageMost {
			leaf.Older = append(leaf.Older, m)
			continue
		}
		if rounds == 0 {
			leaf.To = golf.DateOf(m.Month.Time().AddDate(0, 1, -1))
		}
		if k := len(leaf.Years); k == 0 || leaf.Years[k-1] != m.Month.Year {
			leaf.Years = append(leaf.Years, m.Month.Year)
		}
		rounds += m.Chosen
		leaf.First = m.Month
	}
	if leaf.From = (golf.Date{Year: leaf.First.Year, Month: 1, Day: 1}); leaf.First.IsZero() {
		leaf.From = golf.Date{}
	} else if leaf.From.Compare(n.From) < 0 {
		leaf.From = n.From
	}
	return leaf
}

// holds reports whether a month is among the chosen ones.
func (n Narrow) holds(month golf.Date) bool {
	return (n.From.IsZero() || month.Compare(n.From) >= 0) && (n.To.IsZero() || month.Compare(n.To) <= 0) && (n.Before.IsZero() || month.Compare(n.Before) < 0)
}

// older leads to the rounds before the page.
func (l Leaf) older(whose paths.Whose, n Narrow) components.Link {
	if len(l.Older) == 0 {
		return components.Link{}
	}
	rounds := 0
	for _, m := range l.Older {
		rounds += m.Chosen
	}
	month := l.Older[0].Month.Time()
	name := month.Format("January")
	if month.Year() != l.First.Year {
		name = month.Format("January 2006")
	}
	if len(l.Older) > 1 {
		name += " and older"
	}
	return components.Link{Name: fmt.Sprintf("%s: %s", name, words.Plural(rounds, "round", "rounds")), At: whose.Book(n.address(l.First))}
}

// monthChoices offers months, the latest first, after a choice of none.
func monthChoices(none string, months []MonthRounds, chosen golf.Date) []components.Choice {
	all := []components.Choice{{Name: none, Chosen: chosen.IsZero()}}
	for _, m := range months {
		all = append(all, components.Choice{Value: monthValue(m.Month), Name: m.Month.Time().Format("January 2006"), Chosen: m.Month == chosen})
	}
	return all
}
