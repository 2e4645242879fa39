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
	s := in.Worth
	r := ShotRow{ID: fmt.Sprintf("h%d-%d", in.Hole, in.Number), Number: fmt.Sprint(in.Number), Lie: in.Shot.Lie.String(), Club: in.Shot.Club,
		From: playedFrom(in.Shot, in.Units), Tag: tag(in), Root: in.Double.Root == in.Number,
		CountAs: words.Capital(s.Band.Category.String()), Before: fmt.Sprintf("%.2f", s.Expected), After: fmt.Sprintf("%.2f", s.After), Lost: words.Signed(s.Lost, 2)}
	if s.After == 0 {
		r.After = "holed"
	}
	return r
}

// playedFrom says from where a shot was played, and what else is known of it.
func playedFrom(shot golf.Shot, units form.Units) string {
	text := fmt.Sprintf("%s %s", words.Capital(shot.Lie.String()), words.Distance(shot.Lie, shot.Distance, units))
	if shot.About {
		text = "About " + text
	}
	switch {
	case shot.GreenKnown:
		text += fmt.Sprintf(", %s of green", words.Distance(golf.Tee, shot.GreenToWork, units))
	case shot.ShortSided:
		text += ", short-sided"
	}
	if shot.Penalty > 0 {
		text += ", " + words.Plural(shot.Penalty, "penalty", "penalties")
	}
	return text
}

// tag says what part a shot has in the double of its hole, or that it is an error;
// empty for a plain shot.
func tag(in ShotInput) string {
	switch {
	case in.Double.Root == in.Number:
		return "root"
	case slices.Contains(in.Double.Chain, in.Number):
		return "linked"
	case in.Worth.Error:
		return "error"
	default:
		return ""
	}
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
		st.Steps = append(st.Steps, newStoryStep(ShotInput{in.Units, d.Hole, k + 1, played.Shots[k], s, d}))
	}
	if d.Compounding > 0 {
		st.Sums = append(st.Sums, StorySum{words.Signed(d.Compounding, 2), "compounding, judged by " + words.A(in.Target) + " golfer"})
	}
	if d.Kind != account.Unknown {
		st.Sums = append(st.Sums, StorySum{words.Signed(d.Lost, 2), "hole"})
	}
	return st
}

// newStoryStep makes the step of a shot. It is linked to the next shot when both
// stand in the chain of errors.
func newStoryStep(in ShotInput) StoryStep {
	row, chain := NewShotRow(in), in.Double.Chain
	step := StoryStep{Number: row.Number, Lie: row.Lie, From: row.From, Cost: row.Lost, Tag: row.Tag, Error: in.Worth.Error, Root: row.Root,
		Did:    words.Joined(row.Club, in.Shot.Miss.String(), in.Shot.Word),
		Linked: slices.Contains(chain, in.Number) && slices.Contains(chain, in.Number+1)}
	if row.Tag == "linked" {
		step.Tag = "linked error"
	}
	return step
}
