package entry

import (
	"fmt"
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// HolePage is the page on which one hole is typed.
type HolePage struct {
	layout.Page
	Heading  string // the hole's number
	Facts    string // par, length and index, as the card has them
	Name     string // hole and course, where it is listed among holes that wait to be sent
	Menu     []MenuLink
	Holes    []HoleLink
	Back     bool   // the hole is on the back nine, which a phone then shows
	Turn     string // address of the other nine, for a phone; empty for nine holes or fewer
	TurnName string // out or in
	TurnSaid string // the holes of the other nine
	Save     string // address that saves
	Echo     string // address that only says how the line reads
	Line     string // in the field
	Stored   string // the line that is stored
	Version  string // of the hole that is stored
	Asked    string // the line whose questions the page shows, so that “save anyway” answers them alone
	Order    string // numbers of the holes in the order of play
	Needed   string // addresses of the files that the page needs without a connection
	Reading  Reading
	Untold   []components.Field // par, length and index, while nobody has said them
	State    string             // what is saved so far
	SoFar    string             // the nine so far, in a sentence
}

// MenuLink is a way from the hole to another page.
type MenuLink struct{ At, Name string }

// HoleLink leads to another hole of the round.
type HoleLink struct {
	At, Number string
	Par, Far   string // of its card
	Lost       string // what it lost, empty while it is not entered
	Mark       components.Mark
	Here       bool
}

// HoleInput is what the page of a hole is made of.
type HoleInput struct {
	ID      golf.RoundID
	Course  string
	Hole    golf.CardHole
	Version int
	Stored  string // the stored line, in the reader's units
	Reading ReadingInput
	Round   []RoundHole
	Order   []int // numbers of the holes in the order of play
	Target  float64
	Units   form.Units
	Card    CardForm // what was typed of the card, while it is not known
}

// CardForm is the card of a hole as it is typed when it is first played.
type CardForm struct {
	Par, Length, Index string
	Problems           map[string]string
}

// RoundHole is a hole of the round as the strip of holes shows it.
type RoundHole struct {
	Number, Par int
	Length      golf.Distance
	Score       int // 0 when it has not been entered
	Lost        float64
	Known       bool // Lost is known: the hole was entered and its card is complete
}

// NewHolePage makes the page.
func NewHolePage(page layout.Page, q HoleInput) HolePage {
	page.Title = fmt.Sprintf("Hole %d, %s", q.Hole.Number, q.Course)
	page.Here, page.BodyClass, page.Script = paths.NewRound, "entry-page", "entry.js"
	page.Foot = fmt.Sprintf("Target here. To play is what the golfer of your target of %s on this course would still need from there.", words.Plain(q.Target))
	e := HolePage{Page: page, Heading: fmt.Sprintf("Hole %d", q.Hole.Number), Name: page.Title, Facts: cardFacts(q.Hole, q.Units),
		Save: paths.Hole(q.ID, q.Hole.Number), Echo: paths.Echo(q.ID, q.Hole.Number), Line: q.Reading.Line.Text, Stored: q.Stored, Version: strconv.Itoa(q.Version),
		Needed: strings.Join(layout.EntryFiles(), " "),
		Menu:   []MenuLink{{paths.Round(q.ID), "The statement so far"}, {paths.Details(q.ID), "Day, course and tees"}, {paths.NewRound, "Another round"}, {paths.Help, "How to read this"}}}
	for _, n := range q.Order {
		e.Order = joinedBy(" ", e.Order, strconv.Itoa(n))
	}
	e.turn(q)
	if q.Hole.Length == 0 {
		e.Facts = ""
		e.Untold = []components.Field{
			{Name: "par", Label: "Par", Value: q.Card.Par, Mode: "numeric", Problem: q.Card.Problems["par"]},
			{Name: "length", Label: words.Unit(q.Units.Far) + " on the card", Value: q.Card.Length, Mode: "decimal", Problem: q.Card.Problems["length"]},
			{Name: "index", Label: "Stroke index (optional)", Value: q.Card.Index, Mode: "numeric", Problem: q.Card.Problems["index"]},
		}
	}
	e.Reading = NewReading(q.Reading)
	if e.Reading.Ask != nil {
		e.Asked = e.Line
	}
	e.fillStrip(q)
	return e
}

// fillStrip lists the holes of the round and sums up what is saved.
func (e *HolePage) fillStrip(q HoleInput) {
	var entered []int
	sum, nine, lost := 0, 0, 0.0
	for _, h := range q.Round {
		l := HoleLink{At: paths.Hole(q.ID, h.Number), Number: strconv.Itoa(h.Number), Here: h.Number == q.Hole.Number,
			Par: fmt.Sprintf("par %d", h.Par), Mark: components.Mark{Class: "no-mark", Said: "not entered"}}
		if h.Length > 0 {
			l.Far = words.Distance(golf.Tee, h.Length, q.Units)
		}
		if l.Here && h.Score == 0 {
			l.Mark = components.Mark{Class: "open-mark", Text: "?", Said: "being entered"}
		}
		if h.Score > 0 {
			l.Mark = components.MarkOf(h.Score, h.Par, strconv.Itoa(h.Score))
			entered = append(entered, h.Number)
			sum += h.Score
			if h.Known {
				l.Lost = words.Signed(h.Lost, 1)
				nine, lost = nine+1, lost+h.Lost
			}
		}
		e.Holes = append(e.Holes, l)
	}
	e.State = "No hole is saved yet."
	if len(entered) > 0 {
		e.State = fmt.Sprintf("Saved: %s, %s.", holesSaid(entered), words.Plural(sum, "stroke", "strokes"))
	}
	if nine > 0 && nine == len(entered) {
		e.SoFar = fmt.Sprintf("So far: %s %s, %s, %s against your %s.", words.Spelled(nine), words.OneOrMany(nine, "hole", "holes"), words.Plural(sum, "stroke", "strokes"), words.Signed(lost, 1), words.Plain(q.Target))
	}
}

// turn leads to the other nine where only one is shown.
func (e *HolePage) turn(q HoleInput) {
	e.Back, e.TurnName = q.Hole.Number > 9, "in"
	if e.Back {
		e.TurnName = "out"
	}
	var other []int
	for _, h := range q.Round {
		if (h.Number > 9) != e.Back {
			other = append(other, h.Number)
		}
	}
	if len(other) > 0 {
		e.Turn, e.TurnSaid = paths.Hole(q.ID, other[0]), words.Capital(holesSaid(other))
	}
}

// cardFacts says what the card says of a hole.
func cardFacts(h golf.CardHole, units form.Units) string {
	facts := fmt.Sprintf("par %d, %s", h.Par, words.Distance(golf.Tee, h.Length, units))
	if h.Index > 0 {
		facts += fmt.Sprintf(", index %d", h.Index)
	}
	return facts
}

// holesSaid lists holes as people do: “holes 1 to 5 and 7”.
func holesSaid(numbers []int) string {
	var runs []string
	for i := 0; i < len(numbers); {
		k := i
		for k+1 < len(numbers) && numbers[k+1] == numbers[k]+1 {
			k++
		}
		switch {
		case k == i:
			runs = append(runs, strconv.Itoa(numbers[i]))
		case k == i+1:
			runs = append(runs, strconv.Itoa(numbers[i]), strconv.Itoa(numbers[k]))
		default:
			runs = append(runs, fmt.Sprintf("%d to %d", numbers[i], numbers[k]))
		}
		i = k + 1
	}
	return words.OneOrMany(len(numbers), "hole ", "holes ") + words.List(runs)
}

func joinedBy(gap, a, b string) string {
	if a == "" {
		return b
	}
	return a + gap + b
}
