package figures

import (
	"fmt"
	"slices"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/form"
	"strokeledger/web/words"
)

// ShotRow is one shot in the table of its hole.
type ShotRow struct {
	ID      string // of the row on the page, which links to the shot lead to
	Number  string // counted from 1
	Lie     string // names the picture of the lie
	From    string // lie, distance, and what else is known: short-sided, a penalty
	Club    string // empty when not entered
	CountAs string // part of the game
	Before  string // strokes expected before it, two decimals
	After   string // strokes expected after it, or holed
	Lost    string // strokes lost, signed, two decimals
	Tag     string // root, linked or error; empty for a plain shot
	Root    bool   // a double began here
}

// ShotInput is what the row of a shot is made of.
type ShotInput struct {
	Units  form.Units     // of the reader
	Hole   int            // number of the hole
	Number int            // of the shot on its hole, counted from 1
	Shot   golf.Shot      // as it was entered
	Worth  account.Shot   // what it was expected to take and what it lost
	Double account.Double // of its hole; the zero Double when the hole is none
}

// NewShotRow makes the row of a shot, with what it counts as and its place in the
// double of its hole.
func NewShotRow(in ShotInput) ShotRow {
	shot, s, d := in.Shot, in.Worth, in.Double
	r := ShotRow{ID: fmt.Sprintf("h%d-%d", in.Hole, in.Number), Number: fmt.Sprint(in.Number), Lie: shot.Lie.String(), Club: shot.Club,
		From:    fmt.Sprintf("%s %s", words.Capital(shot.Lie.String()), words.Distance(shot.Lie, shot.Distance, in.Units)),
		CountAs: words.Capital(s.Band.Category.String()), Before: fmt.Sprintf("%.2f", s.Expected), After: fmt.Sprintf("%.2f", s.After), Lost: words.Signed(s.Lost, 2)}
	if s.After == 0 {
		r.After = "holed"
	}
	if shot.About {
		r.From = "About " + r.From
	}
	switch {
	case shot.GreenKnown:
		r.From += fmt.Sprintf(", %s of green", words.Distance(golf.Tee, shot.GreenToWork, in.Units))
	case shot.ShortSided:
		r.From += ", short-sided"
	}
	if shot.Penalty > 0 {
		r.From += ", " + words.Plural(shot.Penalty, "penalty", "penalties")
	}
	switch {
	case d.Root == in.Number:
		r.Tag, r.Root = "root", true
	case slices.Contains(d.Chain, in.Number):
		r.Tag = "linked"
	case s.Error:
		r.Tag = "error"
	}
	return r
}

// DoubleStory shows how one double came about.
type DoubleStory struct {
	Heading string      // the hole, its par and the score
	Kind    string      // compound, single error …
	At      string      // place of the hole on its statement
	Steps   []StoryStep // its shots; none when only the score is known
	Sums    []StorySum  // what compounding and the hole cost; what is not known is left out
}

// StoryInput is the round that a double belongs to.
type StoryInput struct {
	Round   golf.Round      // as it was entered
	Account account.Account // of the round
	Target  float64         // strokes over 18 holes
	Units   form.Units      // of the reader
}

// StoryStep is one shot of the story.
type StoryStep struct {
	Number string // counted from 1
	Lie    string // names the picture of the lie
	From   string // lie and distance
	Cost   string // strokes lost, signed, two decimals
	Tag    string // root, linked error or error; empty for a plain shot
	Did    string // club, miss and the player's own word; empty when none was entered
	Error  bool   // it lost half a stroke or more
	Root   bool   // the double began here
	Linked bool   // the next shot belongs to the same chain of errors
}

// StorySum is one amount under a story.
type StorySum struct {
	Amount string // strokes, signed, two decimals
	Name   string // what the amount is
}

// NewDoubleStory makes the story of a double: its shots, the chain of errors, and
// what compounding and the hole cost.
func NewDoubleStory(in StoryInput, d account.Double) DoubleStory {
	st := DoubleStory{Heading: fmt.Sprintf("Hole %d, par %d: %s", d.Hole, d.Par, words.Spelled(d.Score)), Kind: d.Kind.String(), At: fmt.Sprintf("#h%d", d.Hole)}
	i := slices.IndexFunc(in.Round.Holes, func(h golf.Hole) bool { return h.Number == d.Hole })
	hole, played := in.Account.Holes[i], in.Round.Holes[i]
	for k, s := range hole.Shots {
		row := NewShotRow(ShotInput{in.Units, d.Hole, k + 1, played.Shots[k], s, d})
		step := StoryStep{Number: row.Number, Lie: row.Lie, From: row.From, Cost: row.Lost, Tag: row.Tag, Error: s.Error, Root: row.Root, Did: words.Joined(row.Club, played.Shots[k].Miss.String(), played.Shots[k].Word)}
		if row.Tag == "linked" {
			step.Tag = "linked error"
		}
		if at := slices.Index(d.Chain, k+1); at >= 0 && at < len(d.Chain)-1 && d.Chain[at+1] == k+2 {
			step.Linked = true
		}
		st.Steps = append(st.Steps, step)
	}
	if d.Compounding > 0 {
		st.Sums = append(st.Sums, StorySum{words.Signed(d.Compounding, 2), "compounding, judged by " + words.A(in.Target) + " golfer"})
	}
	if d.Kind != account.Unknown {
		st.Sums = append(st.Sums, StorySum{words.Signed(d.Lost, 2), "hole"})
	}
	return st
}
