package entry

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf16"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/form"
	"strokeledger/web/words"
)

// Reading shows how the line of a hole reads: its shots, its sum, and what is
// asked or refused in the place of the shots.
type Reading struct {
	Rows     []ReadingRow
	Say      string // how the hole stands: “Green, 30 ft: to play”
	Sum      string // what was lost so far
	SumNote  string // behind the sum: “so far”, or instead of it
	Final    bool   // the hole has ended: the sum is doubly underlined
	Ready    bool   // Save is lit
	Holed    bool   // Holed is lit
	Score    string // of the hole, when it has ended
	Problem  string // what is wrong, empty while an item is still being typed
	Ask      *Ask
	Conflict *Conflict
}

// ReadingRow is one shot as it reads.
type ReadingRow struct {
	Number   string
	Lie      string // symbol
	From     string // lie and distance
	Blank    bool   // the distance is still to be typed
	Penalty  string // what it cost besides
	Typed    string // its word, empty for the tee shot of the course
	Expected string
	Lost     string
	ToPlay   bool   // nobody knows yet what it will cost
	Start    string // place of its word in the line, in UTF-16 units as a browser counts; empty for none
	End      string
}

// ReadingInput is what a reading is made of.
type ReadingInput struct {
	Line     form.Line
	Hole     golf.CardHole
	Account  account.Account // of the shots read so far, as if the last were holed; empty when there are none
	Units    form.Units
	AskAll   bool       // the hole is being saved: every question is asked
	Conflict *form.Line // what another window saved
}

// NewReading shows how a line reads.
func NewReading(q ReadingInput) Reading {
	r := Reading{Rows: readingRows(q)}
	l := &q.Line
	refused := len(l.Problems) > 0 && !l.Unfinished
	switch {
	case q.Conflict != nil:
		r.Conflict = newConflict(q)
		r.Rows, r.Say = nil, "Nothing is sent until you choose"
		return r
	case refused:
		r.Problem = problemText(*l)
		r.Say = "Not understood yet"
		return r
	}
	r.sum(q)
	if l.Sound() && l.Ended {
		r.Final, r.Ready, r.Score = true, true, strconv.Itoa(max(l.Hole.Strokes(), 1))
	}
	if l.Sound() && (l.Ended || q.AskAll) {
		r.Ask = newAsk(*l, q.AskAll)
	}
	if shot, open := l.ToPlay(); open && !l.Empty() && l.Sound() {
		r.Holed = shot.Lie == golf.Green
	}
	return r
}

// sum says how the hole stands and what it has lost.
func (r *Reading) sum(q ReadingInput) {
	l := &q.Line
	known := len(q.Account.Holes) == 1
	if l.Ended && l.Sound() {
		r.Say = total(*l)
		if known {
			r.Sum = words.Signed(q.Account.Holes[0].Lost, 2)
		}
		return
	}
	r.Say = openSaid(*l, q.Units)
	settled := settledShots(*l)
	if settled == 0 || !known {
		r.SumNote = "no shot yet"
		return
	}
	lost := 0.0
	for _, s := range q.Account.Holes[0].Shots[:min(settled, len(q.Account.Holes[0].Shots))] {
		lost += s.Lost
	}
	r.Sum, r.SumNote = words.Signed(lost, 2), "so far"
}

// settledShots is how many shots have a known end: all before the last that was
// read, unless the line says how the hole ended.
func settledShots(l form.Line) int {
	if l.Ended && l.Sound() {
		return len(l.Hole.Shots)
	}
	return max(len(l.Hole.Shots)-1, 0)
}

// openSaid says what is still open.
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
		return "Dropped: where does the next one lie?"
	case lonely(l):
		return words.Capital(lieSaid(l)) + ": how far is it?"
	default:
		return "Still being typed"
	}
}

