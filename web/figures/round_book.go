package figures

import (
	"fmt"
	"slices"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// RoundBook is the book of a player's rounds: a page a month, with its sum and
// what is carried forward through the year.
type RoundBook struct {
	Caption string
	Over    string // heads the strokes: “Over 79”, or “Over target” where targets change or not all rounds are of 18 holes
	Axis    components.Axis
	Keys    []SplitKey
	Months  []BookMonth
}

// BookMonth is a page of the book.
type BookMonth struct {
	Name     string // “November”
	Year     string
	Rows     []RoundRow // at least one
	Subtotal BookLine
	Brought  BookLine // from the months before, in the same year; empty for none
	Carried  BookLine // to the next month; empty where the year is not read whole
}

// BookLine is a sum of the book.
type BookLine struct {
	Name    string // “Three rounds, mean”, “brought forward”; empty for no line
	Rounds  string // how many it holds, or of how many the mean is; empty where the name says so
	Score   string // the mean of whole rounds, one decimal; empty for none
	Over    string // strokes over the target
	Worst   string // the part of the game that cost most; empty for what is carried
	Doubles string
	adds    string // names what Over is added to
	sums    string // names what Over is the sum of
}

// key names a month on its page.
func (m BookMonth) key() string { return m.Name + "-" + m.Year }

// added names a sum of a month; empty in a list without months.
func added(what, month string) string {
	if month == "" {
		return ""
	}
	return what + "-" + month
}

// meant names the mean that the score of a round is part of; empty for none.
func (r RoundRow) meant(month string) string {
	if !r.whole {
		return ""
	}
	return added("score", month)
}

// BookInput is what the book is made of.
type BookInput struct {
	Whose   paths.Whose
	Rounds  []ListedRound // the latest first, from the beginning of the first year shown
	First   golf.Date     // first day shown; earlier rounds are only brought forward
	Forward bool          // on paper a month begins with its first round, on a screen with the latest
	Cut     bool          // earlier rounds of the year are missing, so nothing can be carried
}

// NewRoundBook makes the book.
func NewRoundBook(in BookInput) RoundBook {
	shown := slices.IndexFunc(in.Rounds, func(l ListedRound) bool { return l.Round.Date.Compare(in.First) < 0 })
	if shown < 0 {
		shown = len(in.Rounds)
	}
	b := RoundBook{Caption: "Rounds by month: score, strokes over the target, and where they went", Axis: SplitAxis(), Over: "Over target"}
	target, same := sameTarget(in.Rounds[:shown])
	if same && !slices.ContainsFunc(in.Rounds[:shown], func(l ListedRound) bool { return len(l.Round.Holes) > 0 && !l.whole() }) {
		b.Over = "Over " + words.Plain(target)
	}
	unknown := false
	for _, month := range monthsOf(in.Rounds) {
		if month[0].Round.Date.Compare(in.First) < 0 {
			break
		}
		m := newBookMonth(month, in)
		b.Months = append(b.Months, m)
		for _, l := range month {
			unknown = unknown || l.Split().Parts[splitParts-1] != 0
		}
	}
	b.Keys = SplitKeys(unknown)
	if in.Forward {
		b.turn()
	}
	if !same {
		b.sayTargets(in.Rounds[:shown])
	}
	return b
}

// turn puts the months and their rounds in the order of the calendar.
func (b *RoundBook) turn() {
	slices.Reverse(b.Months)
	for _, m := range b.Months {
		slices.Reverse(m.Rows)
	}
}

// sayTargets writes the target into every row where it is not that of the row
// before.
func (b *RoundBook) sayTargets(rounds []ListedRound) {
	of := map[string]string{}
	for _, l := range rounds {
		of[fmt.Sprint(l.ID)] = words.Plain(l.Target)
	}
	before := ""
	for _, m := range b.Months {
		for i := range m.Rows {
			if now := of[m.Rows[i].id]; now != before && m.Rows[i].Holes == "" {
				m.Rows[i].Target, before = "target "+now, now
			}
		}
	}
}

// sameTarget is the target of the rounds, if they have one and the same.
func sameTarget(rounds []ListedRound) (target float64, same bool) {
	for i, l := range rounds {
		if i > 0 && l.Target != target {
			return 0, false
		}
		target = l.Target
	}
	return target, len(rounds) > 0
}

// monthsOf cuts rounds, the latest first, into months.
func monthsOf(rounds []ListedRound) [][]ListedRound {
	var all [][]ListedRound
	for i, l := range rounds {
		if i > 0 && sameMonth(l, rounds[i-1]) {
			all[len(all)-1] = append(all[len(all)-1], l)
		} else {
			all = append(all, []ListedRound{l})
		}
	}
	return all
}

func sameMonth(a, b ListedRound) bool {
	return a.Round.Date.Year == b.Round.Date.Year && a.Round.Date.Month == b.Round.Date.Month
}

// newBookMonth sums a month, and what the year came to before it.
func newBookMonth(month []ListedRound, in BookInput) BookMonth {
	day := month[0].Round.Date
	m := BookMonth{Name: day.Month.String(), Year: fmt.Sprint(day.Year), Subtotal: subtotal(month)}
	for _, l := range month {
		m.Rows = append(m.Rows, l.Row(in.Whose))
	}
	m.Subtotal.sums = added("over", m.key())
	if in.Cut {
		return m
	}
	forward := added("forward", m.key())
	m.Subtotal.adds = forward
	var before, all Split
	earlier := 0
	for _, l := range in.Rounds {
		if d := l.Round.Date; d.Year == day.Year && d.Month < day.Month {
			before.add(l.Split())
			earlier++
		}
	}
	all = before
	for _, l := range month {
		all.add(l.Split())
	}
	if earlier > 0 {
		m.Brought = carried("brought forward", earlier, before)
		m.Brought.adds = forward
	}
	m.Carried = carried("carried forward", earlier+len(month), all)
	m.Carried.sums = forward
	return m
}

func carried(name string, rounds int, s Split) BookLine {
	return BookLine{Name: name, Rounds: words.Plural(rounds, "round", "rounds"), Over: tenths(s.Over)}
}

// subtotal is the sum of a month. Its mean score is that of rounds with 18 holes
// entered, since those of fewer cannot be set beside them.
func subtotal(month []ListedRound) BookLine {
	var lost Split
	whole, score, doubles := 0, 0.0, 0
	for _, l := range month {
		lost.add(l.Split())
		doubles += len(l.Account.Doubles)
		if len(l.Round.Holes) == 18 {
			whole++
			score += Tenth(l.Account.Score)
		}
	}
	line := BookLine{Name: words.Capital(words.SpelledPlural(len(month), "round", "rounds")), Over: tenths(lost.Over), Worst: lost.worst(), Doubles: fmt.Sprint(doubles)}
	if whole > 0 {
		line.Score = fmt.Sprintf("%.1f", score/float64(whole))
		line.Name += ", mean"
	}
	if whole > 0 && whole < len(month) {
		line.Name, line.Rounds = words.Capital(words.SpelledPlural(len(month), "round", "rounds")), fmt.Sprintf("mean of %s with 18 holes", words.Spelled(whole))
	}
	return line
}
