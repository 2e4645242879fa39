package entry

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf16"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/figures"
	"strokeledger/web/form"
	"strokeledger/web/words"
)

// Reading shows what a typed line means: its shots, what they have lost, and any
// question or problem.
type Reading struct {
	Rows     []ReadingRow // the shots, in order; empty for a score only, and during a conflict
	Say      string       // where the hole stands: “Green, 30 ft: to play”, “Holed in 5, one over par”
	Sum      string       // strokes lost, signed with two decimals: “+0.24”; empty while unknown
	SumNote  string       // beside the sum “so far”, in its place “no shots yet”; empty once the hole has ended
	Final    bool         // the hole has ended: the sum is underlined twice
	Ready    bool         // the Save key is lit
	Holed    bool         // the Holed key is lit: the ball is on the green
	Expected string       // of a score only, the strokes that it is compared with, two decimals; empty otherwise
	Score    string       // strokes on the hole, once it has ended; empty before
	Problem  string       // what cannot be read and what is allowed; empty if nothing, or while a word is unfinished
	Ask      *Ask         // questions to answer before saving; nil for none
	Conflict *Conflict    // two versions to choose from; nil for none
}

// ReadingRow is one shot of a reading.
type ReadingRow struct {
	Number   string // 1 for the tee shot
	Lie      string // lie of the symbol: “rough”
	From     string // lie and distance: “Rough 165 yd”; the lie alone while the distance is missing
	Blank    bool   // the distance is still missing
	Penalty  string // “1 penalty”, “out, 1 penalty” for stroke and distance; empty for none
	Typed    string // the player's words for it: “r165”; empty for the tee shot of the card
	Expected string // strokes a golfer at the target needs from here, two decimals; “·” while the distance is missing, empty while unknown
	Lost     string // strokes lost by the shot, signed with two decimals; empty while unknown
	ToPlay   bool   // nobody knows yet where the shot finished
	Start    string // where Typed starts in the line, counted in UTF-16 units as a browser does; empty without Typed
	End      string // where it ends
}

// ReadingInput is what a reading is made of.
type ReadingInput struct {
	Line     form.Line       // as typed
	Hole     golf.CardHole   // its length is 0 while the card is unknown
	Account  account.Account // of the shots read so far, as if the last were holed; no holes if there are none
	Units    form.Units      // the player's
	AskAll   bool            // the player is saving: ask every question, those about the end too
	Conflict *form.Line      // what another window saved; nil for nothing
}

// NewReading says what a line means.
func NewReading(in ReadingInput) Reading {
	l := &in.Line
	if in.Conflict != nil {
		return Reading{Conflict: newConflict(in), Say: "Nothing is saved until you choose"}
	}
	r := Reading{Rows: readingRows(in)}
	if len(l.Problems) > 0 && !l.Unfinished {
		r.Problem, r.Say = problemText(*l), "Not understood yet"
		return r
	}
	r.sum(in)
	if l.Sound() && l.Ended {
		r.Final, r.Ready, r.Score = true, true, scoreSaid(*l, in.Account)
	}
	if l.Sound() && (l.Ended || in.AskAll) {
		r.Ask = newAsk(*l, in.AskAll)
	}
	if shot, open := l.ToPlay(); open && !l.Empty() && l.Sound() {
		r.Holed = shot.Lie == golf.Green
	}
	return r
}

// sum says where the hole stands and what it has lost.
func (r *Reading) sum(in ReadingInput) {
	l := &in.Line
	known := len(in.Account.Holes) == 1
	if l.Ended && l.Sound() {
		r.Say = total(*l)
		if known {
			h := in.Account.Holes[0]
			r.Sum = words.Signed(lostSoFar(h, len(l.Hole.Shots)), 2) // of a hole picked up, as the rows above it
			switch {
			case h.PickedUp:
				r.Say += fmt.Sprintf("; counts as %d", h.Whole)
			case l.Hole.ScoreOnly > 0:
				r.Expected = fmt.Sprintf("%.2f", h.Score-h.Lost)
			}
		}
		return
	}
	r.Say = openSaid(*l, in.Units)
	settled := settledShots(*l)
	if settled == 0 || !known {
		r.SumNote = "no shots yet"
		return
	}
	r.Sum, r.SumNote = words.Signed(lostSoFar(in.Account.Holes[0], settled), 2), "so far"
}

// lostSoFar is what the first shots of a hole lost, as their rows print it; of a
// hole without shots, what its score lost.
func lostSoFar(h account.Hole, shots int) float64 {
	if len(h.Shots) == 0 {
		return figures.ScoreLost(h)
	}
	return figures.WorkingOf(h.Shots[:min(shots, len(h.Shots))]...).Lost()
}

// settledShots is how many shots have a known finish: all but the last, or all
// once the line says how the hole ended.
func settledShots(l form.Line) int {
	if l.Ended && l.Sound() {
		return len(l.Hole.Shots)
	}
	return max(len(l.Hole.Shots)-1, 0)
}

