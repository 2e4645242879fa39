package entry

import (
	"fmt"
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// HolePage is where the shots of one hole are typed.
type HolePage struct {
	layout.Page
	Heading  string             // “Hole 6”
	Facts    string             // “par 4, 417 yd, index 3”; empty while the card is unknown
	Name     string             // “Hole 6, Harrow Fen”, its name among holes waiting to be sent
	Menu     []MenuLink         // other pages of this round, then entering another and help
	Holes    []HoleLink         // the holes of the round by number
	Back     bool               // a phone shows the back nine, since the hole is on it
	Turn     string             // address of the first hole of the other nine, for a phone; empty without another nine
	TurnName string             // the other nine on a card: “out” or “in”
	TurnSaid string             // its holes: “Holes 10 to 18”; empty without another nine
	Save     string             // address that saves
	Echo     string             // address that only reads a line, for the script
	Label    string             // of the line
	Line     string             // in the field: as typed, or as saved
	Stored   string             // the saved line; empty for none
	Version  string             // of the saved hole, 0 before the first save
	Asked    string             // the line whose questions the page asks, so that “Save anyway” answers only those; empty for none
	Order    string             // hole numbers in playing order, with spaces between
	Needed   string             // addresses of the files needed without a connection, with spaces between
	Reading  Reading            // what the line means
	Card     []components.Field // par, length and stroke index, asked for while the card is unknown; empty otherwise
	State    string             // what is saved: “Saved: holes 1 to 3, 14 strokes.”
	SoFar    string             // score and strokes lost of the saved holes; empty if those lost are unknown for any
}

// MenuLink leads from the hole to another page.
type MenuLink struct {
	At   string // address
	Name string
}

// HoleLink leads to a hole of the round.
type HoleLink struct {
	At     string          // address
	Number string          // on the card
	Par    string          // “par 4”
	Far    string          // length on the card: “417 yd”; empty while unknown
	Lost   string          // strokes lost, signed with one decimal; empty while not entered or unknown
	Mark   components.Mark // the score, or that it is missing
	Here   bool            // the page is this hole's
}

// HoleInput is what the page of a hole is made of.
type HoleInput struct {
	ID      golf.RoundID  // 0 where a coach enters the round
	Walked  *WalkedHole   // the round that a coach enters; nil for the player's own
	Course  string        // name, as the round has it
	Hole    golf.CardHole // its length is 0 while the card is unknown
	Version int           // of the saved hole, 0 before the first save
	Stored  string        // the saved line in the reader's units; empty for none
	Reading ReadingInput
	Round   []RoundHole   // every hole of the round by number
	Order   []int         // hole numbers in playing order
	Target  float64       // the round's, for 18 holes
	Units   form.Units    // the player's
	Card    form.HoleCard // as typed; matters only while the card is unknown
}

// WalkedHole says whose hole a coach types.
type WalkedHole struct {
	Whose paths.Whose
	Round int64
	Name  string // the pupil's
}

// pages is where the holes of the round are typed.
func (in HoleInput) pages() paths.Holes {
	if in.Walked != nil {
		return in.Walked.Whose.HolesOfWalked(in.Walked.Round)
	}
	return paths.HolesOf(in.ID)
}

// whose is the owner of the round, as a possessive within a sentence.
func (in HoleInput) whose() string {
	if in.Walked != nil {
		return words.Whose(in.Walked.Name)
	}
	return "your"
}

// label is that of the line.
func (in HoleInput) label() string {
	if in.Walked != nil {
		return in.whose() + " shots after the tee"
	}
	return "Your shots after the tee"
}

// RoundHole is a hole of the round in the strip of holes.
type RoundHole struct {
	Number   int
	Par      int
	Length   golf.Distance // 0 while unknown
	Score    int           // 0 if not entered; of a picked-up hole with the strokes still to come, rounded
	PickedUp bool
	Lost     float64 // strokes, 0 unless Known
	Known    bool    // the hole is entered and its length is known
}

// NewHolePage makes the page.
func NewHolePage(page layout.Page, in HoleInput) HolePage {
	page.Title = fmt.Sprintf("Hole %d, %s", in.Hole.Number, in.Course)
	if in.Walked != nil {
		page.Title += ", for " + in.Walked.Name
	}
	page.Here, page.BodyClass, page.Script, page.Explained = paths.NewRound, "entry-page", "entry.js", "line-said"
	if in.Walked != nil {
		page.Here = paths.Coaching
	}
	page.Foot = fmt.Sprintf("To play: the strokes that a golfer who averages %s target of %s would still need from there, on this course.", in.whose(), words.Plain(in.Target))
	p := HolePage{Page: page, Heading: fmt.Sprintf("Hole %d", in.Hole.Number), Name: page.Title,
		Save: in.pages().At(in.Hole.Number), Echo: in.pages().Echo(in.Hole.Number), Label: in.label(), Line: in.Reading.Line.Text, Stored: in.Stored, Version: strconv.Itoa(in.Version),
		Needed: strings.Join(layout.EntryFiles(), " "), Reading: NewReading(in.Reading), Menu: in.menu()}
	order := make([]string, len(in.Order))
	for i, n := range in.Order {
		order[i] = strconv.Itoa(n)
	}
	p.Order = strings.Join(order, " ")
	p.turn(in)
	if in.Hole.Length > 0 {
		p.Facts = cardFacts(in.Hole, in.Units)
	} else {
		p.Card = cardFields(in.Card, in.Units)
	}
	if p.Reading.Ask != nil {
		p.Asked = p.Line
	}
	p.fillStrip(in)
	if in.Walked != nil {
		p.State = "For " + in.Walked.Name + ". " + p.State
	}
	return p
}

// menu leads to the other pages of the round.
func (in HoleInput) menu() []MenuLink {
	help := MenuLink{paths.Help + "#line-said", "How to read this"}
	if w := in.Walked; w != nil {
		return []MenuLink{{in.pages().Round(), "All holes, and sending the round"}, {w.Whose.Overview(), w.Name + ", overview"}, help}
	}
	return []MenuLink{{paths.Round(in.ID), "The statement so far"}, {paths.Details(in.ID), "Date, course and target"}, {paths.NewRound, "Enter another round"}, help}
}

// cardFields ask for the card of a hole.
func cardFields(typed form.HoleCard, units form.Units) []components.Field {
	return []components.Field{
		components.Filled(components.Field{Name: "par", Label: "Par", Mode: "numeric"}, typed.Par),
		components.Filled(components.Field{Name: "length", Label: words.Unit(units.Far) + " on the card", Mode: "decimal"}, typed.Length),
		components.Filled(components.Field{Name: "index", Label: "Stroke index (optional)", Mode: "numeric"}, typed.Index),
	}
}

// fillStrip lists the holes of the round and sums up what is saved.
func (p *HolePage) fillStrip(in HoleInput) {
	var entered []int
	score, known := 0, 0
	lost, sum := lostInTenths(in.Round)
	for i, h := range in.Round {
		h.Lost = lost[i]
		p.Holes = append(p.Holes, holeLink(in, h))
		if h.Score == 0 {
			continue
		}
		entered = append(entered, h.Number)
		score += h.Score
		known += words.Tally(h.Known)
	}
	if len(entered) == 0 {
		p.State = "No holes are saved yet."
		return
	}
	p.State = fmt.Sprintf("Saved: %s, %s.", holesSaid(entered), words.Plural(score, "stroke", "strokes"))
	if known == len(entered) {
		target := fmt.Sprintf("%s target of %s", in.whose(), words.Plain(float64(score)-sum))
		if known < 18 {
			target += " for " + words.OneOrMany(known, "it", "them")
		}
		p.SoFar = fmt.Sprintf("So far: %s %s, %s, %s against %s.", words.Spelled(known), words.OneOrMany(known, "hole", "holes"),
			words.Plural(score, "stroke", "strokes"), words.Signed(sum, 1), target)
	}
}

// lostInTenths is what the holes lost that are known, in tenths that add up to their
// sum.
func lostInTenths(holes []RoundHole) (each []float64, sum float64) {
	each = make([]float64, len(holes))
	var at []int
	var exact []float64
	for i, h := range holes {
		if h.Score > 0 && h.Known {
			at, exact = append(at, i), append(exact, h.Lost)
			sum += h.Lost
		}
	}
	sum = figures.Tenth(sum)
	if len(at) > 0 {
		for k, tenths := range figures.Tenths(exact, sum) {
			each[at[k]] = tenths
		}
	}
	return each, sum
}

// holeLink leads to a hole and shows how far it is.
func holeLink(in HoleInput, h RoundHole) HoleLink {
	l := HoleLink{At: in.pages().At(h.Number), Number: strconv.Itoa(h.Number), Here: h.Number == in.Hole.Number,
		Par: fmt.Sprintf("par %d", h.Par), Mark: components.Mark{Class: "no-mark", Said: "not entered"}}
	if h.Length > 0 {
		l.Far = words.Distance(golf.Tee, h.Length, in.Units)
	}
	switch {
	case h.Score > 0:
		l.Mark = components.MarkOf(h.Score, h.Par, words.Score(float64(h.Score), h.PickedUp))
		if h.Known {
			l.Lost = words.Signed(h.Lost, 1)
		}
	case l.Here:
		l.Mark = components.Mark{Class: "open-mark", Text: "?", Said: "being entered"}
	}
	return l
}

// turn leads to the other nine on a phone, which shows one at a time.
func (p *HolePage) turn(in HoleInput) {
	p.Back, p.TurnName = in.Hole.Number > 9, "in"
	if p.Back {
		p.TurnName = "out"
	}
	var other []int
	for _, h := range in.Round {
		if (h.Number > 9) != p.Back {
			other = append(other, h.Number)
		}
	}
	if len(other) > 0 {
		p.Turn, p.TurnSaid = in.pages().At(other[0]), words.Capital(holesSaid(other))
	}
}

// cardFacts sums up the card of a hole.
func cardFacts(h golf.CardHole, units form.Units) string {
	facts := fmt.Sprintf("par %d, %s", h.Par, words.Distance(golf.Tee, h.Length, units))
	if h.Index > 0 {
		facts += fmt.Sprintf(", index %d", h.Index)
	}
	return facts
}

// holesSaid lists holes with runs shortened: “holes 1 to 5 and 7”.
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
