// Package components holds small pieces of pages that take plain values.
package components

import "strokeledger/web/chart"

// Field is one labelled input, with what was typed and what was wrong.
type Field struct {
	Name     string // of the input
	ID       string // of the input on the page; its name when empty
	Label    string // what is asked, over the input
	Value    string // what was typed
	Type     string // text when empty
	Hint     string // what is allowed, may be empty
	Problem  string // what was wrong, empty when nothing
	Complete string // what the browser may fill in, its autocomplete; empty for nothing
	Mode     string // which keyboard a phone shows, its inputmode; empty for letters
	List     string // id of the list of suggestions; empty for none
}

// kind is the input's type.
func (f Field) kind() string {
	if f.Type == "" {
		return "text"
	}
	return f.Type
}

// Key is the id of the input on the page.
func (f Field) Key() string {
	if f.ID == "" {
		return f.Name
	}
	return f.ID
}

// Described lists the ids of what describes the input.
func (f Field) Described() string {
	switch {
	case f.Problem != "":
		return f.Key() + "-wrong"
	case f.Hint != "":
		return f.Key() + "-hint"
	default:
		return ""
	}
}

// Mark is a score on a hole as a card marks it.
type Mark struct {
	Class string // of its shape: none for par, no-mark when not entered
	Text  string // the score, or what stands for it
	Said  string // what the mark means, for those who cannot see it
}

// MarkOf marks a score.
func MarkOf(score, par int, text string) Mark {
	switch d := score - par; {
	case d < 0:
		return Mark{Class: "under-par-mark", Text: text, Said: "under par"}
	case d == 0:
		return Mark{Text: text, Said: "par"}
	case d == 1:
		return Mark{Class: "bogey-mark", Text: text, Said: "bogey"}
	default:
		return Mark{Class: "double-mark", Text: text, Said: "double bogey or worse"}
	}
}

// Axis is a scale made ready to be drawn.
type Axis struct {
	Zero  string   // place of zero, percent from the left
	Grid  []string // places of the ticks but zero
	Ticks []Tick   // the figures over the bars, zero among them
}

// Tick is one figure on an axis.
type Tick struct {
	X     string // its place, percent from the left
	Text  string // the figure
	Class string // sets zero apart; empty for other figures
}

// NewAxis makes an axis of a scale; write puts a tick's value into words.
func NewAxis(s chart.Scale, write func(float64) string) Axis {
	a := Axis{Zero: s.Percent(0)}
	for _, v := range s.Ticks() {
		t := Tick{X: s.Percent(v), Text: write(v)}
		if v == 0 {
			t.Class, t.Text = "zero-tick", "0"
		} else {
			a.Grid = append(a.Grid, t.X)
		}
		a.Ticks = append(a.Ticks, t)
	}
	return a
}

func barClass(b chart.Bar) string {
	if b.Won {
		return "won-mark"
	}
	return "lost-mark"
}
