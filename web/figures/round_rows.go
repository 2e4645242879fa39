package figures

import (
	"fmt"
	"math"
	"strings"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// RoundRow is one round in a list of rounds. What it prints in strokes is empty
// while no hole is entered.
type RoundRow struct {
	At      string   // address of its statement
	Day     string   // as programs read it: 2026-05-02
	Date    string   // “2 May”
	Year    string   // “2026”, for a list without months
	Course  string   // course and tees
	Score   string   // a whole number, one decimal after a hole was picked up, or not entered
	Over    string   // strokes over the target, on the holes played, signed
	Target  string   // “target 79.5”, where the row before had another; empty otherwise
	Holes   string   // “target 46 for 9 holes”; empty for 18
	Parts   string   // what each part of the game lost, for those who do not see the bar
	Bar     SplitBar // where the strokes went
	Worst   string   // the part of the game that cost most, with its amount
	Doubles string   // how many doubles
	Open    string   // how many holes are still to be entered; empty for none
	New     string   // “new, entered 22 Nov”, or that it was corrected since the coach last looked; empty for neither
	id      string   // of the round
	whole   bool     // 18 holes are entered, so that its score can be set beside others
}

// ListedRound is what a row is made of.
type ListedRound struct {
	ID      golf.RoundID
	Round   golf.Round      // the holes entered
	Card    int             // holes on the card
	Target  float64         // strokes over 18 holes
	Account account.Account // of the holes entered; zero when there are none
	New     Freshness       // what happened to it since the coach last looked
	NewDay  golf.Date       // when that was; zero for nothing
}

// Freshness says what happened to a round since a coach last looked.
type Freshness uint8

// What can have happened.
const (
	Entered   Freshness = iota + 1 // holes of it were entered
	Corrected                      // it had been entered, and was saved again
)

// fresh says what happened, and when.
func (l ListedRound) fresh() string {
	day := l.NewDay.Time().Format("2 Jan")
	switch l.New {
	case Entered:
		return "new, entered " + day
	case Corrected:
		return "corrected " + day
	default:
		return ""
	}
}

// splitParts is how many parts the strokes of a round are split into: those of
// the game, and what belongs to none of them.
const splitParts = 5

// Split is what a round or several lost, in tenths of a stroke as printed, so
// that sums of what is printed are exact.
type Split struct {
	Over  int             // the target
	Parts [splitParts]int // in the order of golf.Categories, then what belongs to no part; they add up to Over
}

// add adds what another round lost.
func (s *Split) add(other Split) {
	s.Over += other.Over
	for i, p := range other.Parts {
		s.Parts[i] += p
	}
}

// tenths writes tenths of a stroke with their sign, whole strokes without a
// decimal: +7, −0.4, 0.
func tenths(n int) string {
	if n%10 == 0 {
		return words.Signed(float64(n)/10, 0)
	}
	return words.Signed(float64(n)/10, 1)
}

// Split is what the round lost, rounded as on its statement, so that the amounts
// there and here are the same; zero while no hole is entered.
func (l ListedRound) Split() Split {
	if len(l.Round.Holes) == 0 {
		return Split{}
	}
	s := Split{}
	_, lines := AccountLines(l.Account)
	for i, line := range lines {
		amount := int(math.Round(line.Printed * 10))
		s.Over += amount
		s.Parts[min(i, splitParts-1)] += amount
	}
	return s
}

// whole reports whether 18 holes are entered.
func (l ListedRound) whole() bool { return len(l.Round.Holes) == 18 }

// HolesTarget is the target of the holes entered.
func (l ListedRound) HolesTarget() float64 { return l.Account.Expected - l.Account.Lost.Course }

// worst names the part of the game that cost most, with its amount.
func (s Split) worst() string {
	cost := func(c golf.Category) float64 { return float64(s.Parts[c-golf.TeeShots]) }
	worst := golf.Most(cost)
	if cost(worst) <= 0 {
		return "nothing"
	}
	return fmt.Sprintf("%s %s", worst, words.Signed(cost(worst)/10, 1))
}

// said lists the parts of the game with their amounts.
func (s Split) said() string {
	var all []string
	for i, c := range golf.Categories {
		all = append(all, fmt.Sprintf("%s %s", c, words.Signed(float64(s.Parts[i])/10, 1)))
	}
	if rest := s.Parts[splitParts-1]; rest != 0 {
		all = append(all, "not known by shots "+words.Signed(float64(rest)/10, 1))
	}
	return strings.Join(all, ", ")
}

// Row writes the round as a list prints it.
func (l ListedRound) Row(whose paths.Whose) RoundRow {
	day := l.Round.Date.Time()
	r := RoundRow{id: fmt.Sprint(l.ID), At: whose.Round(l.ID), New: l.fresh(), Day: l.Round.Date.String(), Date: day.Format("2 Jan"), Year: day.Format("2006"), Course: words.Joined(l.Round.Course, l.Round.Tee)}
	if left := l.Card - len(l.Round.Holes); left > 0 {
		r.Open = words.Plural(left, "hole", "holes") + " to go"
	}
	if len(l.Round.Holes) == 0 {
		r.Score = "not entered"
		return r
	}
	if r.whole = l.whole(); !r.whole {
		r.Holes = fmt.Sprintf("target %s for %s", words.Plain(l.HolesTarget()), words.Plural(len(l.Round.Holes), "hole", "holes"))
	}
	s := l.Split()
	r.Score, r.Over = words.Score(l.Account.Score, len(l.Account.PickedUp()) > 0), tenths(s.Over)
	r.Parts, r.Bar, r.Worst = s.said(), NewSplitBar(s), s.worst()
	r.Doubles = fmt.Sprint(len(l.Account.Doubles))
	return r
}