// lonely reports whether the line ends in a lie without its distance.
func lonely(l form.Line) bool {
	return l.Unfinished && len(l.Items) > 0 && lieSaid(l) != ""
}

// lieSaid is the lie that the last letter of a line names, empty for none.
func lieSaid(l form.Line) string {
	if len(l.Items) == 0 {
		return ""
	}
	last := strings.ToLower(strings.TrimSuffix(l.Items[len(l.Items)-1].Text, "~"))
	return map[string]string{"t": "tee", "f": "fairway", "r": "rough", "b": "bunker", "v": "recovery", "g": "green"}[last]
}

func readingRows(q ReadingInput) []ReadingRow {
	l := &q.Line
	shots := l.Hole.Shots
	if l.Empty() && q.Hole.Length > 0 {
		shots = []golf.Shot{{Lie: golf.Tee, Distance: q.Hole.Length}}
	}
	if l.Hole.ScoreOnly > 0 {
		shots = nil
	}
	items := itemsOfShots(*l)
	settled := settledShots(*l)
	var rows []ReadingRow
	for i, s := range shots {
		r := ReadingRow{Number: strconv.Itoa(i + 1), Lie: s.Lie.String(), From: words.Capital(s.Lie.String()) + " " + words.Distance(s.Lie, s.Distance, q.Units), ToPlay: i >= settled}
		if s.Penalty > 0 {
			r.Penalty = words.Plural(s.Penalty, "penalty", "penalties")
			if i+1 < len(shots) && l.Again(i+1) {
				r.Penalty = "out, " + r.Penalty
			}
		}
		if item, found := items[i]; found {
			r.Typed = item.Text
			r.Start, r.End = itemPlace(l.Text, item)
		}
		if len(q.Account.Holes) == 1 && i < len(q.Account.Holes[0].Shots) {
			shot := q.Account.Holes[0].Shots[i]
			r.Expected = fmt.Sprintf("%.2f", shot.Expected)
			if !r.ToPlay {
				r.Lost = words.Signed(shot.Lost, 2)
			}
		}
		rows = append(rows, r)
	}
	if lonely(*l) {
		last := l.Items[len(l.Items)-1]
		r := ReadingRow{Number: strconv.Itoa(len(shots) + 1), Lie: lieSaid(*l), From: words.Capital(lieSaid(*l)), Blank: true, Typed: last.Text, Expected: "·", ToPlay: true}
		r.Start, r.End = itemPlace(l.Text, last)
		rows = append(rows, r)
	}
	return rows
}

// itemsOfShots is the item that each shot was typed as.
func itemsOfShots(l form.Line) map[int]form.Item {
	items := map[int]form.Item{}
	for _, item := range l.Items {
		for k := range item.Shots {
			items[item.First+k] = item
		}
	}
	return items
}

// itemPlace is where an item stands, as a browser counts.
func itemPlace(text string, item form.Item) (start, end string) {
	units := func(s string) int { return len(utf16.Encode([]rune(s))) }
	from := units(text[:item.From])
	return strconv.Itoa(from), strconv.Itoa(from + units(item.Text))
}

// total says what a hole that has ended came to.
func total(l form.Line) string {
	h := l.Hole
	switch {
	case h.ScoreOnly > 0:
		return fmt.Sprintf("A score of %d alone", h.ScoreOnly)
	case h.PickedUp:
		return fmt.Sprintf("Picked up after %s", words.Plural(h.Strokes(), "stroke", "strokes"))
	default:
		return fmt.Sprintf("Holed in %d, %s", h.Strokes(), against(h.Strokes()-h.Par))
	}
}

// against says a score against par.
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

func problemText(l form.Line) string {
	p := l.Problems[0]
	text := words.Capital(p.What)
	if p.Item >= 0 && p.Item < len(l.Items) {
		text = fmt.Sprintf("“%s”: %s", l.Items[p.Item].Text, p.What)
	}
	return text + ". Allowed: " + p.Allowed + "."
}
