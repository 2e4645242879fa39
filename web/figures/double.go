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
	Working string // how the loss comes about
	Tag     string // began here, follow-up, costliest or error; empty for a plain shot
	Said    string // what else is to be known of it; empty for most
	Root    bool   // a double began here
	lost    float64
}

// InRed reports whether the shot is one to look at first: a double began with it,
// or it followed from there.
func (r ShotRow) InRed() bool { return inRed(r.Tag) }

// InRed reports the same of a step.
func (s StoryStep) InRed() bool { return inRed(s.Tag) }

func inRed(tag string) bool { return tag == beganHere || tag == followUp }

// Tags of the shots that made a double.
const (
	beganHere = "began here"
	followUp  = "follow-up"
	costliest = "costliest"
)

// ShotInput is what the row of a shot is made of.
type ShotInput struct {
	Units  form.Units     // of the reader
	Hole   golf.Hole      // as it was entered
	Worth  account.Hole   // what its shots were expected to take and what they lost
	Number int            // of the shot on its hole, counted from 1
	Double account.Double // of its hole; the zero Double when the hole is none
	Of     string         // the player's name, for a coach; empty for the player
}

// NewShotRow makes the row of a shot, with what it counts as and its place in the
// double of its hole.
func NewShotRow(in ShotInput) ShotRow {
	shot, s := in.Hole.Shots[in.Number-1], in.Worth.Shots[in.Number-1]
	working := WorkingOf(s)
	r := ShotRow{ID: fmt.Sprintf("h%d-%d", in.Hole.Number, in.Number), Number: fmt.Sprint(in.Number), Lie: shot.Lie.String(), Club: shot.Club,
		From: playedFrom(shot, in.Units), Tag: tag(in), Root: in.Double.Root == in.Number,
		CountAs: words.Capital(s.Band.Category.String()), Before: fmt.Sprintf("%.2f", s.Expected), After: fmt.Sprintf("%.2f", s.After), Lost: words.Signed(working.Lost(), 2), Working: working.String(), lost: working.Lost()}
	if s.After == 0 {
		r.After = "holed"
	}
	r.Said = said(in, r.Tag)
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
// empty for a plain shot. The costliest is told where the double did not begin with
// it.
func tag(in ShotInput) string {
	switch {
	case in.Double.Root == in.Number:
		return beganHere
	case slices.Contains(in.Double.Chain, in.Number):
		return followUp
	case in.Double.Costliest == in.Number:
		return costliest
	case in.Worth.Shots[in.Number-1].Error:
		return "error"
	default:
		return ""
	}
}

// DoubleStory shows how one double came about.
type DoubleStory struct {
	Heading string      // the hole, its par and the score
	Kind    string      // what kind of double it is, with what that means
	At      string      // place of the hole on its statement
	Steps   []StoryStep // its shots; none when only the score is known
	Sum     string      // what the shots lost together, signed, two decimals; empty without shots
	Note    string      // what compounding cost; empty for nothing
}

// StoryInput is the round that a double belongs to.
type StoryInput struct {
	Round   golf.Round      // as it was entered
	Account account.Account // of the round
	Target  float64         // strokes over 18 holes
	Units   form.Units      // of the reader
	Of      string          // the player's name, for a coach; empty for the player
}

// StoryStep is one shot of the story.
type StoryStep struct {
	Number string // counted from 1
	Lie    string // names the picture of the lie
	From   string // lie and distance
	Cost   string // strokes lost, signed, two decimals
	Bar    CostBar
	Work   string // how the cost comes about
	Tag    string // began here, follow-up, costliest or error; empty for a plain shot
	Said   string // what else is to be known of it; empty for most
	Did    string // club, miss and the player's own word; empty when none was entered
	Error  bool   // it lost half a stroke or more
	Root   bool   // the double began here
	Linked bool   // the next shot belongs to the same chain of errors
}

// meanings say what the kinds of doubles mean.
var meanings = map[account.Kind]string{
	account.Compound: "compound: one error led to the next",
	account.Single:   "single: one error",
	account.Separate: "separate: errors that did not follow each other",
	account.Leak:     "leak: no error, many small losses",
}

// NewDoubleStory makes the story of a double: its shots, the chain of errors, and
// what compounding and the hole cost.
func NewDoubleStory(in StoryInput, d account.Double) DoubleStory {
	st := DoubleStory{Heading: fmt.Sprintf("Hole %d, par %d: %s", d.Hole, d.Par, words.Spelled(d.Score)), Kind: meanings[d.Kind], At: fmt.Sprintf("#h%d", d.Hole)}
	i := slices.IndexFunc(in.Round.Holes, func(h golf.Hole) bool { return h.Number == d.Hole })
	hole, played := in.Account.Holes[i], in.Round.Holes[i]
	for k, s := range hole.Shots {
		row := NewShotRow(ShotInput{in.Units, played, hole, k + 1, d, in.Of})
		step := StoryStep{Number: row.Number, Lie: row.Lie, From: row.From, Cost: row.Lost, Bar: ShotCost(row.lost), Work: row.Working, Tag: row.Tag, Said: row.Said, Error: s.Error, Root: row.Root, Did: words.Joined(row.Club, played.Shots[k].Miss.String(), played.Shots[k].Word)}
		if at := slices.Index(d.Chain, k+1); at >= 0 && at < len(d.Chain)-1 && d.Chain[at+1] == k+2 {
			step.Linked = true
		}
		st.Steps = append(st.Steps, step)
	}
	if len(hole.Shots) > 0 {
		st.Sum = words.Signed(WorkingOf(hole.Shots...).Lost(), 2)
	}
	if d.Compounding > 0 {
		followed := "follow-up"
		if n := len(d.Chain) - 1; n > 1 {
			followed = words.Spelled(n) + " follow-ups"
		}
		st.Note = fmt.Sprintf("The %s cost %s, judged by %s golfer.", followed, words.Signed(d.Compounding, 2), words.A(in.Target))
	}
	return st
}