// openSaid says what comes next on a hole that has not ended.
func openSaid(l form.Line, units form.Units) string {
	if shot, open := l.ToPlay(); open {
		said := words.Capital(shot.Lie.String()) + ", " + words.Distance(shot.Lie, shot.Distance, units)
		if n := len(l.Hole.Shots); n > 0 && l.Again(n-1) {
			return said + ": play again from there"
		}
		return said + ": to play"
	}
	switch {
	case l.Dropped:
		return "Dropped: what is the new lie?"
	case lieAlone(l):
		return words.Capital(lieSaid(l)) + ": how far is it?"
	default:
		return "Still being typed"
	}
}

// lieAlone reports whether the line ends in a lie without a distance.
func lieAlone(l form.Line) bool {
	return l.Unfinished && len(l.Items) > 0 && lieSaid(l) != ""
}

// lieSaid is the lie named by the last letter of a line, empty for none.
func lieSaid(l form.Line) string {
	if len(l.Items) == 0 {
		return ""
	}
	last := strings.ToLower(strings.TrimSuffix(l.Items[len(l.Items)-1].Text, "~"))
	return map[string]string{"t": "tee", "f": "fairway", "r": "rough", "b": "bunker", "v": "recovery", "g": "green"}[last]
}

// readingRows are the shots of a line, and a last one that has only its lie.
func readingRows(in ReadingInput) []ReadingRow {
	l := &in.Line
	shots := l.Hole.Shots
	if l.Empty() && in.Hole.Length > 0 {
		shots = []golf.Shot{{Lie: golf.Tee, Distance: in.Hole.Length}}
	}
	if l.Hole.ScoreOnly > 0 {
		shots = nil
	}
	items := itemsOfShots(*l)
	var rows []ReadingRow
	for i := range shots {
		r := readingRow(in, shots, i)
		if item, found := items[i]; found {
			r.Typed = item.Text
			r.Start, r.End = itemPlace(l.Text, item)
		}
		rows = append(rows, r)
	}
	if lieAlone(*l) {
		last := l.Items[len(l.Items)-1]
		r := ReadingRow{Number: strconv.Itoa(len(shots) + 1), Lie: lieSaid(*l), From: words.Capital(lieSaid(*l)), Blank: true, Typed: last.Text, Expected: "·", ToPlay: true}
		r.Start, r.End = itemPlace(l.Text, last)
		rows = append(rows, r)
	}
	return rows
}

// readingRow is the shot at index i, without the words it was typed in.
func readingRow(in ReadingInput, shots []golf.Shot, i int) ReadingRow {
	s := shots[i]
	r := ReadingRow{Number: strconv.Itoa(i + 1), Lie: s.Lie.String(), From: words.Capital(s.Lie.String()) + " " + words.Distance(s.Lie, s.Distance, in.Units),
		ToPlay: i >= settledShots(in.Line)}
	if s.Penalty > 0 {
		r.Penalty = words.Plural(s.Penalty, "penalty", "penalties")
		if i+1 < len(shots) && in.Line.Again(i+1) {
			r.Penalty = "out, " + r.Penalty
		}
	}
	if len(in.Account.Holes) == 1 && i < len(in.Account.Holes[0].Shots) {
		shot := in.Account.Holes[0].Shots[i]
		r.Expected = fmt.Sprintf("%.2f", shot.Expected)
		if !r.ToPlay {
			r.Lost = words.Signed(figures.WorkingOf(shot).Lost(), 2)
		}
	}
	return r
}

// itemsOfShots maps each shot, from 0, to the word it was typed as.
func itemsOfShots(l form.Line) map[int]form.Item {
	items := map[int]form.Item{}
	for _, item := range l.Items {
		for k := range item.Shots {
			items[item.First+k] = item
		}
	}
	return items
}

// itemPlace is where an item starts and ends in a line, in UTF-16 units.
func itemPlace(text string, item form.Item) (start, end string) {
	units := func(s string) int { return len(utf16.Encode([]rune(s))) }
	from := units(text[:item.From])
	return strconv.Itoa(from), strconv.Itoa(from + units(item.Text))
}

// total gives the result of a hole that has ended.
func total(l form.Line) string {
	h := l.Hole
	switch {
	case h.ScoreOnly > 0:
		return fmt.Sprintf("Score only: %d", h.ScoreOnly)
	case h.PickedUp:
		return fmt.Sprintf("Picked up after %s", words.Plural(h.Strokes(), "stroke", "strokes"))
	default:
		return fmt.Sprintf("Holed in %d, %s", h.Strokes(), against(h.Strokes()-h.Par))
	}
}

// against compares a score with par.
func against(over int) string {
	switch {
	case over == 0:
		return "par"
	case over < 0:
		return words.Spelled(-over) + " under par"
	default:
		return words.Spelled(over) + " over par"
	}
}

// problemText says what is wrong with the first problem of a line, and what is
// allowed.
func problemText(l form.Line) string {
	p := l.Problems[0]
	text := words.Capital(p.What)
	if p.Item >= 0 && p.Item < len(l.Items) {
		text = fmt.Sprintf("“%s”: %s", l.Items[p.Item].Text, p.What)
	}
	return text + ". Allowed: " + p.Allowed + "."
}
