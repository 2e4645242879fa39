package entry

import (
	"fmt"
	"slices"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// WalkedListPage lists the rounds that a coach entered for a pupil and that the pupil has
// not accepted yet, and is where a coach begins one.
type WalkedListPage struct {
	layout.Page
	Lede    string
	Rounds  []components.Link
	At      string              // where the form that begins one is sent; empty to the pupil
	Which   components.Field    // chooses one of Courses
	Courses []components.Choice // empty if there are none on the server
	Begin   BeginFields
	Wrong   components.Summary
}

// WalkedListInput is what the page is made of.
type WalkedListInput struct {
	Whose   paths.Whose
	Name    string // the pupil's, to a coach
	Rounds  []WalkedRound
	Begin   form.RoundStart // as it came back, or what a new form starts with
	Courses []components.Choice
}

// WalkedRound is one of those rounds.
type WalkedRound struct {
	ID     int64
	Coach  string // name
	Day    golf.Date
	Course string
	Tee    string // may be empty
	Card   []golf.CardHole
	Lines  []form.Line // a hole each, in the order of the card; one without text was not played
	Units  form.Units  // of the lines
	Sent   bool        // the pupil can read it
	First  int         // hole at which it began
}

func (w WalkedRound) said() string { return words.ShortDay(w.Day) + ", " + w.Course }

// NewWalkedListPage makes the page.
func NewWalkedListPage(page layout.Page, in WalkedListInput) WalkedListPage {
	page.Title, page.Here = "Rounds that a coach entered", layout.Here(in.Whose, paths.Rounds)
	page.Foot = "A round that a coach enters counts in no figure before the pupil has accepted it. Its statement says who entered it."
	p := WalkedListPage{Page: page}
	for _, w := range in.Rounds {
		name := fmt.Sprintf("%s, from %s", w.said(), w.Coach)
		switch {
		case in.Whose.Own:
		case w.Sent:
			name = w.said() + ": sent, not answered yet"
		default:
			name = w.said() + ": not sent yet"
		}
		p.Rounds = append(p.Rounds, components.Link{Name: name, At: in.Whose.Walked(w.ID)})
	}
	if in.Whose.Own {
		p.Lede = words.Capital(words.SpelledPlural(len(in.Rounds), "round waits", "rounds wait")) + " for you to accept or decline."
		if len(in.Rounds) == 0 {
			p.Lede = "No round waits for you."
		}
		return p
	}
	p.Title = "Enter a round for " + in.Name
	p.Lede = fmt.Sprintf("A round that coach and pupil walked. It becomes a round of %s’s once it is accepted.", in.Name)
	p.At, p.Courses = in.Whose.WalkedRounds(), in.Courses
	p.Which = components.Filled(components.Field{Name: "course", Label: "Course"}, in.Begin.Course)
	p.Begin = beginFields(in.Begin, true, "")
	p.Begin.First.Hint = "Where the round began; the rest follow in order."
	p.Wrong = components.Summed(p.Which)
	p.Begin.sum(&p.Wrong)
	p.Wrong = p.Wrong.Saying(notBegun)
	return p
}

// WalkedPage is one such round: to the coach the lines to type, to the pupil what they
// mean, to accept or decline.
type WalkedPage struct {
	layout.Page
	Lede    string
	Holes   []WalkedLine
	Total   string // strokes so far
	SaveAt  string // where the lines are sent; empty where nobody may change them
	Send    string // on the button that sends the round
	Answer  string // where the pupil’s answer is sent; empty to the coach
	Remove  string // where the coach takes it back; empty to the pupil
	Back    string // to the list
	Wrong   components.Summary
	Nothing string          // nothing was typed, although it was to be sent
	Pad     components.Link // types the next hole with the keys; its address is empty where nobody may
}

// WalkedLine is one hole of it.
type WalkedLine struct {
	Field components.Field // of the line
	Shown components.Field // the stored line that this one is typed over
	Name  string           // “Hole 7, par 4, 384 yd”
	Says  string           // what the line means, or that the hole was not played
	Shots string           // the shots, one after the other; empty for none
	Asks  []string         // what is unlikely
}

// WalkedInput is what the page is made of.
type WalkedInput struct {
	Whose  paths.Whose
	Name   string // the pupil's, to a coach
	Round  WalkedRound
	Tried  bool        // the lines came back, since something in them was wrong
	ToSend bool        // they were to be sent
	Shown  []string    // the stored lines that those of a form are typed over; none outside a form
	Other  []OtherLine // saved in another window in the meantime
}

// OtherLine is a line that another window saved.
type OtherLine struct {
	Hole int
	Line form.Line
}

// Conflicts reports whether another window saved a line that was changed in this one too.
func (in WalkedInput) Conflicts() bool { return len(in.Other) > 0 }

// other is what another window saved of a hole, as a problem of the line; empty for
// nothing.
func (in WalkedInput) other(hole int) string {
	for _, o := range in.Other {
		switch {
		case o.Hole != hole:
		case o.Line.Empty():
			return "Another window has emptied this line. Save again to keep yours."
		default:
			return fmt.Sprintf("Another window has saved “%s” here. Save again to keep yours.", o.Line.Text)
		}
	}
	return ""
}

// next is the hole to type next: the first in the order of play without a line, or the
// one at which the round began.
func (w WalkedRound) next() int {
	i := max(slices.IndexFunc(w.Card, func(h golf.CardHole) bool { return h.Number >= w.First }), 0)
	for k := range w.Card {
		if at := (i + k) % len(w.Card); w.Lines[at].Empty() {
			return w.Card[at].Number
		}
	}
	return w.Card[i].Number
}

// NewWalkedPage makes the page.
func NewWalkedPage(page layout.Page, in WalkedInput) WalkedPage {
	w := in.Round
	page.Title, page.Here = "Round of "+words.LongDay(w.Day), layout.Here(in.Whose, paths.Rounds)
	p := WalkedPage{Page: page, Back: in.Whose.WalkedRounds()}
	at := w.Course
	if w.Tee != "" {
		at += ", " + w.Tee + " tees"
	}
	played := 0
	for i, h := range w.Card {
		line := newWalkedLine(h, w.Lines[i], w.Units)
		line.Shown = components.Field{Name: form.WalkedShownName(h.Number), Value: w.Lines[i].Text}
		if len(in.Shown) > 0 {
			line.Shown.Value = in.Shown[i]
		}
		if other := in.other(h.Number); other != "" {
			line.Field.Problem = other
		}
		p.Holes = append(p.Holes, line)
		played += words.Tally(!w.Lines[i].Empty())
		p.Wrong.Add(line.Field.ID, line.Field.Label, line.Field.Problem)
	}
	p.Total = strokesTyped(w.Lines)
	switch {
	case in.Whose.Own:
		p.Lede = fmt.Sprintf("%s has entered this round for you: %s. It counts once you accept it.", w.Coach, at)
		p.Answer = in.Whose.AnswerWalked(w.ID)
	case w.Sent:
		p.Lede = fmt.Sprintf("%s, for %s. Sent, and not answered yet.", at, in.Name)
		p.Remove = in.Whose.RemoveWalked(w.ID)
	default:
		p.Lede = fmt.Sprintf("%s, for %s, who does not see it before you send it.", at, in.Name)
		p.Pad = components.Link{Name: fmt.Sprintf("Type hole %d with the keys", w.next()), At: in.Whose.HolesOfWalked(w.ID).At(w.next())}
		p.SaveAt, p.Send, p.Remove = in.Whose.Walked(w.ID), "Send it to "+in.Name, in.Whose.RemoveWalked(w.ID)
		p.Foot = fmt.Sprintf("A hole is one line, as the keys write it: letter and distance, such as f150 r20 g6 h, or =5 for a score alone. A number without a unit is %s off the green, %s on it. Leave out what was not played.", longUnit(w.Units.Far), longUnit(w.Units.Green))
	}
	if !in.Tried {
		p.Wrong = components.Summary{}
	}
	if in.ToSend && played == 0 {
		p.Nothing = "Type at least one hole before you send the round."
	}
	return p
}

// longUnit is a unit in full.
func longUnit(u golf.Unit) string {
	switch u {
	case golf.Yards:
		return "yards"
	case golf.Feet:
		return "feet"
	default:
		return "metres"
	}
}

// newWalkedLine is a hole with what was typed and what it means.
func newWalkedLine(h golf.CardHole, l form.Line, units form.Units) WalkedLine {
	w := WalkedLine{Name: fmt.Sprintf("Hole %d, par %d, %s", h.Number, h.Par, form.WriteLength(h.Length, units.Far)+" "+units.Far.String()), Says: "not played"}
	w.Field = components.Field{Name: form.WalkedName(h.Number), ID: form.WalkedName(h.Number), Label: w.Name, Value: l.Text}
	if l.Empty() {
		return w
	}
	read := NewReading(ReadingInput{Line: l, Hole: h, Units: units, AskAll: true})
	if !l.Sound() {
		w.Says, w.Field.Problem = "", problemText(l)
		return w
	}
	var shots []string
	for _, r := range read.Rows {
		said := r.From
		if r.Penalty != "" {
			said += " (" + r.Penalty + ")"
		}
		shots = append(shots, said)
	}
	w.Says, w.Shots = total(l), strings.Join(shots, ", ")
	for _, q := range l.Questions {
		w.Asks = append(w.Asks, q.Text)
	}
	return w
}

// strokesTyped sums up the strokes of the holes that were typed.
func strokesTyped(lines []form.Line) string {
	strokes, holes := 0, 0
	for _, l := range lines {
		if l.Sound() {
			strokes, holes = strokes+l.Hole.Strokes(), holes+1
		}
	}
	if holes == 0 {
		return ""
	}
	return fmt.Sprintf("%s, %s.", words.Plural(holes, "hole", "holes"), words.Plural(strokes, "stroke", "strokes"))
}
