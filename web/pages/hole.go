package pages

import (
	"fmt"
	"math"
	"strconv"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// HoleEntry is the page on which one hole is typed.
type HoleEntry struct {
	layout.Page
	Heading  string
	Facts    []Fact
	Holes    []HoleLink
	Back     bool   // the hole is on the back nine, which a phone then shows
	Turn     string // address of the other nine, for a phone; empty for nine holes or fewer
	TurnName string
	Owner    string // number of the account whose drafts the browser keeps
	Save     string // address that saves
	Echo     string // address that only understands
	Line     string
	Version  string
	Typed    Echo
	Untold   []components.Field // par and length, while nobody has told them
	State    string
	Other    string // what another window saved, when it did
}

// Fact is one figure of the card.
type Fact struct{ Name, Value string }

// HoleLink leads to another hole of the round.
type HoleLink struct {
	At, Number string
	Mark       components.Mark
	Here       bool
}

// Echo shows a line as it was understood.
type Echo struct {
	Rows    []EchoRow
	Total   string
	Lost    string
	Problem string
	Nothing bool // nothing was typed
}

// EchoRow is one shot as it was understood.
type EchoRow struct{ Number, Lie, From, Typed, Expected, Lost string }

// Entering is what the page of a hole is made of.
type Entering struct {
	ID      golf.RoundID
	Course  string
	Hole    golf.CardHole
	Version int
	Line    form.Line
	Account account.Account // of this hole alone, when the line is sound
	Round   []RoundHole
	Units   form.Units
	Other   string
	Player  int64
	Card    CardForm // what was typed of the card, while it is not told
}

// CardForm is the card of a hole as it is typed when it is first played.
type CardForm struct {
	Par, Length, Index string
	Problems           map[string]string
}

// RoundHole is a hole of the round as the strip of holes shows it.
type RoundHole struct {
	Number, Par int
	Score       int // 0 when it has not been entered
}

// NewHoleEntry makes the page.
func NewHoleEntry(page layout.Page, q Entering) HoleEntry {
	page.Title = fmt.Sprintf("Hole %d, %s", q.Hole.Number, q.Course)
	page.Here, page.Kind, page.Script = paths.NewRound, "entry", "entry.js"
	page.Foot = "Target here. Expected is what the golfer of your target on this course would still need from there."
	e := HoleEntry{Page: page, Owner: strconv.FormatInt(q.Player, 10), Heading: fmt.Sprintf("Hole %d", q.Hole.Number), Save: paths.Hole(q.ID, q.Hole.Number), Echo: paths.Echo(q.ID, q.Hole.Number),
		Line: q.Line.Text, Version: strconv.Itoa(q.Version), Other: q.Other,
		Facts: []Fact{{"Par", strconv.Itoa(q.Hole.Par)}, {unitWord(q.Units.Far), plain(math.Round(q.Units.Far.In(q.Hole.Length)))}}}
	e.turn(q)
	if q.Hole.Index > 0 {
		e.Facts = append(e.Facts, Fact{"Index", strconv.Itoa(q.Hole.Index)})
	}
	if q.Hole.Length == 0 {
		e.Facts = nil
		e.Untold = []components.Field{
			{Name: "par", Label: "Par", Value: q.Card.Par, Mode: "numeric", Problem: q.Card.Problems["par"]},
			{Name: "length", Label: unitWord(q.Units.Far) + " on the card", Value: q.Card.Length, Mode: "decimal", Problem: q.Card.Problems["length"]},
			{Name: "index", Label: "Stroke index", Value: q.Card.Index, Mode: "numeric", Hint: "May be left out.", Problem: q.Card.Problems["index"]},
		}
	}
	entered, sum := 0, 0
	for _, h := range q.Round {
		l := HoleLink{At: paths.Hole(q.ID, h.Number), Number: strconv.Itoa(h.Number), Here: h.Number == q.Hole.Number,
			Mark: components.Mark{Class: "none", Said: "not entered"}}
		if h.Score > 0 {
			l.Mark = components.MarkOf(h.Score, h.Par, strconv.Itoa(h.Score))
			entered++
			sum += h.Score
		}
		e.Holes = append(e.Holes, l)
	}
	e.State = fmt.Sprintf("Saved: %s, %s.", plural(entered, "hole", "holes"), plural(sum, "stroke", "strokes"))
	e.Typed = NewEcho(q)
	return e
}

// turn leads to the other nine where only one is shown.
func (e *HoleEntry) turn(q Entering) {
	e.Back = q.Hole.Number > 9
	e.TurnName = map[bool]string{false: "in", true: "out"}[e.Back]
	for _, h := range q.Round {
		if (h.Number > 9) != e.Back {
			e.Turn = paths.Hole(q.ID, h.Number)
			return
		}
	}
}

func unitWord(u golf.Unit) string {
	if u == golf.Metres {
		return "Metres"
	}
	return "Yards"
}

// NewEcho shows a line as it was understood.
func NewEcho(q Entering) Echo {
	if q.Line.Empty() {
		return Echo{Nothing: true}
	}
	var e Echo
	words := wordsOfShots(q.Line)
	for i, s := range q.Line.Hole.Shots {
		r := EchoRow{Number: strconv.Itoa(i + 1), Lie: s.Lie.String(), Typed: words[i],
			From: capital(s.Lie.String()) + " " + far(s.Lie, s.Distance, q.Units)}
		if s.Penalty > 0 {
			r.From += ", " + plural(s.Penalty, "penalty", "penalties")
		}
		if len(q.Account.Holes) == 1 && i < len(q.Account.Holes[0].Shots) {
			shot := q.Account.Holes[0].Shots[i]
			r.Expected, r.Lost = fmt.Sprintf("%.2f", shot.Expected), signed(shot.Lost, 2)
		}
		e.Rows = append(e.Rows, r)
	}
	if len(q.Line.Problems) > 0 {
		e.Problem = problemText(q.Line)
		return e
	}
	if len(q.Account.Holes) == 1 {
		e.Total, e.Lost = total(q), signed(q.Account.Holes[0].Lost, 2)
	}
	return e
}

// wordsOfShots is the word that each shot was typed as.
func wordsOfShots(l form.Line) map[int]string {
	words := map[int]string{}
	for _, item := range l.Items {
		for k := range item.Shots {
			words[item.First+k] = item.Text
		}
	}
	return words
}

func total(q Entering) string {
	h := q.Line.Hole
	switch {
	case h.ScoreOnly > 0:
		return fmt.Sprintf("A score of %d alone", h.ScoreOnly)
	case h.PickedUp:
		return fmt.Sprintf("Picked up after %s", plural(h.Strokes(), "stroke", "strokes"))
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
		return fmt.Sprintf("%d under par", -over)
	default:
		return fmt.Sprintf("%d over par", over)
	}
}

func problemText(l form.Line) string {
	p := l.Problems[0]
	text := capital(p.What)
	if p.Item >= 0 && p.Item < len(l.Items) {
		text = fmt.Sprintf("“%s”: %s", l.Items[p.Item].Text, p.What)
	}
	return text + ". Allowed: " + p.Allowed + "."
}
